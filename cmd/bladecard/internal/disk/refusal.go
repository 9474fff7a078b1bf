package disk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Refusal is a file or folder that is left as it is: which, why, and what to do about it.
type Refusal struct {
	Path, Why, Hint string
	Edited          bool // it is the program's own but for what somebody changed in it
}

func (r *Refusal) Error() string { return r.Path + " " + r.Why }

// Say prints an error, and the hint of a Refusal.
func Say(w io.Writer, err error) {
	fmt.Fprintf(w, "error: %v\n", err)
	var refused *Refusal
	if errors.As(err, &refused) {
		fmt.Fprintf(w, "hint: %s\n", refused.Hint)
	}
}

// The hints that come more than once.
const (
	hintForce = "move it away, name another place, or write over it with --force"
	hintName  = "give another name"
)

// kindOf calls what stands at a name in words.
func kindOf(info fs.FileInfo) string {
	switch mode := info.Mode(); {
	case mode.IsRegular():
		return "a file"
	case mode.IsDir():
		return "a folder"
	case mode&fs.ModeSymlink != 0:
		return "a link"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// notPlain refuses what is not a plain file.
func notPlain(path string, info fs.FileInfo) error {
	hint := "name a file; -o - writes to standard output"
	switch mode := info.Mode(); {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		hint = "name a file in it"
	case mode&fs.ModeSymlink != 0:
		if _, err := os.Stat(path); err != nil {
			return deadLink(path)
		}
		return &Refusal{Path: path, Why: "is a link to " + target(path), Hint: "name that file itself"}
	}
	return &Refusal{Path: path, Why: "is " + kindOf(info) + ", not a file", Hint: hint}
}

func deadLink(path string) error {
	return &Refusal{Path: path, Why: "is a link to " + target(path) + ", where nothing is", Hint: "give another name, or remove the link"}
}

func isLink(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode()&fs.ModeSymlink != 0
}

func target(path string) string {
	to, err := os.Readlink(path)
	if err != nil {
		return "elsewhere"
	}
	return to
}
