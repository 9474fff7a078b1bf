package figure

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bladecard/render/canvas"
)

func TestNewBlock(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 9}
	for _, tt := range []struct {
		s, in string // the place is as wide as in
		rows  int
		want  string
		ok    bool
	}{
		{"", "a", 0, "", true},
		{"one two", "one two", 0, "one two", true},
		{"one two", "one tw", 0, "one|two", true},
		{"one two three four", "one two", 2, "one two|three…", true},
		{"ab", "i", 0, "a|b", false},
	} {
		most := canvas.Width(tt.in, f) + 1e-9
		b := newBlock(rec, tt.s, f, most, tt.rows)
		ok := b.w <= most
		if got := strings.Join(b.lines, "|"); got != tt.want || ok != tt.ok {
			t.Errorf("%q in the width of %q: %s, %v; want %s, %v", tt.s, tt.in, got, ok, tt.want, tt.ok)
		}
	}
}

func TestBlockLosesNothing(t *testing.T) {
	rec, f := &recorder{}, canvas.Font{SizePT: 9}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-zµ0-9/ –-]{0,30}`).Draw(t, "s")
		most := rapid.Float64Range(3.2, 40).Draw(t, "max") // one letter at least
		b := newBlock(rec, s, f, most, 0)
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if strip(strings.Join(b.lines, "")) != strip(s) || b.w > most+1e-9 {
			t.Fatalf("%q in %v: %q, %v wide", s, most, b.lines, b.w)
		}
	})
}
