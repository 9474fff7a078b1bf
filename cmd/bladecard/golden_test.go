package main

import (
	"bytes"
	"flag"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestShowGolden: what `show` and `show --why` say of two samples, one of them in Spanish, are files
// that a printer can check by hand. Run `go test ./cmd/bladecard -run Golden -update` after a change,
// and read the difference.
func TestShowGolden(t *testing.T) {
	t.Parallel()
	for _, g := range []struct {
		job, golden string
		flags       []string
	}{
		{"lantern-crew", "lantern-crew.txt", nil},
		{"lantern-crew", "lantern-crew-why.txt", []string{"--why"}},
		{"lantern-title", "lantern-title-why.es.txt", []string{"--why", "--lang", "es"}},
	} {
		showGolden(t, filepath.Join("..", "..", "samples", "jobs", g.job+".toml"), filepath.Join("testdata", "show", g.golden), g.flags...)
	}
}

// showGolden compares what `show` says of a job with its golden file.
func showGolden(t *testing.T, job, golden string, flags ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(append([]string{"show", job}, flags...), nil, &out, &errs); code != exitDone {
		t.Errorf("%s: exit code %d\n%s", job, code, errs.String())
		return
	}
	if *update {
		write(t, golden, out.String())
		return
	}
	want := content(t, golden)
	if !bytes.Equal(out.Bytes(), want) {
		t.Errorf("%s differs from %s:\n%s", job, golden, firstDifference(out.String(), string(want)))
	}
}

func firstDifference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			old := ""
			if i < len(w) {
				old = w[i]
			}
			return "got  " + g[i] + "\nwant " + old
		}
	}
	return "the file goes on where the output ends"
}

// TestByHand: the screen that is worked by hand in calc/choose/testdata has the figures that the plan has.
func TestByHand(t *testing.T) {
	t.Parallel()
	table := content(t, "../../calc/choose/testdata/by-hand.md")
	s := planned(t, edition{lang: "en"}, "../../samples/jobs/lantern-crew.toml").plan.Locations[0].Screens[1]
	for row, want := range map[string]string{
		"opening": fmt.Sprintf("%.1f µm", s.Mesh.OpeningUM), "open area": fmt.Sprintf("%.1f %%", 100*s.Mesh.OpenArea), "fabric": fmt.Sprintf("%.1f µm", s.Mesh.FabricUM),
		"ink volume": fmt.Sprintf("%.1f µm", s.Mesh.VolumeUM), "rigidity": fmt.Sprintf("%.3f N m", s.Blade.RigidityNM), "bent edge": fmt.Sprintf("%.1f deg", s.EdgeAngleDeg),
		"wet film": fmt.Sprintf("%.1f µm", s.WetUM.Value), "ink a print": fmt.Sprintf("%.3f g", *s.InkGPerPrint), "ink for the run": fmt.Sprintf("%.0f g", *s.InkGRun),
	} {
		found := false
		for line := range strings.Lines(string(table)) {
			found = found || strings.HasPrefix(line, "| "+row+" |") && strings.HasSuffix(line, "| "+want+" |\n")
		}
		if !found {
			t.Errorf("the table has no row %q that comes to %s", row, want)
		}
	}
}
