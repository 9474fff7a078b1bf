package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"syscall"
)

var buildCommand = command{
	name: "build", args: "PATH... -o DIR",
	does: "make cards and setup sheets for whole folders, only what changed",
	more: `
A PATH is a job file or a folder; folders are searched to the bottom, hidden ones left out. DIR
gets the same folders. It also keeps, in .bladecard, what each job was made from: a job is made
again when its file, its shop's, the logo, the flags or this program changed, or when an output is
gone. Jobs are made side by side on all cores, and a bad one does not stop the others. An output
that a person edited, or that another job or no build made, is left alone unless --force is given.
Ctrl-C ends at once (exit code 130); the next build goes on from there.`,
	run: buildAll,
}

// exitStopped is the exit code after Ctrl-C: 128 and the number of the signal, as shells count.
const exitStopped = 130

func buildAll(c *call) int {
	var p paperFlags
	var o buildOptions
	var dir string
	if code, ok := c.parse(func(f *flags) {
		c.jobFlags(f)
		p.declare(f)
		f.folder(&dir)
		f.yes(&o.noCustomer, "no-customer", "leave the customer's name out of the setup sheets")
		f.yes(&o.force, "force", "also write over outputs that are not this build's own")
		c.quietFlag(f)
		f.yes(&o.json, "json", "print JSON, one object per job and line, then one for the whole build")
	}); !ok {
		return code
	}
	switch {
	case dir == "":
		return c.wrong("-o is missing: the folder to write to")
	case len(c.args) == 0:
		return c.wrong("no job file or folder is named")
	case c.quiet && o.json:
		return c.wrong("--quiet and --json together; one of them is accepted")
	}
	d := p.documents()
	d.noCustomer = o.noCustomer
	out, err := openOutputs(dir, func() { fmt.Fprintf(c.stderr, "waiting: another build is at work in %s\n", dir) })
	if err != nil {
		return c.fail(err)
	}
	defer out.close()
	b, err := newBuild(c, d, o, out)
	if err != nil {
		return c.fail(err)
	}
	stop, done := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer done()
	return b.run(stop, c.args, runtime.GOMAXPROCS(0))
}

// buildOptions are the flags of the build that are not of the paper.
type buildOptions struct {
	noCustomer, force, json bool
}
