package figure

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"bladecard/render/canvas"
)

// rulerOf is a ruler with a row a film.
func rulerOf(films ...float64) Ruler {
	r := Ruler{Target: Interval{33, 58}, Band: Interval{27, 61}, Set: 40, SetLabel: "as set", Unit: "um", Format: func(x float64, _ int) string { return fmt.Sprint(x) }}
	for i, um := range films {
		r.Rows = append(r.Rows, RulerRow{Label: fmt.Sprint("change ", i), Effect: fmt.Sprint(um - 40), Tag: "new screen, longer flash", To: um})
	}
	return r
}

// TestRuler: arrows end in order of their films, on the side of the set point that they go to, and every tag stands
// inside the ruler, on no arrow of its row.
func TestRuler(t *testing.T) {
	for _, films := range [][]float64{{80, 60, 41, 39, 20}, {400, 1}, {40.5}, nil} {
		s := rulerOf(films...)
		s.Rows = append(s.Rows, RulerRow{Label: "any blade", Tag: "38-40: will not help", Span: &Interval{38, 40}})
		const w = 120.0
		art := canvas.Record(func(c canvas.Canvas) {
			if err := s.Draw(c, Rect{W: w, H: s.Height()}); err != nil {
				t.Fatal(films, err)
			}
		})
		var tips []float64 // heads are the closed three-cornered pieces
		for _, op := range art {
			if op.Text != nil {
				end := op.Text.At.X + canvas.Width(op.Text.Text, op.Text.Font)
				if op.Text.At.X < 0 || end > w+0.01 {
					t.Errorf("%v: %q stands from %.1f to %.1f of %.0f mm", films, op.Text.Text, op.Text.At.X, end, w)
				}
				continue
			}
			if len(op.Path.Pieces) == 4 && op.Fill != nil {
				tips = append(tips, op.Path.Pieces[0].P.X)
			}
		}
		if len(tips) != len(films) {
			t.Fatalf("%v: %d heads", films, len(tips))
		}
		for i := range films {
			for k := range films[:i] {
				if (films[i] < films[k]) != (tips[i] < tips[k]) {
					t.Errorf("films %v end at %v", films, tips)
				}
			}
		}
		texts := art.Texts()
		for i := range films {
			at := slices.IndexFunc(texts, func(x canvas.PlacedText) bool { return x.Text == s.Rows[i].Label })
			tag := texts[at+2]
			if start, end := tag.At.X, tag.At.X+canvas.Width(tag.Text, tag.Font); start < tips[i] && end > tips[i] {
				t.Errorf("%v: the tag from %.1f to %.1f mm lies on the head at %.1f", films, start, end, tips[i])
			}
		}
	}
	if err := rulerOf(50).Draw(&recorder{}, Rect{W: 30, H: 40}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("30 mm: %v", err)
	}
}

// TestRulerTells: the label of the target stands over its ground, wherever the ground lies, and a span that is no help
// is hollow with a cross behind it.
func TestRulerTells(t *testing.T) {
	for _, target := range []Interval{{33, 58}, {300, 320}, {1, 2}} {
		for _, noHelp := range []bool{false, true} {
			s := rulerOf(80, 20)
			s.Target, s.TargetLabel = target, "target, needed for opacity"
			s.Rows = append(s.Rows, RulerRow{Label: "any blade", Tag: "38-40", Span: &Interval{38, 40}, NoHelp: noHelp})
			const w = 120.0
			art := canvas.Record(func(c canvas.Canvas) {
				if err := s.Draw(c, Rect{W: w, H: s.Height()}); err != nil {
					t.Fatal(err)
				}
			})
			ground := art[0].Path.Pieces
			left, right := ground[0].P.X, ground[1].P.X
			texts := art.Texts()
			label := texts[slices.IndexFunc(texts, func(x canvas.PlacedText) bool { return x.Text == s.TargetLabel })]
			if end := label.At.X + canvas.Width(label.Text, label.Font); label.At.X > right || end < left || end > w+0.01 || label.At.Y > ground[0].P.Y {
				t.Errorf("%v: the label stands from %.1f to %.1f mm, the ground from %.1f to %.1f", target, label.At.X, end, left, right)
			}
			hollow, crosses := 0, 0
			for _, op := range art {
				switch {
				case op.Text != nil:
				case op.Fill != nil && *op.Fill == canvas.White:
					hollow++
				case op.Fill == nil && len(op.Path.Pieces) == 2 && op.Path.Pieces[0].P.X != op.Path.Pieces[1].P.X && op.Path.Pieces[0].P.Y != op.Path.Pieces[1].P.Y:
					crosses++
				}
			}
			if want := map[bool]int{true: 1}[noHelp]; hollow != want || crosses != 2*want {
				t.Errorf("no help is %v: %d hollow bars, %d strokes of a cross", noHelp, hollow, crosses)
			}
		}
	}
}

