package handout

import (
	"math"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// bar is a block h high with one box.
func bar(name string, h float64) block {
	return block{boxes: []page.Box{page.Rule(name, marginMM, 0, 10, h, canvas.Pen{})}, h: h, after: paraMM}
}

// TestPagesFill: what the next block left free on a page goes to drawings, above headings and between blocks, down to
// the foot; a caption keeps to its drawing, and the end of a part stays as it is.
func TestPagesFill(t *testing.T) {
	for _, ends := range []bool{false, true} {
		f := &flow{paper: page.A4}
		caption := bar("caption", 5)
		caption.keep = true
		drawing := bar("drawing", 100)
		drawing.more = 40
		drawing.grown = func(mm float64) block { return bar("drawing", 100+mm) }
		head := bar("head", 8)
		head.lead = 6
		f.add(bar("first", 105), caption, drawing, head)
		if ends {
			f.end()
		}
		f.add(bar("next", 100))
		if len(f.pages) != 2 {
			t.Fatalf("%d pages", len(f.pages))
		}
		at := map[string]page.Box{}
		for _, b := range f.place(0) {
			at[b.Name] = b
		}
		gap := at["drawing"].Y - at["caption"].Bottom()
		if math.Abs(gap-paraMM) > 1e-9 {
			t.Errorf("%g mm under a caption; %g are wanted", gap, paraMM)
		}
		switch left := f.bottom() - at["head"].Bottom(); {
		case ends && (at["drawing"].H != 100 || left < 30):
			t.Errorf("the end of a part: a drawing of %g mm, %g mm left", at["drawing"].H, left)
		case !ends && (math.Abs(left) > 1e-6 || at["drawing"].H <= 120 || at["drawing"].H > 140):
			t.Errorf("a drawing of %g mm, %g mm left", at["drawing"].H, left)
		}
		if next := f.place(1); next[0].Y != f.topOf(1) {
			t.Errorf("the next page begins at %g", next[0].Y)
		}
	}
}
