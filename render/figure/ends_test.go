package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"bladecard/render/canvas"
)

// stopped is a chart of three blades that cross between the mark and the end of their lines.
func stopped() Chart {
	ch := Chart{X: Axis{Title: "angle", High: 45}, Y: Axis{Title: "film", Apart: 2}, Mark: &XY{15, 40}, Ends: [2]string{"detail lost", "ink left"}}
	for i, l := range []struct{ at0, at30 float64 }{{41, 37}, {40, 40}, {39, 43}} {
		ch.Lines = append(ch.Lines, Line{Label: fmt.Sprint("blade ", i), Strong: i == 1, Style: i,
			Points: []XY{{0, l.at0 + 0.1*float64(2-i)}, {30, l.at30}}, Ends: []End{{At: XY{30, l.at30}, Why: EndMark(i % 2)}}})
	}
	return ch
}

func TestLabelsStandInTheOrderAtTheMark(t *testing.T) {
	ch := stopped()
	for x, want := range map[float64]string{0: "012", 5: "012", 15: "210", 29: "210"} {
		ch.Mark.X = x
		rec, _, in := drawn(t, ch, Rect{0, 0, 120, 70})
		rec.clean(t, Rect{0, 0, 120, 70}, SmallestPT)
		var ys []written
		for _, w := range rec.texts {
			if strings.HasPrefix(w.s, "blade ") {
				if w.x < in.Right() {
					t.Errorf("%q stands in the plot", w.s)
				}
				ys = append(ys, w)
			}
		}
		slices.SortFunc(ys, func(a, b written) int { return int(1000 * (a.y - b.y)) })
		got := ""
		for _, w := range ys {
			got += strings.TrimPrefix(w.s, "blade ")
		}
		if got != want {
			t.Errorf("at %v the labels are %s from above; %s is the order of the lines", x, got, want)
		}
	}
}

// Lines that stand on one another as good as exactly have their labels in their order too, however high the plot.
func TestLabelsOfLinesOnOneAnother(t *testing.T) {
	ch := Chart{X: Axis{High: 45}, Y: Axis{Apart: 2}, Mark: &XY{15, 40}}
	for i, y := range []float64{40, 40.001, 40.002, 44} {
		ch.Lines = append(ch.Lines, Line{Label: fmt.Sprint("blade ", i), Points: []XY{{0, y}, {30, y}}})
	}
	for h := 50.0; h < 60; h++ {
		rec, _, _ := drawn(t, ch, Rect{0, 0, 120, h})
		for i := range 3 {
			if below, above := rec.find(t, fmt.Sprint("blade ", i)).y, rec.find(t, fmt.Sprint("blade ", i+1)).y; below <= above {
				t.Errorf("%v mm: blade %d stands at %.1f, blade %d, whose line is higher, at %.1f", h, i, below, i+1, above)
			}
		}
	}
}

// No sign of a line lies half under the chosen point, and none is lost for it.
func TestSignsKeepOffTheChosenPoint(t *testing.T) {
	for x := 5.0; x <= 40; x += 0.5 {
		ch := full()
		ch.Mark = &XY{x, ch.Lines[1].at(x)}
		rec, p, in := drawn(t, ch, Rect{0, 0, 100, 70})
		mark, signs := p.at(in, *ch.Mark), 0
		for _, s := range rec.paths {
			b := s.box()
			if s.fill == nil || *s.fill != canvas.White || !near(s.pen.WidthMM, 0.2) || b.X > in.Right() {
				continue
			}
			signs++
			if away := math.Hypot(b.X+b.W/2-mark.X, b.Y+b.H/2-mark.Y); away < markMM+haloMM+b.W/2-0.3 {
				t.Errorf("%v°: a sign is %.2f mm from the chosen point", x, away)
			}
		}
		if signs < len(ch.Lines) {
			t.Errorf("%v°: %d signs on %d lines", x, signs, len(ch.Lines))
		}
	}
}

