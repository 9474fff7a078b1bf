package main

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"unicode"

	"bladecard/calc/job"
	"bladecard/calc/orders"
	"bladecard/cmd/bladecard/internal/disk"
)

// newFrom writes a job file of each order. One that has errors, or whose file is another's or was edited, is left out
// and does not stop the others.
func (c *call) newFrom(path, dir string) int {
	name, src, err := c.read(path, orders.MaxBytes)
	if err != nil {
		return c.fail(err)
	}
	list, errs := orders.Read(name, src)
	if len(errs) > 0 {
		return c.jobErrors(errs)
	}
	if len(list) == 0 {
		fmt.Fprintf(c.stderr, "error: %s: holds no order; rows below the header are accepted\n", name)
		return exitJob
	}
	worst, written := exitDone, 0
	names := map[string]string{}
	for _, o := range list {
		title := strings.TrimSpace(o.Number + " " + o.Title)
		file := fileOf(o)
		if other, taken := names[file]; taken {
			at, _ := o.Place(0)
			worst = max(worst, c.jobErrors(job.Errors{{Pos: at, Key: "job", Wrong: fmt.Sprintf("%q and %q both give the file %s", other, title, file), Accepted: "numbers that differ in letters or digits"}}))
			continue
		}
		names[file] = title
		full := filepath.Join(dir, file)
		_, err := c.plan(full, o.TOML)
		var wrong job.Errors
		switch {
		case errors.As(err, &wrong):
			worst = max(worst, c.jobErrors(atCells(o, full, wrong)))
			continue
		case err != nil:
			worst = max(worst, c.failed(err))
			continue
		}
		if err := c.writer(path).Files(dir, disk.Claim{File: disk.File{Name: file, Data: o.TOML}}); err != nil {
			worst = max(worst, c.fail(err))
			continue
		}
		written++
		c.wrote(full)
	}
	if !c.quiet {
		fmt.Fprintf(c.stderr, "%d of %d orders written\n", written, len(list))
	}
	return worst
}

// atCells moves the errors of a job file to the cells of the orders that they come from. What is wrong with another
// file, the shop's, stays where it is.
func atCells(o orders.Order, file string, errs job.Errors) job.Errors {
	out := make(job.Errors, len(errs))
	for i, e := range errs {
		if e.File == file || e.File == "" {
			at, column := o.Place(e.Line)
			e.Pos = at
			if column != "" {
				e.Key, e.Where = column, ""
			}
		}
		out[i] = e
	}
	return out
}

// fileOf is the name of an order's file: its number, or its title where it has none, in small letters and digits.
func fileOf(o orders.Order) string {
	words := strings.FieldsFunc(strings.ToLower(cmp.Or(o.Number, o.Title)), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if len(words) == 0 {
		words = []string{"order"}
	}
	return strings.Join(words, "-") + ".toml"
}
