package pdf

import (
	"bytes"
	"sync"

	"bladecard/calc/file"
	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// The library parses a font anew for every document: the whole face in the time of twenty cards, the
// common runes of it in less than half of that. So most texts are set in a font that was cut down to
// those, once a run, and a text with others in the whole face. Either way the library embeds no more
// than the runes that are used.
const (
	commonFamily = "DejaVuSansCondensed"
	wholeFamily  = "DejaVuSansCondensedWhole"
)

// common are the ranges of runes, first and last, that most texts keep to.
var common = [...][2]rune{
	{0x0020, 0x017F}, // Latin, with the accents of Europe
	{0x0391, 0x03C9}, // Greek letters of formulas
	{0x2010, 0x2044}, // dashes, quotation marks, ellipsis
	{0x2070, 0x2099}, // superscripts and subscripts
	{0x2150, 0x215E}, // fractions
	{0x2190, 0x2199}, // arrows
	{0x2200, 0x2265}, // mathematical signs
	{0x2713, 0x2717}, // check marks
}

func isCommon(r rune) bool {
	for _, c := range common {
		if r >= c[0] && r <= c[1] {
			return true
		}
	}
	return false
}

// printable lists the common runes that a text may hold.
func printable() (runes []rune) {
	for _, c := range common {
		for r := c[0]; r <= c[1]; r++ {
			if file.Printable(r) {
				runes = append(runes, r)
			}
		}
	}
	return runes
}

// commonFonts are both faces, cut down to the common runes.
var commonFonts = sync.OnceValue(func() map[canvas.Face][]byte {
	cut := map[canvas.Face][]byte{}
	for _, f := range canvas.Faces {
		cut[f] = fpdf.UTF8CutFont(bytes.Clone(canvas.TTF(f)), string(printable()))
	}
	return cut
})

// style is the library's name for a face.
func style(f canvas.Face) string {
	if f == canvas.Bold {
		return "B"
	}
	return ""
}

// typeface is a font of the document as the library knows it.
type typeface struct {
	family string
	face   canvas.Face
	sizePT float64
}

// setFont sets the font for a text. The document gets a family when it is first needed, and a copy of
// its bytes, since the library changes them.
func (c *pdfCanvas) setFont(s string, f canvas.Font) {
	t := typeface{commonFamily, f.Face, hundredths(f.SizePT)}
	for _, r := range s {
		if !isCommon(r) {
			t.family = wholeFamily
		}
	}
	if c.font == t {
		return
	}
	if key := (typeface{family: t.family, face: t.face}); !c.loaded[key] {
		ttf := commonFonts()[t.face]
		if t.family == wholeFamily {
			ttf = canvas.TTF(t.face)
		}
		c.doc.AddUTF8FontFromBytes(t.family, style(t.face), bytes.Clone(ttf))
		c.loaded[key] = true
	}
	c.doc.SetFont(t.family, style(t.face), t.sizePT)
	c.font = t
}
