package say_test

import (
	"slices"
	"strings"
	"testing"

	"bladecard/render/internal/plantest"
	"bladecard/render/say"
)

// TestGaugeTellsWhatToTakeOff: a gauge reads what lies under the print too, and that is cloth, a base or a sheet; a
// puff is gauged before it rises. A gain that no scale of a shop tells is left out.
func TestGaugeTellsWhatToTakeOff(t *testing.T) {
	const head, at = "title = \"t\"\n", "[[location]]\nwidth = \"25 cm\"\nheight = \"25 cm\"\n"
	const base, color, spot = "[[location.screen]]\nink = \"plastisol white\"\nuse = \"underbase\"\ncoverage = \"40 %\"\n", "[[location.screen]]\nink = \"plastisol\"\ncoverage = \"40 %\"\n", "[[location.screen]]\nink = \"plastisol\"\ncoverage = \"1 %\"\n"
	for name, c := range map[string]struct {
		job    string
		screen int
		says   string
		weighs bool
	}{
		"on cloth":     {head + at + color, 1, "print minus bare cloth", true},
		"a base":       {head + at + base + color, 1, "print minus bare cloth", true},
		"on a base":    {head + at + base + color, 2, "print minus base under it", true},
		"on a sheet":   {head + "[stock]\nkind = \"board\"\n" + at + "[[location.screen]]\nink = \"uv graphics\"\ncoverage = \"40 %\"\n", 1, "print minus bare sheet", true},
		"a puff":       {head + at + "[[location.screen]]\nink = \"plastisol puff\"\nuse = \"raised\"\ncoverage = \"40 %\"\n", 1, "before it puffs", true},
		"a small spot": {head + at + spot, 1, "print minus bare cloth", false},
	} {
		p, v := plantest.Text(t, ".", c.job)
		lines := v.Expect(p, p.Locations[0].Screens[c.screen-1])
		weighs := slices.ContainsFunc(lines, func(l say.Line) bool { return l.Label == v.T("card.weigh") })
		if !strings.Contains(lines[0].Text, c.says) || weighs != c.weighs {
			t.Errorf("%s: %v; %q is wanted, by scale: %v", name, lines, c.says, c.weighs)
		}
	}
}
