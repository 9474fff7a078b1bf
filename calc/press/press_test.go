package press

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/internal/checks"

	"pgregory.net/rapid"
)

func tone(v float64) *float64 { return &v }

// uses lists screens by their use alone.
func uses(names ...string) []Screen {
	var out []Screen
	for _, n := range names {
		out = append(out, Screen{Use: n})
	}
	return out
}

// draw writes a layout as one line: P0 F0 C0 P1 ...
func draw(stations []Station) string {
	var parts []string
	for _, s := range stations {
		parts = append(parts, strings.ToUpper(s.Kind[:1])+string(rune('0'+s.Screen)))
	}
	return strings.Join(parts, " ")
}

// TestPublishedStations counts what two trade glossaries count: 6 colors, 1 flash, 1 cool-down
// take 8 stations (published: indigoclothing.com, phoenixscreenprinting.com [47]).
func TestPublishedStations(t *testing.T) {
	st := Stations(uses("underbase", "solid", "solid", "solid", "solid", "solid"))
	count := map[string]int{}
	for _, s := range st {
		count[s.Kind]++
	}
	if len(st) != 8 || count[Print] != 6 || count[Flash] != 1 || count[Cool] != 1 {
		t.Errorf("6 colors on an underbase: %s", draw(st))
	}
	if _, err := Choose(st, []Machine{{"automatic", 8}}); err != nil {
		t.Error(err)
	}
	var none ErrNoPress
	if _, err := Choose(st, []Machine{{"automatic", 7}}); !errors.As(err, &none) || none.Needs[0] != 8 {
		t.Errorf("7 heads: %v", err)
	}
}

// TestLayouts draws layouts; the rules are common practice.
func TestLayouts(t *testing.T) {
	solid := Screen{Use: "solid"}
	flashed := Screen{Use: "solid", Flash: true}
	cooled := Screen{Use: "solid", Flash: true, Cool: true}
	again := Screen{Use: "underbase", Hits: 2}
	for _, c := range []struct {
		screens []Screen
		want    string
		runs    [][]int
		wet     []int
	}{
		{nil, "", nil, nil},
		{uses("solid"), "P0", [][]int{{0}}, nil},
		{uses("underbase"), "P0", [][]int{{0}}, nil},
		{uses("solid", "detail"), "P0 P1", [][]int{{0, 1}}, []int{1}},
		{uses("underbase", "solid", "detail"), "P0 F0 C0 P1 P2", [][]int{{0}, {1, 2}}, []int{2}},
		{uses("blocker", "underbase", "solid"), "P0 F0 C0 P1 F1 C1 P2", [][]int{{0}, {1}, {2}}, nil},
		{uses("underbase", "halftone", "halftone", "raised"), "P0 F0 C0 P1 P2 P3", [][]int{{0}, {1, 2, 3}}, []int{2, 3}},
		{[]Screen{again, solid}, "P0 F0 C0 P0 F0 C0 P1", [][]int{{0}, {0}, {1}}, nil},
		{[]Screen{{Use: "solid", Hits: 3}}, "P0 F0 C0 P0 F0 C0 P0", [][]int{{0}, {0}, {0}}, nil},
		{[]Screen{solid, again}, "P0 P1 F1 C1 P1", [][]int{{0, 1}, {1}}, []int{1}},
		{[]Screen{flashed, solid, solid}, "P0 F0 P1 P2", [][]int{{0}, {1, 2}}, []int{2}},
		{[]Screen{cooled, solid}, "P0 F0 C0 P1", [][]int{{0}, {1}}, nil},
		{[]Screen{{Use: "underbase", Forbidden: true}, solid}, "P0 P1", [][]int{{0, 1}}, []int{1}},
		{[]Screen{{Use: "solid", Forced: true}, solid}, "P0 F0 P1", [][]int{{0}, {1}}, nil},
		{[]Screen{solid, {Use: "solid", Forced: true}}, "P0 P1 F1", [][]int{{0, 1}}, []int{1}},
		{[]Screen{solid, flashed}, "P0 P1", [][]int{{0, 1}}, []int{1}},
		{[]Screen{{Use: "solid", Cool: true}, solid}, "P0 P1", [][]int{{0, 1}}, []int{1}},
	} {
		st := Stations(c.screens)
		if got := draw(st); got != c.want {
			t.Errorf("%v: %s; want %s", c.screens, got, c.want)
		}
		if got := Runs(st); !reflect.DeepEqual(got, c.runs) {
			t.Errorf("%s: runs %v; want %v", c.want, got, c.runs)
		}
		if got := OnWet(st); !reflect.DeepEqual(got, c.wet) {
			t.Errorf("%s: on wet ink %v; want %v", c.want, got, c.wet)
		}
	}
}

