package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"bladecard/samples/bench"
)

// killsEnv is how many builds TestKilled kills; a few of them show that it can.
const killsEnv = "BLADECARD_KILLS"

// TestKilled kills builds at random moments. Whatever the moment, every output is whole, either as
// it was or as it is to be, and the next build goes on from there without a word about it.
func TestKilled(t *testing.T) {
	t.Parallel()
	kills := 5
	if s := os.Getenv(killsEnv); s != "" {
		var err error
		if kills, err = strconv.Atoi(s); err != nil || kills < 1 {
			t.Fatalf("%s=%q; a number of builds is accepted", killsEnv, s)
		}
	}
	dir := t.TempDir()
	exe := program(t, dir)
	var want [2]map[string][]byte // by version of the jobs
	for v := range want {
		if err := bench.Folder(filepath.Join(dir, "jobs", fmt.Sprint(v)), 6, 2+v, ""); err != nil {
			t.Fatal(err)
		}
		to := filepath.Join(dir, "want", fmt.Sprint(v))
		finished(t, exe, filepath.Join(dir, "jobs", fmt.Sprint(v)), to)
		want[v] = outputsIn(t, to)
	}
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	r := rand.New(rand.NewPCG(1, uint64(kills)))
	began, killed := 0, 0
	var took time.Duration
	for n := range kills {
		v := n % 2
		if err := os.RemoveAll(shelf); err != nil {
			t.Fatal(err)
		}
		if err := os.CopyFS(shelf, os.DirFS(filepath.Join(dir, "jobs", fmt.Sprint(v)))); err != nil {
			t.Fatal(err)
		}
		if n > 1 { // the first two tell how long a build takes
			cmd := exec.Command(exe, "build", shelf, "-o", out)
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			time.Sleep(time.Duration(r.Int64N(int64(took) + 1)))
			if err := cmd.Process.Kill(); err != nil {
				t.Log(err) // it was done
			}
			if cmd.Wait() != nil {
				killed++
			}
			for name, have := range outputsIn(t, out) {
				if !bytes.Equal(have, want[0][name]) && !bytes.Equal(have, want[1][name]) {
					t.Fatalf("kill %d: %s is neither what it was nor what it is to be", n, name)
				}
				if bytes.Equal(have, want[v][name]) {
					began++
				}
			}
		}
		start := time.Now()
		finished(t, exe, shelf, out)
		if n < 2 {
			took = time.Since(start)
		}
		have := outputsIn(t, out)
		if len(have) != len(want[v]) {
			t.Fatalf("kill %d: %d outputs after the next build; %d are wanted", n, len(have), len(want[v]))
		}
		for name := range want[v] {
			if !bytes.Equal(have[name], want[v][name]) {
				t.Fatalf("kill %d: %s is not right after the next build", n, name)
			}
		}
		left, err := os.ReadDir(filepath.Join(out, ".bladecard", "new"))
		if err != nil || len(left) > 0 {
			t.Fatalf("kill %d: %d temporary files are left, %v", n, len(left), err)
		}
	}
	if killed == 0 {
		t.Error("no build was killed before its end")
	}
	t.Logf("%d builds killed; %d outputs of %d were new by then", killed, began, killed*len(want[0]))
}

// program is this very program as a file of its own.
func program(t *testing.T, dir string) string {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	src := content(t, self)
	exe := filepath.Join(dir, "bladecard"+filepath.Ext(self)) // testscript.Main runs the command of this name
	if filepath.Ext(exe) == ".test" {
		exe = filepath.Join(dir, "bladecard")
	}
	if err := os.WriteFile(exe, src, 0o755); err != nil {
		t.Fatal(err)
	}
	return exe
}

// finished runs a build to its end.
func finished(t *testing.T, exe, jobs, to string) {
	t.Helper()
	if said, err := exec.Command(exe, "build", jobs, "-o", to, "--quiet").CombinedOutput(); err != nil || len(said) > 0 {
		t.Fatalf("build: %v\n%s", err, said)
	}
}

// outputsIn are the outputs in a folder with their bytes, without what the build keeps for itself.
func outputsIn(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			if err == nil && strings.HasPrefix(e.Name(), ".") {
				return fs.SkipDir
			}
			return err
		}
		rel, err := filepath.Rel(dir, path)
		if err == nil {
			out[rel], err = os.ReadFile(path)
		}
		return err
	})
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return out
}
