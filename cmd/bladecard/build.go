package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"syscall"

	"bladecard/calc/file"
	"bladecard/calc/reorder"
	"bladecard/cmd/bladecard/internal/build"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/cmd/bladecard/internal/exit"
	"bladecard/render/canvas"
	"bladecard/render/phone"
	"bladecard/render/say"
)

var buildCommand = command{
	name: "build", args: "PATH... -o DIR",
	run: buildAll,
}

func buildAll(c *call) int {
	var d documents
	var o build.Options
	var html bool
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		d.declare(f)
		f.folder(&o.Dir)
		f.yes(&d.noCustomer, "no-customer")
		f.yes(&html, "html")
		c.writeFlags(f)
		f.yes(&o.JSON, "json")
	}); !ok {
		return code
	}
	switch {
	case o.Dir == "":
		return c.wrong("-o is missing: the folder to write to")
	case len(c.args) == 0:
		return c.wrong("no job file or folder is named")
	case c.quiet && o.JSON:
		return c.wrong("--quiet and --json together; one of them is accepted")
	}
	o.Suffixes = []string{cardsSuffix, sheetSuffix}
	var pages []phone.Job
	if html {
		o.Suffixes = append(o.Suffixes, pageSuffix)
		o.Done = func(name, number, title string) {
			pages = append(pages, phone.Job{File: name + pageSuffix, Title: cmp.Or(strings.TrimSpace(number+" "+title), name)})
		}
	}
	o.Settings = fmt.Sprintf("%+v lang %q", d, c.lang)
	o.Force, o.Quiet, o.Stdout, o.Stderr = c.force, c.quiet, c.stdout, c.stderr
	o.MaxImage = canvas.MaxImageBytes
	if f, is := terminal(c.stderr); is {
		o.Bar = f
	}
	o.NewMaker = func() build.Maker {
		m := &maker{call: *c, documents: d, html: html}
		m.floors, m.told, m.cores = nil, map[string]bool{}, 1 // jobs are made side by side, each on its own core
		return m
	}
	defer debug.SetGCPercent(debug.SetGCPercent(200)) // a build takes a fifth less time, for half as much memory again
	stop, done := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer done()
	code := build.Run(stop, c.args, runtime.GOMAXPROCS(0), o)
	if len(pages) == 0 || code == exit.Stopped {
		return code
	}
	c.quiet = c.quiet || o.JSON // what is printed then is JSON
	return max(code, c.writeIndex(o.Dir, pages))
}

const (
	pageSuffix = ".html"
	indexName  = "index.html"
)

// writeIndex writes the page that leads to the pages of the jobs, where it is not the same already.
func (c *call) writeIndex(dir string, pages []phone.Job) int {
	v, err := say.New(cmp.Or(c.lang, file.BuiltInShop().Language), "metric")
	if f, shopErr := c.floor(c.shopOf(c.args[0], "")); shopErr == nil {
		v, err = f.voice, nil // the language of the shop of the first path
	}
	var data []byte
	if err == nil {
		data, err = filled(func(w io.Writer) error { return phone.WriteIndex(w, pages, v) })
	}
	path := filepath.Join(dir, indexName)
	if err == nil {
		if there, readErr := disk.Read(path, int64(len(data))); readErr == nil && bytes.Equal(there, data) {
			return exitDone
		}
		err = c.writer(c.args...).Files(dir, disk.Claim{File: disk.File{Name: indexName, Data: data}})
	}
	if err != nil {
		return c.fail(err)
	}
	c.wrote(path)
	return exitDone
}

// maker makes cards and sheet of one job after the other, with shops of its own.
type maker struct {
	call
	documents documents
	html      bool
}

func (m *maker) Make(path string, src []byte, said io.Writer) (build.Made, int) {
	m.stderr = &teller{said, &m.call}
	m.spoken, m.searched, m.words = nil, false, []string{path}
	clear(m.told)
	l, err := m.plan(path, src)
	if err != nil {
		return build.Made{}, m.failed(err)
	}
	made := build.Made{
		Number: l.plan.Job, Title: l.plan.Title, Shop: shopOfBuild(l.use), ShopSum: l.floor.sum, Logo: besideShop(l.shop, l.shop.Logo), Log: besideShop(l.shop, l.shop.Log),
		Note: l.voice.T("shop.note", "shop", l.use.say(l.voice)),
	}
	fills := []func(io.Writer, loaded) error{m.documents.cards, m.documents.sheet}
	if m.html {
		fills = append(fills, func(w io.Writer, l loaded) error { return phone.Write(w, l.plan, l.voice) })
	}
	for _, fill := range fills {
		data, err := filled(func(w io.Writer) error { return fill(w, l) })
		if err != nil {
			return made, m.failed(err)
		}
		made.Documents = append(made.Documents, data)
	}
	return made, exitDone
}

func (m *maker) Shop(path string) build.Shop { return shopOfBuild(m.shopOf(path, "")) }

func (m *maker) LogSum(path, number, title string) string {
	log, err := m.logs.read(path)
	if err != nil {
		return ""
	}
	return disk.Sum([]byte(log.Text(reorder.NameOf(number, title))))
}

func (m *maker) Inputs(path string) []string { return m.behind(path) }

func shopOfBuild(u shopUse) build.Shop { return build.Shop{Path: u.path, From: u.from} }
