package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestSameBytes: another run of the program writes the same bytes, in another time zone, with
// another locale and on one processor. The first four samples stand for all, which are made with BLADECARD_FULL.
func TestSameBytes(t *testing.T) {
	t.Parallel()
	e := editions[1]
	jobs := sampleJobs(t)
	if os.Getenv(fullEnv) == "" {
		jobs = jobs[:4]
	}
	here, there := t.TempDir(), t.TempDir()
	for i, args := range printing(e, here, jobs) {
		commanded(t, args...)
		again := exec.Command("bladecard", printing(e, there, jobs)[i]...) // testscript puts it into PATH
		again.Env = append(os.Environ(), "TZ=Pacific/Auckland", "LANG=de_DE.UTF-8", "LC_ALL=tr_TR.UTF-8", "GOMAXPROCS=1")
		if out, err := again.CombinedOutput(); err != nil {
			t.Fatalf("%v: %v\n%s", again.Args, err, out)
		}
	}
	files, err := filepath.Glob(filepath.Join(here, "*.pdf"))
	if err != nil || len(files) != 2*len(jobs)+2 { // handout and wall chart
		t.Fatal(files, err)
	}
	for _, f := range files {
		a := content(t, f)
		b := content(t, filepath.Join(there, filepath.Base(f)))
		if len(a) == 0 || !bytes.Equal(a, b) {
			t.Errorf("%s differs between two runs", filepath.Base(f))
		}
	}
}

// TestLookIsNotNeeded: without logo and accent the handout is made, and with them it differs.
func TestLookIsNotNeeded(t *testing.T) {
	t.Parallel()
	shop := content(t, sampleShop)
	dir := t.TempDir()
	var bare []byte
	for _, line := range bytes.SplitAfter(shop, []byte("\n")) {
		if !bytes.HasPrefix(line, []byte("logo")) && !bytes.HasPrefix(line, []byte("accent")) {
			bare = append(bare, line...)
		}
	}
	path := filepath.Join(dir, "shop.toml")
	write(t, path, string(bare))
	var got [2][]byte
	for i, s := range []string{sampleShop, path} {
		out := filepath.Join(dir, "h.pdf")
		commanded(t, "handout", s, "-o", out)
		got[i] = content(t, out)
	}
	if len(got[1]) == 0 || len(got[0]) <= len(got[1]) {
		t.Errorf("with logo %d bytes, without %d", len(got[0]), len(got[1]))
	}
}
