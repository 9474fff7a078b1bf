package page

import (
	"sync"

	"bladecard/render/canvas"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// outlines are the two faces with their glyphs' shapes, parsed once a run.
var outlines = sync.OnceValues(func() (faces [2]*sfnt.Font, err error) {
	for i, ttf := range [2][]byte{dejavusanscondensed.TTF, dejavusanscondensedbold.TTF} {
		if faces[i], err = sfnt.Parse(ttf); err != nil {
			return faces, err
		}
	}
	return faces, nil
})

// Outline is the shape of a line of text as a path, its baseline's left end at 0, 0: for a
// canvas that has no fonts of its own. Advances are those of Width.
func Outline(s string, f canvas.Font) (canvas.Path, error) {
	var out canvas.Path
	s, err := Clean(s)
	if err != nil {
		return out, err
	}
	faces, err := outlines()
	if err != nil {
		return out, err
	}
	face := faces[faceIndex(f.Face)]
	var buf sfnt.Buffer
	const ppem = 2048 // the font's own grid: nothing is rounded
	scale := f.SizePT * canvas.MMPerPT / ppem
	x := 0.0
	for _, r := range s {
		g, err := face.GlyphIndex(&buf, r)
		if err != nil {
			return out, err
		}
		segments, err := face.LoadGlyph(&buf, g, fixed.I(ppem), nil)
		if err != nil {
			return out, err
		}
		at := func(p fixed.Point26_6) (float64, float64) {
			return x + float64(p.X)/64*scale, float64(p.Y) / 64 * scale
		}
		var px, py float64
		open := false
		for _, q := range segments {
			x0, y0 := at(q.Args[0])
			switch q.Op {
			case sfnt.SegmentOpMoveTo:
				if open {
					out.Close()
				}
				open = true
				out.Move(x0, y0)
				px, py = x0, y0
			case sfnt.SegmentOpLineTo:
				out.Line(x0, y0)
				px, py = x0, y0
			case sfnt.SegmentOpQuadTo:
				x1, y1 := at(q.Args[1])
				out.Curve(px+2*(x0-px)/3, py+2*(y0-py)/3, x1+2*(x0-x1)/3, y1+2*(y0-y1)/3, x1, y1)
				px, py = x1, y1
			case sfnt.SegmentOpCubeTo:
				x1, y1 := at(q.Args[1])
				x2, y2 := at(q.Args[2])
				out.Curve(x0, y0, x1, y1, x2, y2)
				px, py = x2, y2
			}
		}
		if open {
			out.Close()
		}
		x += Width(string(r), f)
	}
	return out, nil
}