// TestBars: bars grow with their share, and a share of 0 has none.
func TestBars(t *testing.T) {
	s := Bars{PitchMM: 4, Rows: []Bar{{"a", "45", 1}, {"long name", "15", 1.0 / 3}, {"none", "does not fit", 0}}}
	var wide []float64
	for _, op := range canvas.Record(func(c canvas.Canvas) {
		if err := s.Draw(c, Rect{W: 60, H: 12}); err != nil {
			t.Fatal(err)
		}
	}) {
		if op.Text == nil {
			wide = append(wide, op.Path.Pieces[1].P.X-op.Path.Pieces[0].P.X)
		}
	}
	if len(wide) != 2 || !(wide[0] > 2.9*wide[1] && wide[0] < 3.1*wide[1]) {
		t.Errorf("bars of %v mm", wide)
	}
	for _, r := range []Rect{{W: 60, H: 11}, {W: 12, H: 12}} {
		if err := s.Draw(&recorder{}, r); !errors.Is(err, ErrNoRoom) {
			t.Errorf("%v: %v", r, err)
		}
	}
}

// TestRulerLabelsAlone: a label without an effect takes the effect's room, so that it costs no scale, and is not cut.
func TestRulerLabelsAlone(t *testing.T) {
	ground := func(s Ruler) Rect {
		rec := &recorder{}
		if err := s.Draw(rec, Rect{W: 100, H: s.Height()}); err != nil {
			t.Fatal(err)
		}
		if words := strings.Join(rec.words(), " "); strings.Contains(words, "…") {
			t.Errorf("a label is cut: %s", words)
		}
		return rec.paths[0].box()
	}
	s := rulerOf(80, 20)
	s.Rows[0].Label = "mesh 180-48 fine"
	short := ground(s)
	s.Rows = append(s.Rows, RulerRow{Label: "any blade, 10 to 20", Tag: "no", Span: &Interval{38, 40}})
	if long := ground(s); long.X != short.X || long.W != short.W {
		t.Errorf("with a longer label that stands alone the target lies at %v; without at %v", long, short)
	}
}

// TestRulerMakesRoomAtTheNearerEnd: where a long tag fits on neither side of its arrow, the scale is stretched at the
// end where that takes less of it, never below 0.
func TestRulerMakesRoomAtTheNearerEnd(t *testing.T) {
	tip := func(s Ruler) (x float64) {
		for _, op := range canvas.Record(func(c canvas.Canvas) {
			if err := s.Draw(c, Rect{W: 95, H: s.Height()}); err != nil {
				t.Fatal(err)
			}
		}) {
			if op.Text == nil && len(op.Path.Pieces) == 4 && op.Fill != nil {
				x = op.Path.Pieces[0].P.X // of the head, which alone has three corners
			}
		}
		return x
	}
	if x := tip(rulerOf(80)); x < 90 {
		t.Errorf("the arrow to 80 ends at %.1f of 95 mm: the scale goes on for the tag", x)
	}
	low := rulerOf(80)
	low.Set, low.Band, low.Target = 4, Interval{3, 5}, Interval{2, 6}
	if x := tip(low); x > 70 {
		t.Errorf("the arrow from 4 to 80 ends at %.1f of 95 mm: its tag would need films below 0", x)
	}
	low.Rows[0].Brief = "longer flash"
	if x := tip(low); x < 75 {
		t.Errorf("with a brief tag the arrow from 4 to 80 ends at %.1f of 95 mm", x)
	}
	rec := &recorder{}
	if err := low.Draw(rec, Rect{W: 95, H: low.Height()}); err != nil || !slices.Contains(rec.words(), "longer flash") {
		t.Errorf("the scale has room for the brief tag, and %q is written, %v", rec.words(), err)
	}
}

// TestLongNamesAndTags: a long name beside a long tag is drawn with the short form of the tag, and cut where that is
// not enough.
func TestLongNamesAndTags(t *testing.T) {
	for _, brief := range []string{"flash between", strings.Repeat("flash between, loses ", 3)} {
		r := rulerOf(80, 20)
		r.Rows[0].Label, r.Rows[0].Tag, r.Rows[0].Brief = strings.Repeat("W", 200), "press, flash between, loses fine detail, leaves ink in the screen", brief
		rec := &recorder{}
		if err := r.Draw(rec, Rect{W: 142.4, H: r.Height()}); err != nil || !slices.Contains(rec.words(), brief) {
			t.Errorf("%q: %v, %q", brief, err, rec.words())
		}
	}
}
