package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"sync"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/canvas"
	"bladecard/render/say"
)

// floor is a shop made ready for its jobs. Jobs of one call that have the same shop file share it.
type floor struct {
	shop    *job.Shop
	planner *choose.Planner
	voice   *say.Voice
	src     []byte // of the shop file; nil: the built-in shop
	sum     string // of src
	err     error  // why the shop cannot be used

	picture func() (*canvas.Picture, error) // the shop's logo, read once; nil where it has none
}

// mostFloors is how many shops a call keeps ready.
const mostFloors = 16

// floor readies a shop, once a call.
func (c *call) floor(use shopUse) (*floor, error) {
	f, known := c.floors[use.path]
	if !known {
		if len(c.floors) >= mostFloors || c.floors == nil {
			c.floors = map[string]*floor{}
		}
		f = &floor{}
		f.err = f.ready(c, use.path)
		c.floors[use.path] = f
	}
	if f.voice != nil {
		c.spoken = f.voice
	}
	return f, f.err
}

func (f *floor) ready(c *call, path string) (err error) {
	f.shop = file.BuiltInShop()
	if path != "" {
		if f.src, err = disk.Read(path, file.MaxFileBytes); err != nil {
			return err
		}
		f.sum = disk.Sum(f.src)
		var errs job.Errors
		f.shop, errs = file.DecodeShop(path, f.src)
		if code := cmp.Or(c.lang, file.LanguageOf(f.src)); errs != nil && code != "" {
			f.voice, _ = say.New(code, "") // for these errors; a code that is not known leaves English
		}
		switch {
		case errs != nil && file.IsJob(f.src):
			return job.Errors{{Pos: job.Pos{File: path}, Wrong: "this is a job file", Accepted: "a shop file is accepted, with racks, presses or a name"}}
		case errs != nil:
			return errs
		}
	}
	if f.voice, err = say.New(cmp.Or(c.lang, f.shop.Language), f.shop.Units); err != nil {
		return job.Errors{{Pos: job.Pos{File: f.shop.File}, Key: "language", Wrong: err.Error()}}
	}
	f.picture = sync.OnceValues(func() (*canvas.Picture, error) { return readLogo(f.shop) })
	f.planner = choose.NewPlanner(f.shop)
	f.planner.PlanOn(c.cores)
	return nil
}

// shopArg readies the shop file that an argument names, or else the nearest one upward from the
// file that it is wanted for.
func (c *call) shopArg(named []string, beside string) (*floor, shopUse, error) {
	use := nearestShop(beside)
	if len(named) > 0 {
		use = shopUse{named[0], plan.ShopOfFlag}
	}
	f, err := c.floor(use)
	return f, use, err
}

// oneShop readies the shop file that the arguments name, or else the nearest one, and says which it is.
func (c *call) oneShop() (f *floor, use shopUse, code int) {
	if len(c.args) > 1 {
		return nil, use, c.wrong(fmt.Sprintf("%d shop files are named; one is accepted", len(c.args)))
	}
	f, use, err := c.shopArg(c.args, ".")
	if err != nil {
		return nil, use, c.failed(err)
	}
	c.tellShop(use, f.voice)
	return f, use, exitDone
}

// besideShop is where a file lies that a shop file names; empty where it names none.
func besideShop(shop *job.Shop, named string) string {
	path := filepath.FromSlash(named)
	if path == "" || filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(filepath.Dir(shop.File), path)
}

// readLogo reads the shop's picture. An error of the picture itself is a job.Errors.
func readLogo(shop *job.Shop) (*canvas.Picture, error) {
	path := besideShop(shop, shop.Logo)
	if path == "" {
		return nil, nil
	}
	data, err := disk.Read(path, canvas.MaxImageBytes)
	if err != nil {
		return nil, fmt.Errorf("%s: logo: %w", shop.File, err)
	}
	p, err := canvas.ReadPicture(data)
	if err != nil {
		return nil, job.Errors{{Pos: job.Pos{File: shop.File}, Key: "logo", Wrong: err.Error(), Accepted: "a PNG or JPEG file"}}
	}
	return p, nil
}