// TestOneTurn lays hits out with one head a screen: the garments go round again.
func TestOneTurn(t *testing.T) {
	for _, c := range []struct {
		screens []Screen
		want    string
		turns   string
	}{
		{nil, "", "[]"},
		{uses("underbase", "solid"), "P0 F0 C0 P1", "[[0 1]]"},
		{[]Screen{{Use: "solid", Hits: 2}}, "P0 F0 C0", "[[0] [0]]"},
		{[]Screen{{Use: "underbase", Hits: 2}, {Use: "solid", Flash: true}, {Use: "solid"}}, "P0 F0 C0 P1 F1 P2", "[[0] [0 1 2]]"},
		{[]Screen{{Use: "solid", Flash: true, Cool: true}, {Use: "raised", Hits: 4}}, "P0 F0 C0 P1 F1 C1", "[[0 1] [1] [1] [1]]"},
		{[]Screen{{Use: "solid", Hits: 2}, {Use: "solid", Hits: 2}}, "P0 F0 C0 P1 F1 C1", "[[0] [0 1] [1]]"},
	} {
		st, turns := OneTurn(c.screens)
		if got := draw(st); got != c.want || fmt.Sprint(turns) != c.turns {
			t.Errorf("%v: %s in turns %v; want %s in %s", c.screens, got, turns, c.want, c.turns)
		}
	}
}

// TestChoose takes the first press with the heads, and says what each of them lacks.
func TestChoose(t *testing.T) {
	st := Stations(uses("blocker", "underbase", "solid", "solid")) // 4 prints, 2 flashes, 2 cool-downs
	for kind, want := range map[string]int{"automatic": 8, "manual": 5, "flatbed": 1} {
		if n, err := Needs(st, kind); err != nil || n != want {
			t.Errorf("%s: %d heads, %v; want %d", kind, n, err, want)
		}
	}
	if n, err := Needs(Stations(uses("solid", "solid")), "manual"); err != nil || n != 2 {
		t.Errorf("manual without a flash: %d, %v", n, err)
	}
	if n, err := Needs(Stations([]Screen{{Use: "underbase", Hits: 2}, {Use: "solid"}}), "manual"); err != nil || n != 3 {
		t.Errorf("manual, the base printed twice from one head: %d, %v", n, err)
	}
	presses := []Machine{{"manual", 4}, {"automatic", 6}, {"automatic", 8}, {"automatic", 12}}
	if i, err := Choose(st, presses); err != nil || i != 2 {
		t.Errorf("chose %d, %v; want 2", i, err)
	}
	_, err := Choose(st, presses[:2])
	var none ErrNoPress
	if !errors.As(err, &none) || !reflect.DeepEqual(none.Needs, []int{5, 8}) {
		t.Fatalf("two small presses: %v", err)
	}
	for _, word := range []string{"press 1 (manual) has 4 of 5", "press 2 (automatic) has 6 of 8", "accepted"} {
		if !strings.Contains(err.Error(), word) {
			t.Errorf("%q is not in: %v", word, err)
		}
	}
	if _, err := Choose(st, nil); !errors.As(err, &none) || !strings.Contains(err.Error(), "accepted") {
		t.Errorf("no press: %v", err)
	}
}

