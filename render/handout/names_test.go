package handout

import (
	"slices"
	"strings"
	"testing"

	"bladecard/calc/lesson"
)

// TestCall: a blade has its name, its layup where the name is too wide, and a letter where two would be called alike.
func TestCall(t *testing.T) {
	long := strings.Repeat("the blade from the uppermost drawer ", 3)
	got := call([]lesson.Blade{
		{Name: "60", Layup: "60"}, {Name: "soft", Layup: "65"}, {Name: long, Layup: "70"}, {Name: "70", Layup: "70"}, {Name: long, Layup: "80"},
	})
	if want := []string{"60", "soft", "70\u00a0a", "70\u00a0b", "80"}; !slices.Equal(got, want) {
		t.Errorf("%q; %q are wanted", got, want)
	}
}

// TestFit: columns fill the width, none is narrower than its widest word, and a column that asks for little gets it.
func TestFit(t *testing.T) {
	tb := table{columns: []column{{"blade", false}, {"name on the rack", false}, {"film", true}}, rows: [][]string{{"70/90/70", strings.Repeat("long name ", 20), "32\u00a0µm"}}}
	for _, w := range []float64{60, 120, 400} {
		tb.fit(w)
		sum := cellGapMM * 2
		for i, c := range tb.widths {
			sum += c
			for _, s := range []string{tb.columns[i].head, tb.rows[0][i]} {
				if least := widestWord(s, plainFont); c < least {
					t.Errorf("at %g mm column %d is %.1f wide; %q needs %.1f", w, i, c, s, least)
				}
			}
		}
		if sum < w-0.01 || sum > w+0.01 {
			t.Errorf("the columns take %.2f of %g mm", sum, w)
		}
	}
}
