//go:build !windows

package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A folder that cannot be read is an error, and what lies beside it is made. It takes a user who
// may not read everything.
func TestBuildUnreadable(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	for d := dir; strings.HasPrefix(d, os.TempDir()) && d != os.TempDir(); d = filepath.Dir(d) {
		if err := os.Chmod(d, 0o777); err != nil {
			t.Fatal(err)
		}
	}
	exe := program(t, dir)
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	write(t, filepath.Join(shelf, "a.toml"), leastJob)
	write(t, filepath.Join(shelf, "b.toml"), leastJob)
	write(t, filepath.Join(shelf, "shut", "c.toml"), leastJob)
	for path, mode := range map[string]os.FileMode{filepath.Join(shelf, "b.toml"): 0, filepath.Join(shelf, "shut"): 0} {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		defer os.Chmod(path, 0o777)
	}
	cmd := exec.Command(exe, "build", shelf, "-o", out)
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	}
	said, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != exitFile {
		t.Errorf("%v\n%s", err, said)
	}
	for _, want := range []string{"b.toml: permission denied", "shut: permission denied", "3 jobs: 1 made, 0 unchanged, 2 failed"} {
		if !bytes.Contains(said, []byte(want)) {
			t.Errorf("nothing says %q:\n%s", want, said)
		}
	}
	// And a folder whose records belong to somebody else: it is the folder that is named, and not the lock in it.
	own := filepath.Join(out, ".bladecard")
	for path, mode := range map[string]os.FileMode{filepath.Join(own, "lock"): 0o444, own: 0o555} {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
	}
	locked := exec.Command(exe, "build", filepath.Join(shelf, "a.toml"), "-o", out)
	locked.SysProcAttr = cmd.SysProcAttr
	if said, err := locked.CombinedOutput(); err == nil || !bytes.Contains(said, []byte(out+": permission denied")) {
		t.Errorf("%v\n%s", err, said)
	}
	for path, mode := range map[string]os.FileMode{own: 0o777, filepath.Join(own, "lock"): 0o666} {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
	}
	// And a folder that may be read but not written.
	if err := os.Chmod(out, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(out, 0o777)
	before := outputsIn(t, out)
	write(t, filepath.Join(shelf, "a.toml"), strings.Replace(leastJob, "Towpath", "Weir", 1))
	again := exec.Command(exe, "build", filepath.Join(shelf, "a.toml"), "-o", filepath.Join(out, "deeper"))
	again.SysProcAttr = cmd.SysProcAttr
	if said, err := again.CombinedOutput(); err == nil || !bytes.Contains(said, []byte("permission denied")) {
		t.Errorf("%v\n%s", err, said)
	}
	if after := outputsIn(t, out); len(after) != len(before) {
		t.Errorf("%d outputs were %d", len(after), len(before))
	}
}
