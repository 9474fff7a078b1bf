package disk

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// Record is what the program keeps of files that it wrote. It is written before the files, so that
// after a crash between them the next run knows both what was there and what was to come.
type Record struct {
	Version int      `json:"version"`
	Job     string   `json:"job,omitempty"` // the job file that they are named after, from the folder
	Outputs []Output `json:"outputs"`
}

// Output is a file that was written, with the sums of its bytes now and before the last change.
type Output struct {
	Name string `json:"name"` // from the folder
	Sum  string `json:"sum"`
	Was  string `json:"was,omitempty"`
}

const (
	recordVersion  = 1
	maxRecordBytes = 1 << 20
)

// NewRecord is a record of this program's version.
func NewRecord(job string) Record { return Record{Version: recordVersion, Job: job} }

// JobRecord is the name of the record that a build keeps of a job.
func JobRecord(job string) string { return jobsDir + "/" + job + ".json" }

func madeRecord(name string) string { return madeDir + "/" + name + ".json" }

// Encode is a record as it is written.
func Encode(record any) ([]byte, error) {
	data, err := json.MarshalIndent(record, "", " ")
	return append(data, '\n'), err
}

// Decode reads a record of the folder. Where there is none the error is fs.ErrNotExist; where what
// stands there is no record it is a Refusal.
func (f *Folder) Decode(name string, into any) error {
	info, err := f.root.Lstat(filepath.FromSlash(name))
	if err != nil {
		return Named(f.Path(name), err)
	}
	refuse := func(why string) error {
		return &Refusal{Path: f.Path(name), Why: why, Hint: "remove it; what it tells of then counts as made by somebody else"}
	}
	switch {
	case !info.Mode().IsRegular():
		return refuse("is " + kindOf(info) + " where bladecard keeps a record")
	case info.Size() > maxRecordBytes:
		return refuse(fmt.Sprintf("has %d bytes; a record has at most %d", info.Size(), maxRecordBytes))
	}
	data, err := f.root.ReadFile(filepath.FromSlash(name))
	if err != nil {
		return Named(f.Path(name), err)
	}
	var head Record
	if json.Unmarshal(data, &head) != nil || json.Unmarshal(data, into) != nil || head.Version != recordVersion {
		return refuse("is not a record that this version of bladecard reads")
	}
	return nil
}

// owner is what the records know of a file.
type owner struct {
	known bool   // the program wrote a file of this name
	made  bool   // with these bytes
	job   string // the job file that it was then named after
}

// owner asks the record beside a file, and those of builds that wrote to its folder or to one above.
func (f *Folder) owner(name, sum string) owner {
	var o owner
	full, err := filepath.Abs(f.Path(name))
	if err != nil {
		return o
	}
	dir, rel := filepath.Split(full)
	for {
		dir = filepath.Clean(dir)
		for _, record := range []string{madeRecord(rel), JobRecord(stem(rel)), JobRecord(strings.TrimSuffix(rel, path.Ext(rel)))} {
			o.ask(dir, record, rel, sum)
		}
		above, own := filepath.Split(dir)
		if o.made || own == "" {
			return o
		}
		dir, rel = above, own+"/"+rel
	}
}

// ask takes in what a record of a folder says of a file; what cannot be read as a record says nothing.
func (o *owner) ask(dir, record, name, sum string) {
	data, err := Read(filepath.Join(dir, filepath.FromSlash(record)), maxRecordBytes)
	var rec Record
	if err != nil || json.Unmarshal(data, &rec) != nil || rec.Version != recordVersion {
		return
	}
	for _, out := range rec.Outputs {
		if out.Name != name {
			continue
		}
		o.known = true
		if sum == out.Sum || sum == out.Was {
			o.made = true
			if rec.Job != "" {
				o.job = At(dir, rec.Job)
			}
		}
	}
}

// stem is the name of the job that an output of a build is named after, where it has more to its name than an ending.
func stem(output string) string {
	base := path.Base(output)
	if i := strings.LastIndexByte(base, '-'); i >= 0 {
		return output[:len(output)-len(base)+i]
	}
	return output
}

// From is a path as seen from a folder, so that both can be moved together. A record can hold no
// name that is not UTF-8.
func From(dir, path string) (string, error) {
	from, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	to, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	rel, err := filepath.Rel(from, to)
	if err != nil { // another drive
		rel = to
	}
	if !utf8.ValidString(rel) {
		return "", fmt.Errorf("%q: is not a name in UTF-8; give it another", path)
	}
	return filepath.ToSlash(rel), nil
}

// At turns a path that From made into one that can be opened.
func At(dir, path string) string {
	path = filepath.FromSlash(path)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(dir, path)
}

// missing tells whether an error says that there is nothing at a name.
func missing(err error) bool { return errors.Is(err, fs.ErrNotExist) }
