package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/cmd/bladecard/internal/build"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/say"
)

// The name of a job file that comes from standard input: on the command line, and in messages.
const (
	stdinArg  = "-"
	stdinName = "standard input"
)

// loaded is a job with its plan and the voice to say it in.
type loaded struct {
	path  string
	job   *job.Job
	plan  *plan.Plan
	floor *floor
	use   shopUse
	shop  *job.Shop
	voice *say.Voice
}

// load reads a job file and its shop and computes the plan. Where the files have errors, the error
// holds all of them: see failed.
func (c *call) load(path string) (loaded, error) {
	name, src, err := c.read(path, file.MaxFileBytes)
	if err != nil {
		return loaded{}, err
	}
	return c.plan(name, src)
}

// plan computes the plan of a job file that is read already.
func (c *call) plan(path string, src []byte) (loaded, error) {
	j, errs := file.DecodeJob(path, src)
	switch {
	case j == nil:
		_, _ = c.floor(c.shopOf(path, "")) // for its language alone
		return loaded{}, errs
	case errs != nil && file.IsShop(src):
		return loaded{}, job.Errors{{Pos: job.Pos{File: path}, Wrong: "this is a shop file", Accepted: "a job file is accepted, with a title and a location"}}
	}
	use, at := c.shopOf(path, j.ShopPath), job.Pos{File: path}
	if use.from == plan.ShopOfJob {
		at = j.Keys.Find("shop")
	}
	if use.path == filepath.Clean(path) {
		errs = append(errs, job.Error{Pos: at, Key: "shop", Wrong: "names the job file itself", Accepted: "a shop file is accepted"})
		errs.Sort()
		return loaded{use: use}, errs
	}
	f, err := c.floor(use)
	if err != nil {
		return loaded{use: use}, errors.Join(errs.Err(), &shopFault{at: at, use: use, err: err})
	}
	if errs = append(errs, job.Resolve(j, f.shop)...); len(errs) > 0 { // every error of the file at once
		errs.Sort()
		return loaded{use: use}, errs
	}
	p, errs := f.planner.Make(j)
	if len(errs) > 0 {
		return loaded{use: use}, errs
	}
	if !c.startsLog {
		ran, err := c.logOf(f.shop)
		if err != nil {
			return loaded{use: use}, &shopFault{at: at, use: use, err: err, log: true}
		}
		if ran != nil {
			ran.Fill(p, f.shop)
		}
	}
	p.ShopFrom, p.ShopFile = use.from, use.file()
	f.voice.Fill(p)
	return loaded{path: path, job: j, plan: p, floor: f, use: use, shop: f.shop, voice: f.voice}, nil
}

// read reads a file of at most so many bytes, or standard input, with its name for messages.
func (c *call) read(path string, most int64) (name string, src []byte, err error) {
	if path != stdinArg {
		src, err = disk.Read(path, most)
		return path, src, err
	}
	if c.stdin == nil {
		return stdinName, nil, fmt.Errorf("%s: was read already; it holds one file", stdinName)
	}
	src, err = disk.ReadAll(c.stdin, nil, stdinName, most)
	c.stdin = nil
	return stdinName, src, err
}

// failed prints what is wrong with a job or with its documents and returns the exit code, exitDone where nothing
// is wrong. Errors of a file are job.Errors, each with its place.
func (c *call) failed(err error) int {
	eachError(err, func(e error) {
		var errs job.Errors
		if shop, is := e.(*shopFault); is {
			c.failedShop(shop)
		} else if errors.As(e, &errs) {
			c.jobErrors(errs)
		} else {
			c.fail(e)
		}
	})
	return exitOf(err)
}

// eachError hands on the errors that errors.Join has put together.
func eachError(err error, do func(error)) {
	if several, is := err.(interface{ Unwrap() []error }); is {
		for _, e := range several.Unwrap() {
			eachError(e, do)
		}
	} else if err != nil {
		do(err)
	}
}

// exitOf is the exit code for an error: that of the worst where several are put together.
func exitOf(err error) int {
	code := exitDone
	eachError(err, func(e error) {
		if errs := (job.Errors)(nil); errors.As(e, &errs) {
			code = max(code, exitJob)
		} else {
			code = exitFile
		}
	})
	return code
}

func (c *call) jobErrors(errs job.Errors) int {
	for _, e := range errs {
		fmt.Fprintln(c.stderr, c.worded(e))
	}
	return exitJob
}

// each loads every job of the arguments and hands it on. One bad job does not stop the others;
// the code is the highest that came up.
func (c *call) each(do func(loaded) int) int {
	if len(c.args) == 0 {
		return c.wrong("no job file is named")
	}
	worst := exitDone
	for _, path := range c.args {
		l, err := c.load(path)
		if err != nil {
			worst = max(worst, c.failed(err))
			continue
		}
		worst = max(worst, do(l))
	}
	return worst
}

// eachFile hands on the files that the arguments name and the TOML files of the folders among them, or why one of
// those cannot be looked at.
func (c *call) eachFile(do func(path string, inFolder bool, err error)) {
	for _, arg := range c.args {
		if info, err := os.Stat(arg); arg == stdinArg || err != nil || !info.IsDir() {
			do(arg, false, nil)
			continue
		}
		build.Find(arg, func(path string, err error) { do(path, true, err) })
	}
}

// json prints a value as JSON on a line of its own.
func (c *call) json(v any) int {
	enc := json.NewEncoder(c.stdout)
	enc.SetEscapeHTML(false)
	return c.failed(enc.Encode(v))
}
