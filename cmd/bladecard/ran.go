package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"sync"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/calc/reorder"
	"bladecard/cmd/bladecard/internal/disk"
)

// logs are the press logs of a call, each read once, for the jobs of all shops and on all cores.
type logs struct {
	mu    sync.Mutex
	known map[string]func() (*reorder.Log, error)
}

// read reads the press log at a path for its last runs. Errors in it are job.Errors.
func (l *logs) read(path string) (*reorder.Log, error) {
	key, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	l.mu.Lock()
	read, known := l.known[key]
	if !known {
		if len(l.known) >= mostFloors || l.known == nil {
			l.known = map[string]func() (*reorder.Log, error){}
		}
		read = sync.OnceValues(func() (*reorder.Log, error) {
			src, err := disk.Read(path, presslog.MaxBytes)
			if err != nil {
				return nil, err
			}
			g, errs := reorder.Read(path, src, file.LogText)
			return g, errs.Err()
		})
		l.known[key] = read
	}
	l.mu.Unlock()
	return read()
}

// logOf reads the press log of a shop; nil where its file names none.
func (c *call) logOf(shop *job.Shop) (*reorder.Log, error) {
	path := besideShop(shop, shop.Log)
	if path == "" {
		return nil, nil
	}
	g, err := c.logs.read(path)
	var faults job.Errors
	switch {
	case errors.Is(err, fs.ErrNotExist):
		accepted := "a press log is accepted, which bladecard log JOB -o " + path + " starts"
		return nil, job.Errors{{Pos: job.Pos{File: shop.File}, Key: "log", Wrong: "there is no file " + path, Accepted: accepted}}
	case err != nil && !errors.As(err, &faults):
		return nil, fmt.Errorf("%s: log: %w", shop.File, err)
	}
	return g, err
}
