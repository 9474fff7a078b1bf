package choose

import (
	"math"
	"slices"

	"bladecard/calc/blade"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// screenPlan writes the chosen setup down with all that follows from it. Each subject fills in its part of the
// screen and returns its warnings.
func (m maker) screenPlan(c chooser, ch choice) plan.Screen {
	t, g, others := ch.best, c.given, m.otherMeshes(c.given)
	sc := m.chosen(g, t)
	r, exactDeg := c.angleRange(t)
	sc.AngleDeg = r
	m.inkRun(&sc)
	sc.Charts, sc.Reasons, sc.Lost = c.charts(t), c.path(t), c.lost(ch)
	sc.Corrections = c.corrections(t, nextMeshes(g, others))
	sc.TellsUM = tellsUM(sc)
	for i := range sc.Corrections {
		sc.Corrections[i].Seen = math.Abs(sc.Corrections[i].DeltaUM) >= sc.TellsUM
	}
	sc.Equivalents, sc.Others = c.equivalents(t, others), c.others(t, r)
	sc.Warnings = append([]plan.Warning{}, slices.Concat(
		c.warnings(t, r, exactDeg, m.press.Kind == "manual"), c.mends(t, others), m.hiding(&sc), m.dots(&sc, g), m.pressure(&sc), m.frame(&sc, g), m.screenWarnings(g),
	)...)
	return sc
}

// chosen is the setup with its film.
func (m maker) chosen(g given, t trial) plan.Screen {
	cured := g.band(t)
	build := sure.Of(mesh.BuildFor(g.eomUM))
	sc := plan.Screen{
		Number: m.number, Of: len(m.location.Screens),
		Color: m.screen.Color, Swatch: m.screen.Swatch, Ink: m.screen.Ink.Name, Use: use(m.screen), Mesh: m.meshPlan(g),
		Stencil: plan.Stencil{
			EOMUM: g.eomUM, ShareOfCloth: g.eomUM / g.cloth.FabricUM, CountedShare: g.share, FeatureMM: g.featureMM,
			Coats: build.Coats, FilmsUM: build.FilmsUM,
		},
		FinestMM: g.demand.finestMM, Blade: t.stock.plan(m.location.WidthMM, fromJob(m.screen.BladeName != "")), EdgeAngleDeg: t.edgeDeg, EdgeLimitDeg: &g.demand.limitDeg,
		LoadNPerCM: g.loadNCM, LoadClass: string(sure.Of(blade.ClassOf(g.loadNCM))), Strokes: t.strokes, Hits: t.hits, Flood: g.flood, TargetUM: g.demand.target,
		WetUM: plan.Band{Low: cured.Low / g.solids, Value: t.wetUM, High: cured.High / g.solids}, CuredUM: cured,
		Measured: g.measured(t), Moves: t.moves, Clears: t.clears, MeetsAll: t.miss.none(),
	}
	hits := float64(max(1, sc.Hits))
	sc.CombUM = plan.Band{Low: sc.WetUM.Low / hits, Value: sc.WetUM.Value / hits, High: sc.WetUM.High / hits}
	sc.Moves.Load = g.loadMove(t.setup, t.curedUM)
	if m.screen.Ink.Rise > 1 && useRules[use(m.screen)].heavy {
		mm := sure.Of(ink.HeightUM(t.curedUM, m.screen.Ink.Rise)) / 1000
		sc.HeightMM = &mm
	}
	return sc
}

// fromJob is the word for who decided.
func fromJob(stated bool) string {
	if stated {
		return "job"
	}
	return "chosen"
}

func (m maker) meshPlan(g given) plan.Mesh {
	return plan.Mesh{
		Name: g.meshName, CountPerInch: g.cloth.CountPerInch, CountPerCM: mesh.PerCM(g.cloth.CountPerInch),
		ThreadUM: g.cloth.ThreadUM, OpeningUM: g.cloth.OpeningUM, OpenArea: g.cloth.OpenArea,
		FabricUM: g.cloth.FabricUM, VolumeUM: g.cloth.VolumeUM,
		Measured: g.cloth.MeasuredOpening || g.cloth.MeasuredFabric, From: fromJob(m.screen.Mesh != nil),
	}
}

// thickStencilUM is the stencil from which fine lines print thinner again, and fineLineMM the
// width below which they do (published: a thick-film maker's note [23], hump at 0.25 to 0.46 mm).
const (
	thickStencilUM = 60.0
	fineLineMM     = 0.25
)

// screenWarnings are those of mesh and stencil.
func (m maker) screenWarnings(g given) []plan.Warning {
	var out []plan.Warning
	if g.eomUM > thickStencilUM && g.demand.finestMM < fineLineMM {
		out = append(out, warn("fine-line-thick-stencil", vals{"finest_mm": g.demand.finestMM, "line_mm": fineLineMM, "eom_um": g.eomUM}))
	}
	if m.screen.Mesh != nil && !m.screen.Mesh.OnRack {
		out = append(out, named("mesh-not-racked", "mesh", g.meshName))
	}
	return out
}

// pressure tells what the press must show for the line load, where it has cylinders and the length of
// the blade is known. A load that the cylinders cannot give is a warning, not a figure.
func (m maker) pressure(sc *plan.Screen) []plan.Warning {
	if m.press.BoreMM == 0 || m.press.Cylinders == 0 || sc.Blade.LengthMM == 0 {
		return nil
	}
	bar, err := blade.CylinderPressureBar(sc.LoadNPerCM, m.press.BoreMM, m.press.Cylinders, sc.Blade.LengthMM)
	if err != nil {
		return []plan.Warning{warn("cylinders-small", vals{"load_ncm": sc.LoadNPerCM, "blade_mm": sc.Blade.LengthMM})}
	}
	sc.Pressure = &plan.Pressure{Bar: bar, PSI: bar * psiPerBar}
	return nil
}

// psiPerBar is the pressure of a bar in pounds per square inch: 1e5 Pa over
// 4.4482216152605 N / (0.0254 m)^2 (definition).
const psiPerBar = 1e5 / (4.4482216152605 / (0.0254 * 0.0254))
