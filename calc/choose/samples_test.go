package choose_test

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plantest"
)

var shopKey = regexp.MustCompile(`(?m)^shop = .*$`)

// TestExampleFilms: every job that the program hands out (samples, starters with the film that they show, the README's
// example) asks for films that its screens reach, and a film that a job states itself is one that would be asked for
// anyway: more than half of it lies inside what hides or is customary.
func TestExampleFilms(t *testing.T) {
	jobs := map[string]string{}
	for _, pattern := range []string{"../../samples/jobs/*.toml", "../../templates/starter/*/job.toml"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatal(pattern, err)
		}
		for _, path := range paths {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			jobs[path] = strings.ReplaceAll(string(src), "\n#film = ", "\nfilm = ")
		}
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, example, _ := strings.Cut(string(readme), "\n    title = \"Lantern Night crew shirts\"\n")
	example, _, found := strings.Cut(example, "\n## ")
	if !found {
		t.Fatal("the README has no example job")
	}
	jobs["README"] = "title = \"t\"\n" + strings.ReplaceAll("\n"+example, "\n    ", "\n")
	stated := 0
	for path, src := range jobs {
		shop := file.BuiltInShop()
		if strings.Contains(path, "samples") {
			text, err := os.ReadFile("../../samples/shop.toml")
			if err != nil {
				t.Fatal(err)
			}
			shop = plantest.Shop(t, string(text))
		}
		decode := func() *job.Job {
			j, errs := file.DecodeJob(path, []byte(shopKey.ReplaceAllString(src, "")))
			if errs != nil {
				t.Fatal(errs)
			}
			return j
		}
		j, open := decode(), decode()
		for l := range open.Locations {
			for s := range open.Locations[l].Screens {
				open.Locations[l].Screens[s].FilmUM = nil
			}
		}
		for _, one := range []*job.Job{j, open} {
			if errs := job.Resolve(one, shop); errs != nil {
				t.Fatal(errs)
			}
		}
		p, errs := choose.Make(j, shop)
		if errs != nil {
			t.Fatal(path, errs)
		}
		q, errs := choose.Make(open, shop)
		if errs != nil {
			t.Fatal(path, errs)
		}
		for l := range p.Locations {
			for i, s := range p.Locations[l].Screens {
				if !s.MeetsAll {
					t.Errorf("%s, screen %d: %.0f um for %g to %g", path, i+1, s.CuredUM.Value, s.TargetUM.Low, s.TargetUM.High)
				}
				if s.TargetUM.From == "job" {
					stated++
					usual := q.Locations[l].Screens[i].TargetUM
					if both := math.Min(s.TargetUM.High, usual.High) - math.Max(s.TargetUM.Low, usual.Low); both <= 0.5*(s.TargetUM.High-s.TargetUM.Low) {
						t.Errorf("%s, screen %d: asks for %g to %g um, where %.0f to %.0f would be asked for", path, i+1, s.TargetUM.Low, s.TargetUM.High, usual.Low, usual.High)
					}
				}
			}
		}
	}
	if stated < 3 {
		t.Errorf("only %d films are stated", stated)
	}
}
