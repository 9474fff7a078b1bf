package lesson

import (
	"fmt"
	"math"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/cure"
	"bladecard/calc/film"
	"bladecard/calc/halftone"
	"bladecard/calc/ink"
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
func (m *maker) exercises() error {
	for _, e := range []struct {
		what  string
		intro bool
		make  func(*Exercise) (bool, error)
	}{
		{"modulus", true, m.askModulus}, {"thin", true, m.askThin}, {"screen-angle", true, m.askScreenAngle}, {"same-edge", true, m.askSameEdge},
		{"limit", true, m.askLimit}, {"pressure", true, m.askPressure}, {"count", true, m.askCount}, {"volume", false, m.askVolume},
		{"eom", false, m.askEOM}, {"share", false, m.askShare}, {"strokes", true, m.askStrokes}, {"dot", false, m.askDot},
		{"setup", true, m.askSetup}, {"too-thin", true, m.askTooThin}, {"ink", true, m.askInk}, {"belt", true, m.askBelt},
	} {
		x := Exercise{Code: e.what, Intro: e.intro, Values: map[string]float64{}, Names: map[string]string{}}
		ok, err := e.make(&x)
		if err != nil {
			return fmt.Errorf("%s: %w", e.what, err)
		}
		if ok {
			m.out.Exercises = append(m.out.Exercises, x)
		}
	}
	return nil
}

func (m *maker) askModulus(x *Exercise) (bool, error) {
	const soft, hard = softShoreA, hardShoreA
	a, err := blade.ModulusGentMPa(soft)
	if err != nil {
		return false, err
	}
	b, err := blade.ModulusGentMPa(hard)
	x.Values = map[string]float64{"soft": soft, "hard": hard, "soft_mpa": a, "hard_mpa": b, "ratio_times": b / a}
	return true, err
}

// askThin: the rigidity goes with the cube of the thickness.
func (m *maker) askThin(x *Exercise) (bool, error) {
	const thick, thin = referenceMM, 7.5
	a, err := single(referenceShoreA, thick)
	if err != nil {
		return false, err
	}
	b, err := single(referenceShoreA, thin)
	x.Values = map[string]float64{"shore": referenceShoreA, "thick_thickness": thick, "thin_thickness": thin, "thick_nm": a, "thin_nm": b, "left_percent": 100 * b / a}
	return true, err
}

func (m *maker) askScreenAngle(x *Exercise) (bool, error) {
	const set = 25.0
	x.Values = map[string]float64{"set_deg": set, "screen_deg": 90 - set}
	return true, nil
}

// askSameEdge: the softest blade, set so that its edge leans as the stiffest one's at 30 deg.
func (m *maker) askSameEdge(x *Exercise) (bool, error) {
	soft, hard := m.out.Blades[0], m.out.Blades[len(m.out.Blades)-1]
	const set = 30.0
	e, err := hard.edge(set, m.out.Press.LoadNPerCM)
	if err != nil || e == nil || soft.Name == hard.Name {
		return false, err
	}
	a, err := soft.setFor(*e, m.out.Press.LoadNPerCM)
	if err != nil || a == nil {
		return false, err
	}
	x.Names = map[string]string{"soft": soft.Name, "hard": hard.Name}
	x.Values = map[string]float64{"hard_deg": set, "edge_deg": *e, "soft_deg": *a, "load_ncm": m.out.Press.LoadNPerCM}
	return true, nil
}

// askLimit: how far the workhorse may be set for a fine feature.
func (m *maker) askLimit(x *Exercise) (bool, error) {
	b := m.out.Blades[m.out.Workhorse]
	for i, l := range m.out.Limits {
		if l.FinestMM == 0.5 && b.Largest[i] != nil {
			x.Names = map[string]string{"blade": b.Name}
			x.Values = map[string]float64{"finest_small": l.FinestMM, "limit_deg": l.EdgeDeg, "set_deg": *b.Largest[i]}
			return true, nil
		}
	}
	return false, nil
}

// askPressure: what the gauge shows for the working load; a press of the shop that has
// cylinders, or an everyday pair.
func (m *maker) askPressure(x *Exercise) (bool, error) {
	bore, n := 25.0, 2
	for _, p := range m.shop.Presses {
		if p.BoreMM > 0 && p.Cylinders > 0 {
			bore, n = p.BoreMM, p.Cylinders
			break
		}
	}
	const length = 400.0
	bar, err := blade.CylinderPressureBar(m.out.Press.LoadNPerCM, bore, n, length)
	x.Values = map[string]float64{"cylinders": float64(n), "bore_mm": bore, "length_mm": length, "load_ncm": m.out.Press.LoadNPerCM, "bar_bar": bar}
	return true, err
}

// benchMesh is the mesh of the film figures.
func (m *maker) benchMesh() Mesh {
	for i, c := range m.cloths {
		if c.Name == m.bench.Name && c.OpeningUM == m.bench.OpeningUM {
			return m.out.Meshes[i]
		}
	}
	return m.out.Meshes[0]
}

// finestMesh is the last mesh of the racks.
func (m *maker) finestMesh() Mesh { return m.out.Meshes[len(m.out.Meshes)-1] }

func (m *maker) askCount(x *Exercise) (bool, error) {
	c := m.finestMesh()
	pitch, err := mesh.PitchUM(c.CountPerInch)
	if err != nil {
		return false, err
	}
	opening, err := mesh.OpeningUM(pitch, c.ThreadUM)
	x.Values = map[string]float64{"inch_int": c.CountPerInch, "thread_fine": c.ThreadUM, "cm_int": c.CountPerCM, "pitch_fine": pitch, "opening_fine": opening}
	return true, err
}

func (m *maker) askVolume(x *Exercise) (bool, error) {
	c := m.benchMesh()
	v, err := mesh.VolumeUM(c.OpenArea, c.FabricUM)
	x.Names = map[string]string{"mesh": c.Name}
	x.Values = map[string]float64{"area_percent": 100 * c.OpenArea, "fabric_fine": c.FabricUM, "volume_um": v}
	return true, err
}

func (m *maker) askEOM(x *Exercise) (bool, error) {
	c := m.benchMesh()
	eom := thinShare * c.FabricUM
	build, err := mesh.BuildFor(eom)
	x.Names = map[string]string{"mesh": c.Name}
	x.Values = map[string]float64{"percent_percent": 100 * thinShare, "fabric_fine": c.FabricUM, "eom_fine": eom, "coat_um": mesh.CoatUM, "coats_int": float64(build.Coats)}
	return build.Coats > 0, err
}

func (m *maker) askShare(x *Exercise) (bool, error) {
	const eom, narrow, wide = 200.0, 3.0, wideMM
	a, err := mesh.StencilShare(narrow)
	if err != nil {
		return false, err
	}
	b, err := mesh.StencilShare(wide)
	a, b = whole(a), whole(b)
	x.Values = map[string]float64{"eom_fine": eom, "narrow_mm": narrow, "wide_mm": wide, "narrow_percent": 100 * a, "narrow_fine": a * eom, "wide_percent": 100 * b, "wide_fine": b * eom}
	return true, err
}

func (m *maker) askStrokes(x *Exercise) (bool, error) {
	two, err := film.Strokes(2, film.NextStrokeShare)
	once := printed(m.out.Strokes[0].CuredUM.Value)
	x.Values = map[string]float64{"once_um": once, "next_percent": 100 * film.NextStrokeShare, "wet_um": once * two, "flash_um": 2 * once}
	x.Names = map[string]string{"mesh": m.bench.Name}
	return true, err
}

func (m *maker) askDot(x *Exercise) (bool, error) {
	c := m.benchMesh()
	const lines, share = 55.0, smallestDot
	dot, err := halftone.DotDiameterUM(lines, share)
	if err != nil {
		return false, err
	}
	holds, err := halftone.SmallestDotUM(c.ThreadUM, c.OpeningUM)
	x.Names = map[string]string{"mesh": c.Name, "verdict": "no"}
	if dot >= holds {
		x.Names["verdict"] = "yes"
	}
	x.Values = map[string]float64{"lines_inch": lines, "dot_percent": 100 * share, "thread_fine": c.ThreadUM, "opening_fine": c.OpeningUM, "dot_fine": dot, "holds_fine": holds}
	return true, err
}

// askSetup: a piece of work that the planner does not leave at the workhorse's usual setup.
func (m *maker) askSetup(x *Exercise) (bool, error) {
	for _, c := range m.out.Works {
		if s := c.Setup; s != nil && len(c.Misses) == 0 && c.Use == "halftone" {
			x.Names = map[string]string{"ink": c.Ink, "mesh": s.Mesh.Name, "blade": s.Blade.Name}
			x.Values = map[string]float64{
				"lines_inch": c.LinesPerInch, "set_deg": s.AngleDeg.Set, "edge_deg": s.EdgeAngleDeg, "limit_deg": *s.EdgeLimitDeg,
				"strokes_int": float64(s.Strokes), "film_um": s.CuredUM.Value, "low_um": s.TargetUM.Low, "high_um": s.TargetUM.High,
			}
			return true, nil
		}
	}
	return false, nil
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
func (m *maker) askTooThin(x *Exercise) (bool, error) {
	// The whole rack is asked, so that blades and meshes are among the changes.
	p, err := m.plan(m.shop, fixed(m.bench))
	if err != nil {
		return false, err
	}
	at := p.Locations[0].Screens[0]
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
	return len(x.Corrections) > 0, nil
}

func (m *maker) askInk(x *Exercise) (bool, error) {
	in, ok := m.shop.FindInk(inkName)
	if !ok {
		return false, nil
	}
	const width, height, coverage, prints = 300.0, 350.0, 0.4, 288
	wet := printed(m.out.Strokes[0].CuredUM.Value / in.Solids)
	g, err := ink.MassG(width, height, coverage, wet, in.DensityKgPerL)
	if err != nil {
		return false, err
	}
	run, err := ink.RunG(g, prints, m.shop.Waste, m.shop.StaysG)
	run = math.Round(run/10) * 10 // no surer than that
	x.Values = map[string]float64{
		"width_mm": width, "height_mm": height, "coverage_percent": 100 * coverage, "prints_int": prints, "wet_um": wet,
		"density_density": in.DensityKgPerL, "waste_percent": 100 * m.shop.Waste, "stays_g": m.shop.StaysG, "print_g": g, "run_g": run,
	}
	return true, err
}

func (m *maker) askBelt(x *Exercise) (bool, error) {
	for _, d := range m.shop.Dryers {
		if d.HeatedMM > 0 {
			const dwell = 60.0
			v, err := cure.BeltMPerMin(d.HeatedMM, dwell)
			x.Values = map[string]float64{"heated_long": d.HeatedMM, "dwell_s": dwell, "belt_mpm": v}
			return true, err
		}
	}
	return false, nil
}
