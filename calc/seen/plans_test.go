package seen_test

import (
	"os"
	"path/filepath"
	"testing"

	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

const samples = "../../samples"

// sample is the plan of a sample job on the samples' shop.
func sample(t *testing.T, name string) *plan.Plan {
	t.Helper()
	shop := plantest.Shop(t, text(t, "shop.toml"))
	return plantest.Plan(t, text(t, "jobs/"+name+".toml"), shop)
}

func text(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(samples, filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}