// Each line ends in the mark of what stops it, and the marks that occur are explained once.
func TestEndsAreMarkedAndExplained(t *testing.T) {
	ch := stopped()
	marks := func(ch Chart) (crosses, bars int, words string) {
		rec, p, in := drawn(t, ch, Rect{0, 0, 120, 70})
		end := p.at(in, XY{30, 40}).X
		for _, s := range rec.paths {
			switch b := s.box(); {
			case s.fill != nil || b.X > end+0.1 || b.Right() < end-0.1 || b.W > 3.5 || b.H > 3.5:
			case near(s.pen.WidthMM, 0.35):
				crosses++
			case near(s.pen.WidthMM, 0.7):
				bars++
			}
		}
		return crosses, bars, strings.Join(rec.words(), "|")
	}
	if x, b, words := marks(ch); x != 4 || b != 1 || strings.Count(words, "detail lost") != 1 || strings.Count(words, "ink left") != 1 {
		t.Errorf("%d strokes of crosses, %d bars in %s; 4, 1 and each text once are wanted", x, b, words)
	}
	ch.Lines[1].Ends = nil
	if _, b, words := marks(ch); b != 0 || strings.Contains(words, "ink left") {
		t.Errorf("%d bars in %s; no line leaves ink", b, words)
	}
}

// Two values that are Apart stand as far apart as promised, and bands whose edges have no room are told in words;
// without Apart the bands decide.
func TestLinesKeepApart(t *testing.T) {
	ch := stopped()
	ch.Band = &Band{Interval: Interval{1, 200}, Label: "target", Inside: "all inside target"}
	ch.Known = &Band{Interval: Interval{0.05, 4}, Label: "expected", Inside: "all inside expected"}
	apart := func(words ...string) float64 {
		rec, p, in := drawn(t, ch, Rect{0, 0, 120, 70})
		rec.clean(t, Rect{0, 0, 120, 70}, SmallestPT)
		for _, w := range words {
			rec.find(t, w)
		}
		for _, s := range rec.paths {
			if tinted := s.fill != nil && (*s.fill == bandGray || *s.fill == knownGray); tinted && words[0] != "target" {
				t.Errorf("%v: a tint over all of the plot", words)
			}
		}
		for _, l := range ch.Lines {
			for _, v := range l.Points {
				if q := p.at(in, v); q.Y < in.Y || q.Y > in.Bottom() {
					t.Errorf("%v stands outside the plot", v)
				}
			}
		}
		return p.at(in, XY{0, 40}).Y - p.at(in, XY{0, 42}).Y
	}
	if got := apart("all inside target", "all inside expected"); got < 0.95*leastApartMM || got > 1.05*mostApartMM {
		t.Errorf("2 um are %.2f mm; %.2f to %.2f are wanted", got, leastApartMM, mostApartMM)
	}
	wide := simple() // lines that need more room than Apart gives, with no band
	wide.Y.Apart = 0.01
	drawn(t, wide, Rect{0, 0, 120, 70})
	ch.Y.Apart = 0
	if got := apart("target", "expected"); got > 1 {
		t.Errorf("2 um are %.2f mm on an axis over all of the bands", got)
	}
}

// The axis reaches the edges of bands that are near, the nearest first, but no edge of the target beyond all that is
// to be expected; a band that lies elsewhere is told in words.
func TestAxisReachesTheNearEdges(t *testing.T) {
	for _, tt := range []struct {
		low, high float64 // of the target
		words     string
		tints     []canvas.Color
	}{
		{36, 70, "target|expected", []canvas.Color{knownGray, bandGray}},
		{20, 70, "all inside target|expected", []canvas.Color{knownGray}},
		{20, 41, "target|expected", []canvas.Color{knownGray, bandGray}},
		{48, 90, "target|expected", []canvas.Color{knownGray, bandGray}},
		{80, 90, "target is higher|expected", []canvas.Color{knownGray}},
		{5, 9, "target is lower|expected", []canvas.Color{knownGray}},
	} {
		ch := stopped()
		ch.Band = &Band{Interval{tt.low, tt.high}, "target", "all inside target", "target is higher", "target is lower"}
		ch.Known = &Band{Interval: Interval{0.85, 1.15}, Label: "expected", Inside: "all inside expected"}
		rec, _, in := drawn(t, ch, Rect{0, 0, 120, 70})
		var tints []canvas.Color
		for _, s := range rec.paths {
			if s.fill != nil && (*s.fill == bandGray || *s.fill == knownGray) && s.box().X < in.Right() {
				tints = append(tints, *s.fill)
			}
		}
		words := "|" + strings.Join(rec.words(), "|") + "|"
		if !slices.Equal(tints, tt.tints) || !strings.Contains(words, "|"+strings.Split(tt.words, "|")[0]+"|") || !strings.Contains(words, "|expected|") {
			t.Errorf("target %v–%v: tints %v, %s; %v and %s are wanted", tt.low, tt.high, tints, words, tt.tints, tt.words)
		}
	}
}

