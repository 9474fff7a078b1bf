package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"sync"

	"bladecard/calc/file"
	"bladecard/cmd/bladecard/internal/disk"
)

// writer writes the files of a call. It leaves alone what the call reads: the named files and
// --shop, their shops, logos and press logs.
func (c *call) writer(reads ...string) *disk.Writer {
	return &disk.Writer{
		Rules: disk.Rules{Force: c.force, Inputs: sync.OnceValue(func() []disk.Input {
			var all []string
			for _, path := range append(reads, c.shop) {
				all = append(append(all, path), c.behind(path)...)
			}
			return disk.Inputs(all...)
		})},
		Stdout:  c.data,
		Waiting: func(dir string) { fmt.Fprintf(c.stderr, "waiting: another bladecard is at work in %s\n", dir) },
	}
}

// behind are the files that a job or a shop file needs: a job's shop, a shop's logo and press log.
func (c *call) behind(path string) []string {
	src, err := disk.Read(path, file.MaxFileBytes)
	if err != nil {
		return nil
	}
	use := shopUse{path: path}
	if !file.IsShop(src) {
		j, _ := file.DecodeJob(path, src)
		if j == nil {
			return nil
		}
		use = c.shopOf(path, j.ShopPath)
	}
	f, err := c.floor(use)
	if err != nil {
		return []string{use.path}
	}
	needs := []string{use.path, besideShop(f.shop, f.shop.Logo)}
	if !c.startsLog {
		needs = append(needs, besideShop(f.shop, f.shop.Log))
	}
	return needs
}

// wrote names a file that was written.
func (c *call) wrote(path string) {
	if !c.quiet && path != disk.Stdout {
		fmt.Fprintln(c.stdout, path)
	}
}

// put writes what fill writes to one file, and names it; - is standard output.
func (c *call) put(to *disk.Writer, path string, fill func(io.Writer) error) error {
	data, err := filled(fill)
	if err == nil {
		err = to.File(path, data)
	}
	if err == nil {
		c.wrote(path)
	}
	return err
}

func filled(fill func(io.Writer) error) ([]byte, error) {
	var data bytes.Buffer
	err := fill(&data)
	return data.Bytes(), err
}

// destination is where a command puts the PDF of each of its jobs.
type destination struct {
	*disk.Writer
	path string
	file bool // the path is that of one PDF, not of a folder
}

// declare declares -o.
func (d *destination) declare(f *flags) {
	f.value("o", "DIR", func(text string) error {
		d.file = text == disk.Stdout || namesFile(text)
		if text == "" || d.file && text != disk.Stdout && !strings.EqualFold(filepath.Ext(text), ".pdf") {
			return errors.New("not a folder or a PDF; accepted: a folder, in which each job gets its own PDF, a file that ends in .pdf, or -")
		}
		d.path = text
		return nil
	})
}

// print writes the PDF of every job of the arguments.
func (c *call) print(to *destination, suffix string, fill func(io.Writer, loaded) error) int {
	to.Writer = c.writer(c.args...)
	switch {
	case to.path == "":
		return c.wrong("-o is missing: the folder to write to")
	case to.file && len(c.args) > 1:
		return c.wrong(fmt.Sprintf("-o %s is one file, and each of %d jobs makes its own; a folder is wanted", to.path, len(c.args)))
	}
	return c.each(func(l loaded) int {
		c.tellShop(l.use, l.voice)
		data, err := filled(func(w io.Writer) error { return fill(w, l) })
		if err == nil {
			err = to.put(c, l.path, suffix, data)
		}
		return c.failed(err)
	})
}

// put writes the PDF of a job: in a folder under the name of the job file with the suffix.
func (d *destination) put(c *call, job, suffix string, data []byte) error {
	path, claim := d.path, disk.Claim{File: disk.File{Name: jobName(job) + suffix, Data: data}}
	var err error
	if d.file {
		err = d.File(path, data)
	} else {
		path = filepath.Join(path, claim.Name)
		if job != stdinName {
			claim.Job = job
		}
		err = d.Files(d.path, claim)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", job, err)
	}
	c.wrote(path)
	return nil
}

// jobName is the name of a job file without its ending.
func jobName(path string) string {
	if path == stdinName {
		return "stdin"
	}
	return strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
}
