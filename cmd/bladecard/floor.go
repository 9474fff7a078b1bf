package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/render/page"
	"bladecard/render/say"
)

// floor is a shop made ready for its jobs. Jobs of one call that name the same shop file share it.
type floor struct {
	shop    *job.Shop
	planner *choose.Planner
	voice   *say.Voice
	path    string // of the shop file; empty: the built-in shop
	sum     string // of the file's bytes

	code int    // not exitDone: the shop cannot be used
	said []byte // what was said of it then

	logoRead bool
	logo     *page.Picture
	logoErr  error
}

// mostFloors is how many shops a call keeps ready.
const mostFloors = 16

// floor readies the shop that a job file names, from the job file's folder, or the built-in one.
// What is wrong with it is printed for every job that names it.
func (c *call) floor(jobPath, shopPath string) (*floor, int) {
	if shopPath != "" && !filepath.IsAbs(shopPath) {
		shopPath = filepath.Join(filepath.Dir(jobPath), filepath.FromSlash(shopPath))
	}
	f, known := c.floors[shopPath]
	if !known {
		if len(c.floors) >= mostFloors || c.floors == nil {
			c.floors = map[string]*floor{}
		}
		var said bytes.Buffer
		quiet := *c
		quiet.stderr = &said
		f = quiet.newFloor(shopPath)
		f.said = said.Bytes()
		c.floors[shopPath] = f
	}
	c.stderr.Write(f.said)
	return f, f.code
}

func (c *call) newFloor(path string) *floor {
	f := &floor{path: path, shop: file.BuiltInShop()}
	if path != "" {
		src, code := c.read(path)
		if code != exitDone {
			f.code = code
			return f
		}
		f.sum = sumOf(src)
		var errs job.Errors
		if f.shop, errs = file.DecodeShop(path, src); len(errs) > 0 {
			f.code = c.jobErrors(errs)
			return f
		}
	}
	if f.voice, f.code = c.voiceOf(f.shop); f.code == exitDone {
		f.planner = choose.NewPlanner(f.shop)
		f.planner.PlanOn(c.cores)
	}
	return f
}

// voiceOf is the voice of a shop's paper: its units, and its language unless --lang names one.
func (c *call) voiceOf(shop *job.Shop) (*say.Voice, int) {
	language := shop.Language
	if c.lang != "" {
		language = c.lang
	}
	voice, err := say.New(language, shop.Units)
	if err != nil {
		return nil, c.jobErrors(job.Errors{{Pos: job.Pos{File: shop.File}, Key: "language", Wrong: err.Error()}})
	}
	return voice, exitDone
}

// picture is the shop's logo, read once; nil where it has none.
func (f *floor) picture() (*page.Picture, error) {
	if !f.logoRead {
		f.logoRead = true
		f.logo, f.logoErr = readLogo(f.shop)
	}
	return f.logo, f.logoErr
}

// logoPath is where the logo of a shop lies; empty where it has none.
func logoPath(shop *job.Shop) string {
	path := filepath.FromSlash(shop.Logo)
	if path == "" || filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(shop.File), path)
}

// readLogo reads the shop's picture. An error of the picture itself is a job.Errors.
func readLogo(shop *job.Shop) (*page.Picture, error) {
	path := logoPath(shop)
	if path == "" {
		return nil, nil
	}
	data, err := readFile(path, page.MaxImageBytes)
	if err != nil {
		return nil, fmt.Errorf("%s: logo: %w", shop.File, err)
	}
	p, err := page.ReadPicture(data)
	if err != nil {
		return nil, job.Errors{{Pos: job.Pos{File: shop.File}, Key: "logo", Wrong: err.Error(), Accepted: "a PNG or JPEG file"}}
	}
	return p, nil
}

// failed prints an error of a job's documents and gives its code.
func (c *call) failed(err error) int {
	var errs job.Errors
	if errors.As(err, &errs) {
		return c.jobErrors(errs)
	}
	return c.fail(err)
}
