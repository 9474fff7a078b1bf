package job

import (
	"fmt"
	"strconv"
	"strings"

	"bladecard/calc/internal/words"
	"bladecard/calc/unit"
)

// ParseMesh reads the name of a mesh: "156-64" is 156 threads per inch of 64 um, "61/cm-64"
// counts per centimetre (154.94 per inch, at exactly 2.54 cm), "156/in-64" is the first form in
// full. The thread may be left out and is 0 then. It accepts 5 to 1000 threads per inch and
// threads of 10 to 2000 um (from memory: a margin round what is woven), and only what leaves an
// opening, 25 400/count - thread > 0 um (ISO 9044 [18] terms, published). The error is a *unit.Error.
func ParseMesh(text string) (countPerInch, threadUM float64, err error) {
	fail := func(wrong string) (float64, float64, error) {
		return 0, 0, &unit.Error{Wrong: words.Quote(text) + " " + wrong, Accepted: AcceptedMesh}
	}
	count, thread, withThread := strings.Cut(text, "-")
	count = strings.TrimSpace(count)
	perInch := 1.0
	if c, ok := strings.CutSuffix(count, "/cm"); ok {
		count, perInch = c, 2.54
	} else if c, ok := strings.CutSuffix(count, "/in"); ok {
		count = c
	}
	n, ok := plainNumber(count)
	if !ok {
		return fail("is not a mesh")
	}
	if countPerInch = n * perInch; !(countPerInch >= 5 && countPerInch <= 1000) {
		return fail(fmt.Sprintf("has %s threads per inch, where 5 to 1000 is accepted", words.Number(countPerInch)))
	}
	if !withThread {
		return countPerInch, 0, nil
	}
	if threadUM, ok = plainNumber(strings.TrimSpace(thread)); !ok {
		return fail("is not a mesh")
	}
	if !(threadUM >= 10 && threadUM <= 2000) {
		return fail(fmt.Sprintf("has a thread of %s um, where 10 to 2000 um is accepted", words.Number(threadUM)))
	}
	if pitch := 25400 / countPerInch; !(pitch > threadUM) {
		return fail(fmt.Sprintf("has no opening: the thread, %s um, is not thinner than the pitch, %s um", words.Number(threadUM), words.Number(pitch)))
	}
	return countPerInch, threadUM, nil
}

// ParseLayup reads the layup of a blade, "70" or "65/90/65": the Shore A hardness of each
// layer across the thickness, 1 to 7 layers of 40 to 95 (the range in which hardness gives a
// modulus, Gent 1958 [1], published). The error is a *unit.Error.
func ParseLayup(text string) ([]float64, error) {
	fail := func(wrong string) ([]float64, error) {
		return nil, &unit.Error{Wrong: words.Quote(text) + " " + wrong, Accepted: AcceptedLayup}
	}
	layers := strings.Split(text, "/")
	if len(layers) > 7 {
		return fail("has more than 7 layers")
	}
	hardness := make([]float64, len(layers))
	for i, layer := range layers {
		v, ok := plainNumber(strings.TrimSpace(layer))
		if !ok {
			return fail("is not a layup")
		}
		if !(v >= 40 && v <= 95) {
			return fail(fmt.Sprintf("has a layer of %s Shore A", words.Number(v)))
		}
		hardness[i] = v
	}
	return hardness, nil
}

// plainNumber reads digits with at most one point and no sign, at most 12 bytes.
func plainNumber(text string) (float64, bool) {
	if text == "" || len(text) > 12 || strings.Trim(text, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// AcceptedLayup says which texts of a layup are accepted.
const AcceptedLayup = `the Shore A hardness of the layers, 40 to 95 each, is accepted, such as "70" or "65/90/65"`

// AcceptedMesh says which texts of a mesh are accepted.
const AcceptedMesh = `threads per inch and thread in um, "156-64", or threads per cm, "61/cm-64", is accepted`

// Unspaced takes the blanks out of a layup, so that "65 / 90 / 65" is "65/90/65".
func Unspaced(layup string) string { return strings.ReplaceAll(layup, " ", "") }
