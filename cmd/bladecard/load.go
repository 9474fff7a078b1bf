package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/page"
	"bladecard/render/say"
	"bladecard/templates"
)

// loaded is a job with its plan and the voice to say it in.
type loaded struct {
	path  string
	job   *job.Job
	plan  *plan.Plan
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
	j, errs := job.DecodeJob(path, src)
	if j == nil {
		return loaded{}, c.jobErrors(errs)
	}
	shop, code := c.shop(path, j.ShopPath)
	if code != exitDone {
		c.jobErrors(errs)
		return loaded{}, code
	}
	if errs = append(errs, job.Resolve(j, shop)...); len(errs) > 0 { // every error of the file at once
		errs.Sort()
		return loaded{}, c.jobErrors(errs)
	}
	language := shop.Language
	if c.lang != "" {
		language = c.lang
	}
	voice, err := say.New(language, shop.Units)
	if err != nil {
		return loaded{}, c.jobErrors(job.Errors{{Pos: job.Pos{File: shop.File}, Key: "language", Wrong: err.Error()}})
	}
	p, errs := plan.Make(j, shop)
	if len(errs) > 0 {
		return loaded{}, c.jobErrors(errs)
	}
	voice.Fill(p)
	return loaded{path: path, job: j, plan: p, shop: shop, voice: voice}, exitDone
}

// shop reads the shop that a job file names, from the job file's folder, or the built-in one.
func (c *call) shop(jobPath, shopPath string) (*job.Shop, int) {
	if shopPath == "" {
		return job.BuiltInShop(), exitDone
	}
	if !filepath.IsAbs(shopPath) {
		shopPath = filepath.Join(filepath.Dir(jobPath), filepath.FromSlash(shopPath))
	}
	src, code := c.read(shopPath)
	if code != exitDone {
		return nil, code
	}
	shop, errs := job.DecodeShop(shopPath, src)
	if len(errs) > 0 {
		return nil, c.jobErrors(errs)
	}
	return shop, exitDone
}

// read reads a file that is not larger than a job file may be.
func (c *call) read(path string) ([]byte, int) {
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		return nil, c.fail(fmt.Errorf("%s: is a folder; a job file is wanted", path))
	}
	if err == nil && info.Size() > job.MaxFileBytes {
		return nil, c.fail(fmt.Errorf("%s: has %d bytes; at most %d are read", path, info.Size(), job.MaxFileBytes))
	}
	var src []byte
	if err == nil {
		src, err = os.ReadFile(path)
	}
	if err != nil {
		var pe *fs.PathError
		if errors.As(err, &pe) {
			err = fmt.Errorf("%s: %w", path, pe.Err)
		}
		return nil, c.fail(err)
	}
	return src, exitDone
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

// logo reads the shop's picture; nil where it has none. An error is printed at its key's file.
func (c *call) logo(shop *job.Shop) (*page.Picture, int) {
	if shop.Logo == "" {
		return nil, exitDone
	}
	path := filepath.FromSlash(shop.Logo)
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(shop.File), path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, c.fail(fmt.Errorf("%s: logo: %w", shop.File, err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, page.MaxImageBytes+1))
	if err != nil {
		return nil, c.fail(fmt.Errorf("%s: logo: %w", shop.File, err))
	}
	p, err := page.ReadPicture(data)
	if err != nil {
		return nil, c.jobErrors(job.Errors{{Pos: job.Pos{File: shop.File}, Key: "logo", Wrong: err.Error(), Accepted: "a PNG or JPEG file"}})
	}
	return p, exitDone
}
