package canvas

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var small = Font{SizePT: 9}

// TestWrapBreaksBehindMarks: a word that is too wide is broken behind a slash or a hyphen where it has one.
func TestWrapBreaksBehindMarks(t *testing.T) {
	for in, want := range map[string]string{"65/90/65 worn": "65/90/|65|worn", "blue-white": "blue-|white", "–/": "–/"} {
		if got := strings.Join(Wrap(in, small, Width("65/90/6", small)), "|"); got != want {
			t.Errorf("%q: %s; %s is wanted", in, got, want)
		}
	}
}

func TestWrapKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-zé ]{0,120}`).Draw(t, "s")
		w := rapid.Float64Range(8, 80).Draw(t, "w")
		lines := Wrap(s, small, w)
		for _, l := range lines {
			if Width(l, small) > w+1e-9 {
				t.Fatalf("line %q is wider than %v", l, w)
			}
		}
		if strings.ReplaceAll(strings.Join(lines, ""), " ", "") != strings.ReplaceAll(s, " ", "") {
			t.Fatalf("%q became %q", s, lines)
		}
	})
}

// A column narrower than a letter still ends, one letter a line; invalid bytes do not panic.
func TestWrapEnds(t *testing.T) {
	if got := Wrap("abc", small, 0.1); strings.Join(got, "|") != "a|b|c" {
		t.Errorf("got %q", got)
	}
	if got := strings.Join(Wrap("a\xff\xfeb", small, 0.1), ""); got != "a\xff\xfeb" {
		t.Errorf("got %q", got)
	}
}

func TestNoBreakSpaceKeepsFigureAndUnit(t *testing.T) {
	w := Width("the film stays 45", small)
	if got := Wrap("the film stays 45\u00a0µm", small, w); strings.Join(got, "|") != "the film stays|45\u00a0µm" {
		t.Errorf("got %q", got)
	}
	if got := Wrap("the film stays 45 µm", small, w); strings.Join(got, "|") != "the film stays 45|µm" {
		t.Errorf("got %q", got)
	}
	if bad := Missing("45\u00a0µm 1\u202f000"); len(bad) > 0 {
		t.Errorf("missing %U", bad)
	}
}

// TestCutMiddle: of a name that is too long its two ends stay, whole words where some fit.
func TestCutMiddle(t *testing.T) {
	for _, c := range []struct{ in, room, want string }{
		{"navy", "navy", "navy"},
		{"white for the harbor wall, first pull", "white for … first pull", "white for … first pull"},
		{"white for the harbor wall, last pull", "white for … first pull", "white for … last pull"},
		{"full front", "full fro", "full…"},
		{"sweatshirts, right", "sweats…ght", "sweat…ight"},
		{"unbreakable", "unbr…ble", "unbr…ble"},
		{"ab", "a", "a…"},
	} {
		if got := CutMiddle(c.in, small, Width(c.room, small)+0.01); got != c.want {
			t.Errorf("%q in the room of %q: %q; %q is wanted", c.in, c.room, got, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[a-zé ]{0,200}`).Draw(t, "s")
		w := rapid.Float64Range(8, 80).Draw(t, "w")
		got := CutMiddle(s, small, w)
		head, tail, cut := strings.Cut(got, "…")
		if Width(got, small) > w || !cut && got != s {
			t.Fatalf("%q in %v: %q", s, w, got)
		}
		if squashed := Squash(s); cut && (!strings.HasPrefix(squashed, strings.TrimSpace(head)) || !strings.HasSuffix(squashed, strings.TrimSpace(tail))) && !strings.HasPrefix(s, head) {
			t.Fatalf("%q became %q", s, got)
		}
	})
}

func TestCut(t *testing.T) {
	if s, cut := Cut("regatta", small, 50); s != "regatta" || cut {
		t.Errorf("got %q, %v", s, cut)
	}
	if s, cut := Cut("regatta crew", small, 12); !cut || !strings.HasSuffix(s, "…") || Width(s, small) > 12 {
		t.Errorf("got %q, %v, %v mm", s, cut, Width(s, small))
	}
}
