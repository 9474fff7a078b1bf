package choose_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/samples/bench"
)

// BenchmarkMake plans a job of one screen, mesh stated.
func BenchmarkMake(b *testing.B) {
	src := plantest.OneScreen("", "mesh = \"156-64\"\n")
	shop := file.BuiltInShop()
	for b.Loop() {
		plantest.Plan(b, src, shop)
	}
}

// On several cores, and with a planner that has planned other jobs, the plans are the same.
func TestPlansAreTheSameOnAllCores(t *testing.T) {
	shop := file.BuiltInShop()
	kept, many := choose.NewPlanner(shop), choose.NewPlanner(shop)
	many.PlanOn(4)
	for n := range 12 {
		var want []byte
		for i, make := range []func(*job.Job) (*plan.Plan, job.Errors){
			func(j *job.Job) (*plan.Plan, job.Errors) { return choose.Make(j, shop) }, kept.Make, many.Make,
		} {
			p, errs := make(plantest.Job(t, string(bench.Job(n, 7, "")), shop))
			if errs != nil {
				t.Fatal(errs)
			}
			have, err := json.Marshal(p)
			if err != nil {
				t.Fatal(err)
			}
			if i == 0 {
				want = have
			} else if !bytes.Equal(have, want) {
				t.Errorf("job %d: plan %d differs", n, i)
			}
		}
	}
}
