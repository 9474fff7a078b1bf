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
	if err := place(rooted{root}, temp, filepath.Base(path), data.Bytes()); err != nil {
		return fileError(path, err)
	}
	return nil
}

// folder is the part of os.Root that writing needs, so that a test can stand in a disk that fails.
type folder interface {
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

// place writes a file under a temporary name, syncs it and renames it: name is either what it was
// or all of data.
func place(in folder, temp, name string, data []byte) (err error) {
	f, err := in.create(temp)
	if errors.Is(err, fs.ErrExist) { // of a process that was killed, with the same number
		if err = in.Remove(temp); err == nil {
			f, err = in.create(temp)
		}
	}
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			in.Remove(temp)
		}
	}()
	if _, err = f.Write(data); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	return in.Rename(temp, name)
}

// sumOf tells files apart by their bytes.
func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
