package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"sync/atomic"
	"time"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// Where a build keeps what is its own, below the output folder.
const (
	ownDir    = ".bladecard"
	recordDir = ownDir + "/jobs"
	tempDir   = ownDir + "/new"
	lockFile  = ownDir + "/lock"
)

// outputFolder is the folder that a build writes to, locked against another build. Nothing is
// written outside of it: a link that leads out is an error.
type outputFolder struct {
	dir    string
	root   *os.Root
	unlock func()
	temps  atomic.Int64
}

// openOutputs makes the folder where it is missing, waits for another build to leave it, and clears
// what a killed build has left. waiting is called once when there is something to wait for.
func openOutputs(dir string, waiting func()) (*outputFolder, error) {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fileError(dir, err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fileError(dir, err)
	}
	out := &outputFolder{dir: dir, root: root}
	if err := out.open(waiting); err != nil {
		root.Close()
		return nil, fileError(dir, err)
	}
	return out, nil
}

func (o *outputFolder) open(waiting func()) error {
	if err := o.root.MkdirAll(recordDir, 0o777); err != nil {
		return err
	}
	if info, err := o.root.Lstat(ownDir); err != nil || !info.IsDir() {
		return fmt.Errorf("%s is not a folder", ownDir)
	}
	late := time.AfterFunc(300*time.Millisecond, waiting)
	unlock, err := lockedfile.MutexAt(filepath.Join(o.dir, filepath.FromSlash(lockFile))).Lock()
	late.Stop()
	if err != nil {
		return err
	}
	o.unlock = unlock
	err = o.root.RemoveAll(tempDir)
	if err == nil {
		err = o.root.Mkdir(tempDir, 0o777)
	}
	if err != nil {
		unlock()
	}
	return err
}

func (o *outputFolder) close() {
	o.unlock()
	o.root.Close()
}

// record is what an output folder keeps of a job: all that its outputs were made from, and the
// bytes that they have. It is written before the outputs, so that a build that is killed between
// them knows both what was there and what comes.
type record struct {
	Version int      `json:"version"`
	Job     string   `json:"job"` // file, from the output folder
	Number  string   `json:"number,omitempty"`
	Shop    string   `json:"shop,omitempty"` // file, from the output folder; empty: the built-in shop
	From    string   `json:"shop_from"`      // why it is that one: see plan.ShopOfFlag
	Logo    string   `json:"logo,omitempty"`
	Made    inputs   `json:"made_from"`
	Outputs []output `json:"outputs"`
}

// inputs are all that the outputs of a job depend on, as sums of the bytes.
type inputs struct {
	Program string `json:"program"`
	Flags   string `json:"flags"`
	Job     string `json:"job"`
	Shop    string `json:"shop,omitempty"`
	Logo    string `json:"logo,omitempty"`
}

// output is an output with the sums of its bytes, now and before the last change.
type output struct {
	Name string `json:"name"`
	Sum  string `json:"sum"`
	Was  string `json:"was,omitempty"`
}

const recordVersion = 1

func recordPath(name string) string { return recordDir + "/" + name + ".json" }

// record reads what the folder keeps of a job; nil where it keeps nothing that can be read.
func (o *outputFolder) record(name string) *record {
	data, err := o.root.ReadFile(filepath.FromSlash(recordPath(name)))
	if err != nil {
		return nil
	}
	var r record
	if json.Unmarshal(data, &r) != nil || r.Version != recordVersion {
		return nil
	}
	return &r
}

// written is a file below the output folder with its bytes.
type written struct {
	name string
	data []byte
}

// write writes the record of a job and its outputs: all of them are on disk before the first gets
// its name, and the record gets its first.
func (o *outputFolder) write(name string, r *record, outputs []written) error {
	data, err := json.MarshalIndent(r, "", " ")
	if err != nil {
		return err
	}
	var files []placed
	for _, f := range append([]written{{recordPath(name), append(data, '\n')}}, outputs...) {
		if dir := path.Dir(f.name); !o.made(dir) {
			if err := o.root.MkdirAll(filepath.FromSlash(dir), 0o777); err != nil {
				return fileError(o.path(f.name), err)
			}
		}
		temp := tempDir + "/" + strconv.FormatInt(o.temps.Add(1), 10)
		files = append(files, placed{filepath.FromSlash(temp), filepath.FromSlash(f.name), f.data})
	}
	if err := place(rooted{o.root}, files...); err != nil {
		return fileError(o.path(name), err)
	}
	return nil
}

// made tells whether a folder below the output folder is there.
func (o *outputFolder) made(dir string) bool {
	info, err := o.root.Lstat(filepath.FromSlash(dir))
	return err == nil && info.IsDir()
}

// path is how a file of the folder is called in the user's words.
func (o *outputFolder) path(name string) string {
	return filepath.Join(o.dir, filepath.FromSlash(name))
}

// sum is the sum of a file's bytes; empty where there is no file. What is not a plain file has a
// sum that no output has. The error tells of a link that leads out of the folder, or of no rights.
func (o *outputFolder) sum(name string) (string, error) {
	info, err := o.root.Lstat(filepath.FromSlash(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", nil
	case err != nil:
		return "", fileError(o.path(name), err)
	case !info.Mode().IsRegular():
		return "not a file", nil
	}
	data, err := o.root.ReadFile(filepath.FromSlash(name))
	if err != nil {
		return "", fileError(o.path(name), err)
	}
	return sumOf(data), nil
}