// TestAdvice lists orders and where they depart from the custom (common practice).
func TestAdvice(t *testing.T) {
	ink := func(use string, coverage, light float64) Screen {
		return Screen{Use: use, Coverage: coverage, Lightness: tone(light)}
	}
	white := ink("underbase", 0.5, 1)
	yellow, red, navy := ink("solid", 0.1, 0.9), ink("solid", 0.2, 0.5), ink("solid", 0.3, 0.2)
	black, puff, top := ink("detail", 0.05, 0.05), ink("raised", 0.1, 0.7), ink("highlight", 0.02, 1)
	gray := ink("blocker", 0.5, 0.6)
	for name, c := range map[string]struct {
		screens []Screen
		want    []Note
	}{
		"as is customary":                {[]Screen{gray, white, yellow, red, navy, top, black, puff}, nil},
		"nothing":                        {nil, nil},
		"underbase second":               {[]Screen{red, white}, []Note{{GroundNotFirst, 1, 0}}},
		"blocker over its underbase":     {[]Screen{white, gray, red}, []Note{{BlockerAfter, 1, 0}}},
		"blocker after a color":          {[]Screen{red, gray}, []Note{{GroundNotFirst, 1, 0}}},
		"black first":                    {[]Screen{black, red}, []Note{{BlackNotLast, 1, 0}}},
		"two after black, each named":    {[]Screen{black, yellow, red}, []Note{{BlackNotLast, 1, 0}, {BlackNotLast, 2, 0}}},
		"puff first":                     {[]Screen{puff, red, black}, []Note{{ThickNotLast, 1, 0}, {ThickNotLast, 2, 0}}},
		"clear before black":             {[]Screen{ink("clear", 0.1, 1), black}, []Note{{ThickNotLast, 1, 0}}},
		"both rules against":             {[]Screen{navy, yellow}, []Note{{LargeFirst, 1, 0}, {DarkFirst, 1, 0}}},
		"against the first only":         {[]Screen{navy, red, yellow}, []Note{{LargeFirst, 1, 0}, {DarkFirst, 1, 0}, {LargeFirst, 2, 0}, {DarkFirst, 2, 0}}},
		"large but lighter":              {[]Screen{ink("solid", 0.6, 0.9), red}, nil},
		"small but darker":               {[]Screen{ink("solid", 0.1, 0.2), ink("solid", 0.6, 0.9)}, nil},
		"same size, dark first":          {[]Screen{ink("solid", 0.2, 0.3), red}, []Note{{DarkFirst, 1, 0}}},
		"same tone, large first":         {[]Screen{ink("solid", 0.25, 0.5), red}, []Note{{LargeFirst, 1, 0}}},
		"hardly larger, hardly darker":   {[]Screen{ink("solid", 0.24, 0.41), red}, nil},
		"tone not known, large first":    {[]Screen{{Use: "solid", Coverage: 0.6}, red}, []Note{{LargeFirst, 1, 0}}},
		"coverage not known, dark first": {[]Screen{{Use: "solid", Lightness: tone(0.2)}, red}, []Note{{DarkFirst, 1, 0}}},
		"nothing known":                  {uses("solid", "detail", "halftone"), nil},
		"highlight early":                {[]Screen{white, top, yellow}, nil},
		"highlight on black":             {[]Screen{black, top}, nil},
		"highlight under its base":       {[]Screen{top, white}, []Note{{GroundNotFirst, 1, 0}}},
		"not a number":                   {[]Screen{ink("solid", math.NaN(), math.NaN()), red}, nil},
	} {
		if got := Advice(c.screens); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %v; want %v", name, got, c.want)
		}
	}
}

