package lesson

import (
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/seen"
)

// The worked job: a white base and a halftone on it, as large as a chest takes (common practice). A shop that cannot
// print both has a white solid, or a solid of a color.
const (
	workedWidthMM, workedHeightMM = 300, 350
	workedCoverage                = 0.4
	workedLPI                     = 45
	workedQuantity                = 100
)

// Fault is what may be seen of a screen of the worked job, and what to do.
type Fault struct {
	seen.Finding
	Mesh string // of that screen; empty: it is the first, whose card the lesson reads
}

// job makes the worked job and asks what may be seen of its prints: of the first screen, or else of the second.
func (m *maker) job() {
	j := jobOn(cotton)
	j.Number, j.Quantity = "101", workedQuantity
	base := job.Screen{Swatch: "#ffffff", InkName: white, Use: "underbase", Coverage: workedCoverage}
	dots := job.Screen{InkName: inkName, Use: "halftone", Coverage: workedCoverage, Halftone: &job.Halftone{LinesPerInch: workedLPI, Smallest: smallestDot}}
	cover, color := base, job.Screen{InkName: inkName, Use: "solid", Coverage: workedCoverage}
	cover.Use = "solid"
	var p *plan.Plan
	for _, screens := range [][]job.Screen{{base, dots}, {cover}, {color}} {
		j.Locations = []job.Location{{Name: "full front", WidthMM: workedWidthMM, HeightMM: workedHeightMM, Place: "full-front", Screens: screens}}
		if made, err := m.make(j, m.shop); err == nil {
			p = made
			break
		}
	}
	if p == nil {
		return // racks that hold no such job have no worked card
	}
	m.out.Worked = p
	for _, code := range seen.Faults() {
		for n, s := range p.Locations[0].Screens {
			if f := sure.Of(seen.Ask(p, 1, n+1, []string{code}, nil)).Findings[0]; f.Shows && len(f.Changes) > 0 {
				fault := Fault{Finding: f}
				if n > 0 {
					fault.Mesh = s.Mesh.Name
				}
				m.out.Faults = append(m.out.Faults, fault)
				break
			}
		}
	}
}

// card is the screen whose card the lesson reads; nil: there is none.
func (m *maker) card() *plan.Screen {
	if m.out.Worked == nil {
		return nil
	}
	return &m.out.Worked.Locations[0].Screens[0]
}