// The labels of the bands and marks stand under those of all lines, however high the band lies, and what has no room is counted.
func TestFixedLabelsStandBelow(t *testing.T) {
	for h, lines := range map[float64]int{90: 15, 45: 0} {
		ch := many(15, 5)
		ch.Band = &Band{Interval: Interval{70, 90}, Label: "target"}
		ch.Mark, ch.Set = &XY{2, 57}, "set"
		ch.More = func(n int) string {
			if n == 0 {
				return ""
			}
			return fmt.Sprintf("and %d more", n)
		}
		rec, _, _ := drawn(t, ch, Rect{0, 0, 120, h})
		rec.clean(t, Rect{0, 0, 120, h}, SmallestPT)
		kept, lowest := 0, 0.0
		for _, w := range rec.texts {
			if strings.HasPrefix(w.s, "blade") {
				kept, lowest = kept+1, max(lowest, w.y)
			}
		}
		if rec.find(t, "target").y <= lowest {
			t.Errorf("%v mm: target stands among the lines", h)
		}
		if more := strings.Contains(strings.Join(rec.words(), "|"), fmt.Sprintf("and %d more", 15-kept)); more == (lines == 15) || lines > 0 && kept != lines {
			t.Errorf("%v mm: %d lines of 15, the others told: %v", h, kept, more)
		}
	}
}

// An axis that does not begin at zero is broken, and one that does is whole.
func TestBrokenAxes(t *testing.T) {
	for _, tt := range []struct {
		x, y   float64 // where the axes begin
		breaks int
	}{{0, 0, 0}, {5, 0, 1}, {0, 30, 1}, {5, 30, 2}} {
		ch := simple()
		ch.Lines[0].Points = []XY{{tt.x, 35}, {10, 40}}
		ch.X.Low, ch.X.High, ch.Y.Low, ch.Y.High = tt.x, 10, tt.y, 45
		rec, _, in := drawn(t, ch, Rect{0, 0, 80, 50})
		strokes := 0
		for _, s := range rec.paths {
			if b := s.box(); near(s.pen.WidthMM, axisMM) && len(s.path.Pieces) == 2 && b.W > 0.3 && b.H > 0.3 && b.W < 3 && b.H < 3 && b.X < in.X+4 && b.Bottom() > in.Bottom()-4 {
				strokes++
			}
		}
		if strokes != 2*tt.breaks {
			t.Errorf("axes from %v and %v: %d strokes of breaks; %d are wanted", tt.x, tt.y, strokes, 2*tt.breaks)
		}
	}
}

