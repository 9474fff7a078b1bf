// Package plantest makes the plans of job and shop texts for tests, the same way as the command line goes. A
// text that is wrong ends the test.
package plantest

import (
	"runtime/debug"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Tests that plan make much that lives briefly: the collector works a quarter as often for them, which takes an eighth
// of their time away. The tests of cmd/bladecard, whose own binary is the program that they start, do not link this.
func init() { debug.SetGCPercent(400) }

// TB is what *testing.T, *testing.B and *rapid.T share here.
type TB interface {
	Helper()
	Fatal(args ...any)
}

// Shop decodes a shop text.
func Shop(t TB, text string) *job.Shop {
	t.Helper()
	shop, errs := file.DecodeShop("shop.toml", []byte(text))
	if errs != nil {
		t.Fatal(errs)
	}
	return shop
}

// Job decodes a job text and resolves it on a shop.
func Job(t TB, text string, shop *job.Shop) *job.Job {
	t.Helper()
	j, errs := file.DecodeJob("job.toml", []byte(text))
	if errs = append(errs, job.Resolve(j, shop)...); errs != nil {
		t.Fatal(errs)
	}
	return j
}

// Plan plans a job text on a shop.
func Plan(t TB, text string, shop *job.Shop) *plan.Plan {
	t.Helper()
	p, errs := choose.Make(Job(t, text, shop), shop)
	if errs != nil {
		t.Fatal(errs)
	}
	return p
}

// Screen is the first screen of a job text's plan on the built-in shop.
func Screen(t TB, text string) plan.Screen {
	t.Helper()
	return Plan(t, text, file.BuiltInShop()).Locations[0].Screens[0]
}

// OneScreen is a job text with one screen on a front of 30 x 35 cm: head stands before the location, and screen
// are the lines of the screen.
func OneScreen(head, screen string) string {
	return "title = \"t\"\n" + head + "\n[[location]]\nname = \"front\"\nwidth = \"30 cm\"\nheight = \"35 cm\"\n[[location.screen]]\n" + screen
}
