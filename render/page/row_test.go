package page_test

import (
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
)

// TestRow: a text takes the largest size at which it fits, the next text comes before a cut, a cut falls between
// words, and nothing sticks out of a row that is lower than a line.
func TestRow(t *testing.T) {
	sizes := []float64{26, 18, 14}
	st := page.Style{Font: canvas.Font{Face: canvas.Bold}}
	for _, c := range []struct {
		w, h  float64
		texts []string
		text  string
		pt    float64
	}{
		{60, 11, []string{"white"}, "white", 26},
		{21, 11, []string{"white"}, "white", 18},
		{20, 11, []string{"lantern amber", "amber"}, "amber", 14},
		{40, 11, []string{"rope grain, navy over the wall"}, "rope grain…", 14},
		{10, 11, []string{"WWWWWW"}, "W…", 14},
		{60, 9.6, []string{"70/90/70"}, "70/90/70", 26},
		{60, 8, []string{"15"}, "15", 26},
		{60, 8, []string{""}, "", 0},
	} {
		got := page.Row("x", page.Rect{W: c.w, H: c.h}, st, sizes, c.texts...)
		if c.text == "" {
			if got != nil {
				t.Errorf("%v: %v", c.texts, got)
			}
			continue
		}
		if b := got[0]; b.Text != c.text || b.Font.SizePT != c.pt {
			t.Errorf("%v in %g mm: %q at %g pt; %q at %g is wanted", c.texts, c.w, b.Text, b.Font.SizePT, c.text, c.pt)
		}
		f := page.Face{Name: "f", W: 200, H: 200, Safe: page.Rect{W: 200, H: 200}, Boxes: got}
		for _, err := range pagecheck.Check(f, 14) {
			t.Error(err)
		}
	}
}
