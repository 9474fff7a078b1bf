package seen_test

import (
	"os"
	"path/filepath"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

const samples = "../../samples"

// sample is the plan of a sample job on the samples' shop.
func sample(t *testing.T, name string) *plan.Plan {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(samples, "shop.toml"))
	if err != nil {
		t.Fatal(err)
	}
	shop, errs := file.DecodeShop("shop.toml", src)
	if errs != nil {
		t.Fatal(errs)
	}
	if src, err = os.ReadFile(filepath.Join(samples, "jobs", name+".toml")); err != nil {
		t.Fatal(err)
	}
	return made(t, src, shop)
}

func made(t *testing.T, src []byte, shop *job.Shop) *plan.Plan {
	t.Helper()
	j, errs := file.DecodeJob("job.toml", src)
	if errs != nil {
		t.Fatal(errs)
	}
	if errs := job.Resolve(j, shop); errs != nil {
		t.Fatal(errs)
	}
	p, errs := choose.Make(j, shop)
	if errs != nil {
		t.Fatal(errs)
	}
	return p
}

// screenOf is the one screen of a job on the built-in shop, whose lines are given.
func screenOf(t *testing.T, screen string) plan.Screen {
	t.Helper()
	src := "title = \"t\"\n[[location]]\nname = \"front\"\nwidth = \"30 cm\"\nheight = \"35 cm\"\n[[location.screen]]\n" + screen
	return made(t, []byte(src), file.BuiltInShop()).Locations[0].Screens[0]
}
