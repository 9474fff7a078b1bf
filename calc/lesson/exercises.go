package lesson

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/cure"
	"bladecard/calc/film"
	"bladecard/calc/halftone"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// Exercise is a question of the work sheet with the figures of its text and of its answer. The
// unit of a figure stands at the end of its name: film_um, set_deg, load_ncm, ratio_times.
type Exercise struct {
	Code        string // the texts in the language file
	Values      map[string]float64
	Names       map[string]string
	Intro       bool              // on the work sheet of a new hand too
	Corrections []plan.Correction // of the answer, those that mend the film; nil: none does, or none asked for
	TooLittle   []plan.Correction // those that go the right way and do not mend it
}

// exercises fills in the work sheet. An exercise that the shop gives no figures for (no blade
// that a limit holds for, no setup) is left out.
func (m *maker) exercises() {
	for _, e := range []struct {
		code  string
		intro bool
		make  func(*Exercise) bool
	}{
		{"modulus", true, m.askModulus}, {"thin", true, m.askThin}, {"screen-angle", true, m.askScreenAngle}, {"same-edge", true, m.askSameEdge},
		{"limit", true, m.askLimit}, {"pressure", true, m.askPressure}, {"count", true, m.askCount}, {"volume", false, m.askVolume},
		{"eom", false, m.askEOM}, {"share", false, m.askShare}, {"strokes", true, m.askStrokes}, {"dot", false, m.askDot},
		{"setup", true, m.askSetup}, {"too-thin", true, m.askTooThin}, {"ink", true, m.askInk}, {"belt", true, m.askBelt},
	} {
		x, some := Exercise{Code: e.code, Intro: e.intro, Values: map[string]float64{}, Names: map[string]string{}}, false
		if err := sure.Try(func() { some = e.make(&x) }); err != nil {
			sure.Check(fmt.Errorf("%s: %w", e.code, err))
		}
		if some {
			m.out.Exercises = append(m.out.Exercises, x)
		}
	}
}

// askModulus: how much stiffer a hard blade is than a soft one.
func (m *maker) askModulus(x *Exercise) bool {
	const soft, hard = softShoreA, hardShoreA
	a, b := sure.Of(blade.ModulusGentMPa(soft)), sure.Of(blade.ModulusGentMPa(hard))
	x.Values = map[string]float64{"soft": soft, "hard": hard, "soft_mpa": a, "hard_mpa": b, "ratio_times": b / a}
	return true
}

// askThin: the rigidity goes with the cube of the thickness.
func (m *maker) askThin(x *Exercise) bool {
	const thick, thin = referenceMM, 7.5
	a, b := oneLayerNM(referenceShoreA, thick), oneLayerNM(referenceShoreA, thin)
	x.Values = map[string]float64{"shore": referenceShoreA, "thick_thickness": thick, "thin_thickness": thin, "thick_nm": a, "thin_nm": b, "left_percent": 100 * b / a}
	return true
}

// askScreenAngle: an angle from the vertical is another from the screen.
func (m *maker) askScreenAngle(x *Exercise) bool {
	const set = 25.0
	x.Values = map[string]float64{"set_deg": set, "screen_deg": 90 - set}
	return true
}

// askSameEdge: the softest blade, set so that its edge leans as the stiffest one's at 30 deg.
func (m *maker) askSameEdge(x *Exercise) bool {
	soft, hard := m.out.Blades[0], m.out.Blades[len(m.out.Blades)-1]
	const set = 30.0
	e := hard.edge(set, m.out.Press.LoadNPerCM)
	if e == nil || soft.Name == hard.Name {
		return false
	}
	a := soft.setFor(*e, m.out.Press.LoadNPerCM)
	if a == nil {
		return false
	}
	x.Names = map[string]string{"soft": soft.Name, "hard": hard.Name}
	x.Values = map[string]float64{"hard_deg": set, "edge_deg": *e, "soft_deg": *a, "load_ncm": m.out.Press.LoadNPerCM}
	return true
}

// askLimit: how far the workhorse may be set for a fine feature.
func (m *maker) askLimit(x *Exercise) bool {
	b := m.out.Blades[m.out.Workhorse]
	for i, l := range m.out.Limits {
		if l.FinestMM == 0.5 && b.Largest[i] != nil {
			x.Names = map[string]string{"blade": b.Name}
			x.Values = map[string]float64{"finest_small": l.FinestMM, "limit_deg": l.EdgeDeg, "set_deg": *b.Largest[i]}
			return true
		}
	}
	return false
}

