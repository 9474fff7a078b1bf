package page

import (
	"bytes"
	"slices"
	"sync"
	"unicode"

	"bladecard/render/canvas"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"github.com/go-pdf/fpdf"
)

// blocks are the Unicode blocks whose runes may be printed: scripts that need no shaping and
// read from left to right, with the signs that a technical card uses.
var blocks = [][2]rune{
	{0x0020, 0x007E}, {0x00A0, 0x024F}, {0x0250, 0x02AF}, {0x02B0, 0x02FF}, // Latin
	{0x0370, 0x03FF}, {0x0400, 0x052F}, {0x1E00, 0x1EFF}, // Greek, Cyrillic, Vietnamese
	{0x2000, 0x206F}, {0x2070, 0x209F}, {0x20A0, 0x20CF}, // punctuation, superscripts, currency
	{0x2100, 0x214F}, {0x2150, 0x218F}, {0x2190, 0x21FF}, // letterlike, fractions, arrows
	{0x2200, 0x22FF}, {0x2300, 0x23FF}, {0x2500, 0x25FF}, // mathematics, technical, boxes and shapes
	{0x2600, 0x26FF}, {0x2700, 0x27BF}, // symbols, check marks
}

// printable tells whether a rune is one that text may hold at all, whatever the font has.
func printable(r rune) bool {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Mc, unicode.Cf, unicode.Cc, unicode.Zl, unicode.Zp) {
		return false
	}
	for _, b := range blocks {
		if r >= b[0] && r <= b[1] {
			return true
		}
	}
	return false
}

// fontSet is the pair of faces, cut to the runes that both have.
type fontSet struct {
	metrics [2]metrics
	table   [2][tableEnd]glyph // metrics once more, to be looked up fast
	ttf     [2][]byte
	err     error
}

// tableEnd is past the last of the blocks.
const tableEnd = 0x2800

// glyph is what the face knows of a rune; has is false where that is nothing.
func (s *fontSet) glyph(f canvas.Face, r rune) (g glyph, has bool) {
	if r < 0 || r >= tableEnd {
		return glyph{}, false
	}
	g = s.table[faceIndex(f)][r]
	return g, g.width > 0
}

// fonts cuts the faces once per run. The result is read only.
var fonts = sync.OnceValue(func() *fontSet {
	set := &fontSet{}
	whole := [2][]byte{dejavusanscondensed.TTF, dejavusanscondensedbold.TTF}
	for i := range whole {
		if set.metrics[i], set.err = readMetrics(whole[i], printable); set.err != nil {
			return set
		}
	}
	var cut []rune
	for r := range set.metrics[0] {
		if _, both := set.metrics[1][r]; both {
			cut = append(cut, r)
		}
	}
	slices.Sort(cut)
	for i := range whole {
		for r := range set.metrics[i] {
			if _, both := set.metrics[1-i][r]; !both {
				delete(set.metrics[i], r)
			}
		}
		for r, g := range set.metrics[i] {
			set.table[i][r] = g
		}
		set.ttf[i] = fpdf.UTF8CutFont(bytes.Clone(whole[i]), string(cut))
	}
	return set
})

func faceIndex(f canvas.Face) int {
	if f == canvas.Bold {
		return 1
	}
	return 0
}
