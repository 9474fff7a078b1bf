package plan_test

import (
	"testing"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// BenchmarkMake plans a job of one screen, mesh stated.
func BenchmarkMake(b *testing.B) {
	src := []byte("title = \"t\"\n[[location]]\nwidth = \"30 cm\"\nheight = \"35 cm\"\n[[location.screen]]\nmesh = \"156-64\"\n")
	shop := job.BuiltInShop()
	for b.Loop() {
		j, errs := job.DecodeJob("job.toml", src)
		if errs != nil {
			b.Fatal(errs)
		}
		if errs := job.Resolve(j, shop); errs != nil {
			b.Fatal(errs)
		}
		if _, errs := plan.Make(j, shop); errs != nil {
			b.Fatal(errs)
		}
	}
}
