package build

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/cmd/bladecard/internal/exit"
)

// What became of a job.
const (
	stateMade      = "made"
	stateUnchanged = "unchanged"
	stateFailed    = "failed"
	stateShop      = "shop" // not a job at all
)

// result is what became of a source.
type result struct {
	source
	number  string
	title   string
	state   string
	outputs []string // written, as the user calls them
	shop    string   // its file, of a job that was computed
	note    string   // of its maker
	said    []byte   // errors and notes
	code    int
}

// worker makes one job after the other, with a maker of its own.
type worker struct {
	*build
	maker Maker
	said  bytes.Buffer
}

// job brings the outputs of a source up to date.
func (w *worker) job(s source) result {
	w.said.Reset()
	r := result{source: s, state: stateFailed}
	r.code = w.make(&r)
	r.said = bytes.Clone(w.said.Bytes())
	return r
}

func (w *worker) fail(err error) int {
	disk.Say(&w.said, err)
	return exit.File
}

func (w *worker) make(r *result) int {
	if r.err != nil {
		return w.fail(r.err)
	}
	src, err := disk.Read(r.path, file.MaxFileBytes)
	if err != nil {
		return w.fail(err)
	}
	if rival := w.rival(r.source); rival != "" && !file.IsShop(src) {
		return w.fail(fmt.Errorf("%s and %s would both be written to %s%s; give them different names, or write to different folders", rival, r.path, r.name, w.Suffixes[0]))
	}
	old, err := w.record(r.name)
	if err != nil {
		return w.fail(fmt.Errorf("%s: %w; nothing of this job is written", r.path, err))
	}
	if old != nil && w.isUpToDate(r, old, src) {
		r.number, r.title, r.state = old.Number, old.Title, stateUnchanged
		return exit.Done
	}
	if file.IsShop(src) {
		r.state = stateShop
		return exit.Done
	}
	made, code := w.maker.Make(r.path, src, &w.said)
	if code != exit.Done {
		return code
	}
	r.number, r.title, r.shop, r.note = made.Number, made.Title, made.Shop.Path, made.Note
	now, err := w.newRecord(r, made, src)
	if err != nil {
		return w.fail(err)
	}
	return w.write(r, old, now, made.Documents)
}

// rival is a job that was found before and whose outputs have the same name; shop files have none.
func (w *worker) rival(s source) string {
	for _, other := range s.rivals {
		if src, err := disk.Read(other, file.MaxFileBytes); err != nil || !file.IsShop(src) {
			return other
		}
	}
	return ""
}

// isUpToDate tells whether the outputs of a record would be made the same again and are all there,
// or were edited: then they are left alone.
func (w *worker) isUpToDate(r *result, old *record, src []byte) bool {
	if shop := w.maker.Shop(r.path); old.From != plan.ShopOfJob || shop.From == plan.ShopOfFlag {
		if path, err := w.fromOutputs(shop.Path); err != nil || path != old.Shop || shop.From != old.From {
			return false // another shop file is the nearest now, or the command line names another
		}
	}
	now := inputs{Program: w.program, Flags: w.Settings, Job: disk.Sum(src)}
	if old.Shop != "" {
		now.Shop = w.sumOfFile(disk.At(w.Dir, old.Shop), file.MaxFileBytes)
	}
	if old.Logo != "" {
		now.Logo = w.sumOfFile(disk.At(w.Dir, old.Logo), w.MaxImage)
	}
	if old.Log != "" {
		now.Log = w.maker.LogSum(disk.At(w.Dir, old.Log), old.Number, old.Title)
	}
	if now != old.Made || !slices.EqualFunc(old.Outputs, w.Suffixes, func(o disk.Output, suffix string) bool { return o.Name == r.name+suffix }) {
		return false
	}
	for _, o := range old.Outputs {
		// What is not as it was made is looked at again where it is written.
		if sum, err := w.out.Sum(o.Name); err != nil || sum != o.Sum {
			return false
		}
	}
	return true
}

// write puts the outputs of a job in their places: all of them, or none where one may not be
// written over. An edited output of a job that is still the same is left as it is.
func (w *worker) write(r *result, old, now *record, documents [][]byte) int {
	w.gate.RLock()
	defer w.gate.RUnlock()
	rules := disk.Rules{Force: w.Force}
	if w.Force { // a document of this build's own is no input of it
		rules.Inputs = w.inputs
	}
	var outputs []disk.File
	for i, data := range documents {
		o := disk.Output{Name: r.name + w.Suffixes[i], Sum: disk.Sum(data)}
		claim := disk.Claim{File: disk.File{Name: o.Name, Data: data}, Job: r.path}
		verdict, err := w.out.May(claim, rules)
		var refused *disk.Refusal
		switch {
		case errors.As(err, &refused) && refused.Edited && old != nil && old.Made == now.Made:
			fmt.Fprintf(&w.said, "note: %s was edited since it was made; it is left as it is\n", w.out.Path(o.Name))
		case err != nil:
			return w.fail(fmt.Errorf("%s: %w; nothing of this job is written", r.path, err))
		case !verdict.Keep:
			o.Was = verdict.Was
			outputs = append(outputs, claim.File)
			r.outputs = append(r.outputs, w.out.Path(o.Name))
		}
		now.Outputs = append(now.Outputs, o)
	}
	if len(outputs) == 0 && old != nil && old.Made == now.Made {
		r.state = stateUnchanged
		return exit.Done
	}
	data, err := disk.Encode(now)
	if err == nil {
		err = w.out.Write(append([]disk.File{{Name: disk.JobRecord(r.name), Data: data}}, outputs...)...)
	}
	if err != nil {
		r.outputs = nil
		return w.fail(err)
	}
	r.state = stateMade
	return exit.Done
}

// record reads what the output folder keeps of a job; nil where it keeps nothing. A record that
// cannot be read is nothing where all may be written over.
func (w *worker) record(name string) (*record, error) {
	var r record
	err := w.out.Decode(disk.JobRecord(name), &r)
	switch {
	case err == nil:
		return &r, nil
	case errors.Is(err, fs.ErrNotExist) || w.Force:
		return nil, nil
	}
	return nil, err
}
