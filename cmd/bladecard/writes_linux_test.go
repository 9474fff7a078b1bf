package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A disk that is full leaves every file as it was, and the error names the file that was too much.
// It takes a system that lets the test mount a small disk.
func TestWritesOnAFullDisk(t *testing.T) {
	t.Parallel()
	for _, w := range writings {
		t.Run(w.name, func(t *testing.T) {
			b := newWriteBench(t, w)
			small := b.path("small")
			if err := os.Mkdir(small, 0o777); err != nil {
				t.Fatal(err)
			}
			if err := syscall.Mount("tmpfs", small, "tmpfs", 0, "size=4m"); err != nil {
				t.Skip("no small disk can be mounted here: ", err)
			}
			defer syscall.Unmount(small, syscall.MNT_DETACH)
			b.out = filepath.Join(small, "out")
			if !made(b) {
				usersOwn(b)
			}
			fill(t, filepath.Join(small, "filler"))
			before := picture(t, small)
			code, said := b.run()
			if code != exitFile || !strings.Contains(said, "no space left on device") && !strings.Contains(said, "no queda espacio en el disco") || !strings.Contains(said, small) {
				t.Errorf("code %d: %s", code, said)
			}
			after := picture(t, small)
			for name := range after {
				if before[name] != after[name] {
					t.Errorf("%s was %q and is %s", name, before[name], after[name])
				}
			}
			if len(before) != len(after) {
				t.Errorf("%d files were %d", len(after), len(before))
			}
		})
	}
}

// fill writes a file until the disk takes no more.
func fill(t *testing.T, path string) {
	t.Helper()
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for block := make([]byte, 4096); err == nil; {
		_, err = f.Write(block)
	}
}

// Whatever a command prints: where standard output takes no more, it says so and ends with its own
// exit code.
func TestStandardOutputIsFull(t *testing.T) {
	t.Parallel()
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer full.Close()
	b := newWriteBench(t, writings[0])
	for _, args := range []string{
		"--help", "help cards", "version", "version --json", "version --notices", "completion bash", "__complete 1 ca", "schema job", "schema job -o -", "schema shop -o %o.json",
		"check job.toml", "check job.toml --json", "show job.toml", "show job.toml --json", "show job.toml --why",
		"log job.toml", "log job.toml -o -", "log job.toml -o %o.csv", "log job.toml -o %o.csv", "fit log.csv shop.toml", "fit log.csv shop.toml --json", "fit log.csv shop.toml --write",
		"correct job.toml --measured 38um", "correct job.toml --measured 38um --json", "sweep job.toml --vary angle=0..20", "sweep job.toml --vary angle=0..20 -o %o-sweep.csv",
		"cards job.toml -o %o", "cards job.toml -o -", "sheet job.toml -o %o", "sheet job.toml -o -", "handout shop.toml -o %o.pdf", "handout shop.toml -o -",
		"build job.toml -o %o-build", "build job.toml -o %o-build --json", "new %o-new",
	} {
		b.w.args = args
		var errs bytes.Buffer
		code := run(b.words(), nil, full, &errs)
		if want := "error: standard output: no space left on device; what was printed is not whole\n"; code != exitFile || !strings.HasSuffix(errs.String(), want) {
			t.Errorf("%s: code %d, %s", args, code, errs.String())
		}
	}
}
