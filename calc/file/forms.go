package file

import (
	"fmt"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

// forms are the checks of the tag `form`: what is wrong with a text, "" for nothing, and what
// is accepted.
var forms = map[string]func(string) (wrong, accepted string){
	"swatch":   swatchForm,
	"language": languageForm,
	"layup":    layupForm,
	"mesh":     meshForm,
	"cloth":    clothForm,
}

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
	if len(known) == 1 {
		accepted = "the language code " + words.Quote(known[0]) + " is accepted"
	}
	if !words.Has(known, text) {
		return "the program has no language " + words.Quote(text), accepted
	}
	return "", accepted
}

func layupForm(text string) (wrong, accepted string) {
	_, err := job.ParseLayup(text)
	return words.WrongOf(err), job.AcceptedLayup
}

func meshForm(text string) (wrong, accepted string) {
	_, _, err := job.ParseMesh(text)
	return words.WrongOf(err), job.AcceptedMesh + `, or the count alone, "156", of a mesh on the racks`
}

func clothForm(text string) (wrong, accepted string) {
	_, thread, err := job.ParseMesh(text)
	if err == nil && thread == 0 {
		return words.Quote(text) + " does not say the thread", job.AcceptedMesh
	}
	return words.WrongOf(err), job.AcceptedMesh
}

const (
	eomShares   = "0.5 to 400 %"
	eomLengths  = "0.5 to 1000 um"
	acceptedEOM = `a share of the fabric thickness such as "20 %", ` + eomShares + `, or a length such as "25 um", ` + eomLengths + `, is accepted`
)

// eom reads an emulsion over mesh: a share or a length. Single layers of 600 um are published
// for raised work; the upper ends are far enough above (common practice).
func (b *binder) eom(dst *job.EOM, raw any, at *place, f *field, sc scope) {
	fail := func(wrong string) { b.fail(at.valuePos(), sc, f.key, wrong, acceptedEOM) }
	text, ok := raw.(string)
	if !ok {
		if _, n := raw.(int64); n {
			fail(fmt.Sprintf("%d has no unit", raw))
		} else if _, n := raw.(float64); n {
			fail(fmt.Sprintf("%g has no unit", raw))
		} else {
			fail(describe(raw))
		}
		return
	}
	if share, err := unit.Parse(text, "share"); err == nil {
		if !(share >= 0.005 && share <= 4) {
			fail(words.Quote(text) + " is out of range")
			return
		}
		dst.Share = share
		return
	}
	um, err := unit.Parse(text, "um")
	if err != nil {
		fail(words.WrongOf(err))
		return
	}
	if !(um >= 0.5 && um <= 1000) {
		fail(words.Quote(text) + " is out of range")
		return
	}
	dst.UM = um
}
