package figure

import (
	"errors"
	"math"
	"testing"

	"bladecard/render/canvas"
)

// TestFilmBar: target, band and set point stand on the common scale, and both ends of the target are named below it,
// beside one another even where they are near.
func TestFilmBar(t *testing.T) {
	for _, s := range []FilmBar{
		{Target: Interval{33, 58}, Band: Interval{24, 48}, Set: 34, Top: 60, Ends: [2]string{"33", "58"}},
		{Target: Interval{51, 52}, Band: Interval{5, 300}, Set: 300, Top: 60, Ends: [2]string{"51", "52"}},
	} {
		const w, h, inset = 27.0, 6.2, 1.0
		at := func(um float64) float64 { return inset + (w-2*inset)*math.Min(um/s.Top, 1) }
		art := canvas.Record(func(c canvas.Canvas) {
			if err := s.Draw(c, Rect{W: w, H: h}); err != nil {
				t.Fatal(err)
			}
		})
		for i, x := range []float64{at(s.Target.Low), at(s.Band.Low)} { // the ground, the line of the band
			if got := art[i].Path.Pieces[0].P.X; math.Abs(got-x) > 0.01 {
				t.Errorf("%+v: part %d begins at %.2f mm; %.2f is wanted", s, i, got, x)
			}
		}
		if end, x := art[1].Path.Pieces[1].P.X, at(s.Band.High); math.Abs(end-x) > 0.01 {
			t.Errorf("%+v: the band ends at %.2f mm; %.2f is wanted", s, end, x)
		}
		texts := art.Texts()
		if len(texts) != 2 || texts[0].Text != s.Ends[0] || texts[1].Text != s.Ends[1] || texts[0].At.X+canvas.Width(texts[0].Text, texts[0].Font) > texts[1].At.X {
			t.Errorf("%+v: %+v", s, texts)
		}
	}
	if err := (FilmBar{Top: 60}).Draw(&recorder{}, Rect{W: 27, H: 3}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("3 mm: %v", err)
	}
}
