package build

import (
	"encoding/json"
	"fmt"
	"strings"

	"bladecard/cmd/bladecard/internal/exit"
)

// tally counts what became of the jobs.
type tally struct {
	Jobs      int `json:"jobs"`
	Made      int `json:"made"`
	Unchanged int `json:"unchanged"`
	Failed    int `json:"failed"`
}

// sayer tells the user what became of the jobs.
type sayer struct {
	Options
	bar     *bar
	tally   tally
	worst   int
	told    map[string]bool
	numbers map[string]string // job numbers to the first file that has one
}

func (b *build) newSayer(paths []string) *sayer {
	s := &sayer{Options: b.Options, numbers: map[string]string{}, told: map[string]bool{}}
	if b.Bar != nil && !b.Quiet && !b.JSON {
		s.bar = newBar(b.Bar, paths)
	}
	return s
}

// say tells what became of a source.
func (s *sayer) say(r result) {
	s.bar.step(r.code != exit.Done)
	if r.state == stateShop {
		return
	}
	s.worst = max(s.worst, r.code)
	s.tally.count(r.state)
	if r.number != "" {
		if other, taken := s.numbers[r.number]; taken {
			r.said = fmt.Appendf(r.said, "note: %s has the job number %q of %s\n", r.path, r.number, other)
		} else {
			s.numbers[strings.Clone(r.number)] = r.path // the number alone, not the file that it stands in
		}
	}
	if s.Done != nil && r.state != stateFailed {
		s.Done(r.name, r.number, r.title)
	}
	if s.JSON {
		s.Stderr.Write(r.said)
		s.line(r.json())
		return
	}
	if r.note != "" && !s.Quiet && !s.told[r.note] {
		s.told[r.note] = true
		r.said = fmt.Appendln(r.said, r.note)
	}
	if len(r.said) > 0 {
		s.bar.clear()
		s.Stderr.Write(r.said)
	}
	if !s.Quiet && s.bar == nil {
		for _, o := range r.outputs {
			fmt.Fprintln(s.Stdout, o)
		}
	}
}

// count counts a job by what became of it.
func (t *tally) count(state string) {
	t.Jobs++
	switch state {
	case stateMade:
		t.Made++
	case stateUnchanged:
		t.Unchanged++
	default:
		t.Failed++
	}
}

// json is what is said of a job with --json.
func (r *result) json() any {
	return struct {
		Job     string   `json:"job"`
		Number  string   `json:"number,omitempty"`
		Shop    string   `json:"shop,omitempty"`
		State   string   `json:"state"`
		Code    int      `json:"code"`
		Outputs []string `json:"outputs"`
		Said    []string `json:"said"`
	}{r.path, r.number, r.shop, r.state, r.code, append([]string{}, r.outputs...), lines(r.said)}
}

// line prints a JSON object on a line of its own. Whoever gave standard output knows when it is full.
func (s *sayer) line(v any) {
	enc := json.NewEncoder(s.Stdout)
	enc.SetEscapeHTML(false)
	enc.Encode(v)
}

func lines(said []byte) []string {
	return strings.FieldsFunc(string(said), func(r rune) bool { return r == '\n' })
}

// summary ends what is said, and returns the exit code of the build.
func (s *sayer) summary() int {
	if s.tally.Jobs == 0 && s.worst == exit.Done {
		fmt.Fprintln(s.Stderr, "error: there is no job file under the paths\nhint: job files end in .toml")
		s.worst = exit.File
	}
	s.total("")
	return s.worst
}

// total prints the sum of a build.
func (s *sayer) total(before string) {
	s.bar.clear()
	switch {
	case s.JSON:
		s.line(map[string]any{"total": s.tally, "stopped": before != ""})
	case !s.Quiet || s.tally.Failed > 0 || before != "":
		fmt.Fprintf(s.Stderr, "%s%d %s: %d made, %d unchanged, %d failed\n", before, s.tally.Jobs, map[bool]string{true: "job", false: "jobs"}[s.tally.Jobs == 1], s.tally.Made, s.tally.Unchanged, s.tally.Failed)
	}
}
