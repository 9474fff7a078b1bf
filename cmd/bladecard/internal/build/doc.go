// Package build makes the documents of every job in a folder, and only of those that changed.
//
// find walks the paths in the order of names; Run hands the files to a worker a core and says what
// became of them in the same order, with few under way at a time, so that memory does not grow with
// the number of jobs. What a job's documents are is a Maker's business.
package build

import "io"

// Maker makes the documents of one job after the other. Each worker has its own.
type Maker interface {
	// Make makes the documents of a job file that is read already. What is wrong goes to said; the
	// code is then one of package exit.
	Make(path string, src []byte, said io.Writer) (Made, int)
	// Shop is the shop of a job file that names none.
	Shop(path string) Shop
	// LogSum is the sum of what a press log tells of a job; empty for a log that cannot be read.
	LogSum(path, number, title string) string
	// Inputs are the other files that a job file needs: its shop, the shop's logo and press log.
	Inputs(path string) []string
}

// Made are the documents of a job and what else they were made from.
type Made struct {
	Number    string // of the job, in its own words
	Title     string // of the job
	Shop      Shop
	ShopSum   string // of the shop file's bytes
	Logo      string // file; empty: none
	Log       string // the shop's press log; empty: none
	Note      string // to be told once a build; which shop it is
	Documents [][]byte
}

// Shop is a shop file, empty for the built-in shop, and why it is that one: see plan.ShopOfFlag.
type Shop struct{ Path, From string }

// Options are what a build is asked for.
type Options struct {
	Dir            string   // the output folder
	Suffixes       []string // of the documents' names, behind the job's name
	Settings       string   // all else that the documents depend on
	Force          bool     // write over outputs that are not this build's own
	Quiet, JSON    bool
	MaxImage       int64 // bytes of a logo
	Stdout, Stderr io.Writer
	Bar            io.Writer // the terminal to draw a bar on; nil: none
	NewMaker       func() Maker
	Done           func(name, number, title string) // hears of each job that is up to date, in order; nil: nobody
}
