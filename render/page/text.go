package page

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"bladecard/render/canvas"

	"golang.org/x/text/unicode/norm"
)

// missingWidth is what an unprintable rune counts for in Width, in 1/1000 of the type size, so
// that a layout goes on until Check names the rune.
const missingWidth = 600

// Missing lists the runes of s, each once, that cannot be printed in both faces: no glyph,
// above U+FFFF, control or format characters, combining marks without a composed form.
// Invalid UTF-8 counts as U+FFFD. s is normalised to NFC first.
func Missing(s string) []rune {
	set := fonts()
	var out []rune
	seen := map[rune]bool{}
	for _, r := range nfc(s) {
		if _, ok := set.glyph(canvas.Regular, r); (!ok || r == utf8.RuneError) && !seen[r] {
			seen[r] = true
			out = append(out, r)
		}
	}
	return out
}

// Clean returns s normalised to NFC, or an error that names what cannot be printed.
func Clean(s string) (string, error) {
	if err := fonts().err; err != nil {
		return "", err
	}
	if !utf8.ValidString(s) {
		return "", fmt.Errorf("text %q is not valid UTF-8", s)
	}
	s = nfc(s)
	if allPrintable(s) {
		return s, nil
	}
	bad := Missing(s)
	var names []string
	for _, r := range bad {
		names = append(names, fmt.Sprintf("U+%04X %q", r, r))
	}
	return "", fmt.Errorf("text %q has runes that the document's font cannot print: %s; accepted are letters and signs of Latin, Greek and Cyrillic script on one line",
		s, strings.Join(names, ", "))
}

func allPrintable(s string) bool {
	set := fonts()
	for _, r := range s {
		if _, ok := set.glyph(canvas.Regular, r); !ok {
			return false
		}
	}
	return true
}

// nfc normalises s to NFC; most texts hold nothing that could be otherwise.
func nfc(s string) string {
	for _, r := range s {
		if r >= 0x300 && !(r >= 0x2010 && r <= 0x2027) && !(r >= 0x2190 && r <= 0x21FF) {
			return norm.NFC.String(s)
		}
	}
	return s
}

// Width is the width of s in mm, as the PDF advances. There is no kerning.
func Width(s string, f canvas.Font) float64 { return mille(nfc(s), f.Face).mm(f) }

// milles is a width in 1/1000 of the type size.
type milles int

// mille is the width of s, which is NFC. Widths of parts add up to that of the whole.
func mille(s string, f canvas.Face) milles {
	set := fonts()
	total := 0
	for _, r := range s {
		if g, ok := set.glyph(f, r); ok {
			total += g.width
		} else {
			total += missingWidth
		}
	}
	return milles(total)
}

func (m milles) mm(f canvas.Font) float64 { return float64(m) / 1000 * f.SizePT * canvas.MMPerPT }

// LineHeight is the height of one row of type in mm, accents on capitals included.
func LineHeight(f canvas.Font) float64 {
	return (canvas.Ascent + canvas.Descent) * f.SizePT * canvas.MMPerPT
}

// ink is how far s reaches above and below its baseline, in mm.
func ink(s string, f canvas.Font) (above, below float64) {
	set := fonts()
	hi, lo := 0, 0
	for _, r := range s {
		g, _ := set.glyph(f.Face, r)
		hi, lo = max(hi, g.yMax), min(lo, g.yMin)
	}
	mm := f.SizePT * canvas.MMPerPT / 1000
	return float64(hi) * mm, -float64(lo) * mm
}