// askPressure: what the gauge shows for the working load; a press of the shop that has
// cylinders, or an everyday pair.
func (m *maker) askPressure(x *Exercise) bool {
	bore, n := 25.0, 2
	if i := slices.IndexFunc(m.shop.Presses, func(p job.Press) bool { return p.BoreMM > 0 && p.Cylinders > 0 }); i >= 0 {
		bore, n = m.shop.Presses[i].BoreMM, m.shop.Presses[i].Cylinders
	}
	const length = 400.0
	bar := sure.Of(blade.CylinderPressureBar(m.out.Press.LoadNPerCM, bore, n, length))
	x.Values = map[string]float64{"cylinders": float64(n), "bore_mm": bore, "length_mm": length, "load_ncm": m.out.Press.LoadNPerCM, "bar_bar": bar}
	return true
}

// middleMesh is the mesh of the film figures.
func (m *maker) middleMesh() Mesh {
	opening := sure.Of(m.middle.Cloth()).OpeningUM
	i := slices.IndexFunc(m.out.Meshes, func(c Mesh) bool { return c.Name == m.middle.Name && c.OpeningUM == opening })
	return m.out.Meshes[max(0, i)]
}

// askCount: the finest mesh, counted a cm, with its pitch and opening.
func (m *maker) askCount(x *Exercise) bool {
	c := m.out.Meshes[len(m.out.Meshes)-1]
	pitch := sure.Of(mesh.PitchUM(c.CountPerInch))
	opening := sure.Of(mesh.OpeningUM(pitch, c.ThreadUM))
	x.Values = map[string]float64{"inch_int": c.CountPerInch, "thread_fine": c.ThreadUM, "cm_int": c.CountPerCM, "pitch_fine": pitch, "opening_fine": opening}
	return true
}

// askVolume: the ink that the openings of a mesh hold.
func (m *maker) askVolume(x *Exercise) bool {
	c := m.middleMesh()
	x.Names = map[string]string{"mesh": c.Name}
	x.Values = map[string]float64{"area_percent": 100 * c.OpenArea, "fabric_fine": c.FabricUM, "volume_um": sure.Of(mesh.VolumeUM(c.OpenArea, c.FabricUM))}
	return true
}

// askEOM: the coats that a stencil takes.
func (m *maker) askEOM(x *Exercise) bool {
	c := m.middleMesh()
	build := sure.Of(mesh.BuildFor(c.EOMUM))
	x.Names = map[string]string{"mesh": c.Name}
	x.Values = map[string]float64{"percent_percent": 100 * thinShare, "fabric_fine": c.FabricUM, "eom_fine": c.EOMUM, "coat_um": mesh.CoatUM, "coats_int": float64(build.Coats)}
	return build.Coats > 0
}

// askShare: how much of a thick stencil counts for a narrow and a wide feature.
func (m *maker) askShare(x *Exercise) bool {
	const eom, narrow, wide = 200.0, 3.0, wideMM
	a, b := whole(sure.Of(mesh.StencilShare(narrow))), whole(sure.Of(mesh.StencilShare(wide)))
	x.Values = map[string]float64{"eom_fine": eom, "narrow_mm": narrow, "wide_mm": wide, "narrow_percent": 100 * a, "narrow_fine": a * eom, "wide_percent": 100 * b, "wide_fine": b * eom}
	return true
}

// askStrokes: a second wet stroke against a second print after a flash.
func (m *maker) askStrokes(x *Exercise) bool {
	once := printed(m.out.Strokes[0].CuredUM.Value)
	x.Values = map[string]float64{"once_um": once, "next_percent": 100 * film.NextStrokeShare, "wet_um": once * sure.Of(film.Strokes(2, film.NextStrokeShare)), "flash_um": 2 * once}
	x.Names = map[string]string{"mesh": m.middle.Name}
	return true
}

