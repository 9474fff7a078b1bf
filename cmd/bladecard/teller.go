package main

import (
	"io"
	"strings"

	"bladecard/calc/job"
	"bladecard/render/say"
)

// teller is standard error of a call: it says errors, hints and notes in the language of --lang, else of the shop
// that was read last, else in English. A line is written whole.
type teller struct {
	w    io.Writer
	call *call
}

func (t *teller) Write(data []byte) (int, error) {
	v := t.call.language()
	if v == nil {
		return t.w.Write(data)
	}
	lines := strings.SplitAfter(string(data), "\n")
	for i, l := range lines {
		for _, begin := range []string{"error: ", "hint: ", "note: "} {
			if strings.HasPrefix(l, begin) {
				text := strings.TrimSuffix(l, "\n")
				lines[i] = v.Word(text) + l[len(text):]
			}
		}
	}
	if _, err := io.WriteString(t.w, strings.Join(lines, "")); err != nil {
		return 0, err
	}
	return len(data), nil
}

// language is the voice of a call's errors and hints; nil: English, since nothing has said otherwise yet.
func (c *call) language() *say.Voice {
	if c.spoken == nil && c.lang != "" {
		c.spoken, _ = say.New(c.lang, "") // the flag takes languages that ship only
	}
	return c.spoken
}

// worded is an error of a file in the language of the call.
func (c *call) worded(e job.Error) string {
	if v := c.language(); v != nil {
		return v.WordError(e)
	}
	return e.Error()
}
