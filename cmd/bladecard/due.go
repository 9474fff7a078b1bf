package main

import (
	"errors"
	"fmt"
	"strings"

	"bladecard/calc/job"
	"bladecard/calc/presslog"
	"bladecard/render/say"
)

// dueSpan is the days of --due; the zero one holds every day, and jobs without one.
type dueSpan struct {
	from, to job.Date
	given    bool
}

var errDue = errors.New("not a day or two days with .. between; accepted: 2027-05-21, 2027-05-17..2027-05-21, 2027-05-17.. or ..2027-05-21")

func (s *dueSpan) read(text string) error {
	from, to, two := strings.Cut(text, "..")
	if !two {
		to = from
	}
	var ok bool
	if from != "" {
		if s.from, ok = presslog.ParseDay(from); !ok {
			return errDue
		}
	}
	if to != "" {
		if s.to, ok = presslog.ParseDay(to); !ok {
			return errDue
		}
	}
	if from == "" && to == "" {
		return errDue
	}
	if to != "" && s.to.Before(s.from) {
		return fmt.Errorf("ends before it begins; accepted: %s..%s", to, from)
	}
	s.given = true
	return nil
}

func (s *dueSpan) holds(d job.Date) bool {
	if !s.given {
		return true
	}
	return d != (job.Date{}) && !d.Before(s.from) && (s.to == (job.Date{}) || !s.to.Before(d))
}

// say is the span in words; empty where none was given.
func (s *dueSpan) say(v *say.Voice) string {
	from, to := v.Date(s.from.ISO()), v.Date(s.to.ISO())
	switch {
	case !s.given:
		return ""
	case s.from == s.to:
		return from
	case s.from == (job.Date{}):
		return v.T("day.until", "date", to)
	case s.to == (job.Date{}):
		return v.T("day.since", "date", from)
	}
	return v.T("day.span", "from", from, "to", to)
}
