package file

import (
	"fmt"
	"reflect"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// DecodeJob reads a job file; name is how errors call it. All errors of the file come back at
// once, in the order of the file. A job that comes back beside errors lacks what was wrong: it
// is good for Resolve, to find the rest of the errors, and for nothing else; after an error of
// syntax it is nil. Units and ranges are those of the tags of Job; limits see the package.
// The work is proportional to the size of the file.
func DecodeJob(name string, src []byte) (*job.Job, job.Errors) {
	data, places, errs := open(name, src)
	if errs != nil {
		return nil, errs
	}
	var b binder
	j := &job.Job{}
	b.table(reflect.ValueOf(j).Elem(), data, places, scope{})
	j.File = name
	for i := range j.Locations {
		l := &j.Locations[i]
		if l.Name == "" {
			l.Name = job.Unnamed(i)
		}
		for n := range l.Screens {
			b.crossScreen(l, &l.Screens[n], scope{where: job.ScreenWhere(i, l, n)})
		}
	}
	b.errs.Sort()
	return j, b.errs
}

// crossScreen finds figures of a screen that cannot stand together.
func (b *binder) crossScreen(l *job.Location, s *job.Screen, sc scope) {
	if s.Hits > 1 && s.FlashWish == job.FlashNo {
		b.fail(s.KeyPos("hits"), sc, "hits", fmt.Sprintf("%d hits stand beside flash = false", s.Hits), "between two hits lies a flash: hits = 1 or flash = true is accepted")
	}
	if s.FinestMM > 0 && s.FeatureMM > 0 && s.FinestMM > s.FeatureMM {
		b.fail(s.KeyPos("finest"), sc, "finest", fmt.Sprintf("%s mm is wider than the typical feature, %s mm", words.Number(s.FinestMM), words.Number(s.FeatureMM)),
			"at most the width of the typical feature is accepted")
	}
	if l.WidthMM > 0 && l.HeightMM > 0 {
		for _, f := range []struct {
			key string
			mm  float64
		}{{"feature", s.FeatureMM}, {"finest", s.FinestMM}} {
			if most := max(l.WidthMM, l.HeightMM); f.mm > most {
				b.fail(s.KeyPos(f.key), sc, f.key, fmt.Sprintf("%s mm is wider than the location", words.Number(f.mm)),
					fmt.Sprintf("at most %s mm is accepted", words.Number(most)))
			}
		}
	}
}
