package flow_test

import (
	"slices"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/flow"
	"bladecard/render/page"
)

// A heading stands on the page of what it is kept with, wherever the page ends.
func TestHeadingKeeps(t *testing.T) {
	const keep = 40.0
	for y := 200.0; y < 285; y += 0.1 {
		f := flow.New(page.A4, "test", "again", 1)
		f.Y = y
		f.Heading("heading", "text", keep)
		at := len(f.Pages)
		f.Ensure(keep)
		if len(f.Pages) != at {
			t.Fatalf("from %.1f mm on the heading stays behind", y)
		}
	}
}

// A text that is kept whole parts behind its comma where its column is too narrow, and anywhere only where that is
// not enough.
func TestKeptTextParts(t *testing.T) {
	text := strings.ReplaceAll("225-40, 2 hits of 1 stroke (−12 %)", " ", "\u00a0")
	for _, c := range []struct {
		room float64 // beside the text; below 0: what it lacks
		want []string
	}{
		{2.5, []string{text}},
		{-1, []string{"225-40,", text[len("225-40,\u00a0"):]}},
	} {
		f := flow.New(page.A4, "test", "again", 1)
		w := canvas.Width(text, flow.Regular(flow.SmallPT)) + c.room
		tab := flow.Table{Name: "t", Header: []string{"a", "b"}, Shares: []float64{w, f.Width() - w}}
		tab.Row(flow.Plain(text, "")...)
		f.Table(tab)
		var got []string
		for _, b := range f.Pages[0].Boxes {
			if b.Name == "t row 1 column 1" {
				got = append(got, b.Text)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("room %g mm: %q, want %q", c.room, got, c.want)
		}
	}
}

// What is said below a table finds its room on the page of the last row, wherever the page ends.
func TestTableKeepsRoomBelow(t *testing.T) {
	const below = 10.0
	for y := 200.0; y < 285; y += 0.5 {
		f := flow.New(page.A4, "test", "again", 1)
		f.Y = y
		tab := flow.Table{Name: "t", Header: []string{"a"}, Below: below}
		for range 3 {
			tab.Row(flow.Plain("text")...)
		}
		f.Table(tab)
		at := len(f.Pages)
		f.Ensure(below - 0.001)
		if len(f.Pages) != at {
			t.Fatalf("from %.1f mm on the table leaves no room below it", y)
		}
	}
}
