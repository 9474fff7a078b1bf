package job

import (
	"fmt"
	"reflect"
	"strings"
)

// DecodeJob reads a job file; name is how errors call it. All errors of the file come back at
// once, in the order of the file. A job that comes back beside errors lacks what was wrong: it
// is good for Resolve, to find the rest of the errors, and for nothing else; after an error of
// syntax it is nil. Units and ranges are those of the tags of Job; limits see the package.
// The work is proportional to the size of the file.
func DecodeJob(name string, src []byte) (*Job, Errors) {
	_, data, places, errs := open(name, src)
	if errs != nil {
		return nil, errs
	}
	var b binder
	j := &Job{}
	b.table(reflect.ValueOf(j).Elem(), data, places, scope{})
	j.File = name
	for i := range j.Locations {
		l := &j.Locations[i]
		if l.Name == "" {
			l.Name = unnamed(i)
		}
		for n := range l.Screens {
			b.crossScreen(l, &l.Screens[n], scope{where: screenWhere(i, l, n)})
		}
	}
	b.errs.Sort()
	return j, b.errs
}

// unnamed is the name of a location that the file does not name.
func unnamed(i int) string { return fmt.Sprintf("location %d", i+1) }

func locationWhere(i int, l *Location) string {
	if l.Name == unnamed(i) {
		return l.Name
	}
	return "location " + quote(l.Name)
}

func screenWhere(i int, l *Location, n int) string {
	return fmt.Sprintf("%s, screen %d", locationWhere(i, l), n+1)
}

// crossScreen finds figures of a screen that cannot stand together.
func (b *binder) crossScreen(l *Location, s *Screen, sc scope) {
	if s.FinestMM > 0 && s.FeatureMM > 0 && s.FinestMM > s.FeatureMM {
		b.fail(s.at.kid("finest").valuePos(), sc, "finest", fmt.Sprintf("%s mm is wider than the typical feature, %s mm", number(s.FinestMM), number(s.FeatureMM)),
			"at most the width of the typical feature is accepted")
	}
	if l.WidthMM > 0 && l.HeightMM > 0 {
		for _, f := range []struct {
			key string
			mm  float64
		}{{"feature", s.FeatureMM}, {"finest", s.FinestMM}} {
			if most := max(l.WidthMM, l.HeightMM); f.mm > most {
				b.fail(s.at.kid(f.key).valuePos(), sc, f.key, fmt.Sprintf("%s mm is wider than the location", number(f.mm)),
					fmt.Sprintf("at most %s mm is accepted", number(most)))
			}
		}
	}
}

// names collects the texts of a list, without doubles, in order.
func names[T any](list []T, name func(*T) string) []string {
	var out []string
	for i := range list {
		if n := name(&list[i]); n != "" && !has(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// inList is "a, b, c is accepted" with the near one first.
func inList(text string, words []string, what string) string {
	return didYouMean(text, words) + what + ": " + strings.Join(quoted(words), ", ")
}
