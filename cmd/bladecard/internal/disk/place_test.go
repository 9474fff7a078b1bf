package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

// badDisk is a folder on a disk that fails: at which call, and with what.
type badDisk struct {
	store
	fails string // create, write, sync, close, rename
	err   error
}

type failing struct {
	file
	d badDisk
}

func (d badDisk) create(name string) (file, error) {
	if d.fails == "create" {
		return nil, d.err
	}
	f, err := d.store.create(name)
	return failing{f, d}, err
}

func (d badDisk) Rename(from, to string) error {
	if d.fails == "rename" {
		return d.err
	}
	return d.store.Rename(from, to)
}

func (f failing) Write(b []byte) (int, error) {
	if f.d.fails == "write" {
		n, _ := f.file.Write(b[:len(b)/2])
		return n, f.d.err
	}
	return f.file.Write(b)
}

func (f failing) Sync() error {
	if f.d.fails == "sync" {
		return f.d.err
	}
	return f.file.Sync()
}

func (f failing) Close() error {
	err := f.file.Close()
	if f.d.fails == "close" {
		return f.d.err
	}
	return err
}

// A disk that fails at any step leaves the file as it was and nothing beside it.
func TestPlaceOnAFailingDisk(t *testing.T) {
	for _, fails := range []string{"create", "write", "sync", "close", "rename"} {
		for _, there := range []bool{true, false} {
			dir := t.TempDir()
			if there {
				if err := os.WriteFile(filepath.Join(dir, "a.pdf"), []byte("as it was"), 0o600); err != nil {
					t.Fatal(err)
				}
			}
			root, err := os.OpenRoot(dir)
			if err != nil {
				t.Fatal(err)
			}
			defer root.Close()
			full := fmt.Errorf("no space left on device")
			err = place(badDisk{rooted{root}, fails, full}, placed{"new 0", "b.pdf", []byte("beside it")}, placed{"new", "a.pdf", []byte("as it is to be")})
			var named *fs.PathError
			if !errors.Is(err, full) || !errors.As(err, &named) || named.Path != "b.pdf" {
				t.Errorf("%s: the error is %v", fails, err)
			}
			want := map[string]string{}
			if there {
				want["a.pdf"] = "as it was"
			}
			if have := standing(t, dir); fmt.Sprint(have) != fmt.Sprint(want) {
				t.Errorf("%s: the folder holds %v; %v is wanted", fails, have, want)
			}
		}
	}
}

// standing are the files below a folder with what is in them, and its folders with nothing.
func standing(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || path == dir {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		out[rel] = ""
		if e.Type().IsRegular() {
			data, err := os.ReadFile(path)
			out[rel] = string(data)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
