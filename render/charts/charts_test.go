package charts_test

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/canvas/svg"
	"bladecard/render/charts"
	"bladecard/render/figure"
	"bladecard/render/internal/plantest"
)

// A line is drawn where the setup prints well, and ends in the mark of what fails beyond, on either side.
func TestLineStopsWhereItFails(t *testing.T) {
	l := charts.Line(plan.Curve{Name: "70", Chosen: true, Points: []plan.Point{
		{X: 0, UM: 30, Fails: "ink"}, {X: 2, UM: 31}, {X: 5, UM: 32}, {X: 7, UM: 33}, {X: 10, UM: 34, Fails: "detail"}, {X: 12, UM: 35, Fails: "ink"}}}, "70", 3)
	for i, want := range []bool{false, true, true, true, false, false} {
		if got := !math.IsNaN(l.Points[i].Y); got != want {
			t.Errorf("point %d is drawn: %v", i, got)
		}
	}
	if want := []figure.End{{At: figure.XY{X: 2, Y: 31}, Why: figure.Ink}, {At: figure.XY{X: 7, Y: 33}, Why: figure.Detail}}; len(l.Ends) != 2 || l.Ends[0] != want[0] || l.Ends[1] != want[1] {
		t.Errorf("ends %+v; %+v are wanted", l.Ends, want)
	}
	if !l.Strong || l.Style != 3 {
		t.Errorf("%+v", l)
	}
}

// The files of a job say what they belong to; a blade has one style on all of them; what is drawn is what the plan says.
func TestFiles(t *testing.T) {
	data, err := os.ReadFile("../../samples/jobs/lantern-scene.toml")
	if err != nil {
		t.Fatal(err)
	}
	p, v := plantest.Text(t, "../../samples/jobs", string(data))
	styles := map[string]int{}
	screens := 0
	for _, l := range p.Locations {
		for _, s := range l.Screens {
			screens++
			for _, line := range charts.Angle(v, s, 9).Lines {
				if style, has := styles[line.Label]; has && style != line.Style {
					t.Errorf("screen %d: %s has the style %d, elsewhere %d", s.Number, line.Label, line.Style, style)
				}
				styles[line.Label] = line.Style
			}
			ch := charts.Hardness(v, s, 9)
			if ch.Mark.X != s.Blade.EdgeHardness || ch.Mark.Y != s.CuredUM.Value || ch.Band.Low != s.TargetUM.Low || math.Abs(ch.Known.High*ch.Mark.Y-s.CuredUM.High) > 1e-9 {
				t.Errorf("screen %d: %+v", s.Number, ch)
			}
		}
	}
	files := charts.Files(p, v)
	if len(styles) < 5 || len(files) != 2*screens {
		t.Errorf("%d blades, %d files of %d screens", len(styles), len(files), screens)
	}
	for _, f := range files[:2] {
		var b bytes.Buffer
		if err := svg.Write(&b, 140, 90, func(c canvas.Canvas) error { return f.Draw(c, 140, 90) }); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{p.Job, "screen 1", p.Locations[0].Screens[0].Mesh.Name, "target ", "expected ", "detail lost"} {
			if !strings.Contains(b.String(), want) {
				t.Errorf("%s does not say %q", f.Name, want)
			}
		}
	}
}

// A chart of a job without a number is named by the title of the job.
func TestTitleOfAJobWithoutANumber(t *testing.T) {
	p, v := plantest.Text(t, "../../samples/jobs", "title = \"Tote bags\"\n[[location]]\n[[location.screen]]\n")
	if got := charts.Title(v, p, p.Locations[0], p.Locations[0].Screens[0]); !strings.HasPrefix(got, "Tote bags · ") {
		t.Errorf("%q", got)
	}
}
