package seen_test

import (
	"fmt"
	"math"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/seen"
)

// plain is the plan of one halftone on the built-in shop.
func plain() *plan.Plan {
	const src = "title = \"t\"\n[[location]]\n[[location.screen]]\nuse = \"halftone\"\nmesh = \"230-48\"\nhalftone = { lines = \"55 lpi\" }\n"
	j, _ := file.DecodeJob("job.toml", []byte(src))
	shop := file.BuiltInShop()
	job.Resolve(j, shop)
	p, _ := choose.Make(j, shop)
	return p
}

func ExampleAsk() {
	p := plain()
	m, _ := seen.Correct(p.Locations[0].Screens[0], 60, false)
	a, err := seen.Ask(p, 1, 1, []string{seen.DotsLost}, &m)
	fmt.Println(a.Findings[0].Against[0].Code, a.Means[0].Code, err)
	// Output: off-lost means-dots-heavy <nil>
}

func ExampleCorrect() {
	s := plain().Locations[0].Screens[0]
	m, err := seen.Correct(s, 60, false)
	fmt.Println(m.InBand, m.InTarget, m.OffUM > 0, m.Outcomes[0].DeltaUM < 0, err)
	// Output: false false true true <nil>
}

func ExampleCorrectWeighed() {
	s := plain().Locations[0].Screens[0]
	gain := 2.0 // g a print, as planned
	s.InkGPerPrint = &gain
	m, err := seen.CorrectWeighed(s, 2)
	fmt.Println(m.InBand, math.Abs(m.MeasuredUM-s.CuredUM.Value) < 1e-9, m.DoubtUM, err)
	// Output: true true 2.5 <nil>
}

func ExampleFaults() {
	fmt.Println(len(seen.Faults()), seen.Faults()[:2])
	// Output: 14 [too-thin too-heavy]
}

func ExampleLikely() {
	found, err := seen.Likely(plain(), 1, 1, 3)
	for _, f := range found {
		fmt.Println(f.Seen, len(f.Changes) > 0)
	}
	fmt.Println(err)
	// Output:
	// ink-left true
	// dots-lost true
	// dots-plugged true
	// <nil>
}

func ExampleTold() {
	s := plain().Locations[0].Screens[0]
	for _, c := range seen.Told(s, 3) {
		fmt.Println(c.Kind, c.To, c.DeltaUM > 0, c.Seen)
	}
	// Output:
	// strokes 2 true true
	// hits 2 true true
}
