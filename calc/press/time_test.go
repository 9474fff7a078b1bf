package press

import (
	"fmt"
	"math"
	"testing"
)

// TestTimeOf holds times to sums made by hand. A stroke of 0.3 m/s over 350 mm and its overrun of 100 mm takes 2 x
// 0.45 / 0.3 = 3 s.
func TestTimeOf(t *testing.T) {
	pace := func(kind string, change func(*Pace)) Pace {
		p := Pace{Kind: kind, StrokeMPS: 0.3, IndexS: 2, LoadS: 6, CoolS: 4, SetupS: 300, ImageMM: 350,
			StrokesOf: []int{2, 1, 1}, FlashSOf: []float64{5, 0, 0}, Turns: 1, SetScreens: 3}
		if change != nil {
			change(&p)
		}
		return p
	}
	base := []Screen{{Use: "underbase"}, {Use: "solid"}, {Use: "solid"}}
	row := Stations(base) // print 6, flash 5, cool 4, print 3, print 3
	twice := []Screen{{Use: "solid", Hits: 2}}
	again, turns := OneTurn(twice)
	for name, c := range map[string]struct {
		stations []Station
		pace     Pace
		pieceS   float64
		slowest  string // "load", or the kind
	}{
		"automatic, two strokes as slow as loading": {row, pace("automatic", nil), 8, "load"},
		"automatic, three strokes":                  {row, pace("automatic", func(p *Pace) { p.StrokesOf[0] = 3 }), 11, Print},
		"automatic, slow flash":                     {row, pace("automatic", func(p *Pace) { p.FlashSOf[0] = 12 }), 14, Flash},
		"automatic, long cool-down":                 {row, pace("automatic", func(p *Pace) { p.CoolS = 9 }), 11, Cool},
		"automatic, twice on two screens":           {Stations(twice), pace("automatic", func(p *Pace) { p.StrokesOf[0] = 1 }), 8, "load"},
		"automatic, twice in two turns":             {again, pace("automatic", func(p *Pace) { p.StrokesOf[0], p.Turns = 1, len(turns) }), 16, "load"},
		"manual":                                    {row, pace("manual", nil), 6 + 6 + 5 + 4 + 3 + 3 + 5*2, "load"},
		"manual, two hits":                          {Stations(twice), pace("manual", func(p *Pace) { p.StrokesOf[0] = 1 }), 6 + 3 + 5 + 4 + 3 + 4*2, "load"},
		"flatbed, a pass each":                      {Stations(base[1:]), pace("flatbed", nil), 6 + 6 + 3 + 6, "load"},
		"nothing":                                   {nil, pace("automatic", nil), 8, "load"},
	} {
		got, err := TimeOf(c.stations, c.pace)
		slowest := got.Slowest.Kind
		if got.Load {
			slowest = "load"
		}
		if err != nil || math.Abs(got.PieceS-c.pieceS) > 1e-9 || slowest != c.slowest || got.SetupS != 900 {
			t.Errorf("%s: %+v, %v; %g s and %s are wanted", name, got, err, c.pieceS, c.slowest)
		}
	}
	for name, change := range map[string]func(*Pace){
		"kind":     func(p *Pace) { p.Kind = "belt" },
		"speed":    func(p *Pace) { p.StrokeMPS = 0 },
		"image":    func(p *Pace) { p.ImageMM = math.NaN() },
		"index":    func(p *Pace) { p.IndexS = -1 },
		"load":     func(p *Pace) { p.LoadS = math.Inf(1) },
		"strokes":  func(p *Pace) { p.StrokesOf[1] = 0 },
		"flash":    func(p *Pace) { p.FlashSOf[0] = -1 },
		"turns":    func(p *Pace) { p.Turns = 0 },
		"a screen": func(p *Pace) { p.StrokesOf = p.StrokesOf[:1] },
	} {
		if got, err := TimeOf(row, pace("automatic", change)); err == nil {
			t.Errorf("%s: %+v instead of an error", name, got)
		}
	}
	if n, err := PiecesPerHour(0); err == nil {
		t.Error("0 s a piece:", n)
	}
	if s, err := RunS(8, 0); err == nil {
		t.Error("no pieces:", s)
	}
}

func ExampleTimeOf() {
	row := Stations([]Screen{{Use: "underbase"}, {Use: "solid"}})
	p := Pace{Kind: "automatic", StrokeMPS: 0.3, IndexS: 2, LoadS: 6, CoolS: 4, SetupS: 300, ImageMM: 350, StrokesOf: []int{2, 1}, FlashSOf: []float64{3, 0}, Turns: 1, SetScreens: 2}
	for _, p.Kind = range []string{"automatic", "manual"} {
		t, err := TimeOf(row, p)
		if err != nil {
			fmt.Println(err)
			return
		}
		n, _ := PiecesPerHour(t.PieceS)
		run, _ := RunS(t.PieceS, 100)
		fmt.Printf("%s: %.0f s a piece, %.0f an hour, setup %.0f min, 100 pieces %.0f min\n", p.Kind, t.PieceS, n, t.SetupS/60, run/60)
	}
	// Output:
	// automatic: 8 s a piece, 450 an hour, setup 10 min, 100 pieces 13 min
	// manual: 30 s a piece, 120 an hour, setup 10 min, 100 pieces 50 min
}

func ExampleStrokeS() {
	fmt.Println(StrokeS(350, 0.3))
	// Output: 3 <nil>
}

func ExamplePiecesPerHour() {
	fmt.Println(PiecesPerHour(8))
	// Output: 450 <nil>
}

func ExampleRunS() {
	fmt.Println(RunS(8, 450))
	// Output: 3600 <nil>
}
