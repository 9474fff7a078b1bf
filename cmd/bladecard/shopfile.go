package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/say"
)

// shopName is what a shop file is called that is found without being named.
const shopName = "shop.toml"

// shopUse is the shop file of a job and why it is that one: see the plan.ShopFrom constants. The
// built-in shop has no path.
type shopUse struct{ path, from string }

// shopOf finds the shop of a job: the one of --shop, else the one that the job file names, else the
// nearest shop.toml in the job file's folder or above it, else the built-in one.
func (c *call) shopOf(jobPath, named string) shopUse {
	switch {
	case c.shop != "":
		return shopUse{c.shop, plan.ShopOfFlag}
	case filepath.IsAbs(named):
		return shopUse{named, plan.ShopOfJob}
	case named != "":
		return shopUse{filepath.Join(filepath.Dir(jobPath), filepath.FromSlash(named)), plan.ShopOfJob}
	}
	return nearestShop(jobPath)
}

// nearestShop looks for a shop file beside a file, then in each folder above. The file itself does
// not count.
func nearestShop(beside string) shopUse {
	for dir := filepath.Dir(beside); ; dir = filepath.Join(dir, "..") {
		path := filepath.Join(dir, shopName)
		if info, err := os.Lstat(path); err == nil && !info.IsDir() && path != filepath.Clean(beside) {
			return shopUse{path, plan.ShopFound}
		}
		if abs, err := filepath.Abs(dir); err != nil || filepath.Dir(abs) == abs {
			return shopUse{from: plan.ShopBuiltIn}
		}
	}
}

// file is the name of the shop file without folders, so that paper is the same wherever it is made;
// empty for the built-in shop.
func (u shopUse) file() string {
	if u.path == "" {
		return ""
	}
	return filepath.Base(u.path)
}

// say names the shop in words.
func (u shopUse) say(v *say.Voice) string { return v.T("shop."+u.from, "file", u.path) }

// tellShop prints, once for each, which shop a call takes.
func (c *call) tellShop(u shopUse, v *say.Voice) {
	c.tellOnce(v.T("shop.note", "shop", u.say(v)))
}

// tellOnce prints a line beside the figures, once a call.
func (c *call) tellOnce(line string) {
	if !c.quiet && !c.told[line] {
		c.told[line] = true
		fmt.Fprintln(c.stderr, line)
	}
}

// noteText tells beside the figures what must be known of them; nothing where the text is empty.
func (c *call) noteText(text string) {
	if text != "" && !c.quiet {
		fmt.Fprintf(c.stderr, "note: %s\n", text)
	}
}

// shopFault is what is wrong with the shop file of a job.
type shopFault struct {
	at  job.Pos // the job file, and where it names the shop
	use shopUse
	err error
	log bool // it is the press log of the shop
}

func (f *shopFault) Error() string { return f.err.Error() }
func (f *shopFault) Unwrap() error { return f.err }

// failedShop prints what is wrong with a shop file, once a call, and each time which job it stops.
func (c *call) failedShop(f *shopFault) {
	var errs job.Errors
	if !errors.As(f.err, &errs) {
		c.fail(fmt.Errorf("%s: shop: %w", f.at, f.err))
		return
	}
	which, key := "its shop file "+f.use.path, "faults of "+f.use.path
	if f.log {
		which, key = "the press log of its shop "+f.use.path, "faults of the log of "+f.use.path
	}
	if !c.told[key] {
		c.told[key] = true
		c.jobErrors(errs)
	}
	fmt.Fprintf(c.stderr, "error: %s: not computed, since %s has errors\n", f.at.File, which)
}
