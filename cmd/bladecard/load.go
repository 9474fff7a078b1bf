package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/say"
	"bladecard/templates"
)

// loaded is a job with its plan and the voice to say it in.
type loaded struct {
	path  string
	job   *job.Job
	plan  *plan.Plan
	floor *floor
	shop  *job.Shop
	voice *say.Voice
}

// load reads a job file and its shop and computes the plan. Errors of the files are printed,
// all of them; the code is then exitJob, or exitFile where a file could not be read.
func (c *call) load(path string) (loaded, int) {
	src, code := c.read(path)
	if code != exitDone {
		return loaded{}, code
	}
	return c.plan(path, src)
}

// plan is load for a job file that is read already.
func (c *call) plan(path string, src []byte) (loaded, int) {
	j, errs := file.DecodeJob(path, src)
	if j == nil {
		return loaded{}, c.jobErrors(errs)
	}
	f, code := c.floor(path, j.ShopPath)
	if code != exitDone {
		c.jobErrors(errs)
		return loaded{}, code
	}
	if errs = append(errs, job.Resolve(j, f.shop)...); len(errs) > 0 { // every error of the file at once
		errs.Sort()
		return loaded{}, c.jobErrors(errs)
	}
	p, errs := f.planner.Make(j)
	if len(errs) > 0 {
		return loaded{}, c.jobErrors(errs)
	}
	f.voice.Fill(p)
	return loaded{path: path, job: j, plan: p, floor: f, shop: f.shop, voice: f.voice}, exitDone
}

// read reads a file that is not larger than a job file may be.
func (c *call) read(path string) ([]byte, int) {
	src, err := readFile(path, file.MaxFileBytes)
	if err != nil {
		return nil, c.fail(err)
	}
	return src, exitDone
}

// readFile reads a plain file of at most so many bytes. A pipe or a device has no end that could
// be waited for.
func readFile(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fileError(path, err)
	case info.IsDir():
		return nil, fmt.Errorf("%s: is a folder; a file is wanted", path)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: is a pipe or a device; a file is wanted", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError(path, err)
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, fileError(path, err)
	}
	if int64(len(src)) > most {
		return nil, fmt.Errorf("%s: has %d bytes; at most %d are read", path, max(info.Size(), int64(len(src))), most)
	}
	return src, nil
}

// fileError names the file as the user did.
func fileError(path string, err error) error {
	var pe *fs.PathError
	var le *os.LinkError
	switch {
	case errors.As(err, &pe):
		err = pe.Err
	case errors.As(err, &le):
		err = le.Err
	}
	return fmt.Errorf("%s: %w", path, err)
}

func (c *call) jobErrors(errs job.Errors) int {
	for _, e := range errs {
		fmt.Fprintln(c.stderr, e.Error())
	}
	return exitJob
}

// language declares --lang, which every command that reads jobs takes.
func (c *call) language(fs *flag.FlagSet) {
	known := strings.Join(templates.Languages(), ", ")
	fs.Func("lang", "`CODE` of the language, one of "+known+"; left out: the shop's", func(code string) error {
		c.lang = code
		_, err := templates.Language(code)
		return err
	})
}

// each loads every job of the arguments and hands it on. One bad job does not stop the others;
// the code is the highest that came up.
func (c *call) each(do func(loaded) int) int {
	if len(c.args) == 0 {
		return c.wrong("no job file is named")
	}
	worst := exitDone
	for _, path := range c.args {
		l, code := c.load(path)
		if code == exitDone {
			code = do(l)
		}
		worst = max(worst, code)
	}
	return worst
}
