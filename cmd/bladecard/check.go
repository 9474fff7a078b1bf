package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/say"
)

var checkCommand = command{
	name: "check", args: "PATH...",
	run: check,
}

// What a file is.
const (
	kindJob  = "job"
	kindShop = "shop"
)

// checked is what check says of a file.
type checked struct {
	File     string    `json:"file"`
	Kind     string    `json:"kind,omitempty"` // job, shop; empty: it cannot be read
	Shop     string    `json:"shop,omitempty"` // the shop file of a job; empty: the built-in shop
	Errors   []fault   `json:"errors"`
	Warnings []warning `json:"warnings"`

	err   error
	use   shopUse
	voice *say.Voice
	shop  *job.Shop
	told  []string // the warnings in words, each once
	src   []byte   // of a job
	job   loaded
}

// fault is an error of a file as JSON.
type fault struct {
	Line     int    `json:"line,omitempty"`
	Column   int    `json:"column,omitempty"`
	Where    string `json:"where,omitempty"`
	Key      string `json:"key,omitempty"`
	Wrong    string `json:"wrong"`
	Accepted string `json:"accepted,omitempty"`
}

// warning is a warning of a plan with its place.
type warning struct {
	Code     string `json:"code"`
	Location string `json:"location,omitempty"`
	Screen   int    `json:"screen,omitempty"`
	Text     string `json:"text"`
}

func check(c *call) int {
	var asJSON, fix bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		f.yes(&asJSON, "json")
		f.yes(&fix, "fix")
		c.quietFlag(f)
	}); !ok {
		return code
	}
	if fix && asJSON {
		return c.wrong("--fix and --json together; one of them is accepted")
	}
	out := c.stdout
	if fix {
		out = c.stderr
	}
	if len(c.args) == 0 {
		return c.wrong("no file or folder is named")
	}
	worst, files := exitDone, 0
	c.eachFile(func(path string, _ bool, err error) {
		files++
		k := checked{File: path, Errors: []fault{}, Warnings: []warning{}, err: err}
		if err == nil {
			k = c.check(path)
		}
		if asJSON {
			worst = max(worst, exitOf(k.err), c.json(k.withFaults()))
		} else {
			worst = max(worst, c.tellChecked(out, k))
		}
		if fix && k.err == nil && k.Kind == kindJob {
			c.tellFix(k.File, k.src, k.job)
		}
	})
	if files == 0 {
		return c.fail(errors.New("there is no .toml file under the paths"))
	}
	return worst
}

// check judges a file as what it is.
func (c *call) check(path string) checked {
	k := checked{File: path, Errors: []fault{}, Warnings: []warning{}}
	var src []byte
	if k.File, src, k.err = c.read(path, file.MaxFileBytes); k.err != nil {
		return k
	}
	if file.IsShop(src) {
		k.Kind, k.use = kindShop, shopUse{path, plan.ShopOfFlag}
		f, err := c.floor(k.use)
		if k.err = err; err == nil {
			_, k.err = f.picture()
			_, wrong := c.logOf(f.shop)
			k.err = errors.Join(k.err, wrong)
			k.voice, k.shop = f.voice, f.shop
		}
		return k
	}
	k.Kind = kindJob
	l, err := c.plan(k.File, src)
	k.use, k.voice, k.shop, k.Shop, k.src, k.job = l.use, l.voice, l.shop, l.use.path, src, l
	if err == nil {
		_, err = l.floor.picture()
		if err != nil {
			err = &shopFault{at: job.Pos{File: k.File}, use: l.use, err: err}
		}
		k.Warnings = warningsOf(l.plan)
		for _, w := range say.Tell(l.plan.Warnings, l.plan.Locations...) {
			k.told = append(k.told, l.voice.Tell(w, l.called))
		}
	}
	k.err = err
	return k
}

// called names a location as the errors of files do.
func (l loaded) called(location string) string {
	for i, x := range l.job.Locations {
		if x.Name == location && x.Name == job.Unnamed(i) {
			return l.voice.Location(location)
		}
	}
	return l.voice.T("check.location", "location", location)
}

// warningsOf are all warnings of a plan, with their places.
func warningsOf(p *plan.Plan) []warning {
	out := []warning{}
	add := func(location string, screen int, list []plan.Warning) {
		for _, w := range list {
			out = append(out, warning{w.Code, location, screen, w.Text})
		}
	}
	add("", 0, p.Warnings)
	for _, l := range p.Locations {
		add(l.Name, 0, l.Warnings)
		for _, s := range l.Screens {
			add(l.Name, s.Number, s.Warnings)
		}
	}
	return out
}

// tellChecked prints in words what is wrong with a file.
func (c *call) tellChecked(out io.Writer, k checked) int {
	if k.err != nil {
		return c.failed(k.err)
	}
	v := k.voice
	for _, text := range k.told {
		fmt.Fprintf(out, "%s: %s\n", k.File, text)
	}
	if k.use.path != "" && len(k.shop.BuiltIn) > 0 {
		c.tellOnce(v.T("check.built-in", "file", k.use.path, "kinds", "[["+strings.Join(k.shop.BuiltIn, "]], [[")+"]]"))
	}
	switch {
	case c.quiet:
	case k.Kind == kindShop:
		fmt.Fprintln(out, v.T("check.shop", "file", k.File))
	default:
		c.tellShop(k.use, v)
		fmt.Fprintln(out, v.Many("check.ok", len(k.told), "file", k.File))
	}
	return exitDone
}

// withFaults is what check says with its error taken apart for JSON.
func (k checked) withFaults() checked {
	eachError(k.err, func(err error) {
		var errs job.Errors
		shop, ofShop := err.(*shopFault)
		switch {
		case ofShop:
			k.Errors = append(k.Errors, fault{Line: shop.at.Line, Column: shop.at.Col, Key: "shop", Wrong: shop.err.Error()})
		case errors.As(err, &errs):
			for _, e := range errs {
				k.Errors = append(k.Errors, fault{e.Line, e.Col, e.Where, e.Key, e.Wrong, e.Accepted})
			}
		default:
			k.Errors = append(k.Errors, fault{Wrong: err.Error()})
		}
	})
	return k
}
