package build

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"bladecard/cmd/bladecard/internal/disk"
)

// source is a file that may be a job's.
type source struct {
	path string
	name string // of its outputs: folders below the output folder, slashes between
	err  error  // why a file or folder cannot be looked at

	rivals []string // files found before whose outputs would have the same name
}

// find hands on every TOML file under the paths, in the order of their names, until yes says no.
// Links to folders are not followed.
func find(paths []string, yes func(source) bool) {
	for _, path := range paths {
		info, err := os.Stat(path)
		switch {
		case err != nil:
			if !yes(source{path: path, err: disk.Named(path, err)}) {
				return
			}
		case info.IsDir():
			if !findIn(path, yes) {
				return
			}
		default:
			if !yes(sourceAt(path, filepath.Base(path))) {
				return
			}
		}
	}
}

// sourceAt is a file whose outputs are named after rel. A name that a record or a terminal cannot
// hold is an error.
func sourceAt(path, rel string) source {
	s := source{path: path, name: filepath.ToSlash(strings.TrimSuffix(rel, filepath.Ext(rel)))}
	switch {
	case !utf8.ValidString(path):
		s.err = fmt.Errorf("%q: has a name that is not UTF-8; give it another", path)
	case strings.ContainsFunc(path, unicode.IsControl):
		s.err = fmt.Errorf("%q: has a control character in its name; give it another", path)
	}
	return s
}

// Find hands on every TOML file of a folder as find does, or why it cannot be looked at.
func Find(folder string, do func(path string, err error)) {
	findIn(folder, func(s source) bool { do(s.path, s.err); return true })
}

func findIn(folder string, yes func(source) bool) bool {
	more := true
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		hidden := path != folder && strings.HasPrefix(filepath.Base(path), ".")
		switch {
		case err != nil:
			more = yes(source{path: path, err: disk.Named(path, err)})
			if e != nil && e.IsDir() && more {
				return fs.SkipDir
			}
		case e.IsDir() && hidden:
			return fs.SkipDir
		case e.IsDir() || hidden || !strings.EqualFold(filepath.Ext(path), ".toml") || !leadsToFile(path, e):
		default:
			rel, err := filepath.Rel(folder, path)
			if err != nil {
				more = yes(source{path: path, err: fmt.Errorf("%s: %w", path, err)})
			} else {
				more = yes(sourceAt(path, rel))
			}
		}
		if !more {
			return fs.SkipAll
		}
		return nil
	})
	return more && err == nil
}

// leadsToFile tells whether an entry may be a file, which a link to a folder may not. Any other link, or a device,
// is refused when it is read.
func leadsToFile(path string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return true
	}
	info, err := os.Stat(path)
	return err != nil || !info.IsDir()
}

// apart leaves out a file that was found before, and tells of each file which others before it would
// have outputs of the same name. Names that differ in capitals only count as the same, since some
// disks do not tell them apart: a.toml beside a.TOML, or A.toml.
func apart(yes func(source) bool) func(source) bool {
	seen := map[string][]string{}
	return func(s source) bool {
		if s.err != nil {
			return yes(s)
		}
		key := strings.ToLower(s.name)
		for _, other := range seen[key] {
			if sameFile(other, s.path) {
				return true
			}
		}
		s.rivals = seen[key]
		seen[key] = append(seen[key][:len(s.rivals):len(s.rivals)], s.path)
		return yes(s)
	}
}

func sameFile(a, b string) bool {
	x, err1 := os.Stat(a)
	y, err2 := os.Stat(b)
	return err1 == nil && err2 == nil && os.SameFile(x, y)
}
