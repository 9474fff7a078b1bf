package choose_test

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

var update = flag.Bool("update", false, "write testdata/trade.md anew")

// expectation is what a printer would set, written down before the job was run. Empty fields ask nothing.
type expectation struct {
	words   string   // as a printer says it
	blades  []string // any of these
	pulls   []string // strokes x hits, any of these
	low     float64  // set angle
	high    float64
	flash   string   // what the flash does, "none", or empty
	says    []string // warnings that must come
	silent  []string // warnings that must not
	press   string   // that it runs on, or empty
	cureTop float64  // the cure ends at or below
	fails   string   // the error that must come
	differs string   // how the tool is known to differ, and why it is left so
}

// trade is thirty jobs with what the trade would set (common practice; the jobs are invented).
var trade = []struct {
	name, shop, job string
	screen          int // that the expectation is of, from 1
	want            expectation
}{
	{"white on black cotton, manual press with two blades", "[[blade]]\nlayup = \"70\"\n[[blade]]\nlayup = \"80\"\n[[press]]\nname = \"bench\"\nkind = \"manual\"\nheads = 4\n",
		tee("cotton", "dark", `ink = "plastisol white"`, `use = "solid"`, `mesh = "156-64"`), 1,
		expectation{words: "70, two hits with a flash", blades: []string{"70"}, pulls: []string{"1x2"}, low: 15, high: 25, flash: "gel", silent: []string{"needs-base"}}},
	{"white base on dark cotton", "", tee("cotton", "dark", `ink = "plastisol white"`, `use = "underbase"`, `mesh = "156-64"`) + under(`ink = "plastisol"`), 1,
		expectation{words: "70, two strokes or two hits, flash to gel", blades: []string{"70", "65/90/65"}, pulls: []string{"2x1", "1x2"}, low: 15, high: 25, flash: "gel"}},
	{"black on a white tee", "", tee("cotton", "light", `ink = "plastisol"`, `swatch = "#141414"`, `mesh = "156-64"`), 1,
		expectation{words: "70, one stroke, no flash", blades: []string{"70"}, pulls: []string{"1x1"}, low: 15, high: 20, flash: "none", silent: []string{"needs-base", "dyes-migrate"}}},
	{"numbers on a polyester jersey", "", tee("polyester", "dark", `ink = "plastisol low-cure"`, `swatch = "#fbfbf8"`, `use = "solid"`, `mesh = "110-80"`, `film = "70..110 um"`), 1,
		expectation{words: "60 or 65/90/65, two hits, low cure, watch the dye", blades: []string{"60", "65/90/65"}, pulls: []string{"1x2"}, low: 15, high: 30, flash: "gel", says: []string{"dyes-migrate"}, cureTop: 154}},
	{"mark on a nylon jacket", "", tee("nylon", "dark", `ink = "plastisol low-cure"`, `swatch = "#fbfbf8"`, `use = "solid"`, `mesh = "156-64"`), 1,
		expectation{words: "70, bonding agent and wash test, never above 150 C", blades: []string{"70"}, says: []string{"nylon-bond"}, cureTop: 150}},
	{"silicone sleeve mark", "", tee("polyester", "dark", `ink = "silicone"`, `swatch = "#fbfbf8"`, `use = "solid"`, `mesh = "110-80"`, `hits = 2`), 1,
		expectation{words: "70, flash to tack, cure at 127 C, no dye trouble", blades: []string{"70", "65/90/65", "60"}, flash: "tack", silent: []string{"dyes-migrate", "flash-never"}, cureTop: 135}},
	{"acrylic white on black canvas", "", tee("cotton", "dark", `ink = "high-solids acrylic white"`, `use = "solid"`, `mesh = "110-80"`), 1,
		expectation{words: "70 or softer, two hits with the first one dried", blades: []string{"70", "65/90/65", "60"}, pulls: []string{"1x2", "2x2"}, flash: "dry", silent: []string{"flash-never", "dyes-migrate"}}},
	{"discharge base under water-based color", "", tee("cotton", "dark", `ink = "discharge"`, `use = "underbase"`, `mesh = "156-64"`) + under(`ink = "water-based"`, `swatch = "#d02020"`), 2,
		expectation{words: "no white base: the dye goes; long hold in the dryer", silent: []string{"needs-base"}, flash: "none", cureTop: 171}},
	{"yellow straight on black", "", tee("cotton", "dark", `ink = "plastisol"`, `swatch = "#ffd200"`, `use = "solid"`, `mesh = "156-64"`), 1,
		expectation{words: "it needs a base", says: []string{"needs-base"}}},
	{"45 line halftone on a light tee", "", tee("cotton", "light", `ink = "plastisol"`, `swatch = "#141414"`, `mesh = "230-48"`, `halftone = { lines = "45 lpi", angle = 22.5, smallest = "5 %" }`), 1,
		expectation{words: "70/90/70 upright, one stroke", blades: []string{"70/90/70"}, pulls: []string{"1x1"}, low: 15, high: 15}},
	{"65 line simulated process", "", tee("cotton", "light", `ink = "plastisol"`, `mesh = "305-40"`, `halftone = { lines = "65 lpi", angle = 22.5, smallest = "5 %" }`), 1,
		expectation{words: "80 upright, one stroke", blades: []string{"80"}, pulls: []string{"1x1"}, low: 15, high: 15}},
	{"puff on a hood", "", tee("cotton", "light", `ink = "plastisol puff"`, `use = "raised"`), 1,
		expectation{words: "60 leaned over, two strokes or more, never above 176 C", blades: []string{"60", "65/90/65"}, low: 25, high: 40, cureTop: 176}},
	{"clear gel of 400 um", "", tee("cotton", "light", `ink = "plastisol clear gel"`, `use = "clear"`, `mesh = "86-100"`, `eom = "200 um"`, `film = "360..440 um"`), 1,
		expectation{words: "65 to 70, upright, several hits", blades: []string{"70", "65/90/65"}, pulls: []string{"1x3", "2x2", "1x4", "2x3"}, low: 10, high: 25, flash: "gel"}},
	{"red on a white tee", "", tee("cotton", "light", `ink = "plastisol"`, `swatch = "#c81e1e"`, `mesh = "156-64"`), 1,
		expectation{words: "70, one stroke, no flash", blades: []string{"70"}, pulls: []string{"1x1"}, flash: "none", silent: []string{"needs-base"}}},
	{"base and highlight white in a row", "", tee("cotton", "dark", `ink = "plastisol white"`, `use = "solid"`, `hits = 1`, `mesh = "156-64"`) + under(`ink = "plastisol white"`, `use = "highlight"`), 1,
		expectation{words: "a flash between two whites", flash: "gel"}},
	{"six colors with a base on eight heads", "", tee("cotton", "dark", `ink = "plastisol white"`, `use = "underbase"`, `mesh = "156-64"`, `hits = 1`) + strings.Repeat(under(`ink = "plastisol"`), 5), 1,
		expectation{words: "6 prints, a flash and a cool-down: eight heads", flash: "gel", silent: []string{"press-other"}}},
	{"two hits on a small automatic", "[[press]]\nname = \"six\"\nkind = \"automatic\"\nheads = 6\n", tee("cotton", "dark", `ink = "plastisol white"`, `use = "underbase"`, `mesh = "156-64"`, `hits = 2`) + under(`ink = "plastisol"`), 1,
		expectation{words: "no room for a second screen: send them round again", flash: "gel", silent: []string{"press-other"}}},
	{"navy blend fleece", "", tee("blend", "dark", `ink = "plastisol"`, `swatch = "#fbfbf8"`, `use = "underbase"`, `mesh = "125-70"`) + under(`ink = "plastisol"`), 1,
		expectation{words: "watch the dye from 149 C", says: []string{"dyes-migrate"}}},
	{"white polyester", "", tee("polyester", "light", `ink = "plastisol"`, `swatch = "#c81e1e"`, `mesh = "156-64"`), 1,
		expectation{words: "no dye in white cloth", silent: []string{"dyes-migrate"}, cureTop: 154}},
	{"fine text", "", tee("cotton", "light", `ink = "plastisol"`, `swatch = "#141414"`, `use = "detail"`, `finest = "0.3 mm"`, `mesh = "230-48"`), 1,
		expectation{words: "70 or harder, upright, one stroke", blades: []string{"70", "70/90/70", "80"}, pulls: []string{"1x1"}, low: 15, high: 17.5}},
	{"metallic gold on black", "", tee("cotton", "dark", `ink = "plastisol metallic"`, `swatch = "#c9a227"`, `mesh = "110-80"`), 1,
		expectation{words: "70, straight on the cloth: the flake hides", blades: []string{"70", "65/90/65"}, silent: []string{"needs-base"}}},
	{"posters in solvent ink", "", "title = \"t\"\n[stock]\nkind = \"board\"\n[[location]]\nwidth = \"25 cm\"\nheight = \"25 cm\"\n[[location.screen]]\nink = \"solvent graphics\"\nmesh = \"305-40\"\n", 1,
		expectation{words: "80 upright, one stroke, air-dried", blades: []string{"80"}, pulls: []string{"1x1"}, low: 15, high: 15, flash: "none"}},
	{"navy water-based on a light tee", "", tee("cotton", "light", `ink = "water-based"`, `swatch = "#1d2b4f"`, `mesh = "156-64"`), 1,
		expectation{words: "70, one stroke, no flash", blades: []string{"70"}, pulls: []string{"1x1"}, flash: "none", silent: []string{"needs-base"}}},
	{"low-cure and standard plastisol on one garment", "", tee("cotton", "dark", `ink = "plastisol low-cure"`, `use = "underbase"`) + under(`ink = "plastisol"`), 1,
		expectation{words: "not on one garment: they share no cure", fails: "one garment goes through the dryer at one temperature"}},
	{"four colors and a base on a four-head manual", "[[press]]\nname = \"bench\"\nkind = \"manual\"\nheads = 4\n", tee("cotton", "dark", `ink = "plastisol white"`, `use = "underbase"`) + strings.Repeat(under(`ink = "plastisol"`), 4), 1,
		expectation{words: "too few heads", fails: "bench 4/6"}},
	{"white mark on a dark cap, by hand", "[[press]]\nname = \"bench\"\nkind = \"manual\"\nheads = 4\n",
		onPiece("cotton", "dark", "cap", "11 cm", "5.5 cm", `ink = "plastisol white"`, `use = "solid"`, `mesh = "156-64"`), 1,
		expectation{words: "70, a short blade, two hits with a flash", blades: []string{"70"}, pulls: []string{"1x2"}, low: 15, high: 25, flash: "gel", silent: []string{"needs-base", "blade-short", "frame-narrow"}}},
	{"black down a long sleeve", "",
		onPiece("cotton", "light", "long-sleeve", "6 cm", "40 cm", `ink = "plastisol"`, `swatch = "#141414"`, `mesh = "156-64"`), 1,
		expectation{words: "70, one stroke, no flash", blades: []string{"70"}, pulls: []string{"1x1"}, low: 15, high: 20, flash: "none", silent: []string{"needs-base", "blade-short", "frame-narrow", "frame-short", "frame-small"}}},
	{"white on a dark nylon bag", "",
		onPiece("nylon", "dark", "tote", "20 cm", "20 cm", `ink = "plastisol low-cure white"`, `use = "solid"`, `mesh = "156-64"`), 1,
		expectation{words: "70, bonding agent, two hits with a flash, never above 150 C", blades: []string{"70"}, pulls: []string{"1x2", "2x1"}, flash: "gel", says: []string{"nylon-bond"}, silent: []string{"dyes-migrate", "fibre-stops"}, cureTop: 150}},
	{"plastisol on a discharge base", "", tee("cotton", "dark", `ink = "discharge"`, `use = "underbase"`, `mesh = "156-64"`) + under(`ink = "plastisol"`, `swatch = "#c81e1e"`, `mesh = "156-64"`), 2,
		expectation{words: "the dye goes, so no white base; one stroke; both cure at 160 C and up", blades: []string{"70"}, pulls: []string{"1x1"}, flash: "none", silent: []string{"needs-base", "dyes-migrate"}, cureTop: 171}},
	{"UV lines on board, carousel and flat table in the shop", "[[press]]\nname = \"carousel\"\nkind = \"automatic\"\nheads = 8\n[[press]]\nname = \"table\"\nkind = \"flatbed\"\nheads = 1\n",
		"title = \"t\"\n[stock]\nkind = \"board\"\n[[location]]\nwidth = \"25 cm\"\nheight = \"25 cm\"\n[[location.screen]]\nink = \"uv graphics\"\nuse = \"detail\"\nmesh = \"355-34\"\n", 1,
		expectation{words: "on the table, not the carousel; 75 or 80, upright, one stroke, under the lamp", blades: []string{"75", "80"}, pulls: []string{"1x1"}, low: 10, high: 15, press: "table", silent: []string{"press-other", "press-stock"}}},
}

