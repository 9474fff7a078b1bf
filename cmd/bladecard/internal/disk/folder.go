package disk

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"strconv"
	"sync/atomic"
	"time"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// What the program keeps beside the files that it writes.
const (
	ownDir   = ".bladecard"
	lockFile = ownDir + "/lock"
	newDir   = ownDir + "/new"  // files on the way to their names
	madeDir  = ownDir + "/made" // a record for each file that was written by itself
	jobsDir  = ownDir + "/jobs" // a record for each job of a build
)

// Folder is a folder that the program writes to, locked against another process that writes there.
// Nothing is written outside of it: a link that leads out is an error.
type Folder struct {
	dir   string
	root  *os.Root
	lock  *lockedfile.File
	held  bool // the lock is the one that stands in the folder
	temps atomic.Int64
	made  []string // folders that Open made, outermost first
}

// mostTries is how often a folder may go away before that is an error.
const mostTries = 200

// Open makes the folder where it is missing, waits for another process to leave it, and clears what
// a killed one has left. It calls waiting once when there is something to wait for. The folder may go
// away meanwhile, since another process that made it and then wrote nothing removes it again: Open then
// begins anew.
func Open(dir string, waiting func()) (f *Folder, err error) {
	var made []string
	for range mostTries {
		f = &Folder{dir: dir, made: made}
		if err = f.open(waiting); err == nil {
			return f, nil
		}
		if !missing(err) {
			break
		}
		f.leave()
		made = f.made
	}
	f.Close()
	return nil, err
}

func (f *Folder) open(waiting func()) error {
	if err := f.makeFolder(f.dir); err != nil {
		return err
	}
	var err error
	if f.root, err = os.OpenRoot(f.dir); err != nil {
		return Named(f.dir, err)
	}
	if err := f.makeOwn(ownDir); err != nil {
		return err
	}
	if err := f.takeLock(waiting); err != nil {
		return err
	}
	if err := f.root.RemoveAll(newDir); err != nil {
		return Named(f.Path(newDir), err)
	}
	for _, dir := range []string{newDir, madeDir, jobsDir} {
		if err := f.makeOwn(dir); err != nil {
			return err
		}
	}
	return nil
}

// makeFolder makes a folder and those above it, and remembers which it made.
func (f *Folder) makeFolder(dir string) error {
	switch info, err := os.Stat(dir); {
	case err == nil && info.IsDir():
		return nil
	case err == nil:
		return &Refusal{Path: dir, Why: "is " + kindOf(info) + ", not a folder", Hint: "name a folder"}
	case isLink(dir):
		return deadLink(dir)
	}
	if parent := filepath.Dir(dir); parent != dir {
		if err := f.makeFolder(parent); err != nil {
			return err
		}
	}
	switch err := os.Mkdir(dir, 0o777); {
	case err == nil:
		f.made = append(f.made, dir)
	case !errors.Is(err, fs.ErrExist): // else another process was quicker
		return Named(dir, err)
	}
	return nil
}

// makeOwn makes a folder of the program's own. Whoever may write to the folder that it lies in may
// write to it too.
func (f *Folder) makeOwn(name string) error {
	err := f.root.Mkdir(name, 0o777)
	if errors.Is(err, fs.ErrExist) {
		info, err := f.root.Lstat(name)
		if err != nil {
			return Named(f.Path(name), err)
		}
		if !info.IsDir() {
			return &Refusal{Path: f.Path(name), Why: "is " + kindOf(info) + " where bladecard keeps its records", Hint: "move it away"}
		}
		return nil
	}
	if err != nil {
		return Named(f.dir, err)
	}
	f.shareRights(name)
	return nil
}

// shareRights gives a new file or folder of the program's own the rights of the folder that it lies
// in. Errors are passed over, since a disk may keep no rights.
func (f *Folder) shareRights(name string) {
	dir, err1 := f.root.Stat(".")
	own, err2 := f.root.Lstat(name)
	if err1 != nil || err2 != nil {
		return
	}
	rights := dir.Mode().Perm()
	if !own.IsDir() {
		rights &= 0o666
	}
	f.root.Chmod(name, rights)
}

