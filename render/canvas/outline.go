package canvas

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Outline is the shape of a line of text as a path, its baseline's left end at 0, 0: for a
// canvas that has no fonts of its own. Advances are those of Width.
func Outline(s string, f Font) (Path, error) {
	var out Path
	s, err := Clean(s)
	if err != nil {
		return out, err
	}
	face := typefaceOf(f.Face).outlines
	var buf sfnt.Buffer
	scale := f.SizePT * MMPerPT / unitsPerEM
	x := 0.0
	for _, r := range s {
		g, err := face.GlyphIndex(&buf, r)
		if err != nil {
			return out, err
		}
		segments, err := face.LoadGlyph(&buf, g, fixed.I(unitsPerEM), nil)
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
