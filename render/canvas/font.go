package canvas

import (
	"math"
	"sync"

	"bladecard/calc/file"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// glyph is what a rune needs on paper, in 1/1000 of the type size.
type glyph struct {
	width    int // advance, rounded as a PDF states it; 0: the face has no such glyph
	low, top int // ink below (negative) and above the baseline; both 0 for a blank
}

// tableEnd is past the last rune that may be printed.
const tableEnd = 0x2800

// unitsPerEM is the grid on which the document's font is drawn: at this size nothing is rounded.
const unitsPerEM = 2048

// typeface is a face of the document's font. Its glyphs are read a block of 256 runes at a time,
// when the first of them is asked for: most documents need two or three blocks.
type typeface struct {
	outlines *sfnt.Font
	blocks   [tableEnd >> 8]struct {
		read   sync.Once
		glyphs [256]glyph
	}
}

// typefaces parses the faces once a run. They are part of the program, so a face that cannot be
// read is a program that was built wrong.
var typefaces = sync.OnceValue(func() (out [2]*typeface) {
	for i, f := range Faces {
		outlines, err := sfnt.Parse(TTF(f))
		if err != nil {
			panic("the document's font cannot be read: " + err.Error())
		}
		out[i] = &typeface{outlines: outlines}
	}
	return out
})

func typefaceOf(f Face) *typeface {
	if f == Bold {
		return typefaces()[1]
	}
	return typefaces()[0]
}

// Faces lists both faces of the document's font.
var Faces = [2]Face{Regular, Bold}

// TTF is the file of a face. It is shared: whoever changes it, changes a clone.
func TTF(f Face) []byte {
	if f == Bold {
		return dejavusanscondensedbold.TTF
	}
	return dejavusanscondensed.TTF
}

// glyph looks a rune up; has is false where the face lacks it, or where no text may hold it.
func (t *typeface) glyph(r rune) (g glyph, has bool) {
	if r < 0 || r >= tableEnd {
		return glyph{}, false
	}
	b := &t.blocks[r>>8]
	b.read.Do(func() {
		var room sfnt.Buffer
		for i := range b.glyphs {
			if r := r&^0xFF + rune(i); file.Printable(r) {
				b.glyphs[i] = t.read(&room, r)
			}
		}
	})
	g = b.glyphs[r&0xFF]
	return g, g.width > 0
}

// read measures a glyph; one that is missing or cannot be read has no width.
func (t *typeface) read(room *sfnt.Buffer, r rune) glyph {
	index, err := t.outlines.GlyphIndex(room, r)
	if err != nil || index == 0 { // 0 is the sign for a glyph that is missing
		return glyph{}
	}
	box, advance, err := t.outlines.GlyphBounds(room, index, fixed.I(unitsPerEM), font.HintingNone)
	if err != nil {
		return glyph{}
	}
	return glyph{width: thousandths(advance), low: -thousandths(box.Max.Y), top: -thousandths(box.Min.Y)}
}

// thousandths turns a length on the font's grid into 1/1000 of the type size.
func thousandths(v fixed.Int26_6) int {
	return int(math.Round(float64(v) / 64 * 1000 / unitsPerEM))
}
