package main

import (
	"fmt"
	"path/filepath"
	"strings"
)

// outputs names the files of a command, one a job, and keeps two jobs of one name apart.
type outputs struct {
	dir, suffix string
	from        map[string]string // output name to the job that it is made from
}

func newOutputs(dir, suffix string) outputs {
	return outputs{dir: dir, suffix: suffix, from: map[string]string{}}
}

// wrote names a file that was written.
func (c *call) wrote(path string) {
	if !c.quiet {
		fmt.Fprintln(c.stdout, path)
	}
}

// name is the name of a job's file without folder and suffix.
func (o outputs) name(jobPath string) string {
	if jobPath == stdinName {
		return "stdin"
	}
	return strings.TrimSuffix(filepath.Base(jobPath), filepath.Ext(jobPath))
}

// path is where a job's file goes; false, with a word to the user, where another job's goes there.
func (o outputs) path(c *call, jobPath string) (string, bool) {
	name := o.name(jobPath) + o.suffix
	path := filepath.Join(o.dir, name)
	if other, taken := o.from[name]; taken {
		fmt.Fprintf(c.stderr, "error: %s and %s would both be written to %s\nhint: give the job files different names, or write to different folders\n", other, jobPath, path)
		return "", false
	}
	o.from[name] = jobPath
	return path, true
}
