package choose

import (
	"math"

	"bladecard/calc/blade"
	"bladecard/calc/ink"
	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// screenPlan writes the chosen setup down with all that follows from it.
func (m maker) screenPlan(c chooser, ch choice) (plan.Screen, error) {
	t, b := ch.best, c.bench
	r, exact, err := c.angleRange(t)
	if err != nil {
		return plan.Screen{}, err
	}
	others, err := m.otherMeshes(c)
	if err != nil {
		return plan.Screen{}, err
	}
	if t.moves.Load, err = b.loadMove(t.setup, t.outlook); err != nil {
		return plan.Screen{}, err
	}
	cured, err := c.band(t.curedUM, t)
	if err != nil {
		return plan.Screen{}, err
	}
	wet := plan.Band{Low: cured.Low / b.solids, Value: t.wetUM, High: cured.High / b.solids}
	sc := plan.Screen{
		Number: m.number, Of: len(m.location.Screens),
		Color: m.screen.Color, Swatch: m.screen.Swatch, Ink: m.screen.Ink.Name, Use: use(m.screen),
		Mesh: m.meshPlan(b), Stencil: plan.Stencil{
			EOMUM: b.eomUM, ShareOfCloth: b.eomUM / b.cloth.FabricUM, CountedShare: b.share, FeatureMM: b.featureMM,
		},
		FinestMM: b.demand.finestMM, AngleDeg: r, EdgeAngleDeg: t.edgeDeg,
		LoadNPerCM: b.loadNCM, Strokes: t.strokes, Hits: t.hits, Flood: b.flood, TargetUM: b.demand.target,
		WetUM: wet, CuredUM: cured, Measured: b.measured(t), Moves: t.moves, Clears: t.clears, MeetsAll: t.miss.none(),
		Lost: c.lost(ch),
	}
	build, err := mesh.BuildFor(b.eomUM)
	if err != nil {
		return plan.Screen{}, err
	}
	sc.Stencil.Coats, sc.Stencil.FilmsUM = build.Coats, build.FilmsUM
	sc.EdgeLimitDeg = &b.demand.limitDeg
	var dotWarnings []plan.Warning
	if sc.Halftone, dotWarnings, err = dots(m.screen, b); err != nil {
		return plan.Screen{}, err
	}
	if sc.Blade, err = m.bladePlan(t.stock); err != nil {
		return plan.Screen{}, err
	}
	var frameWarnings []plan.Warning
	if sc.OffContact, frameWarnings, err = m.frame(b, sc.Blade.LengthMM); err != nil {
		return plan.Screen{}, err
	}
	if err := m.inkRun(&sc); err != nil {
		return plan.Screen{}, err
	}
	if m.screen.Ink.Rise > 1 && useRules[use(m.screen)].heavy {
		mm, err := ink.HeightUM(t.curedUM, m.screen.Ink.Rise)
		if err != nil {
			return plan.Screen{}, err
		}
		mm /= 1000
		sc.HeightMM = &mm
	}
	hidingWarnings, err := m.hiding(&sc)
	if err != nil {
		return plan.Screen{}, err
	}
	var pressureWarnings []plan.Warning
	sc.Pressure, pressureWarnings = pressure(m.press, b.loadNCM, sc.Blade.LengthMM)
	class, err := blade.ClassOf(b.loadNCM)
	if err != nil {
		return plan.Screen{}, err
	}
	sc.LoadClass = string(class)
	if sc.Charts, err = c.charts(t); err != nil {
		return plan.Screen{}, err
	}
	if sc.Reasons, err = c.path(t); err != nil {
		return plan.Screen{}, err
	}
	if sc.Corrections, err = c.corrections(t, nextMeshes(b, others)); err != nil {
		return plan.Screen{}, err
	}
	sc.TellsUM = tellsUM(sc)
	for i := range sc.Corrections {
		sc.Corrections[i].Seen = math.Abs(sc.Corrections[i].DeltaUM) >= sc.TellsUM
	}
	if sc.Equivalents, err = c.equivalents(ch, others); err != nil {
		return plan.Screen{}, err
	}
	if sc.Others, err = c.others(t, r); err != nil {
		return plan.Screen{}, err
	}
	mends, err := c.mends(t, others)
	if err != nil {
		return plan.Screen{}, err
	}
	sc.Warnings = append(c.warnings(t, r, exact, m.press.Kind == "manual"), mends...)
	sc.Warnings = append(sc.Warnings, hidingWarnings...)
	sc.Warnings = append(sc.Warnings, dotWarnings...)
	sc.Warnings = append(sc.Warnings, pressureWarnings...)
	sc.Warnings = append(sc.Warnings, frameWarnings...)
	if b.eomUM > thickStencilUM && b.demand.finestMM < fineLineMM {
		sc.Warnings = append(sc.Warnings, warn("fine-line-thick-stencil", vals{"finest_mm": b.demand.finestMM, "line_mm": fineLineMM, "eom_um": b.eomUM}))
	}
	if sc.Mesh.From == "job" && !m.screen.Mesh.OnRack {
		sc.Warnings = append(sc.Warnings, plan.Warning{Code: "mesh-not-racked", Names: map[string]string{"mesh": b.meshName}})
	}
	if sc.Warnings == nil {
		sc.Warnings = []plan.Warning{}
	}
	return sc, nil
}

func (m maker) meshPlan(b bench) plan.Mesh {
	from := "chosen"
	if m.screen.Mesh != nil {
		from = "job"
	}
	return plan.Mesh{
		Name: b.meshName, CountPerInch: b.cloth.CountPerInch, CountPerCM: mesh.PerCM(b.cloth.CountPerInch),
		ThreadUM: b.cloth.ThreadUM, OpeningUM: b.cloth.OpeningUM, OpenArea: b.cloth.OpenArea,
		FabricUM: b.cloth.FabricUM, VolumeUM: b.cloth.VolumeUM,
		Measured: b.cloth.MeasuredOpening || b.cloth.MeasuredFabric, From: from,
	}
}

func (m maker) bladePlan(s stock) (plan.Blade, error) {
	d, err := s.rigidityNM(0)
	if err != nil {
		return plan.Blade{}, err
	}
	mm, _ := s.lengthMM(m.location.WidthMM)
	out := plan.Blade{
		Name: bladeName(s), Layup: s.Layup, EdgeHardness: s.Hardness[0], ThicknessMM: s.ThicknessMM,
		FreeHeightMM: s.FreeHeightMM, LengthMM: mm, Edge: s.Edge, RigidityNM: d, From: "chosen",
	}
	if m.screen.BladeName != "" {
		out.From = "job"
	}
	for i, h := range s.Hardness {
		out.Layers = append(out.Layers, plan.Layer{Hardness: h, ThicknessMM: s.layerMM(i)})
	}
	return out, nil
}
