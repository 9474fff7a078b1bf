package figure

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/svg"
)

var update = flag.Bool("update", false, "write testdata/drawings.svg anew")

// TestDrawings: every drawing has all of its pieces in their places. To look at them, open testdata/drawings.svg.
func TestDrawings(t *testing.T) {
	degrees := func(deg float64) string { return fmt.Sprint(deg, "°") }
	red := canvas.Color{R: 200}
	one := fifteen()
	one.LowDeg, one.HighDeg, one.Scale = 15, 15, degrees
	chest := Garment{Outline: "hood", Left: true, WidthMM: 90, HeightMM: 70, DownMM: 80, AcrossMM: 100, DownLabel: "80 mm", AcrossLabel: "100 mm"}
	sleeve := Garment{Sleeve: true, WidthMM: 80, HeightMM: 50, DownMM: 25, DownLabel: "25 mm"}
	ruler := rulerOf(80, 20)
	ruler.TargetLabel = "target"
	ruler.Rows = append(ruler.Rows, RulerRow{Label: "any blade", Tag: "38-40", Span: &Interval{38, 40}, NoHelp: true})
	type drawing struct {
		name string
		w, h float64
		draw func(canvas.Canvas, Rect) error
	}
	drawings := []drawing{
		{"dial", 60, 40, fifteen().Draw},
		{"dial of one angle", 60, 40, one.Draw},
		{"bent blade", 60, 50, Bends{{SetDeg: 15, EdgeDeg: 35, Share: 0.5, SetLabel: "set 15°", EdgeLabel: "edge 35°", Label: "70"}}.Draw},
		{"print on the chest", 60, 60, chest.Draw},
		{"print on a sleeve", 60, 60, sleeve.Draw},
		{"ruler", 120, 40, ruler.Draw},
		{"bars", 60, 8, Bars{PitchMM: 4, Rows: []Bar{{"a", "45", 1}, {"long name", "15", 1.0 / 3}}}.Draw},
		{"bar of a film", 27, 6, FilmBar{Target: Interval{33, 58}, Band: Interval{24, 48}, Set: 34, Top: 60, Ends: [2]string{"33", "58"}}.Draw},
		{"map of lean", 150, 40, leanMap().Draw},
		{"chart", 80, 50, full().Draw},
		{"swatch", 20, 8, Swatch{Color: &red}.Draw},
		{"stripes", 20, 8, Stripes},
	}
	for _, f := range Faults() {
		drawings = append(drawings, drawing{string(f), 30, 20, f.Draw})
	}
	const wide, pitch = 160.0, 66.0
	var b bytes.Buffer
	err := svg.Write(&b, wide, pitch*float64(len(drawings)), func(c canvas.Canvas) error {
		for i, d := range drawings {
			y := pitch * float64(i)
			c.Text(1, y+4, d.name, canvas.Font{Face: canvas.Bold, SizePT: SmallestPT}, canvas.Black, 0)
			if err := d.draw(c, Rect{X: 1, Y: y + 5, W: d.w, H: d.h}); err != nil {
				return fmt.Errorf("%s: %w", d.name, err)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	const golden = "testdata/drawings.svg"
	if *update {
		if err := os.WriteFile(golden, b.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(want), "\n")
	for i, have := range strings.Split(b.String(), "\n") {
		if i >= len(lines) || have != lines[i] {
			t.Fatalf("line %d of %s is now\n%s", i+1, golden, have)
		}
	}
	if b.Len() < len(want) {
		t.Errorf("%s has more", golden)
	}
}
