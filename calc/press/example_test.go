package press_test

import (
	"fmt"

	"bladecard/calc/ink"
	"bladecard/calc/press"
)

// job is an underbase with three colors and a raised print.
var job = []press.Screen{{Use: "underbase"}, {Use: "solid"}, {Use: "solid"}, {Use: "detail"}, {Use: "raised"}}

func ExampleStations() {
	for i, s := range press.Stations(job[:3]) {
		fmt.Println(i+1, s.Kind, s.Screen)
	}
	// Output:
	// 1 print 0
	// 2 flash 0
	// 3 cool 0
	// 4 print 1
	// 5 print 2
}

func ExampleRuns() {
	fmt.Println(press.Runs(press.Stations(job)))
	// Output: [[0] [1 2 3 4]]
}

func ExampleOnWet() {
	fmt.Println(press.OnWet(press.Stations(job)))
	// Output: [2 3 4]
}

func ExampleNeeds() {
	for _, kind := range []string{"automatic", "manual", "flatbed"} {
		n, _ := press.Needs(press.Stations(job), kind)
		fmt.Println(kind, n)
	}
	// Output:
	// automatic 7
	// manual 6
	// flatbed 1
}

func ExampleChoose() {
	st := press.Stations(job)
	i, err := press.Choose(st, []press.Machine{{Kind: "automatic", Heads: 6}, {Kind: "automatic", Heads: 10}})
	fmt.Println(i, err)
	_, err = press.Choose(st, []press.Machine{{Kind: "manual", Heads: 4}})
	fmt.Println(err)
	// Output:
	// 1 <nil>
	// press: no press has the heads: press 1 (manual) has 4 of 6; fewer screens, fewer flashes, or a press with more heads are accepted
}

func ExampleAdvice() {
	black, yellow := ink.Lightness(17, 17, 17), ink.Lightness(255, 210, 0)
	for _, n := range press.Advice([]press.Screen{
		{Use: "solid", Lightness: &black},
		{Use: "underbase"},
		{Use: "solid", Lightness: &yellow},
	}) {
		fmt.Println(n.Code, n.Screen, n.Earlier)
	}
	// Output:
	// ground-not-first 1 0
	// black-not-last 2 0
}

func ExampleOneTurn() {
	st, turns := press.OneTurn([]press.Screen{{Use: "underbase", Hits: 2}, {Use: "solid"}})
	fmt.Println(len(st), "stations, the screens of each turn", turns)
	// Output: 4 stations, the screens of each turn [[0] [0 1]]
}
