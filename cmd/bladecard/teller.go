package main

import (
	"io"
	"os"
	"path/filepath"
	"strings"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/say"
	"bladecard/templates"
)

// teller is standard error of a call: it says errors, hints and notes in the language of --lang, else of the shop
// that was read last or that the command line leads to, else in English. A line is written whole.
type teller struct {
	w    io.Writer
	call *call
}

func (t *teller) Write(data []byte) (int, error) {
	lines := strings.SplitAfter(string(data), "\n")
	for i, l := range lines {
		text := strings.TrimSuffix(l, "\n")
		lines[i] = t.call.word(text) + l[len(text):]
	}
	if _, err := io.WriteString(t.w, strings.Join(lines, "")); err != nil {
		return 0, err
	}
	return len(data), nil
}

// language is the voice of a call's errors and hints; nil: English, since nothing says otherwise.
func (c *call) language() *say.Voice {
	if c.spoken == nil && !c.searched {
		c.searched = true
		if code := c.searchLanguage(); code != "" {
			c.spoken, _ = say.New(code, "") // a code that is not known leaves English
		}
	}
	return c.spoken
}

// searchLanguage finds the language of a call that has read no shop yet: that of --lang, else of the shop that one of
// the words of its command line leads to, else of the nearest shop. Empty: nothing names one.
func (c *call) searchLanguage() string {
	if c.lang != "" {
		return c.lang
	}
	words := append([]string{c.shop}, c.words...)
	for i, w := range c.words {
		code, is := strings.CutPrefix(w, "--lang=")
		if w == "--lang" && i+1 < len(c.words) {
			code, is = c.words[i+1], true
		}
		for _, known := range templates.Languages() {
			if is && strings.EqualFold(code, known) { // else the shop's, to say that there is no such language
				return known
			}
		}
	}
	for _, w := range append(words, ".") {
		info, err := os.Stat(strings.TrimPrefix(w, "--shop="))
		if err != nil {
			continue
		}
		path := strings.TrimPrefix(w, "--shop=")
		if info.IsDir() {
			path = filepath.Join(path, "-") // what lies in the folder
		} else if src, err := disk.Read(path, file.MaxFileBytes); err == nil && file.LanguageOf(src) != "" {
			return file.LanguageOf(src)
		}
		if src, err := disk.Read(nearestShop(path).path, file.MaxFileBytes); err == nil {
			return file.LanguageOf(src)
		}
	}
	return ""
}

// withoutLang leaves --lang and its value out of words.
func withoutLang(words []string) []string {
	var out []string
	for i := 0; i < len(words); i++ {
		switch w := words[i]; {
		case w == "--lang":
			i++
		case !strings.HasPrefix(w, "--lang="):
			out = append(out, w)
		}
	}
	return out
}

// word says a text of the program in the language of the call, as much of it as that has.
func (c *call) word(english string) string {
	if v := c.language(); v != nil {
		return v.Word(english)
	}
	return english
}

// worded is an error of a file in the language of the call.
func (c *call) worded(e job.Error) string {
	if v := c.language(); v != nil {
		return v.WordError(e)
	}
	return e.Error()
}
