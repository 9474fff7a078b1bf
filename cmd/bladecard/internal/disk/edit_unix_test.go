//go:build unix

package disk

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A file of the user's own is edited through a link, and keeps rights and owner.
func TestEditKeeps(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "real", "shop.toml"), filepath.Join(dir, "shop.toml")
	put(t, real, "old")
	if err := os.Symlink(filepath.Join("real", "shop.toml"), link); err != nil {
		t.Fatal(err)
	}
	uid := os.Getuid()
	if uid == 0 { // only root can give a file away
		uid = 65534
		if err := os.Chown(real, uid, uid); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(real, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := writer(false).Edit(link, []byte("old"), []byte("new")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(real)
	if err != nil || read(t, real) != "new" || info.Mode().Perm() != 0o640 || int(info.Sys().(*syscall.Stat_t).Uid) != uid {
		t.Errorf("%v, %v", info, err)
	}
	if to, err := os.Readlink(link); to != filepath.Join("real", "shop.toml") {
		t.Error(to, err)
	}
	if left := standing(t, filepath.Dir(real)); len(left) != 1 {
		t.Errorf("left beside it: %v", left)
	}
}

// A file with two names, a read-only one, and one that changed meanwhile stay as they are.
func TestEditRefuses(t *testing.T) {
	for name, spoil := range map[string]func(path string) error{
		"second name":  func(path string) error { return os.Link(path, path+"2") },
		"is read-only": func(path string) error { return os.Chmod(path, 0o444) },
		"was changed by somebody else": func(path string) error {
			return os.WriteFile(path, []byte("other"), 0o600)
		},
		"no such file": os.Remove,
		"is a folder": func(path string) error {
			os.Remove(path)
			return os.Mkdir(path, 0o700)
		},
	} {
		path := filepath.Join(t.TempDir(), "shop.toml")
		put(t, path, "old")
		if err := spoil(path); err != nil {
			t.Fatal(err)
		}
		before := standing(t, filepath.Dir(path))
		err := writer(true).Edit(path, []byte("old"), []byte("new"))
		if err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
		for file, text := range standing(t, filepath.Dir(path)) {
			if before[file] != text || text == "new" {
				t.Errorf("%s: %s holds %q", name, file, text)
			}
		}
	}
}
