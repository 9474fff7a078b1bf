package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestShowGolden: what `show` says of every sample is a file that a printer can check by hand.
// Run `go test ./cmd/bladecard -run Golden -update` after a change, and read the difference.
func TestShowGolden(t *testing.T) {
	jobs, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(jobs) < 5 {
		t.Fatal(jobs, err)
	}
	for _, job := range jobs {
		showGolden(t, job, ".txt")
	}
}

// TestShowGoldenSpanish: the same for a plain job and one with halftones, in Spanish.
func TestShowGoldenSpanish(t *testing.T) {
	for _, name := range []string{"lantern-title.toml", "lantern-scene.toml"} {
		showGolden(t, filepath.Join("..", "..", "samples", "jobs", name), ".es.txt", "--lang", "es")
	}
}

// showGolden compares what `show` says of a job with its golden file.
func showGolden(t *testing.T, job, ext string, flags ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(append([]string{"show", job}, flags...), nil, &out, &errs); code != exitDone {
		t.Errorf("%s: exit code %d\n%s", job, code, errs.String())
		return
	}
	golden := filepath.Join("testdata", "show", strings.TrimSuffix(filepath.Base(job), ".toml")+ext)
	if *update {
		if err := os.MkdirAll(filepath.Dir(golden), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(golden, out.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
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
