package lesson

import (
	"cmp"
	"math"
	"reflect"
	"slices"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Choice is a piece of work and the setup that the planner chose for it. Setup is nil where the
// planner found none.
type Choice struct {
	Print        string // code of a typical print; empty: of no such
	Ink, Use     string
	On           string  // cotton, polyester, paper
	LinesPerInch float64 // of a halftone; 0: none
	FinestMM     float64 // smallest feature that must hold; 0: as the use has it
	DotsFrom     float64 // share from which the dots of a halftone hold, in whole percent; 0: no halftone
	Setup        *plan.Screen
	Misses       []string // film-thin, film-heavy, cut, moves, leaves-ink
}

// prints are what shops are asked for day by day (common practice), as far as the shop has the ink.
var prints = []Choice{
	{Print: "base", Ink: white, Use: "underbase", On: cotton},
	{Print: "white", Ink: white, Use: "solid", On: cotton},
	{Print: "color", Ink: inkName, Use: "solid", On: cotton},
	{Print: "numbers", Ink: "plastisol low-cure white", Use: "solid", On: polyester},
	{Print: "lines", Ink: inkName, Use: "detail", FinestMM: 0.2, On: cotton},
	{Print: "halftone", Ink: inkName, Use: "halftone", LinesPerInch: 45, On: cotton},
	{Print: "halftone", Ink: inkName, Use: "halftone", LinesPerInch: 65, On: cotton},
	{Print: "puff", Ink: "plastisol puff", Use: "raised", On: cotton},
	{Print: "gel", Ink: "plastisol clear gel", Use: "clear", On: cotton},
	{Print: "water", Ink: "water-based", Use: "solid", On: cotton},
	{Print: "discharge", Ink: "discharge", Use: "solid", On: cotton},
}

// white is the ink class of bases.
const white = "plastisol white"

// The halftones of other inks (common practice), in lines per inch: on cloth and on sheets.
const (
	clothLPI    = 45.0
	sheetLPI    = 65.0
	smallestDot = 0.05
)

// useOrder is the order of the uses in the grid; a highlight is a detail.
var useOrder = []string{"underbase", "solid", "detail", "halftone", "blocker", "raised", "clear"}

// mostOthers is how many other works the paper has room for.
const mostOthers = 36

// choice lets the planner choose the setups of the typical prints and of each other ink class and use, with the
// mesh open.
func (m *maker) choice() {
	known := map[[2]string]bool{}
	for _, c := range prints {
		if in, ok := m.shop.FindInk(c.Ink); ok && in.Uses[c.Use] != nil {
			m.out.Prints = append(m.out.Prints, c)
			known[[2]string{c.Ink, c.Use}] = true
		}
	}
	for _, in := range m.shop.Inks {
		for _, use := range useOrder {
			if in.Uses[use] == nil || m.inherits(in, use) || known[[2]string{in.Name, use}] || len(m.out.Others) == mostOthers {
				continue
			}
			c := Choice{Ink: in.Name, Use: use, On: cotton}
			lines := clothLPI
			if in.On == "sheet" {
				c.On, lines = paper, sheetLPI
			}
			if use == "halftone" {
				c.LinesPerInch = lines
			}
			m.out.Others = append(m.out.Others, c)
		}
	}
	for _, on := range []string{cotton, polyester, paper} {
		var same []*Choice
		for _, list := range [][]Choice{m.out.Prints, m.out.Others} {
			for i := range list {
				if list[i].On == on {
					same = append(same, &list[i])
				}
			}
		}
		m.set(on, same)
	}
}

// inherits tells whether an ink class has a use from the class that it is like, so that the
// planner's setup is the same.
func (m *maker) inherits(in job.Ink, use string) bool {
	base, ok := m.shop.FindInk(in.Like)
	if in.Like == "" || !ok || base.Uses[use] == nil {
		return false
	}
	own := in
	own.Uses, own.Name, own.Like = nil, base.Name, base.Like
	own.DensityKgPerL, own.Cautions, own.FlashEach = base.DensityKgPerL, base.Cautions, base.FlashEach
	own.GelC, own.CureC, own.CureTopC, own.DwellS, own.Rise = base.GelC, base.CureC, base.CureTopC, base.DwellS, base.Rise
	from := *base
	from.Uses = nil
	return reflect.DeepEqual(own, from) && reflect.DeepEqual(in.Uses[use], base.Uses[use])
}

// set lets the planner make all setups, of one stock, as locations of one job, which works out once what a
// blade does whatever the cloth. Where one of them is an error, each is made by itself.
func (m *maker) set(on string, list []*Choice) {
	if len(list) == 0 {
		return
	}
	var screens []job.Screen
	for _, c := range list {
		s := job.Screen{InkName: c.Ink, Use: c.Use, FinestMM: c.FinestMM}
		if c.LinesPerInch > 0 {
			s.Halftone = &job.Halftone{LinesPerInch: c.LinesPerInch, Smallest: smallestDot}
		}
		screens = append(screens, s)
	}
	p, err := m.plan(on, m.shop, screens...)
	for i, c := range list {
		switch {
		case err == nil:
			c.take(p.Locations[i].Screens[0])
		default:
			if one, err := m.plan(on, m.shop, screens[i]); err == nil {
				c.take(one.Locations[0].Screens[0])
			}
		}
	}
}

// take keeps a setup and what it misses.
func (c *Choice) take(s plan.Screen) {
	c.Setup = &s
	if t := s.Halftone; t != nil {
		c.DotsFrom = max(t.Smallest, math.Ceil(100*t.HoldsFrom)/100)
	}
	for _, w := range s.Warnings {
		switch w.Code {
		case "edge-leans", "dot-none", "dot-none-lines":
			c.Misses = append(c.Misses, "cut")
		case "film-unsteady":
			c.Misses = append(c.Misses, "moves")
		case "film-thin", "film-heavy", "leaves-ink":
			c.Misses = append(c.Misses, w.Code)
		}
	}
}

// cautionOrder is that in which a class hears them: the machine, then heat, then what is breathed and touched.
var cautionOrder = []string{"moving-press", "hot-flash", "hot-dryer", "flammable", "fume", "solvent", "discharge-agent", "uv-lamp", "uv-skin"}

// cautions lists what can hurt with the shop's inks, each code once.
func (m *maker) cautions() {
	for _, in := range m.shop.Inks {
		for _, c := range in.Cautions {
			if !slices.Contains(m.out.Cautions, c) {
				m.out.Cautions = append(m.out.Cautions, c)
			}
		}
	}
	slices.SortFunc(m.out.Cautions, func(a, b string) int {
		return cmp.Or(cmp.Compare(slices.Index(cautionOrder, a), slices.Index(cautionOrder, b)), cmp.Compare(a, b))
	})
}