// askDot: whether a mesh holds the smallest dot of a halftone.
func (m *maker) askDot(x *Exercise) bool {
	c := m.middleMesh()
	const lines, share = 55.0, smallestDot
	dot, holds := sure.Of(halftone.DotDiameterUM(lines, share)), sure.Of(halftone.SmallestDotUM(c.ThreadUM, c.OpeningUM))
	x.Names = map[string]string{"mesh": c.Name, "verdict": "no"}
	if dot >= holds {
		x.Names["verdict"] = "yes"
	}
	x.Values = map[string]float64{"lines_inch": lines, "dot_percent": 100 * share, "thread_fine": c.ThreadUM, "opening_fine": c.OpeningUM, "dot_fine": dot, "holds_fine": holds}
	return true
}

// askSetup: a piece of work that the planner does not leave at the workhorse's usual setup.
func (m *maker) askSetup(x *Exercise) bool {
	for _, c := range m.out.Works {
		if s := c.Setup; s != nil && len(c.Misses) == 0 && c.Use == "halftone" {
			x.Names = map[string]string{"ink": c.Ink, "mesh": s.Mesh.Name, "blade": s.Blade.Name}
			x.Values = map[string]float64{
				"lines_inch": c.LinesPerInch, "set_deg": s.AngleDeg.Set, "edge_deg": s.EdgeAngleDeg, "limit_deg": *s.EdgeLimitDeg,
				"strokes_int": float64(s.Strokes), "film_um": s.CuredUM.Value, "low_um": s.TargetUM.Low, "high_um": s.TargetUM.High,
			}
			return true
		}
	}
	return false
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

// whole is a share in whole percent, as paper prints it.
func whole(share float64) float64 { return math.Round(100*share) / 100 }

// mostChanges is how many changes each list of an answer holds.
const mostChanges = 4

// askTooThin: a print came out thin; which single changes bring it back and which do too little,
// by the planner's list.
func (m *maker) askTooThin(x *Exercise) bool {
	// The whole rack is asked, so that blades and meshes are among the changes.
	at := sure.Of(m.plan(m.shop, fixed(m.middle))).Locations[0].Screens[0]
	film := printed(at.CuredUM.Value)
	measured := printed(film * 0.85)
	for _, c := range at.Corrections { // the planner has those most worth trying first
		list := &x.TooLittle
		if c.DeltaUM >= film-measured {
			list = &x.Corrections
		}
		if c.DeltaUM > 0 && c.Clears && len(*list) < mostChanges {
			*list = append(*list, c)
		}
	}
	for _, list := range [][]plan.Correction{x.Corrections, x.TooLittle} {
		sort.SliceStable(list, func(i, j int) bool { return list[i].DeltaUM < list[j].DeltaUM })
	}
	x.Names = map[string]string{"mesh": at.Mesh.Name, "blade": at.Blade.Name}
	x.Values = map[string]float64{"set_deg": at.AngleDeg.Set, "film_um": film, "measured_um": measured, "short_um": film - measured}
	return len(x.Corrections) > 0
}

// askInk: the ink of a run.
func (m *maker) askInk(x *Exercise) bool {
	in, ok := m.shop.FindInk(inkName)
	if !ok {
		return false
	}
	const width, height, coverage, prints = 300.0, 350.0, 0.4, 288
	wet := printed(m.out.Strokes[0].CuredUM.Value / in.Solids)
	g := sure.Of(ink.MassG(width, height, coverage, wet, in.DensityKgPerL))
	run := math.Round(sure.Of(ink.RunG(g, prints, m.shop.Waste, m.shop.StaysG))/10) * 10 // no surer than that
	x.Values = map[string]float64{
		"width_mm": width, "height_mm": height, "coverage_percent": 100 * coverage, "prints_int": prints, "wet_um": wet,
		"density_density": in.DensityKgPerL, "waste_percent": 100 * m.shop.Waste, "stays_g": m.shop.StaysG, "print_g": g, "run_g": run,
	}
	return true
}

// askBelt: the speed of the belt for a dwell.
func (m *maker) askBelt(x *Exercise) bool {
	for _, d := range m.shop.Dryers {
		if d.HeatedMM > 0 {
			const dwell = 60.0
			x.Values = map[string]float64{"heated_long": d.HeatedMM, "dwell_s": dwell, "belt_mpm": sure.Of(cure.BeltMPerMin(d.HeatedMM, dwell))}
			return true
		}
	}
	return false
}
