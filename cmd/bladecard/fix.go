package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// tellFix prints the bases that a job lacks as blocks for its file, each with the place that it goes to, and
// what check says of the file with all of them in it. It writes nothing.
func (c *call) tellFix(path string, src []byte, l loaded) {
	v, with, pastes := l.voice, src, true
	for i := len(l.plan.Locations) - 1; i >= 0; i-- { // the last one first, so that the lines before it stay
		if b := l.plan.Locations[i].Base; b != nil {
			line := l.baseLine(i)
			pastes = pastes && isHeader(src, line)
			with = pasted(with, line, baseBlock(b))
		}
	}
	found := false
	for i, loc := range l.plan.Locations {
		if b := loc.Base; b != nil {
			found = true
			key, line := "base.place", l.baseLine(i)
			if !isHeader(src, line) {
				key = "base.inline"
			}
			c.notes(v.T(key, "file", path, "location", l.called(loc.Name), "before", fmt.Sprint(b.Before), "line", fmt.Sprint(line)))
			c.notes(v.BaseNotes(b)...)
			fmt.Fprintln(c.stdout, baseBlock(b))
			continue
		}
		for _, s := range loc.Screens {
			if needsBase(s) {
				c.notes(v.T("base.no-ink", "file", path, "location", l.called(loc.Name), "screens", v.Screens([]int{s.Number})))
			}
		}
	}
	switch {
	case !found:
		c.notes(v.T("base.none", "file", path))
		return
	case !pastes:
		return
	}
	then, err := c.plan(path, with)
	if err != nil {
		c.notes(v.T("base.fails", "error", err.Error()))
		return
	}
	c.notes(v.Many("base.then", len(say.Tell(then.plan.Warnings, then.plan.Locations...))))
}

// baseLine is the line of the job file before which the base of a location goes.
func (l loaded) baseLine(location int) int {
	return l.job.Locations[location].Screens[l.plan.Locations[location].Base.Before-1].Pos.Line
}

// isHeader tells whether a line of a file is the header of a list's table: a block can be pasted before it.
func isHeader(src []byte, line int) bool {
	lines := bytes.Split(src, []byte("\n"))
	return bytes.HasPrefix(bytes.TrimSpace(lines[line-1]), []byte("[["))
}

// notes prints lines as comments of TOML.
func (c *call) notes(lines ...string) {
	for _, text := range lines {
		for _, line := range strings.Split(text, "\n") {
			fmt.Fprintln(c.stdout, "# "+line)
		}
	}
}

func needsBase(s plan.Screen) bool {
	for _, w := range s.Warnings {
		if w.Code == "needs-base" {
			return true
		}
	}
	return false
}

// baseBlock is the screen of a base as a job file writes it.
func baseBlock(b *plan.LocationBase) string {
	lines := []string{"[[location.screen]]", `color = "base"`, "swatch = " + tomlText(b.Swatch), "ink = " + tomlText(b.Ink), `use = "underbase"`, "mesh = " + tomlText(b.Mesh)}
	if b.FilmAsked {
		lines = append(lines, fmt.Sprintf(`film = "%.1f..%.1f um"`, b.TargetUM.Low, b.TargetUM.High))
	}
	if b.Coverage > 0 {
		lines = append(lines, fmt.Sprintf(`coverage = "%s %%"`, strconv.FormatFloat(100*b.Coverage, 'g', 6, 64)))
	}
	return strings.Join(lines, "\n") + "\n"
}

// tomlText writes a text as a basic string of TOML. Texts of job and shop files hold no control characters.
func tomlText(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

// pasted puts a block before a line of a file, counted from 1.
func pasted(src []byte, line int, block string) []byte {
	lines := bytes.SplitAfter(src, []byte("\n"))
	before := bytes.Join(lines[:line-1], nil)
	return bytes.Join([][]byte{before, []byte(block + "\n"), bytes.Join(lines[line-1:], nil)}, nil)
}
