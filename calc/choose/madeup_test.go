package choose_test

import (
	"os"
	"sync"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/samples/bench"
)

// planned is a made-up job with its plan.
type planned struct {
	job  *job.Job
	plan *plan.Plan
}

// madeUp is 200 made-up jobs of four screens, with BLADECARD_FULL 500, planned once for all tests on the built-in shop.
var madeUp = sync.OnceValue(func() []planned {
	pl := choose.NewPlanner(file.BuiltInShop())
	pl.PlanOn(2)
	var out []planned
	jobs := 200
	if os.Getenv("BLADECARD_FULL") != "" {
		jobs = 500
	}
	for n := range jobs {
		j, errs := file.DecodeJob("job.toml", bench.Job(n, 4, ""))
		if errs = append(errs, job.Resolve(j, file.BuiltInShop())...); errs != nil {
			panic(errs)
		}
		p, errs := pl.Make(j)
		if errs != nil {
			panic(errs)
		}
		out = append(out, planned{j, p})
	}
	return out
})
