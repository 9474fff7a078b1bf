package reorder

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/presslog"
)

// Log is the last run of each screen that a press log has.
type Log struct {
	jobs map[string]map[place]presslog.Row
}

// place is where a row was printed, within its job.
type place struct{ location, screen, color string }

// Read reads a press log for its last runs; of each screen one row is kept. Rows in which nothing was filled in are
// no runs. text says what of a text cannot stand on paper, and what is accepted. Errors as of presslog.ReadNamed.
func Read(file string, src []byte, text func(string) (wrong, accepted string)) (*Log, job.Errors) {
	g := &Log{jobs: map[string]map[place]presslog.Row{}}
	errs := presslog.ReadNamed(file, src, func(r presslog.Row) presslog.Fault {
		if !r.Ran() || r.Job == "" {
			return presslog.Fault{}
		}
		for _, x := range []struct{ column, text string }{{"mesh", r.Mesh}, {"ink", r.Ink}, {"blade", r.Blade}, {"name", r.Name}} {
			if wrong, accepted := text(x.text); wrong != "" {
				return presslog.Fault{Column: x.column, Wrong: wrong, Accepted: accepted}
			}
		}
		runs := g.jobs[key(r.Job)]
		if runs == nil {
			runs = map[place]presslog.Row{}
			g.jobs[key(r.Job)] = runs
		}
		at := place{key(r.Location), key(r.Screen), key(r.Color)}
		if before, known := runs[at]; !known || later(r, before) {
			runs[at] = r
		}
		return presslog.Fault{}
	})
	if errs != nil {
		return nil, errs
	}
	return g, nil
}

// key is what names are compared by: capitals and spaces tell no two apart.
func key(name string) string { return strings.ToLower(line(name)) }

// line is a text of a cell on one line, composed as the texts of job files are.
func line(text string) string { return strings.Join(strings.Fields(norm.NFC.String(text)), " ") }

// later tells whether a row that stands below another was printed after it: by their days where both have one,
// and else because it stands below.
func later(below, above presslog.Row) bool {
	return below.Date == (job.Date{}) || above.Date == (job.Date{}) || !below.Date.Before(above.Date)
}

// NameOf is what a press log calls a job: its number, or its title where it has none.
func NameOf(number, title string) string { return cmp.Or(number, title) }

// Text is all that the log tells of a job, whatever else stands in it: the same text, the same last runs.
func (g *Log) Text(name string) string {
	var out strings.Builder
	for _, x := range g.of(name) {
		x.Line = 0 // other jobs move it
		fmt.Fprintf(&out, "%+v\n", x)
	}
	return out.String()
}

// of are the last runs of a job in the order of the log.
func (g *Log) of(name string) []presslog.Row {
	byLine := func(a, b presslog.Row) int { return a.Line - b.Line }
	return slices.SortedFunc(maps.Values(g.jobs[key(name)]), byLine)
}

// Fill tells the plan what each of its screens ran with last. The shop knows the inks of what was measured
// wet or weighed.
func (g *Log) Fill(p *plan.Plan, shop *job.Shop) {
	runs := g.of(NameOf(p.Job, p.Title))
	for _, l := range p.Locations {
		for i := range l.Screens {
			s := &l.Screens[i]
			if r, ran := last(runs, l, *s); ran {
				s.Last = lastRun(r, *s, shop)
			}
		}
	}
}

// last is the last run of a screen among those of its job.
func last(runs []presslog.Row, l plan.Location, s plan.Screen) (found presslog.Row, ran bool) {
	alike := 0 // screens of the color
	for _, other := range l.Screens {
		if key(other.Color) == key(s.Color) {
			alike++
		}
	}
	for _, r := range runs {
		is := key(r.Screen) == fmt.Sprint(s.Number)
		if r.Color != "" && s.Color != "" {
			is = key(r.Color) == key(s.Color) && (is || alike == 1)
		}
		if is && key(r.Location) == key(l.Name) && (!ran || later(r, found)) {
			found, ran = r, true
		}
	}
	return found, ran
}
