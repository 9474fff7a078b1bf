package choose

import (
	"math"
	"math/rand/v2"
	"testing"

	"bladecard/calc/film"
	"bladecard/calc/job"
)

// TestBandsHoldNineOfTen draws the constants behind a film, each from what is stated of it, and counts how
// many drawn films and drawn effects lie inside the bands that are printed: 87 to 93 % is wanted.
func TestBandsHoldNineOfTen(t *testing.T) {
	const draws = 20000
	rnd := rand.New(rand.NewPCG(9, 2))
	ninth := func(half float64) float64 { return half / ninety * rnd.NormFloat64() } // nine of ten inside half
	share := func() float64 {
		return film.LeastNextStroke + (film.MostNextStroke-film.LeastNextStroke)*rnd.Float64()
	}
	row := func(n int, q float64) float64 {
		v, err := film.Strokes(n, q)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	at := func(deg, shoreA float64, strokes int, um float64) trial {
		tr := trial{setup: setup{stock: stock{Blade: job.Blade{Hardness: []float64{shoreA}, Edge: "new"}}, angleDeg: deg, strokes: strokes, hits: 1}}
		tr.curedUM = um
		return tr
	}
	check := func(name string, inside int) {
		got := 100 * float64(inside) / draws
		t.Logf("%s: %.1f %%", name, got)
		if got < 87 || got > 93 {
			t.Errorf("%s: %.1f %% inside; 87 to 93 %% is wanted", name, got)
		}
	}
	for strokes := 1; strokes <= 3; strokes++ {
		band, err := chooser{}.band(40, at(15, 70, strokes, 40))
		if err != nil {
			t.Fatal(err)
		}
		inside := 0
		for range draws {
			um := 40 * math.Exp(ninth(modelBand)) * row(strokes, share()) / row(strokes, film.NextStrokeShare)
			if um >= band.Low && um <= band.High {
				inside++
			}
		}
		check("film of "+[]string{"", "one stroke", "two strokes", "three strokes"}[strokes], inside)
	}
	for _, c := range []struct {
		name     string
		from, to trial
		draw     func() float64 // the true change on the logarithm beyond the computed one
	}{
		{"10 deg more", at(15, 70, 1, 40), at(25, 70, 1, 42), func() float64 { return ninety * ninth(angleSpreadPer10Deg) }},
		{"10 Shore A softer", at(15, 70, 1, 40), at(15, 60, 1, 42), func() float64 { return ninety * ninth(hardnessSpreadPer10ShoreA) }},
		{"a second stroke", at(15, 70, 1, 40), at(15, 70, 2, 56), func() float64 { return math.Log((1 + share()) / (1 + film.NextStrokeShare)) }},
	} {
		half := ninety * differenceSpread(c.from, c.to, bench{}, bench{})
		inside := 0
		for range draws {
			if math.Abs(c.draw()) <= half {
				inside++
			}
		}
		check(c.name, inside)
	}
}
