package canvas

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// missingWidth is what an unprintable rune counts for in Width, in 1/1000 of the type size, so
// that a layout goes on until a check names the rune.
const missingWidth = 600

// Missing lists the runes of s, each once, that cannot be printed in both faces: no glyph,
// above U+FFFF, control or format characters, combining marks without a composed form.
// Invalid UTF-8 counts as U+FFFD. s is normalized to NFC first.
func Missing(s string) []rune {
	var out []rune
	seen, face := map[rune]bool{}, typefaceOf(Regular)
	for _, r := range NFC(s) {
		if _, ok := face.glyph(r); (!ok || r == utf8.RuneError) && !seen[r] {
			seen[r] = true
			out = append(out, r)
		}
	}
	return out
}

// Clean returns s normalized to NFC, or an error that names what cannot be printed.
func Clean(s string) (string, error) {
	if !utf8.ValidString(s) {
		return "", fmt.Errorf("text %q is not valid UTF-8", s)
	}
	s = NFC(s)
	if allPrintable(s) {
		return s, nil
	}
	var names []string
	for _, r := range Missing(s) {
		names = append(names, fmt.Sprintf("U+%04X %q", r, r))
	}
	return "", fmt.Errorf("text %q has runes that the document's font cannot print: %s; accepted are letters and signs of Latin, Greek and Cyrillic script on one line",
		s, strings.Join(names, ", "))
}

func allPrintable(s string) bool {
	face := typefaceOf(Regular)
	for _, r := range s {
		if _, ok := face.glyph(r); !ok {
			return false
		}
	}
	return true
}

// NFC normalises s to NFC; most texts hold nothing that could be otherwise.
func NFC(s string) string {
	for _, r := range s {
		if r >= 0x300 && !(r >= 0x2010 && r <= 0x2027) && !(r >= 0x2190 && r <= 0x21FF) {
			return norm.NFC.String(s)
		}
	}
	return s
}

// Width is the width of s in mm, as a PDF advances. There is no kerning.
func Width(s string, f Font) float64 { return Advance(NFC(s), f.Face).MM(f.SizePT) }

// Milles is a width in 1/1000 of the type size. Widths of parts add up to that of the whole.
type Milles int

// MM is the width in mm at a type size.
func (m Milles) MM(sizePT float64) float64 { return float64(m) / 1000 * sizePT * MMPerPT }

// Advance is the width of s, which is NFC.
func Advance(s string, f Face) Milles {
	face := typefaceOf(f)
	total := 0
	for _, r := range s {
		if g, ok := face.glyph(r); ok {
			total += g.width
		} else {
			total += missingWidth
		}
	}
	return Milles(total)
}

// LineHeight is the height of one row of type in mm, accents on capitals included.
func LineHeight(f Font) float64 { return (Ascent + Descent) * f.SizePT * MMPerPT }

// Ink is how far s reaches above and below its baseline, in mm.
func Ink(s string, f Font) (above, below float64) {
	face := typefaceOf(f.Face)
	top, low := 0, 0
	for _, r := range s {
		g, _ := face.glyph(r)
		top, low = max(top, g.top), min(low, g.low)
	}
	return Milles(top).MM(f.SizePT), Milles(-low).MM(f.SizePT)
}
