package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// writeFile writes a file whole or not at all: to a temporary file in the same folder, synced,
// then renamed over the name.
func writeFile(path string, fill func(io.Writer) error) (err error) {
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, ".bladecard-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if err := fill(f); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	if err := f.Chmod(0o644); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
