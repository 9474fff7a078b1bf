package lesson

import (
	"cmp"
	"math"
	"slices"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
)

// Exercise is a question of the work sheet with the figures of its text and of its answer. The unit of a figure
// stands at the end of its name: film_um, set_deg, lines_inch.
type Exercise struct {
	Code        string // the texts in the language file
	Values      map[string]float64
	Names       map[string]string
	Intro       bool              // on the work sheet of a new hand too
	Fault       *Fault            // the picture to be read, and its answer; nil: none
	EffectUM    float64           // smallest change of a film that the answer speaks of; 0: of none
	Corrections []plan.Correction // of the answer, those that mend the film; nil: none does, or none asked for
	TooLittle   []plan.Correction // those that go the right way and do not mend it
}

// exercises fills in the work sheet: a card to be read, prints, screens. An exercise that the shop gives no
// figures for is left out, and so is one on a change of the film that nobody can measure.
func (m *maker) exercises() {
	for _, e := range []struct {
		what  string
		intro bool
		make  func(*Exercise) bool
	}{
		{"card-angle", true, m.askAngle}, {"card-mesh", true, m.askMesh}, {"card-next", true, m.askNext}, {"card-flash", true, m.askFlash},
		{"print", true, m.askFault(seen.RaggedEdge)}, {"print", true, m.askFault(seen.Pinholes)},
		{"print", true, m.askFault(seen.OneSide)}, {"print", true, m.askFault(seen.WashesOff)},
		{"screen", true, m.askFault(seen.InkLeft)}, {"screen-dot", true, m.askDot}, {"screen-line", true, m.askLine},
		{"choice", true, m.askChoice}, {"same-edge", false, m.askSameEdge}, {"strokes", false, m.askStrokes}, {"too-thin", false, m.askTooThin},
	} {
		x := Exercise{Code: e.what, Intro: e.intro, Values: map[string]float64{}, Names: map[string]string{}}
		if e.make(&x) && (x.EffectUM == 0 || x.EffectUM >= m.out.Bench.TellsUM) {
			m.out.Exercises = append(m.out.Exercises, x)
		}
	}
}

// askAngle: an angle that is 10 deg over what may be held, and the angle to the screen.
func (m *maker) askAngle(x *Exercise) bool {
	s := m.card()
	if s == nil {
		return false
	}
	x.Values = map[string]float64{"set_deg": s.AngleDeg.Set, "screen_deg": s.AngleDeg.ToScreen, "low_deg": s.AngleDeg.Low, "high_deg": s.AngleDeg.High, "found_deg": s.AngleDeg.High + 10}
	return true
}

// askMesh: a frame of the rack that is not the card's.
func (m *maker) askMesh(x *Exercise) bool {
	s := m.card()
	for _, c := range m.out.Meshes {
		if s != nil && c.CountPerInch > s.Mesh.CountPerInch {
			x.Names = map[string]string{"mesh": s.Mesh.Name, "other": c.Name}
			return true
		}
	}
	return false
}

// askNext: where the garment goes after the print of the card.
func (m *maker) askNext(x *Exercise) bool {
	s := m.card()
	if s == nil || s.Next == nil || !s.Flash.Needed || s.Flash.StartS == nil {
		return false
	}
	x.Values = map[string]float64{"start_s": *s.Flash.StartS, "head_int": float64(s.Next.Head)}
	return true
}

func (m *maker) askFlash(x *Exercise) bool {
	s := m.card()
	if s == nil || !s.Flash.Needed || s.Flash.StartS == nil || s.Flash.ColdSeconds == nil {
		return false
	}
	x.Values = map[string]float64{"start_s": *s.Flash.StartS, "cold_s": s.Flash.ColdSeconds.High}
	return true
}

// askFault: a picture of a fault; the answer is the worked job's.
func (m *maker) askFault(code string) func(*Exercise) bool {
	return func(x *Exercise) bool {
		i := slices.IndexFunc(m.out.Faults, func(f Fault) bool { return f.Seen == code })
		if i >= 0 {
			x.Fault = &m.out.Faults[i]
		}
		return i >= 0
	}
}

// askDot: the smallest dot of the worked halftone against the cloth of the usual setup.
func (m *maker) askDot(x *Exercise) bool {
	if m.out.Worked == nil || len(m.out.Worked.Locations[0].Screens) < 2 {
		return false
	}
	t := m.out.Worked.Locations[0].Screens[1].Halftone
	c := m.out.Meshes[slices.IndexFunc(m.out.Meshes, func(c Mesh) bool { return c.Name == m.middle.Name })]
	x.Names = map[string]string{"mesh": c.Name, "verdict": "yes"}
	if t.DotUM < c.DotUM {
		x.Names["verdict"] = "no"
	}
	x.Values = map[string]float64{"lines_inch": t.LinesPerInch, "dot_percent": 100 * t.Smallest, "thread_fine": c.ThreadUM, "opening_fine": c.OpeningUM, "dot_fine": t.DotUM, "holds_fine": c.DotUM}
	return true
}