// The band of what is known follows the chosen line and is drawn before the target.
func TestKnownBandLiesBehind(t *testing.T) {
	ch := stopped()
	ch.Y.Apart, ch.Title = 0, "L-031 screen 1"
	ch.Band, ch.Known = &Band{Interval: Interval{35, 55}, Label: "target"}, &Band{Interval: Interval{0.8, 1.5}, Label: "expected"}
	rec, p, in := drawn(t, ch, Rect{0, 0, 120, 70})
	known, band := -1, -1
	for i, s := range rec.paths {
		if s.fill == nil || s.box().X > in.Right() {
			continue
		}
		switch b := s.box(); *s.fill {
		case knownGray:
			known = i
			if top, low := p.at(in, XY{0, 60.15}).Y, p.at(in, XY{0, 32}).Y; b.Y > top+2*unit || b.Y < top-2*unit || b.Bottom() < low-2*unit || b.Bottom() > low+2*unit {
				t.Errorf("from %v to %v; %v to %v is the band", b.Y, b.Bottom(), top, low)
			}
		case bandGray:
			band = i
		}
	}
	if known < 0 || band < known {
		t.Errorf("the band of what is known is drawn as the %d, the target as the %d", known, band)
	}
	if w := rec.find(t, "L-031 screen 1"); w.y > rec.find(t, "film").y || !bool(w.font.Face) {
		t.Error("the title does not stand over all else in bold")
	}
}

// TestMarksOfDrawnLinesOnly: a mark of lines that have no room is not explained.
func TestMarksOfDrawnLinesOnly(t *testing.T) {
	ch := stopped()
	for i := range ch.Lines {
		if ch.Lines[i].Ends[0].Why = Ink; !ch.Lines[i].Strong {
			ch.Lines[i].Ends[0].Why = Detail
		}
	}
	fewest := len(ch.Lines)
	for h := 70.0; h >= 14; h-- {
		rec := &recorder{}
		p, err := ch.measure(rec, Rect{0, 0, 120, h})
		if err != nil {
			break
		}
		if err := p.render(); err != nil {
			t.Fatal(err)
		}
		if fewest = len(p.ch.Lines); fewest == 1 && slices.Contains(rec.words(), "detail lost") {
			t.Errorf("%v mm high, the blade that is drawn loses no detail: %q", h, rec.words())
		}
	}
	if fewest > 1 {
		t.Fatalf("%d lines are drawn on the lowest chart", fewest)
	}
}

// The samples beside the labels show whole periods of the dashes, so that no two patterns look alike.
func TestSamplesShowWholePeriods(t *testing.T) {
	ch := many(len(dashes), 5)
	for i := range ch.Lines {
		ch.Lines[i].Style = i
	}
	rec, _, in := drawn(t, ch, Rect{0, 0, 120, 90})
	seen := 0
	for _, s := range rec.paths {
		if s.fill != nil || len(s.pen.DashMM) < 2 || s.box().X < in.Right() {
			continue
		}
		period, gap := 0.0, s.pen.DashMM[len(s.pen.DashMM)-1]
		for _, mm := range s.pen.DashMM {
			period += mm
		}
		long := s.path.Pieces[len(s.path.Pieces)-1].P.X - s.path.Pieces[0].P.X
		if n := (long + gap) / period; n < 1-1e-9 || math.Abs(n-math.Round(n)) > 1e-9 || long > stubMM {
			t.Errorf("%v: %.2f mm are %.2f periods", s.pen.DashMM, long, n)
		}
		seen++
	}
	if seen != len(dashes)-1 {
		t.Errorf("%d dashed samples of %d", seen, len(dashes)-1)
	}
}

// Each line has a sign, also on the small chart of a card, where lines end before their places.
func TestEveryLineHasASign(t *testing.T) {
	for _, w := range []float64{70, 80, 90, 120} {
		ch := full()
		for i := range ch.Lines {
			ch.Lines[i].Points = ch.Lines[i].Points[:14-2*i]
		}
		rec, _, in := drawn(t, ch, Rect{0, 0, w, 50})
		signs := map[string]bool{}
		for _, s := range rec.paths {
			if b := s.box(); s.fill != nil && *s.fill == canvas.White && near(s.pen.WidthMM, 0.2) && b.X < in.Right() {
				signs[fmt.Sprintf("%.2f %.2f %.2f", b.W, b.H, s.path.Pieces[0].P.Y-b.Y)] = true
			}
		}
		if len(signs) != len(ch.Lines) {
			t.Errorf("%v mm: signs %v on %d lines", w, signs, len(ch.Lines))
		}
	}
}
