package disk

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
)

// Edit puts data in place of a file of the user's own that was read as old. It follows a link to
// the file itself, and keeps the file's rights and owner. It refuses a file with several names,
// since a new file could take one of them only, and to write into the old one is not safe from a
// crash. It refuses a read-only file too, since that is how its owner says so.
func (w *Writer) Edit(name string, old, data []byte) error {
	real, err := filepath.EvalSymlinks(name)
	if err != nil {
		return Named(name, err)
	}
	info, err := os.Lstat(real)
	if err != nil {
		return Named(name, err)
	}
	switch {
	case !info.Mode().IsRegular():
		return notPlain(real, info)
	case isReadOnly(info):
		return &Refusal{Path: name, Why: "is read-only", Hint: "make it writable"}
	case namesOf(info) > 1:
		return &Refusal{Path: name, Why: "has a second name (a hard link), which would keep the old text", Hint: "make it a file of its own: cp FILE NEW && mv NEW FILE"}
	}
	dir := filepath.Dir(real)
	f, err := Open(dir, func() { w.Waiting(dir) })
	if err != nil {
		return err
	}
	defer f.Close()
	err = place(edited{rooted{f.root}, info, old}, placed{newDir + "/edit", filepath.Base(real), data})
	var r *Refusal
	if err != nil && !errors.As(err, &r) {
		return Named(name, err)
	}
	return err
}

// edited is the folder of a file that is edited.
type edited struct {
	rooted
	info os.FileInfo
	old  []byte
}

func (e edited) create(name string) (file, error) {
	f, err := e.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return nil, err
	}
	if err = keepOwner(f, e.info); err == nil {
		err = f.Chmod(e.info.Mode().Perm())
	}
	if err != nil {
		f.Close()
		e.Remove(name)
		return nil, err
	}
	return f, nil
}

// Rename gives the new file its name if the old one is still what was read.
func (e edited) Rename(from, to string) error {
	now, err := e.ReadFile(to)
	if err != nil {
		return err
	}
	if !bytes.Equal(now, e.old) {
		return errChanged
	}
	return e.rooted.Rename(from, to)
}

var errChanged = errors.New("was changed by somebody else meanwhile; it is left as it is")
