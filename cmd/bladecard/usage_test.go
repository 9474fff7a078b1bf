package main

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"unicode/utf8"
)

// The page of all commands fits a terminal of eighty columns and says what each does; so do the pages
// of the commands, but for lines to be typed as they stand.
func TestUsageFits(t *testing.T) {
	t.Parallel()
	var out bytes.Buffer
	usage(&out)
	for l := range strings.Lines(out.String()) {
		if l = strings.TrimRight(l, "\n"); len(l) > usageWide || strings.TrimRight(l, " ") != l {
			t.Errorf("%d columns: %q", len(l), l)
		}
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	for _, c := range commands() {
		if want := c.name + " " + c.does; strings.Contains(said, want) == c.hidden {
			t.Errorf("%q is shown: %v", want, c.hidden)
		}
		if c.hidden {
			continue
		}
		var page bytes.Buffer
		if code := run([]string{"help", c.name}, nil, &page, io.Discard); code != exitDone {
			t.Errorf("help %s: exit code %d", c.name, code)
		}
		for l := range strings.Lines(page.String()) {
			if n := utf8.RuneCountInString(strings.TrimRight(l, "\n")); n > usageWide && !strings.HasPrefix(l, "    ") {
				t.Errorf("help %s: %d columns: %q", c.name, n, l)
			}
		}
	}
}
