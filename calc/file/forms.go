package file

import (
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

// textForm says how a text must be built.
type textForm struct {
	check    func(string) (wrong, accepted string) // what is wrong with a text, "" for nothing, and what is accepted
	pattern  string                                // of the schema, in what RE2, ECMA 262 and PCRE have in common
	examples []string
}

// forms holds the forms that the tag `form` names. The schema lists the languages as words, so that they need no
// pattern. A path and an ink may be any text, and stand in no table.
var forms = map[string]textForm{
	"swatch":   {swatchForm, `^#[0-9a-fA-F]{6}$`, []string{"#f7f7f2"}},
	"language": {check: languageForm},
	"layup":    {layupForm, `^` + layerPattern + `(/` + layerPattern + `){0,6}$`, []string{"70", "65/90/65"}},
	"mesh":     {meshForm, `^` + countPattern + `(-` + figurePattern + `)?$`, []string{"156-64", "61/cm-64"}},
	"cloth":    {clothForm, `^` + countPattern + `-` + figurePattern + `$`, []string{"156-64", "61/cm-64"}},
}

const (
	// 40 to 95 Shore A
	layerPattern = `\s*0*([4-8][0-9](\.[0-9]*)?|9[0-4](\.[0-9]*)?|95(\.0*)?)\s*`
	// digits with at most one point
	digitsPattern = `([0-9]+\.?[0-9]*|\.[0-9]+)`
	figurePattern = `\s*` + digitsPattern + `\s*`
	countPattern  = `\s*` + digitsPattern + `(/cm|/in)?\s*`
)

func swatchForm(text string) (wrong, accepted string) {
	accepted = `a color such as "#f7f7f2" is accepted, # and six digits of 0-9 and a-f`
	if len(text) != 7 || text[0] != '#' || strings.Trim(text[1:], "0123456789abcdefABCDEF") != "" {
		return words.Quote(text) + " is not a color", accepted
	}
	return "", accepted
}

func languageForm(text string) (wrong, accepted string) {
	known := templates.Languages()
	accepted = "the language codes " + words.List(words.Quoted(known)) + " are accepted"
	if !words.Has(known, text) {
		return "the program has no language " + words.Quote(text), accepted
	}
	return "", accepted
}

func layupForm(text string) (wrong, accepted string) {
	_, err := job.ParseLayup(text)
	return unit.WrongOf(err), job.AcceptedLayup
}

func meshForm(text string) (wrong, accepted string) {
	_, _, err := job.ParseMesh(text)
	return unit.WrongOf(err), job.AcceptedMesh + `, or the count alone, "156", of a mesh on the racks`
}

func clothForm(text string) (wrong, accepted string) {
	_, thread, err := job.ParseMesh(text)
	if err == nil && thread == 0 {
		return words.Quote(text) + " does not say the thread", job.AcceptedMesh
	}
	return unit.WrongOf(err), job.AcceptedMesh
}