// screens draws any list of screens.
func screens(t *rapid.T) []Screen {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Screen {
		s := Screen{
			Use:      rapid.SampledFrom([]string{"underbase", "blocker", "solid", "detail", "halftone", "highlight", "raised", "clear"}).Draw(t, "use"),
			Coverage: rapid.Float64Range(0, 1).Draw(t, "coverage"),
			Flash:    rapid.Bool().Draw(t, "flash"),
			Cool:     rapid.Bool().Draw(t, "cool"),
			Hits:     rapid.IntRange(0, 3).Draw(t, "hits"),
		}
		if rapid.Bool().Draw(t, "known") {
			s.Lightness = tone(rapid.Float64Range(0, 1).Draw(t, "lightness"))
		}
		return s
	}), 0, 12).Draw(t, "screens")
}

// TestAnyLayout checks what holds for every layout: the order of the job is kept, every flash
// and cool-down follows its own print, the last station prints, and each print is in one run.
func TestAnyLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := screens(t)
		st := Stations(list)
		prints := make([]int, len(list))
		last, flashes := -1, 0
		for k, s := range st {
			if s.Screen < last || s.Screen > last+1 {
				t.Fatalf("%s: the order is not the job's", draw(st))
			}
			last = s.Screen
			switch s.Kind {
			case Print:
				prints[s.Screen]++
			case Flash:
				flashes++
				if k == 0 || st[k-1] != (Station{Print, s.Screen}) {
					t.Fatalf("%s: a flash without its print", draw(st))
				}
			case Cool:
				if k == 0 || st[k-1] != (Station{Flash, s.Screen}) {
					t.Fatalf("%s: a cool-down without its flash", draw(st))
				}
			}
		}
		if last != len(list)-1 || len(st) > 0 && st[len(st)-1].Kind != Print {
			t.Fatalf("%s: it does not end with the last print", draw(st))
		}
		total := 0
		for i, s := range list {
			want := max(1, s.Hits)
			if prints[i] != want {
				t.Fatalf("screen %d prints %d times", i, prints[i])
			}
			total += want
		}
		runs, inRuns := Runs(st), 0
		for _, r := range runs {
			inRuns += len(r)
		}
		if inRuns != total || len(list) > 0 && len(runs) != flashes+1 || len(OnWet(st)) != total-len(runs) {
			t.Fatalf("%s: runs %v, on wet %v", draw(st), runs, OnWet(st))
		}
	})
}

// TestAnyAdvice checks that a note points backward, that none comes twice, and that a lone
// screen and a list of equal ones draw none.
func TestAnyAdvice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := screens(t)
		type key struct {
			code   string
			screen int
		}
		seen := map[key]bool{}
		for _, n := range Advice(list) {
			k := key{n.Code, n.Screen}
			if !(n.Earlier >= 0 && n.Earlier < n.Screen && n.Screen < len(list)) || seen[k] {
				t.Fatalf("%+v in %v", n, list)
			}
			seen[k] = true
			// Mended, the pair alone departs no more.
			for _, m := range Advice([]Screen{list[n.Screen], list[n.Earlier]}) {
				t.Fatalf("turned round, %v and %v still depart: %+v", list[n.Screen], list[n.Earlier], m)
			}
		}
		if len(list) > 0 {
			if notes := Advice([]Screen{list[0], list[0], list[0]}); notes != nil {
				t.Fatalf("equal screens: %v", notes)
			}
		}
	})
}

// TestRefusals: the error says what is accepted.
func TestRefusals(t *testing.T) {
	st := Stations(uses("solid"))
	needs := func(kind string) error { _, err := Needs(st, kind); return err }
	choose := func(m Machine) error { _, err := Choose(st, []Machine{m}); return err }
	for name, err := range map[string]error{
		"needs, unknown kind":  needs("rotary"),
		"choose, unknown kind": choose(Machine{"", 8}),
		"choose, 0 heads":      choose(Machine{"manual", 0}),
	} {
		checks.Refused(t, "press", name, err)
	}
}
