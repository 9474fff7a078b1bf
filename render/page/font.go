package page

import (
	"sync"

	"bladecard/calc/file"
	"bladecard/render/canvas"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
)

// fontSet is the pair of faces.
type fontSet struct {
	table [2][tableEnd]glyph // by rune; a width of 0: no glyph
	ttf   [2][]byte
	err   error
}

// tableEnd is past the last rune that may be printed.
const tableEnd = 0x2800

// glyph is what the face knows of a rune; has is false where that is nothing.
func (s *fontSet) glyph(f canvas.Face, r rune) (g glyph, has bool) {
	if r < 0 || r >= tableEnd {
		return glyph{}, false
	}
	g = s.table[faceIndex(f)][r]
	return g, g.width > 0
}

// fonts reads the faces once per run. The result is read only.
var fonts = sync.OnceValue(func() *fontSet {
	set := &fontSet{ttf: [2][]byte{dejavusanscondensed.TTF, dejavusanscondensedbold.TTF}}
	for i, ttf := range set.ttf {
		var m metrics
		if m, set.err = readMetrics(ttf, file.Printable); set.err != nil {
			return set
		}
		for r, g := range m {
			set.table[i][r] = g
		}
	}
	return set
})

func faceIndex(f canvas.Face) int {
	if f == canvas.Bold {
		return 1
	}
	return 0
}
