package lesson

import (
	"reflect"
	"slices"
	"sort"

	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// Choice is a piece of work and the setup that the planner chose for it. Setup is nil where the
// planner found none.
type Choice struct {
	Ink, Use     string
	LinesPerInch float64 // of a halftone; 0: none
	Mesh         string  // asked for; empty: the planner chose it
	Setup        *plan.Screen
	Misses       []string // film-thin, film-heavy, cut, moves, leaves-ink
}

// The halftones of the grid (common practice), in lines per inch: on cloth, on sheets, and for
// the ink of the film figures.
var (
	clothLPI = []float64{45}
	sheetLPI = []float64{65}
	inkLPI   = []float64{45, 55, 65}
)

const smallestDot = 0.05

// useOrder is the order of the uses in the grid; a highlight is a detail.
var useOrder = []string{"underbase", "solid", "detail", "halftone", "blocker", "raised", "clear"}

// through is the ink whose work is shown through every mesh.
const through = "plastisol white"

// mostWorks is the most rows of the first grid.
const mostWorks = 40

// choice lets the planner choose the setup of a grid of work: ink class and use with the mesh
// open, then one ink in three uses through every mesh of the paper.
func (m *maker) choice() {
	for _, in := range m.shop.Inks {
		for _, use := range useOrder {
			if in.Uses[use] == nil || m.inherits(in, use) {
				continue
			}
			for _, lines := range lineCounts(in, use) {
				if len(m.out.Works) < mostWorks {
					m.out.Works = append(m.out.Works, Choice{Ink: in.Name, Use: use, LinesPerInch: lines})
				}
			}
		}
	}
	if in, ok := m.shop.FindInk(through); ok {
		for _, c := range m.out.Meshes {
			for _, use := range throughUses {
				m.out.Through = append(m.out.Through, Choice{Ink: in.Name, Use: use, LinesPerInch: lineCounts(*in, use)[0], Mesh: c.Name})
			}
		}
	}
	var cloth, sheet []*Choice
	for _, list := range [][]Choice{m.out.Works, m.out.Through} {
		for i := range list {
			c := &list[i]
			if in, ok := m.shop.FindInk(c.Ink); ok && in.On == "sheet" {
				sheet = append(sheet, c)
			} else {
				cloth = append(cloth, c)
			}
		}
	}
	m.set(cloth)
	m.set(sheet)
}

// throughUses are the uses that are shown through every mesh.
var throughUses = []string{"underbase", "solid", "halftone"}

// lineCounts are the line counts of the halftones of an ink; one count of 0 for any other use.
func lineCounts(in job.Ink, use string) []float64 {
	switch {
	case use != "halftone":
		return []float64{0}
	case in.Name == inkName:
		return inkLPI
	case in.On == "sheet":
		return sheetLPI
	}
	return clothLPI
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

// set lets the planner make all setups as locations of one job, which works out once what a
// blade does whatever the cloth. Where one of them is an error, each is made by itself.
func (m *maker) set(list []*Choice) {
	var screens []job.Screen
	for _, c := range list {
		s := job.Screen{InkName: c.Ink, Use: c.Use, MeshName: c.Mesh}
		if c.LinesPerInch > 0 {
			s.Halftone = &job.Halftone{LinesPerInch: c.LinesPerInch, Smallest: smallestDot}
		}
		screens = append(screens, s)
	}
	if len(screens) == 0 {
		return
	}
	p, err := m.plan(m.shop, screens...)
	for i, c := range list {
		switch {
		case err == nil:
			c.take(p.Locations[i].Screens[0])
		default:
			if one, err := m.plan(m.shop, screens[i]); err == nil {
				c.take(one.Locations[0].Screens[0])
			}
		}
	}
}

// take keeps a setup and what it misses.
func (c *Choice) take(s plan.Screen) {
	c.Setup = &s
	for _, w := range s.Warnings {
		switch w.Code {
		case "edge-leans":
			c.Misses = append(c.Misses, "cut")
		case "film-unsteady":
			c.Misses = append(c.Misses, "moves")
		case "film-thin", "film-heavy", "leaves-ink":
			c.Misses = append(c.Misses, w.Code)
		}
	}
}

// cautions lists what can hurt with the shop's inks, each code once.
func (m *maker) cautions() {
	for _, in := range m.shop.Inks {
		for _, c := range in.Cautions {
			if !slices.Contains(m.out.Cautions, c) {
				m.out.Cautions = append(m.out.Cautions, c)
			}
		}
	}
	sort.Strings(m.out.Cautions)
}