// askLine: how far the workhorse and the softest blade may be set for a fine line.
func (m *maker) askLine(x *Exercise) bool {
	b, soft := m.out.Blades[m.out.Workhorse], m.out.Blades[0]
	for i, l := range m.out.Limits {
		if l.FinestMM == 0.5 && b.Largest[i] != nil && soft.Largest[i] != nil {
			x.Names = map[string]string{"blade": b.Name, "soft": soft.Name}
			x.Values = map[string]float64{"finest_small": l.FinestMM, "set_deg": *b.Largest[i], "soft_deg": *soft.Largest[i]}
			return soft.Name != b.Name
		}
	}
	return false
}

// askChoice: a typical print whose setup is not the usual one.
func (m *maker) askChoice(x *Exercise) bool {
	for _, c := range m.out.Prints {
		if s := c.Setup; s != nil && len(c.Misses) == 0 && c.Print == "lines" {
			x.Names = map[string]string{"print": c.Print, "mesh": s.Mesh.Name, "blade": s.Blade.Name}
			x.Values = map[string]float64{"finest_small": c.FinestMM, "set_deg": s.AngleDeg.Set, "strokes_int": float64(s.Strokes), "hits_int": float64(s.Hits)}
			return true
		}
	}
	return false
}

// askSameEdge: the softest blade, set so that its edge leans as the stiffest one's at 30 deg.
func (m *maker) askSameEdge(x *Exercise) bool {
	soft, hard := m.out.Blades[0], m.out.Blades[len(m.out.Blades)-1]
	at := slices.Index(m.out.SetDeg, 30)
	e := hard.Edges[at]
	if e == nil || soft.Name == hard.Name {
		return false
	}
	a := soft.setFor(*e, m.out.Press.LoadNPerCM)
	if a == nil {
		return false
	}
	x.Names = map[string]string{"soft": soft.Name, "hard": hard.Name}
	x.Values = map[string]float64{"hard_deg": m.out.SetDeg[at], "edge_deg": *e, "soft_deg": *a}
	return true
}

// askStrokes: a second wet stroke against a flash between two.
func (m *maker) askStrokes(x *Exercise) bool {
	once, wet, flashed := printed(m.out.Strokes[0].Value), printed(m.out.Strokes[1].Value), printed(m.out.FlashedUM)
	x.Names = map[string]string{"mesh": m.middle.Name}
	x.Values = map[string]float64{"once_um": once, "wet_um": wet, "flash_um": flashed}
	x.EffectUM = math.Min(wet-once, flashed-wet)
	return true
}

// printed is a film in the digits that paper prints it with (tenths of a micrometre below 10,
// whole ones below 100, steps of 5 above), so that an answer follows from what its question says.
func printed(um float64) float64 {
	step := 5.0
	switch a := math.Abs(um); {
	case a < 9.95:
		step = 0.1
	case a < 99.5:
		step = 1
	}
	return math.Round(um/step) * step
}

// mostChanges is how many changes each list of an answer holds, and thinShare how thin the print of the exercise is.
const (
	mostChanges = 3
	thinShare   = 0.75
)

// askTooThin: a print came out thin, by more than a gauge reads; which single changes bring it back on the same screen
// and which do too little, by the planner's list for the whole rack.
func (m *maker) askTooThin(x *Exercise) bool {
	p, err := m.plan(cotton, m.shop, fixed(m.middle))
	if err != nil {
		return false
	}
	at := p.Locations[0].Screens[0]
	film := printed(at.CuredUM.Value)
	measured := printed(film * thinShare)
	x.EffectUM = film - measured
	for _, c := range at.Corrections { // the planner has those most worth trying first
		switch {
		case !c.Clears || c.DeltaUM <= 0 || slices.Contains(c.Disturbs, "screen"):
		case c.DeltaUM >= x.EffectUM && len(x.Corrections) < mostChanges:
			x.Corrections = append(x.Corrections, c)
		case c.DeltaUM <= x.EffectUM/2 && len(x.TooLittle) < mostChanges: // what nearly does is asked of nobody
			x.TooLittle = append(x.TooLittle, c)
		}
	}
	for _, list := range [][]plan.Correction{x.Corrections, x.TooLittle} {
		slices.SortStableFunc(list, func(a, b plan.Correction) int { return cmp.Compare(a.DeltaUM, b.DeltaUM) })
	}
	x.Names = map[string]string{"mesh": at.Mesh.Name, "blade": at.Blade.Name}
	x.Values = map[string]float64{"set_deg": at.AngleDeg.Set, "film_um": film, "measured_um": measured, "short_um": x.EffectUM}
	return len(x.Corrections) > 0
}