// onPiece is a job of one screen on a piece that is no tee.
func onPiece(fibre, shade, outline, width, height string, keys ...string) string {
	return "title = \"t\"\n[garment]\nfibre = \"" + fibre + "\"\nshade = \"" + shade + "\"\noutline = \"" + outline + "\"\n[[location]]\nwidth = \"" + width + "\"\nheight = \"" + height + "\"\n[[location.screen]]\n" + strings.Join(keys, "\n") + "\n"
}

func tee(fibre, shade string, keys ...string) string {
	return "title = \"t\"\n[garment]\nfibre = \"" + fibre + "\"\nshade = \"" + shade + "\"\n[[location]]\nname = \"full front\"\nwidth = \"25 cm\"\nheight = \"25 cm\"\n[[location.screen]]\n" + strings.Join(keys, "\n") + "\n"
}

func under(keys ...string) string { return "[[location.screen]]\n" + strings.Join(keys, "\n") + "\n" }

// TestTrade runs the jobs and holds what comes out to what was written down; testdata/trade.md is the table.
func TestTrade(t *testing.T) {
	var table strings.Builder
	table.WriteString("# What a printer would set, and what comes out\n\nCommon practice, written down before the jobs were run. `go test ./calc/choose -run Trade -update` writes this table.\n\n| job | a printer | the tool | verdict |\n| --- | --- | --- | --- |\n")
	for _, c := range trade {
		shop := plantest.Shop(t, c.shop)
		p, errs := choose.Make(plantest.Job(t, c.job, shop), shop)
		got, off := outcomeOf(p, errs, c.screen, c.want)
		verdict := "as expected"
		switch {
		case off != "" && c.want.differs != "":
			verdict = "differs: " + c.want.differs
		case off != "":
			t.Errorf("%s: %s, but %s\n%s", c.name, c.want.words, off, got)
			verdict = "off: " + off
		case c.want.differs != "":
			t.Errorf("%s: said to differ (%s), but comes out as expected", c.name, c.want.differs)
		}
		fmt.Fprintf(&table, "| %s | %s | %s | %s |\n", c.name, c.want.words, got, verdict)
	}
	const path = "testdata/trade.md"
	if *update {
		if err := os.MkdirAll("testdata", 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(table.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if kept, err := os.ReadFile(path); err != nil || string(kept) != table.String() {
		t.Errorf("%s is not what comes out (%v); run with -update and read it", path, err)
	}
}

// outcomeOf says what came out, and what of it is not as expected.
func outcomeOf(p *plan.Plan, errs job.Errors, screen int, want expectation) (got, off string) {
	if errs != nil {
		if want.fails == "" || !strings.Contains(errs.Error(), want.fails) {
			off = "it fails"
		}
		return "error: " + errs[0].Wrong, off
	}
	if want.fails != "" {
		off = "it does not fail"
	}
	l := p.Locations[0]
	s := l.Screens[screen-1]
	flash := "none"
	if s.Flash.Needed {
		flash = s.Flash.Does
	}
	pulls := fmt.Sprintf("%dx%d", s.Strokes, s.Hits)
	var codes []string
	for _, w := range append(slices.Clone(s.Warnings), l.Warnings...) {
		codes = append(codes, w.Code)
	}
	got = fmt.Sprintf("%s at %g°, %d strokes, %d hits, %.0f um, flash %s", s.Blade.Name, s.AngleDeg.Set, s.Strokes, s.Hits, s.CuredUM.Value, flash)
	if c := s.Cure.TemperatureC; c != nil {
		got += fmt.Sprintf(", cure %.0f to %.0f C", c.Low, c.High)
	}
	if l.Turns > 1 {
		got += fmt.Sprintf(", %d turns", l.Turns)
	}
	if codes != nil {
		got += "; " + strings.Join(codes, ", ")
	}
	miss := func(bad bool, what string) {
		if bad {
			off += "; " + what
		}
	}
	miss(want.blades != nil && !slices.Contains(want.blades, s.Blade.Layup), "blade "+s.Blade.Layup)
	miss(want.pulls != nil && !slices.Contains(want.pulls, pulls), "pulls "+pulls)
	miss(want.high > 0 && (s.AngleDeg.Set < want.low || s.AngleDeg.Set > want.high), fmt.Sprintf("angle %g", s.AngleDeg.Set))
	miss(want.flash != "" && flash != want.flash, "flash "+flash)
	miss(want.cureTop > 0 && (s.Cure.TemperatureC == nil || s.Cure.TemperatureC.High > want.cureTop), "cure")
	miss(want.press != "" && p.Press.Name != want.press, "press "+p.Press.Name)
	for _, code := range want.says {
		miss(!slices.Contains(codes, code), "does not say "+code)
	}
	for _, code := range want.silent {
		miss(slices.Contains(codes, code), "says "+code)
	}
	return got, strings.TrimPrefix(off, "; ")
}
