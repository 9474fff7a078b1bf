package disk

import (
	"io"
	"os"
	"path/filepath"
	"slices"
)

// Writer writes the files of a command that are not a build's.
type Writer struct {
	Rules
	Stdout  io.Writer        // for the name -
	Waiting func(dir string) // is told where another process is at work

	written []Input
}

// Stdout is the name of a file that stands for standard output.
const Stdout = "-"

// File writes one file at its own path; - is standard output.
func (w *Writer) File(path string, data []byte) error {
	if path == Stdout {
		_, err := w.Stdout.Write(data)
		return err
	}
	if err := w.couldBeFile(path); err != nil {
		return err
	}
	return w.Files(filepath.Dir(path), Claim{File: File{filepath.Base(path), data}})
}

// couldBeFile refuses a path that no file can have, before anything is made for it.
func (w *Writer) couldBeFile(path string) error {
	if os.IsPathSeparator(path[len(path)-1]) {
		return &Refusal{Path: path, Why: "is the name of a folder, not of a file", Hint: "name a file in it"}
	}
	info, err := os.Lstat(path)
	if err != nil {
		return nil // what is wrong with it shows when it is written
	}
	if err := w.NotInput(path); err != nil {
		return err
	}
	return notPlain(path, info)
}

// NotInput refuses a file that the command reads or has written, by whatever name.
func (w *Writer) NotInput(path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return nil
	}
	return w.all().notInput(path, info)
}

// all are the rules with what this call has written.
func (w *Writer) all() Rules {
	r := w.Rules
	r.Inputs = func() []Input {
		if w.Rules.Inputs == nil {
			return w.written
		}
		return slices.Concat(w.Rules.Inputs(), w.written)
	}
	return r
}

// Files writes files below a folder: all of them, or none where one may not be written.
func (w *Writer) Files(dir string, claims ...Claim) error {
	f, err := Open(dir, func() { w.Waiting(dir) })
	if err != nil {
		return err
	}
	defer f.Close()
	var records, files []File
	for _, c := range claims {
		v, err := f.May(c, w.all())
		if err != nil {
			return err
		}
		if v.Keep {
			continue
		}
		rec := NewRecord("")
		if c.Job != "" {
			if rec.Job, err = From(dir, c.Job); err != nil {
				return err
			}
		}
		rec.Outputs = []Output{{Name: c.Name, Sum: Sum(c.Data), Was: v.Was}}
		data, err := Encode(rec)
		if err != nil {
			return err
		}
		records = append(records, File{madeRecord(c.Name), data})
		files = append(files, c.File)
	}
	if err := f.Write(append(records, files...)...); err != nil {
		return err
	}
	for _, c := range claims {
		if info, err := f.root.Stat(filepath.FromSlash(c.Name)); err == nil {
			w.written = append(w.written, Input{f.Path(c.Name), info, wroteFor(c.Job)})
		}
	}
	return nil
}

func wroteFor(job string) string {
	if job == "" {
		return "written"
	}
	return "written for " + job
}
