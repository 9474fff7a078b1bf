package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"bladecard/calc/seen"
	"bladecard/render/say"
	"bladecard/templates"
)

// faultsHelp lists the faults with what they mean, for the help.
func faultsHelp(v *say.Voice) string {
	var out []string
	wide := 16
	for _, f := range seen.Faults() {
		wide = max(wide, utf8.RuneCountInString(v.T("seen-word."+f))+1)
	}
	for _, f := range seen.Faults() {
		out = append(out, fmt.Sprintf("    %-*s %s", wide, v.T("seen-word."+f), v.T("seen-name."+f)))
	}
	return strings.Join(out, "\n")
}

// unaccented takes off the accents that the words of faults are written without.
var unaccented = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ñ", "n")

// faultOf is the fault that a word of any language means, with hyphens or spaces, accents or not, in capitals or not. What is accepted is
// said in a voice, nil: in English.
func faultOf(text string, v *say.Voice) (string, error) {
	word := unaccented.Replace(strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(text, "-", " ")), "-")))
	means := map[string]string{}
	var accepted, all []string
	for _, f := range seen.Faults() {
		if v == nil {
			accepted = append(accepted, f)
		} else {
			accepted = append(accepted, v.T("seen-word."+f))
		}
		for _, code := range templates.Languages() {
			words, err := templates.Language(code)
			if err != nil {
				return "", err
			}
			means[words["seen-word."+f]] = f
			all = append(all, words["seen-word."+f])
		}
	}
	if f, known := means[word]; known {
		return f, nil
	}
	return "", errors.New("not known; " + didYouMean(word, all) + "accepted: " + strings.Join(accepted, ", "))
}

// seenFlag declares --seen.
func (c *call) seenFlag(f *flags, to *[]string) {
	for _, fault := range seen.Faults() {
		f.words["seen"] = append(f.words["seen"], c.voice().T("seen-word."+fault))
	}
	f.value("seen", "WHAT", func(text string) error {
		for _, part := range strings.Split(text, ",") {
			what, err := faultOf(part, c.language())
			if err != nil {
				return err
			}
			if !slices.Contains(*to, what) {
				*to = append(*to, what)
			}
		}
		return nil
	})
}
