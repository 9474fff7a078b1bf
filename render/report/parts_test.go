package report

import (
	"strings"
	"testing"

	"bladecard/render/say"
)

// TestParts: rows stand in columns where the terminal has the width, else a row is a text that breaks between its cells.
func TestParts(t *testing.T) {
	parts := []say.Part{
		{Title: "jobs", Lines: []string{"one two three four five six"}},
		{Title: "screens", Rows: [][]string{{"83-100", "", "cloud puff", "L-032: front"}, {"125-70", "", "white", "L-031: left chest"}}},
	}
	for _, c := range []struct {
		wide int
		want string
	}{
		{60, "jobs\n  one two three four five six\nscreens\n  83-100  cloud puff  L-032: front\n  125-70  white       L-031: left chest\n"},
		{36, "jobs\n  one two three four five six\nscreens\n  83-100, cloud puff, L-032: front\n  125-70, white, L-031: left chest\n"},
		{25, "jobs\n  one two three four five\n    six\nscreens\n  83-100, cloud puff,\n    L-032: front\n  125-70, white, L-031:\n    left chest\n"},
	} {
		var b strings.Builder
		if err := Parts(&b, parts, c.wide); err != nil {
			t.Fatal(err)
		}
		if b.String() != c.want {
			t.Errorf("%d:\n%s\nis wanted:\n%s", c.wide, b.String(), c.want)
		}
	}
}
