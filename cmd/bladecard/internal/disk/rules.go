package disk

import (
	"os"
	"path/filepath"
)

// Rules are what a command may write over.
type Rules struct {
	Force  bool
	Inputs func() []Input // what the command reads; asked when something is about to be written over
}

// Input is a file that is not written over.
type Input struct {
	Path string
	Info os.FileInfo
	Why  string // what the command does with it
}

// Inputs are the files that a command reads, without those that are not there.
func Inputs(paths ...string) []Input {
	var out []Input
	for _, p := range paths {
		if info, err := os.Stat(p); err == nil {
			out = append(out, Input{p, info, "read"})
		}
	}
	return out
}

// Claim is a file that is to be written.
type Claim struct {
	File
	Job string // the job file that the name comes from; what another job left there stays
}

// Verdict says how a file may be written.
type Verdict struct {
	Keep bool   // it stands there already
	Was  string // sum of the file of the program's own that it replaces
}

// May tells whether a file may be written, by what stands at its name. The error is a Refusal where
// it may not.
func (f *Folder) May(c Claim, rules Rules) (Verdict, error) {
	there, err := f.Sum(c.Name)
	if missing(err) {
		return Verdict{}, nil
	}
	if err != nil {
		return Verdict{}, err
	}
	name := f.Path(c.Name)
	info, err := f.root.Stat(filepath.FromSlash(c.Name))
	if err != nil {
		return Verdict{}, Named(name, err)
	}
	if err := rules.notInput(name, info); err != nil {
		return Verdict{}, err
	}
	if there == Sum(c.Data) {
		return Verdict{Keep: true}, nil
	}
	o := f.owner(c.Name, there)
	var v Verdict
	if o.made {
		v.Was = there
	}
	switch {
	case rules.Force:
		return v, nil
	case !o.known:
		return v, &Refusal{Path: name, Why: "was not made by bladecard", Hint: hintForce}
	case !o.made:
		return v, &Refusal{Path: name, Why: "was edited since it was made", Hint: hintForce, Edited: true}
	case c.Job != "" && o.job != "" && another(o.job, c.Job):
		return v, &Refusal{Path: name, Why: "belongs to the job " + o.job, Hint: hintForce}
	case isReadOnly(info):
		return v, &Refusal{Path: name, Why: "is read-only", Hint: hintForce}
	}
	return v, nil
}

// another tells whether two paths are of two files that are both there.
func another(a, b string) bool {
	x, err1 := os.Stat(a)
	y, err2 := os.Stat(b)
	return err1 == nil && err2 == nil && !os.SameFile(x, y)
}

func isReadOnly(info os.FileInfo) bool { return info.Mode().Perm()&0o222 == 0 }

// notInput refuses a file that the command reads or has written, by whatever name.
func (r Rules) notInput(name string, info os.FileInfo) error {
	if r.Inputs == nil {
		return nil
	}
	for _, in := range r.Inputs() {
		switch {
		case !os.SameFile(in.Info, info):
		case filepath.Clean(in.Path) == filepath.Clean(name):
			return &Refusal{Path: name, Why: "is " + in.Why + " by this very command", Hint: hintName}
		default:
			return &Refusal{Path: name, Why: "is the same file as " + in.Path + ", which is " + in.Why + " by this very command", Hint: hintName}
		}
	}
	return nil
}
