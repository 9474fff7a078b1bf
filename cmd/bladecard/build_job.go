package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/say"
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
	state   string
	outputs []string // written, as the user calls them
	use     shopUse  // of a job that was computed
	voice   *say.Voice
	said    []byte // errors and notes
	code    int
}

// build makes the jobs of one call.
type build struct {
	*call
	documents
	opts    buildOptions
	out     *outputFolder
	program string // sum of this very program, templates and all
	flags   string
	gate    sync.RWMutex // held while a job is written; closed for good when the build is stopped
	sums    sync.Map     // sum of shops and logos by path
}

func newBuild(c *call, d documents, o buildOptions, out *outputFolder) (*build, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	data, err := os.ReadFile(self)
	if err != nil {
		return nil, err
	}
	return &build{
		call: c, documents: d, opts: o, out: out, program: sumOf(data),
		flags: fmt.Sprintf("%+v lang %q", d, c.lang),
	}, nil
}

// worker makes one job after the other, with shops of its own.
type worker struct {
	*build
	call call
	said bytes.Buffer
}

func (b *build) newWorker() *worker {
	w := &worker{build: b, call: *b.call}
	w.call.stderr = &w.said
	w.call.floors, w.call.told, w.call.cores = nil, map[string]bool{}, 1 // jobs are made side by side, each on its own core
	return w
}

// job brings the outputs of a source up to date.
func (w *worker) job(s source) result {
	w.said.Reset()
	clear(w.call.told)
	r := result{source: s, state: stateFailed}
	r.code = w.make(&r)
	r.said = bytes.Clone(w.said.Bytes())
	return r
}

func (w *worker) make(r *result) int {
	if r.err != nil {
		return w.call.fail(r.err)
	}
	src, err := readFile(r.path, file.MaxFileBytes)
	if err != nil {
		return w.call.fail(err)
	}
	old := w.out.record(r.name)
	if old != nil && w.isUpToDate(old, r.path, src) {
		r.number, r.state = old.Number, stateUnchanged
		return exitDone
	}
	if file.IsShop(src) {
		r.state = stateShop
		return exitDone
	}
	l, err := w.call.plan(r.path, src)
	if err != nil {
		return w.call.failed(err)
	}
	r.number, r.use, r.voice = l.plan.Job, l.use, l.voice
	now, err := w.newRecord(r, l, src)
	if err != nil {
		return w.call.fail(err)
	}
	var data [2]bytes.Buffer
	for i, fill := range []func() error{
		func() error { return w.documents.cards(&data[0], l) },
		func() error { return w.documents.sheet(&data[1], l) },
	} {
		if err := fill(); err != nil {
			return w.call.failed(err)
		}
		now.Outputs[i].Sum = sumOf(data[i].Bytes())
	}
	return w.write(r, old, now, [][]byte{data[0].Bytes(), data[1].Bytes()})
}

// newRecord is the record of a job with the names of its outputs.
func (w *worker) newRecord(r *result, l loaded, src []byte) (*record, error) {
	now := &record{
		Version: recordVersion, Number: l.plan.Job, From: l.use.from,
		Made:    inputs{Program: w.program, Flags: w.flags, Job: sumOf(src), Shop: l.floor.sum},
		Outputs: []output{{Name: r.name + "-cards.pdf"}, {Name: r.name + "-sheet.pdf"}},
	}
	var err error
	if now.Job, err = w.fromOutputs(r.path); err != nil {
		return nil, err
	}
	if now.Shop, err = w.fromOutputs(l.use.path); err != nil {
		return nil, err
	}
	if path := logoPath(l.shop); path != "" {
		if now.Logo, err = w.fromOutputs(path); err != nil {
			return nil, err
		}
		now.Made.Logo = w.sumOfFile(path, canvas.MaxImageBytes)
	}
	return now, nil
}

// fromOutputs is a path as seen from the output folder, so that both can be moved together. No path
// stays none.
func (w *worker) fromOutputs(path string) (string, error) {
	if path == "" {
		return "", nil
	}
	from, err := filepath.Abs(w.out.dir)
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
	return filepath.ToSlash(rel), nil
}

// atOutputs is the path of fromOutputs.
func (w *worker) atOutputs(path string) string {
	path = filepath.FromSlash(path)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(w.out.dir, path)
}

