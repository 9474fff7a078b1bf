package plantest

import (
	"os"
	"path/filepath"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/render/say"
)

// TB is what *testing.T and *rapid.T share here.
type TB = plantest.TB

// Job decodes a job text and the shop file that it names, in the folder dir; the built-in shop
// where it names none.
func Job(t TB, dir, jobText string) (*job.Job, *job.Shop) {
	t.Helper()
	j, errs := file.DecodeJob("job.toml", []byte(jobText))
	if errs != nil {
		t.Fatal(errs)
	}
	if j.ShopPath == "" {
		return j, file.BuiltInShop()
	}
	text, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(j.ShopPath)))
	if err != nil {
		t.Fatal(err)
	}
	return j, Shop(t, string(text))
}

// Shop decodes a shop text.
func Shop(t TB, shopText string) *job.Shop {
	t.Helper()
	return plantest.Shop(t, shopText)
}

// Plan computes a job with a shop and fills the plan's texts in the shop's language and units.
func Plan(t TB, j *job.Job, shop *job.Shop) (*plan.Plan, *say.Voice) {
	t.Helper()
	if errs := job.Resolve(j, shop); errs != nil {
		t.Fatal(errs)
	}
	p, errs := choose.Make(j, shop)
	if errs != nil {
		t.Fatal(errs)
	}
	v, err := say.New(shop.Language, shop.Units)
	if err != nil {
		t.Fatal(err)
	}
	v.Fill(p)
	return p, v
}

// Text is Job and Plan in one.
func Text(t TB, dir, jobText string) (*plan.Plan, *say.Voice) {
	t.Helper()
	j, shop := Job(t, dir, jobText)
	return Plan(t, j, shop)
}
