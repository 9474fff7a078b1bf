package page

import (
	"strings"
	"testing"

	"bladecard/render/canvas"
)

func texts(f Fitted) []string {
	var out []string
	for _, b := range f.Boxes {
		out = append(out, b.Text)
	}
	return out
}

func TestFit(t *testing.T) {
	st := Style{Font: canvas.Font{SizePT: 20}}
	for _, c := range []struct {
		name, in string
		w, h     float64
		want     []string
		size     float64 // 0: below 20, 14 or more
		cut      bool
	}{
		{"as it is", "Front", 60, 10, []string{"Front"}, 20, false},
		{"shrunk", "Lakeside regatta crew", 60, 10, []string{"Lakeside regatta crew"}, 0, false},
		{"two lines", "Lakeside regatta crew shirts 2026", 60, 17, []string{"Lakeside regatta", "crew shirts 2026"}, 20, false},
		{"cut on one line", "Lakeside regatta crew shirts 2026", 60, 10, []string{"Lakeside regatta crew…"}, 14, true},
		{"cut on two lines", strings.Repeat("regatta ", 12), 60, 17, []string{"regatta regatta regatta", "regatta regatta regatta…"}, 14, true},
		{"one long word", strings.Repeat("regatta", 6), 60, 17, nil, 14, false},
		{"spaces and tabs", "  Front \t left ", 60, 10, []string{"Front left"}, 20, false},
		{"nothing", "  ", 60, 10, nil, 20, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Fit("title", Rect{5, 5, c.w, c.h}, c.in, st, 14)
			if c.want != nil && strings.Join(texts(got), "|") != strings.Join(c.want, "|") {
				t.Errorf("lines %q, want %q", texts(got), c.want)
			}
			if got.Cut != c.cut {
				t.Errorf("cut %v, want %v", got.Cut, c.cut)
			}
			if c.size == 0 && !(got.SizePT >= 14 && got.SizePT < 20) || c.size != 0 && got.SizePT != c.size {
				t.Errorf("size %v, want %v", got.SizePT, c.size)
			}
		})
	}
}

func TestParagraph(t *testing.T) {
	st := Style{Font: small}
	whole := Paragraph("p", 5, 10, 50, "one two three four five six seven eight\nnine", st, 0)
	lines := texts(whole)
	if len(lines) < 3 || lines[len(lines)-1] != "nine" || whole.Cut {
		t.Fatalf("lines %q, cut %v", lines, whole.Cut)
	}
	pitch := (canvas.Ascent + canvas.Descent) * 9 * canvas.MMPerPT
	for i, b := range whole.Boxes {
		if !near(b.Y, 10+float64(i)*pitch) {
			t.Errorf("row %d is at %v", i, b.Y)
		}
	}
	if !near(whole.Bottom, 10+float64(len(lines))*pitch) {
		t.Errorf("bottom %v", whole.Bottom)
	}
	short := Paragraph("p", 5, 10, 50, "one two three four five six seven eight nine", st, 1)
	if got := texts(short); len(got) != 1 || !strings.HasSuffix(got[0], "…") || !short.Cut || canvas.Width(got[0], small) > 50 {
		t.Errorf("lines %q, cut %v", got, short.Cut)
	}
}

// TestFitSizes: the first size at which whole words fit, never one between; cut at the last.
func TestFitSizes(t *testing.T) {
	st := Style{Font: canvas.Font{Face: canvas.Bold}}
	for _, c := range []struct {
		name, in string
		want     []string
		size     float64
		cut      bool
	}{
		{"large", "red base", []string{"red base"}, 26, false},
		{"two lines of the small", "lantern amber over all", []string{"lantern amber", "over all"}, 14, false},
		{"one line of the small", "lanternamber", []string{"lanternamber"}, 14, false},
		{"cut", strings.Repeat("lantern ", 12), []string{"lantern lantern", "lantern lantern…"}, 14, true},
		{"a word broken", strings.Repeat("lantern", 3), nil, 14, false},
		{"nothing", " ", nil, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := Rect{5, 5, 50, 12}
			got := FitSizes("color", r, c.in, st, 26, 14)
			if c.want != nil && strings.Join(texts(got), "|") != strings.Join(c.want, "|") {
				t.Errorf("%q, want %q", texts(got), c.want)
			}
			if got.SizePT != c.size || got.Cut != c.cut {
				t.Errorf("%g pt, cut %v; want %g, %v", got.SizePT, got.Cut, c.size, c.cut)
			}
			for _, b := range got.Boxes {
				if beyond(b.Rect, r) > 1e-9 || canvas.Width(b.Text, b.Font) > b.W+1e-9 {
					t.Errorf("%q leaves its place", b.Text)
				}
			}
		})
	}
}
