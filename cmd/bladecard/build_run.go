package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"sync"
)

// tally counts what became of the jobs.
type tally struct {
	Jobs      int `json:"jobs"`
	Made      int `json:"made"`
	Unchanged int `json:"unchanged"`
	Failed    int `json:"failed"`
}

// run makes every job under the paths on so many cores. What became of them is said in the order in
// which they were found, however they come to be done; few are under way at a time, so that memory
// does not grow with their number.
func (b *build) run(stop context.Context, paths []string, cores int) int {
	type task struct {
		source
		done chan result
	}
	waiting, inOrder := make(chan task), make(chan task, 8*cores)
	go func() {
		defer close(waiting)
		defer close(inOrder)
		find(paths, func(s source) bool {
			t := task{source: s, done: make(chan result, 1)}
			select {
			case inOrder <- t:
			case <-stop.Done():
				return false
			}
			select {
			case waiting <- t:
				return true
			case <-stop.Done():
				return false
			}
		})
	}()
	var workers sync.WaitGroup
	for range cores {
		workers.Go(func() {
			w := b.newWorker()
			for t := range waiting {
				t.done <- w.job(t.source)
			}
		})
	}
	s := b.newSayer(paths)
	defer s.close()
	for t := range inOrder {
		select {
		case r := <-t.done:
			s.say(r)
		case <-stop.Done():
			b.gate.Lock() // what is being written is finished; nothing more is begun
			s.stopped()
			return exitStopped
		}
	}
	if stop.Err() != nil {
		b.gate.Lock()
		s.stopped()
		return exitStopped
	}
	workers.Wait()
	s.summary()
	return s.worst
}

// sayer tells the user what became of the jobs.
type sayer struct {
	*build
	bar     *bar
	tally   tally
	worst   int
	numbers map[string]string // job numbers to the first file that has one
}

func (b *build) newSayer(paths []string) *sayer {
	s := &sayer{build: b, numbers: map[string]string{}}
	if !b.call.quiet && !b.opts.json {
		s.bar = newBar(b.call.stderr, paths)
	}
	return s
}

func (s *sayer) close() { s.bar.close() }

// say tells what became of a source.
func (s *sayer) say(r result) {
	s.bar.step(r.code != exitDone)
	if r.state == stateShop {
		return
	}
	s.worst = max(s.worst, r.code)
	s.tally.Jobs++
	switch r.state {
	case stateMade:
		s.tally.Made++
	case stateUnchanged:
		s.tally.Unchanged++
	default:
		s.tally.Failed++
	}
	if r.number != "" {
		if other, taken := s.numbers[r.number]; taken {
			r.said = fmt.Appendf(r.said, "note: %s has the job number %q of %s\n", r.path, r.number, other)
		} else {
			s.numbers[strings.Clone(r.number)] = r.path // the number alone, not the file that it stands in
		}
	}
	if len(r.said) > 0 {
		s.bar.clear()
		s.call.stderr.Write(r.said)
	}
	if r.voice != nil && !s.opts.json {
		s.bar.clear()
		s.call.tellShop(r.use, r.voice)
	}
	switch {
	case s.opts.json:
		s.line(struct {
			Job     string   `json:"job"`
			Number  string   `json:"number,omitempty"`
			Shop    string   `json:"shop,omitempty"`
			State   string   `json:"state"`
			Code    int      `json:"code"`
			Outputs []string `json:"outputs"`
			Said    []string `json:"said"`
		}{r.path, r.number, r.use.path, r.state, r.code, append([]string{}, r.outputs...), lines(r.said)})
	case s.call.quiet || s.bar != nil:
	default:
		for _, o := range r.outputs {
			fmt.Fprintln(s.call.stdout, o)
		}
	}
}

// line prints a JSON object on a line of its own.
func (s *sayer) line(v any) {
	enc := json.NewEncoder(s.call.stdout)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		s.worst = max(s.worst, s.call.fail(err))
	}
}

func lines(said []byte) []string {
	out := []string{}
	for line := range strings.Lines(string(said)) {
		out = append(out, strings.TrimRight(line, "\n"))
	}
	return out
}

func (s *sayer) summary() {
	if s.tally.Jobs == 0 && s.worst == exitDone {
		fmt.Fprintln(s.call.stderr, "error: there is no job file under the paths\nhint: job files end in .toml")
		s.worst = exitFile
	}
	s.total(s.call.stderr, "")
}

func (s *sayer) stopped() {
	s.total(s.call.stderr, "stopped; ")
}

// total prints the sum of a build.
func (s *sayer) total(w io.Writer, before string) {
	s.bar.close()
	switch {
	case s.opts.json:
		s.line(map[string]any{"total": s.tally, "stopped": before != ""})
	case !s.call.quiet || s.tally.Failed > 0 || before != "":
		fmt.Fprintf(w, "%s%d %s: %d made, %d unchanged, %d failed\n", before, s.tally.Jobs, map[bool]string{true: "job", false: "jobs"}[s.tally.Jobs == 1], s.tally.Made, s.tally.Unchanged, s.tally.Failed)
	}
}