// takeLock waits for the lock. Where the lock that it got is no longer the one of the folder, the error is
// fs.ErrNotExist.
func (f *Folder) takeLock(waiting func()) error {
	info, err := f.root.Lstat(lockFile)
	isNew := missing(err)
	if err == nil && !info.Mode().IsRegular() {
		return &Refusal{Path: f.Path(lockFile), Why: "is " + kindOf(info) + " where bladecard keeps its lock", Hint: "move it away"}
	}
	late := time.AfterFunc(300*time.Millisecond, waiting)
	f.lock, err = lockedfile.OpenFile(f.Path(lockFile), os.O_RDWR|os.O_CREATE, 0o666)
	late.Stop()
	if err != nil {
		return Named(f.dir, err) // nobody knows of the lock, and its rights are those of the folder
	}
	if isNew {
		f.shareRights(lockFile)
	}
	mine, err1 := f.lock.Stat()
	there, err2 := f.root.Lstat(lockFile)
	if f.held = err1 == nil && err2 == nil && os.SameFile(mine, there); !f.held {
		return fmt.Errorf("%s: goes away again and again: %w", f.dir, fs.ErrNotExist)
	}
	return nil
}

// Close leaves the folder to the next process. Where there are no records, what Open made goes.
func (f *Folder) Close() {
	if f.held && f.isWithoutRecords() {
		if runtime.GOOS == "windows" { // a file that is open cannot be removed there
			f.lock.Close()
		}
		for _, name := range []string{newDir, lockFile, ownDir} {
			f.root.Remove(name)
		}
	}
	for i := len(f.made) - 1; i >= 0; i-- {
		os.Remove(f.made[i]) // it stays where something is in it
	}
	f.leave()
}

// isWithoutRecords removes the folders of records that are empty, and tells whether no record is left.
func (f *Folder) isWithoutRecords() bool {
	err1 := f.root.Remove(madeDir)
	err2 := f.root.Remove(jobsDir)
	return (err1 == nil || missing(err1)) && (err2 == nil || missing(err2))
}

// leave lets go of the folder.
func (f *Folder) leave() {
	if f.lock != nil {
		f.lock.Close()
	}
	if f.root != nil {
		f.root.Close()
	}
}

// Path is what the user calls a file of the folder.
func (f *Folder) Path(name string) string { return filepath.Join(f.dir, filepath.FromSlash(name)) }

// Write writes the records of files, then the files, each whole or not at all. Names are below the
// folder, with slashes.
func (f *Folder) Write(files ...File) error {
	if len(files) == 0 {
		return nil
	}
	var list []placed
	for _, file := range files {
		dir := filepath.FromSlash(path.Dir(file.Name))
		if err := f.root.MkdirAll(dir, 0o777); err != nil {
			return Named(f.Path(dir), err)
		}
		temp := newDir + "/" + strconv.FormatInt(f.temps.Add(1), 10)
		list = append(list, placed{filepath.FromSlash(temp), filepath.FromSlash(file.Name), file.Data})
	}
	err := place(rooted{f.root}, list...)
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return Named(f.Path(pe.Path), pe.Err)
	}
	return err
}

// File is a file with its bytes.
type File struct {
	Name string // below a folder, with slashes
	Data []byte
}

// Sum tells files apart by their bytes.
func Sum(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// Sum is the sum of a plain file of the folder. Anything else at that name is a Refusal, and where
// there is nothing the error is fs.ErrNotExist.
func (f *Folder) Sum(name string) (string, error) {
	info, err := f.root.Lstat(filepath.FromSlash(name))
	if err != nil {
		return "", Named(f.Path(name), err)
	}
	if err := notPlain(f.Path(name), info); err != nil {
		return "", err
	}
	in, err := f.root.Open(filepath.FromSlash(name))
	sum := ""
	if err == nil {
		defer in.Close()
		sum, err = SumOf(in)
	}
	if err != nil {
		return "", Named(f.Path(name), err)
	}
	return sum, nil
}

// SumOf is the sum of all that can be read, without keeping it.
func SumOf(r io.Reader) (string, error) {
	sum := sha256.New()
	_, err := io.Copy(sum, r)
	return hex.EncodeToString(sum.Sum(nil)), err
}
