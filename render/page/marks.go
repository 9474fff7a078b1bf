package page

import (
	"fmt"
	"strings"

	"bladecard/render/canvas"
)

const (
	markGapMM   = 0.7  // between trim and mark
	markLeastMM = 1.5  // a shorter mark is no help to the cutter
	markLongMM  = 5.0  // longest
	markPenMM   = 0.15 // line width
)

// notesPT are the sizes of the words on the margin; the first that fits is taken.
var notesPT = []float64{9, 7.5, 6}

// marks are the crop marks around a block of cards that lie side by side: at the end of every
// line of cut, outside the trim and inside the printable edge. Where a shifted back leaves too
// little room there is none.
func marks(block Rect, g grid) []Mark {
	var out []Mark
	printable := Rect{0, 0, g.w, g.h}.Inset(EdgeMM)
	inside := func(v, lo, hi float64) bool { return v >= lo-0.001 && v <= hi+0.001 }
	add := func(along, far float64, put func(a, b float64) Mark, sign float64) {
		from := along + sign*markGapMM
		to := along + sign*(markGapMM+markLongMM)
		if (to-far)*sign > 0 {
			to = far
		}
		if (to-from)*sign >= markLeastMM-0.001 {
			out = append(out, put(from, to))
		}
	}
	for c := range g.size.Cols + 1 {
		x := block.X + float64(c)*g.size.W
		if !inside(x, printable.X, printable.Right()) {
			continue
		}
		up := func(a, b float64) Mark { return Mark{x, a, x, b} }
		add(block.Y, printable.Y, up, -1)
		add(block.Bottom(), printable.Bottom(), up, 1)
	}
	for r := range g.size.Rows + 1 {
		y := block.Y + float64(r)*g.size.H
		if !inside(y, printable.Y, printable.Bottom()) {
			continue
		}
		level := func(a, b float64) Mark { return Mark{a, y, b, y} }
		add(block.X, printable.X, level, -1)
		add(block.Right(), printable.Right(), level, 1)
	}
	return out
}

// notes are the words on the sheet's margin: in the head the title, in the foot the sheet's
// number, how it is turned over, and the shop. They stand between trim and printable edge, clear of the
// marks; a note for which a shifted back leaves no room is left out there.
func (g grid) notes(block Rect, o Options, back bool, n, of int) []Box {
	side := o.FrontNote
	if back {
		side = o.BackNote
	}
	foot := joinNonEmpty(" · ", side, fmt.Sprintf("%d/%d", n, of), o.FlipNote, o.ShopNote)
	x := max(block.X+2, EdgeMM)
	w := min(block.X+g.size.W-2, g.w-EdgeMM) - x
	var out []Box
	add := func(name, text string, from, to float64) {
		var f canvas.Font
		h := 0.0
		for _, f.SizePT = range notesPT {
			if h = canvas.LineHeight(f); h <= to-from && canvas.Width(text, f) <= w {
				break
			}
		}
		if text == "" || to-from < h {
			return
		}
		text, _ = canvas.Cut(text, f, w)
		out = append(out, Text(name, x, (from+to-h)/2, w, h, text, f, canvas.Gray(90), Left))
	}
	add("head note", o.Title, EdgeMM, block.Y-markGapMM)
	add("foot note", foot, block.Bottom()+markGapMM, g.h-EdgeMM)
	return out
}

func joinNonEmpty(sep string, parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, sep)
}
