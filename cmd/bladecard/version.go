package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"

	"bladecard/templates"
)

var versionCommand = command{
	name: "version", args: "[--notices]",
	run: version,
}

// release is the version of a program that .ci/release made; the linker sets it.
var release string

// about is what the program knows of itself.
type about struct {
	Version string   `json:"version"`
	Go      string   `json:"go"`
	System  string   `json:"system"`
	Modules []string `json:"modules"`
}

func aboutThis() about {
	a := about{Version: release, Go: runtime.Version(), System: runtime.GOOS + "/" + runtime.GOARCH, Modules: []string{}}
	info, ok := debug.ReadBuildInfo()
	if ok {
		for _, m := range info.Deps {
			a.Modules = append(a.Modules, m.Path+" "+m.Version)
		}
	}
	switch {
	case a.Version != "":
	case ok && info.Main.Version != "" && info.Main.Version != "(devel)":
		a.Version = info.Main.Version // the go command puts the commit, and whether files had changed, into it
	default:
		a.Version = "development"
	}
	return a
}

func version(c *call) int {
	var asJSON, notices bool
	if code, ok := c.parse(func(f *flags) {
		f.yes(&notices, "notices")
		f.yes(&asJSON, "json")
	}); !ok {
		return code
	}
	if len(c.args) > 0 {
		return c.wrong(fmt.Sprintf("%q is one too many; version takes flags only", c.args[0]))
	}
	a := aboutThis()
	if asJSON {
		return c.json(a)
	}
	fmt.Fprintf(c.stdout, "bladecard %s, %s, %s\n", a.Version, a.Go, a.System)
	if notices {
		for _, n := range templates.Notices() {
			of := n.Of
			for _, m := range a.Modules {
				if strings.HasPrefix(m, n.Of+" ") {
					of = m
				}
			}
			fmt.Fprintf(c.stdout, "\n%s\n%s\n\n%s\n", of, strings.Repeat("-", len(of)), n.Text)
		}
	}
	return exitDone
}
