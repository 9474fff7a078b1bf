package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"
)

// source is a file that may be a job's.
type source struct {
	path string
	name string // of its outputs: folders below the output folder, slashes between
	err  error  // why a file or folder cannot be looked at
}

// find hands on every TOML file under the paths once, in the order of their names, until yes says
// no. Links to folders are not followed. Of two files whose outputs would have the same name the
// second comes as an error.
func find(paths []string, yes func(source) bool) {
	if len(paths) > 1 { // below one path no name comes twice
		yes = apartly(yes)
	}
	for _, path := range paths {
		info, err := os.Stat(path)
		if err != nil {
			if !yes(source{path: path, err: fileError(path, err)}) {
				return
			}
			continue
		}
		if !info.IsDir() {
			if !yes(source{path: path, name: outputName(filepath.Base(path))}) {
				return
			}
			continue
		}
		if !findIn(path, yes) {
			return
		}
	}
}

func findIn(folder string, yes func(source) bool) bool {
	more := true
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		hidden := path != folder && strings.HasPrefix(filepath.Base(path), ".")
		switch {
		case err != nil:
			more = yes(source{path: path, err: fileError(path, err)})
			if e != nil && e.IsDir() && more {
				return fs.SkipDir
			}
		case e.IsDir() && hidden:
			return fs.SkipDir
		case e.IsDir() || hidden || !strings.EqualFold(filepath.Ext(path), ".toml") || !leadsToFile(path, e):
		default:
			rel, err := filepath.Rel(folder, path)
			switch {
			case err != nil:
				err = fmt.Errorf("%s: %w", path, err)
			case strings.ContainsFunc(rel, unicode.IsControl):
				err = fmt.Errorf("%q: has a control character in its name; give it another", path)
			}
			more = yes(source{path: path, name: outputName(rel), err: err})
		}
		if !more {
			return fs.SkipAll
		}
		return nil
	})
	return more && err == nil
}

// leadsToFile leaves out links to folders; any other link, or device, is an error when it is read.
func leadsToFile(path string, e fs.DirEntry) bool {
	if e.Type()&fs.ModeSymlink == 0 {
		return true
	}
	info, err := os.Stat(path)
	return err != nil || !info.IsDir()
}

// outputName is the path of a job below its folder without its ending, as in a record.
func outputName(rel string) string {
	return filepath.ToSlash(strings.TrimSuffix(rel, filepath.Ext(rel)))
}

// apartly keeps files apart whose outputs would have the same name, and leaves out what it has seen.
func apartly(yes func(source) bool) func(source) bool {
	seen := map[string]string{}
	return func(s source) bool {
		if s.err != nil {
			return yes(s)
		}
		key := strings.ToLower(s.name) // some disks do not tell capitals
		other, taken := seen[key]
		switch {
		case !taken:
			seen[key] = s.path
		case sameFile(other, s.path):
			return true
		default:
			s.err = fmt.Errorf("%s and %s would both be written to %s-cards.pdf; give them different names, or write to different folders", other, s.path, s.name)
		}
		return yes(s)
	}
}

func sameFile(a, b string) bool {
	x, err1 := os.Stat(a)
	y, err2 := os.Stat(b)
	return err1 == nil && err2 == nil && os.SameFile(x, y)
}
