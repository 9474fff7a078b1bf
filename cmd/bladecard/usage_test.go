package main

import (
	"bytes"
	"strings"
	"testing"
)

// The page of all commands fits a terminal of a hundred columns and says all of each command.
func TestUsageFits(t *testing.T) {
	var out bytes.Buffer
	usage(&out)
	for l := range strings.Lines(out.String()) {
		if l = strings.TrimRight(l, "\n"); len(l) > usageWide || strings.TrimRight(l, " ") != l {
			t.Errorf("%d columns: %q", len(l), l)
		}
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	for _, c := range commands() {
		if want := c.name + " " + c.args + " " + c.does; !strings.Contains(said, want) {
			t.Errorf("nothing of %q", want)
		}
	}
}
