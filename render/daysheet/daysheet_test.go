package daysheet

import (
	"slices"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/flow"
)

// TestPacked: what parts two facts stands between them and not at the end of a line, where only a comma may.
func TestPacked(t *testing.T) {
	m, font := &maker{}, flow.Regular(factPT)
	parts := []string{"60 pieces", "due 2027-05-21", "setup 10 min, run 31 min"}
	wide := canvas.Width("60 pieces · due 2027-05-21 ", font)
	for _, c := range []struct {
		between, atEnd string
		want           []string
	}{
		{" · ", "", []string{"60 pieces · due 2027-05-21", "setup 10 min, run 31 min"}},
		{", ", ",", []string{"60 pieces, due 2027-05-21,", "setup 10 min, run 31 min"}},
	} {
		if got := m.packed(parts, c.between, c.atEnd, font, wide); !slices.Equal(got.lines, c.want) {
			t.Errorf("%q; %q is wanted", got.lines, c.want)
		}
	}
}
