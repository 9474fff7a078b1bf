package disk

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// store is the part of os.Root that writing needs, so that a test can stand in a disk that fails.
type store interface {
	create(name string) (file, error)
	Rename(from, to string) error
	Remove(name string) error
}

type file interface {
	io.Writer
	Sync() error
	Close() error
}

type rooted struct{ *os.Root }

func (r rooted) create(name string) (file, error) {
	return r.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
}

// placed is a file to be written: its name, the temporary one, and its bytes.
type placed struct {
	temp, name string
	data       []byte
}

// place writes files under temporary names, syncs them and renames them in their order: every name
// is either what it was or all of its data, and none is touched before all of the data are on disk.
// An error carries the name of the file that could not be written.
func place(in store, files ...placed) (err error) {
	open := make([]file, 0, len(files))
	renamed := 0
	failed := func(p placed, err error) error { return &fs.PathError{Op: "write", Path: p.name, Err: bare(err)} }
	defer func() {
		if err == nil {
			return
		}
		for _, f := range open {
			f.Close()
		}
		for _, p := range files[renamed:] {
			in.Remove(p.temp)
		}
	}()
	for _, p := range files {
		f, err := in.create(p.temp)
		if errors.Is(err, fs.ErrExist) { // a process that was killed left it
			if err = in.Remove(p.temp); err == nil {
				f, err = in.create(p.temp)
			}
		}
		if err != nil {
			return failed(p, err)
		}
		open = append(open, f)
		if _, err := f.Write(p.data); err != nil {
			return failed(p, err)
		}
	}
	for i, f := range open { // one after the other: the first takes the disk most of the others' work too
		if err := f.Sync(); err != nil {
			return failed(files[i], err)
		}
	}
	for i := 0; len(open) > 0; i++ {
		f := open[0]
		open = open[1:]
		if err := f.Close(); err != nil {
			return failed(files[i], err)
		}
	}
	for _, p := range files {
		if err := in.Rename(p.temp, p.name); err != nil {
			return failed(p, err)
		}
		renamed++
	}
	return nil
}
