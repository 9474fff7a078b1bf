package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile fills a file and writes it whole or not at all. Nothing is touched where fill fails.
func writeFile(path string, fill func(io.Writer) error) error {
	var data bytes.Buffer
	if err := fill(&data); err != nil {
		return err
	}
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	temp := fmt.Sprintf(".bladecard-%d", os.Getpid())
	if err := place(rooted{root}, placed{temp, filepath.Base(path), data.Bytes()}); err != nil {
		return fileError(path, err)
	}
	return nil
}

// folder is the part of os.Root that writing needs, so that a test can stand in a disk that fails.
type folder interface {
	create(name string) (openFile, error)
	Rename(from, to string) error
	Remove(name string) error
}

type openFile interface {
	io.Writer
	Sync() error
	Close() error
}

type rooted struct{ *os.Root }

func (r rooted) create(name string) (openFile, error) {
	return r.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
}

// placed is a file to be written: its name, the temporary one, and its bytes.
type placed struct {
	temp, name string
	data       []byte
}

// place writes files under temporary names, syncs them and renames them in their order: every name
// is either what it was or all of its data, and none is touched before all of the data are on disk.
func place(in folder, files ...placed) (err error) {
	open := make([]openFile, 0, len(files))
	renamed := 0
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
		if errors.Is(err, fs.ErrExist) { // of a process that was killed, with the same number
			if err = in.Remove(p.temp); err == nil {
				f, err = in.create(p.temp)
			}
		}
		if err != nil {
			return err
		}
		open = append(open, f)
		if _, err := f.Write(p.data); err != nil {
			return err
		}
	}
	for _, f := range open { // one after the other: the first takes the disk most of the others' work too
		if err := f.Sync(); err != nil {
			return err
		}
	}
	for len(open) > 0 {
		f := open[0]
		open = open[1:]
		if err := f.Close(); err != nil {
			return err
		}
	}
	for _, p := range files {
		if err := in.Rename(p.temp, p.name); err != nil {
			return err
		}
		renamed++
	}
	return nil
}

// sumOf tells files apart by their bytes.
func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
