package main

import (
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain runs the tests, or the program where a test starts it by its name. The tests have room enough to collect
// garbage a quarter as often.
func TestMain(m *testing.M) {
	if name := strings.TrimSuffix(filepath.Base(os.Args[0]), ".exe"); name != "bladecard" {
		debug.SetGCPercent(400)
	}
	testscript.Main(m, map[string]func(){
		"bladecard": main,
	})
}

// TestScripts runs whole commands; the samples stand in $SAMPLES. `exits N COMMAND...` wants an
// exit code.
func TestScripts(t *testing.T) {
	t.Parallel()
	samples, err := filepath.Abs("../../samples")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("SAMPLES", samples)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND...")
	}
	err := ts.Exec(args[1], args[2:]...)
	got := "0"
	if err != nil {
		got = strings.TrimPrefix(err.Error(), "exit status ")
	}
	if got != args[0] {
		ts.Fatalf("exit code %s; %s is wanted\n%s", got, args[0], ts.ReadFile("stderr"))
	}
}

// write writes a file and the folders that it lacks.
func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// content is what a file holds.
func content(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