// sumOfFile is the sum of a shop's or a logo's bytes, read once a build; empty for what cannot be
// read.
func (b *build) sumOfFile(path string, most int64) string {
	if sum, known := b.sums.Load(path); known {
		return sum.(string)
	}
	sum := ""
	if data, err := readFile(path, most); err == nil {
		sum = sumOf(data)
	}
	b.sums.Store(path, sum)
	return sum
}

// isUpToDate tells whether the outputs of a record would be made the same again and are all there,
// or were edited: then they are left alone.
func (w *worker) isUpToDate(old *record, path string, src []byte) bool {
	if use := w.call.shopOf(path, ""); old.From != plan.ShopOfJob || use.from == plan.ShopOfFlag {
		if shop, err := w.fromOutputs(use.path); err != nil || shop != old.Shop || use.from != old.From {
			return false // another shop file is the nearest now, or the command line names another
		}
	}
	now := inputs{Program: w.program, Flags: w.flags, Job: sumOf(src)}
	if old.Shop != "" {
		now.Shop = w.sumOfFile(w.atOutputs(old.Shop), file.MaxFileBytes)
	}
	if old.Logo != "" {
		now.Logo = w.sumOfFile(w.atOutputs(old.Logo), canvas.MaxImageBytes)
	}
	if now != old.Made {
		return false
	}
	var edited []string
	for _, o := range old.Outputs {
		sum, err := w.out.sum(o.Name)
		switch {
		case err != nil || sum == "" || sum == o.Was || sum != o.Sum && w.opts.force:
			return false // where it is to be made, an error is told
		case sum != o.Sum:
			edited = append(edited, o.Name)
		}
	}
	for _, name := range edited {
		w.leave(name)
	}
	return true
}

// leave notes that an output is left as a person edited it.
func (w *worker) leave(name string) {
	fmt.Fprintf(w.call.stderr, "note: %s was edited since it was made; it is left as it is\n", w.out.path(name))
}

// write puts the outputs of a job in their places: all of them, or none where one is not this
// job's own.
func (w *worker) write(r *result, old, now *record, data [][]byte) int {
	w.gate.RLock()
	defer w.gate.RUnlock()
	keep := make([]bool, len(data)) // what is there already, or edited where nothing else changed
	for i := range now.Outputs {
		o := &now.Outputs[i]
		there, err := w.out.sum(o.Name)
		if err != nil {
			return w.call.fail(err)
		}
		was := ownSum(old, o.Name, there)
		switch {
		case there == "" || there == o.Sum:
			keep[i] = there == o.Sum
		case was && (w.opts.force || w.sameJob(old, now)):
			o.Was = there
		case w.opts.force:
		case old != nil && old.Made == now.Made && !was:
			keep[i] = true
			w.leave(o.Name)
		default:
			return w.refuse(r, old, now, o.Name, was)
		}
	}
	var outputs []written
	for i, o := range now.Outputs {
		if !keep[i] {
			outputs = append(outputs, written{o.Name, data[i]})
			r.outputs = append(r.outputs, w.out.path(o.Name))
		}
	}
	if err := w.out.write(r.name, now, outputs); err != nil {
		r.outputs = nil
		return w.call.fail(err)
	}
	r.state = stateMade
	return exitDone
}

// ownSum tells whether a record knows an output with these bytes as one of its own.
func ownSum(old *record, name, sum string) bool {
	if old == nil || sum == "" {
		return false
	}
	for _, o := range old.Outputs {
		if o.Name == name {
			return sum == o.Sum || sum == o.Was
		}
	}
	return false
}

// sameJob tells whether the outputs that a record knows are of this job file, or of one that is
// gone.
func (w *worker) sameJob(old, now *record) bool {
	if old.Job == now.Job {
		return true
	}
	_, err := os.Stat(w.atOutputs(old.Job))
	return err != nil
}

// refuse says why an output is not written.
func (w *worker) refuse(r *result, old, now *record, name string, was bool) int {
	why := "was not made by a build"
	switch {
	case was:
		why = "belongs to the job " + w.atOutputs(old.Job)
	case old != nil:
		why = "was edited since it was made"
	}
	fmt.Fprintf(w.call.stderr, "error: %s: %s %s; nothing of this job is written\nhint: move it away, or give --force to write over it\n", r.path, w.out.path(name), why)
	return exitFile
}
