package plan

import (
	"fmt"
	"math"
	"sort"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/ink"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
)

// Make computes the Plan of a resolved job on a shop. What no setup can do (every blade folds
// over or floats, no film is customary) comes back as errors of the job, each at its screen;
// the Plan is then not to be used. The job and the shop must have passed job.Resolve.
func Make(j *job.Job, shop *job.Shop) (*Plan, job.Errors) {
	press := pressOf(j, shop)
	p := &Plan{
		Version: 1, Job: j.Number, Title: j.Title, Customer: j.Customer, Quantity: j.Quantity,
		Shop: shop.Name, Press: Press{
			Name: press.Name, Kind: press.Kind, Heads: press.Heads,
			StrokeMPS: press.StrokeMPerS, LoadNPerCM: press.LoadNPerCM,
		},
		Substrate: substrate(j), Warnings: []Warning{},
	}
	if j.Due != (job.Date{}) {
		p.Due = fmt.Sprintf("%04d-%02d-%02d", j.Due.Year, j.Due.Month, j.Due.Day)
	}
	racked, err := newRack(shop.Blades)
	if err != nil {
		return nil, job.Errors{{Pos: job.Pos{File: shop.File}, Key: "blade", Wrong: err.Error(), Accepted: "at least one blade with a count of 1 or more"}}
	}
	var errs job.Errors
	for _, l := range j.Locations {
		loc := Location{Name: l.Name, WidthMM: l.WidthMM, HeightMM: l.HeightMM}
		for i, s := range l.Screens {
			m := maker{job: j, shop: shop, press: press, rack: racked, location: l, screen: s, number: i + 1}
			sc, fail := m.make()
			if fail != nil {
				errs = append(errs, *fail)
				continue
			}
			loc.Screens = append(loc.Screens, sc)
		}
		if len(loc.Screens) == len(l.Screens) {
			m := maker{job: j, shop: shop, press: press, rack: racked, location: l, screen: l.Screens[0], number: 1}
			if fail := m.finish(&loc); fail != nil {
				errs = append(errs, *fail)
			}
		}
		p.Locations = append(p.Locations, loc)
	}
	if errs != nil {
		return nil, errs
	}
	p.Mix = mix(p.Locations)
	return p, nil
}

// mix sums the ink of a job by class and colour, in the order in which they come up.
func mix(locations []Location) []Mix {
	out := []Mix{}
	at := map[[2]string]int{}
	for _, l := range locations {
		for _, s := range l.Screens {
			if s.InkGRun == nil || s.InkMLRun == nil {
				continue
			}
			key := [2]string{s.Ink, s.Color}
			i, known := at[key]
			if !known {
				i = len(out)
				at[key] = i
				out = append(out, Mix{Ink: s.Ink, Color: s.Color})
			}
			out[i].G += *s.InkGRun
			out[i].ML += *s.InkMLRun
		}
	}
	return out
}

// finish works out what depends on all screens of a location: the order on the press, the
// flashes, and what the fibre forbids.
func (m maker) finish(loc *Location) *job.Error {
	loc.Warnings = []Warning{}
	if fail := m.order(loc); fail != nil {
		return fail
	}
	return m.heat(loc)
}

// maker makes the plan of one screen.
type maker struct {
	job      *job.Job
	shop     *job.Shop
	press    job.Press
	rack     rack
	location job.Location
	screen   job.Screen
	number   int
}

// fail is an error of the job at this screen.
func (m maker) fail(key, wrong, accepted string) *job.Error {
	return &job.Error{
		Pos:   m.screen.KeyPos(key),
		Where: fmt.Sprintf("location %q, screen %d", m.location.Name, m.number),
		Key:   key, Wrong: wrong, Accepted: accepted,
	}
}

func (m maker) make() (Screen, *job.Error) {
	d, err := newDemand(m.screen, m.ground())
	if err != nil {
		return Screen{}, m.fail("use", err.Error(), "figures inside the ranges of the formulas")
	}
	if d.target == (Target{}) {
		return Screen{}, m.fail("film", fmt.Sprintf("ink class %q has no customary film for the use %q", m.screen.Ink.Name, use(m.screen)),
			`film = "30..60 um" in the screen, or a film for the use in the ink class`)
	}
	c, ch, fail := m.choose(d)
	if fail != nil {
		return Screen{}, fail
	}
	sc, err := m.screenPlan(c, ch)
	if err != nil {
		return Screen{}, m.fail("screen", err.Error(), "a setup inside the ranges of the formulas")
	}
	return sc, nil
}

// choose makes the choice on the job's mesh, or on every mesh of the racks where the job leaves
// it open; the mesh nearest to the customary one that meets the demands is taken.
func (m maker) choose(d demand) (chooser, choice, *job.Error) {
	var (
		best  chooser
		got   choice
		first = true
	)
	for _, cand := range m.meshes() {
		b, err := newBench(m.screen, cand.Mesh, m.shop, m.press, d, m.location.WidthMM)
		if err != nil {
			return best, got, m.fail("mesh", err.Error(), "a mesh whose threads leave an opening, such as 156-64")
		}
		c := chooser{bench: b, rack: m.rack, fixed: fixedBy(m.screen), step: costMeshStep * float64(cand.steps)}
		if len(c.stocks()) == 0 {
			return best, got, m.fail("blade", fmt.Sprintf("no blade %q is at hand: its count is 0", m.screen.BladeName), "a blade of the rack with a count of 1 or more")
		}
		ch, err := c.choose()
		if err != nil {
			return best, got, m.fail("blade", err.Error(), "a setup inside the ranges of the formulas")
		}
		if first || ch.found && (!got.found || nearerMesh(c, ch, best, got)) {
			best, got, first = c, ch, false
		}
	}
	if got.found {
		return best, got, nil
	}
	key := "blade"
	if m.screen.AngleDeg != nil {
		key = "angle"
	}
	stiffest := got.each[len(got.each)-1]
	return best, got, m.fail(key, "no setup prints: "+stiffest.why.Error(), "a setup that stands on its edge and clears the screen")
}

// nearerMesh tells whether a choice on one mesh is to be taken before that on another. For heavy
// work the film a stroke would always ask for the coarsest mesh: there, of meshes that miss
// alike, the customary one is taken.
func nearerMesh(c chooser, a choice, than chooser, b choice) bool {
	if c.bench.demand.heavy && near(a.best.miss.total(), b.best.miss.total()) && c.step != than.step {
		return c.step < than.step
	}
	return c.better(a.best, b.best)
}

// meshChoice is a mesh with its distance from the customary one, in steps along the racks.
type meshChoice struct {
	job.Mesh
	steps int
}

func (m maker) meshes() []meshChoice {
	if m.screen.Mesh != nil {
		return []meshChoice{{Mesh: *m.screen.Mesh}}
	}
	all := append([]job.Mesh(nil), m.shop.Meshes...)
	sort.SliceStable(all, func(i, j int) bool { return all[i].CountPerInch < all[j].CountPerInch })
	home := m.customaryMesh(all)
	var out []meshChoice
	for i, x := range all {
		if h := m.screen.Halftone; h != nil && x.CountPerInch < meshPerLineLeast*h.LinesPerInch && i != home {
			continue
		}
		out = append(out, meshChoice{Mesh: x, steps: int(math.Abs(float64(i - home)))})
	}
	return out
}

// customaryMesh is the index of the rack's mesh nearest to what is customary: for a halftone by
// its line count, else the ink class's mesh for the use.
func (m maker) customaryMesh(all []job.Mesh) int {
	want := defaultMeshPerInch
	if h := m.screen.Halftone; h != nil {
		want = meshPerLineUsual * h.LinesPerInch
	} else if c := custom(m.screen); c != nil && c.Mesh != "" {
		if count, _, err := job.ParseMesh(c.Mesh); err == nil {
			want = count
		}
	}
	best, home := math.Inf(1), 0
	for i, x := range all {
		if away := math.Abs(math.Log(x.CountPerInch / want)); away < best {
			best, home = away, i
		}
	}
	return home
}

// hardStock tells whether thin ink goes on a hard smooth sheet.
func (m maker) hardStock() bool {
	if m.job.Stock != nil {
		return true
	}
	return m.job.Garment == nil && m.screen.Ink.On == "sheet"
}

// ground is what this screen's film goes on.
func (m maker) ground() ground {
	g := ground{hard: m.hardStock()}
	if m.job.Garment != nil {
		g.shade = m.job.Garment.Shade
	}
	for _, s := range m.location.Screens[:m.number-1] {
		if u := use(s); u == "underbase" || u == "blocker" {
			g.based = true
		}
	}
	return g
}

// screenPlan writes the chosen setup down with all that follows from it.
func (m maker) screenPlan(c chooser, ch choice) (Screen, error) {
	t, b := ch.best, c.bench
	r, exact, err := c.angleRange(t)
	if err != nil {
		return Screen{}, err
	}
	others, err := m.otherMeshes(c)
	if err != nil {
		return Screen{}, err
	}
	sc := Screen{
		Number: m.number, Of: len(m.location.Screens),
		Color: m.screen.Color, Swatch: m.screen.Swatch, Ink: m.screen.Ink.Name, Use: use(m.screen),
		Mesh: m.meshPlan(b), Stencil: Stencil{
			EOMUM: b.eomUM, ShareOfCloth: b.eomUM / b.cloth.FabricUM, CountedShare: b.share, FeatureMM: b.featureMM,
		},
		FinestMM: b.demand.finestMM, AngleDeg: r, EdgeAngleDeg: t.edgeDeg,
		LoadNPerCM: b.loadNCM, Strokes: t.strokes, Flood: b.flood, TargetUM: b.demand.target,
		WetUM: c.band(t.wetUM, t), CuredUM: c.band(t.curedUM, t), Moves: t.moves, Clears: t.clears, MeetsAll: t.miss.none(),
		Lost: c.lost(ch),
	}
	build, err := mesh.BuildFor(b.eomUM)
	if err != nil {
		return Screen{}, err
	}
	sc.Stencil.Coats, sc.Stencil.FilmsUM = build.Coats, build.FilmsUM
	if limit := b.demand.limitDeg; limit < noLimitDeg {
		sc.EdgeLimitDeg = &limit
	}
	var dotWarnings []Warning
	if sc.Halftone, dotWarnings, err = dots(m.screen, b); err != nil {
		return Screen{}, err
	}
	if sc.Blade, err = m.bladePlan(t.stock); err != nil {
		return Screen{}, err
	}
	var frameWarnings []Warning
	if sc.OffContact, frameWarnings, err = m.frame(b, sc.Blade.LengthMM); err != nil {
		return Screen{}, err
	}
	if err := m.inkRun(&sc); err != nil {
		return Screen{}, err
	}
	if m.screen.Ink.Rise > 1 && b.demand.heavy {
		mm, err := ink.HeightUM(t.curedUM, m.screen.Ink.Rise)
		if err != nil {
			return Screen{}, err
		}
		mm /= 1000
		sc.HeightMM = &mm
	}
	var pressureWarnings []Warning
	sc.Pressure, pressureWarnings = pressure(m.press, b.loadNCM, sc.Blade.LengthMM)
	class, err := blade.ClassOf(b.loadNCM)
	if err != nil {
		return Screen{}, err
	}
	sc.LoadClass = string(class)
	if sc.Charts, err = c.charts(t); err != nil {
		return Screen{}, err
	}
	if sc.Reasons, err = c.path(t); err != nil {
		return Screen{}, err
	}
	if sc.Corrections, err = c.corrections(t, nextMeshes(b, others)); err != nil {
		return Screen{}, err
	}
	if sc.Equivalents, err = c.equivalents(ch, others); err != nil {
		return Screen{}, err
	}
	mends, err := c.mends(t, others)
	if err != nil {
		return Screen{}, err
	}
	sc.Warnings = append(c.warnings(t, r, exact), mends...)
	sc.Warnings = append(sc.Warnings, dotWarnings...)
	sc.Warnings = append(sc.Warnings, pressureWarnings...)
	sc.Warnings = append(sc.Warnings, frameWarnings...)
	if b.eomUM > thickStencilUM && b.demand.finestMM < fineLineMM {
		sc.Warnings = append(sc.Warnings, warn("fine-line-thick-stencil", vals{"finest_mm": b.demand.finestMM, "line_mm": fineLineMM, "eom_um": b.eomUM}))
	}
	if sc.Mesh.From == "job" && !m.screen.Mesh.OnRack {
		sc.Warnings = append(sc.Warnings, Warning{Code: "mesh-not-racked", Names: map[string]string{"mesh": b.meshName}})
	}
	if sc.Warnings == nil {
		sc.Warnings = []Warning{}
	}
	return sc, nil
}

func (m maker) meshPlan(b bench) Mesh {
	from := "chosen"
	if m.screen.Mesh != nil {
		from = "job"
	}
	return Mesh{
		Name: b.meshName, CountPerInch: b.cloth.CountPerInch, CountPerCM: b.cloth.CountPerInch / 2.54,
		ThreadUM: b.cloth.ThreadUM, OpeningUM: b.cloth.OpeningUM, OpenArea: b.cloth.OpenArea,
		FabricUM: b.cloth.FabricUM, VolumeUM: b.cloth.VolumeUM,
		Measured: b.cloth.MeasuredOpening || b.cloth.MeasuredFabric, From: from,
	}
}

func (m maker) bladePlan(s stock) (Blade, error) {
	d, err := s.rigidityNM(0)
	if err != nil {
		return Blade{}, err
	}
	mm, _ := s.lengthMM(m.location.WidthMM)
	out := Blade{
		Name: bladeName(s), Layup: s.Layup, EdgeHardness: s.Hardness[0], ThicknessMM: s.ThicknessMM,
		FreeHeightMM: s.FreeHeightMM, LengthMM: mm, Edge: s.Edge, RigidityNM: d, From: "chosen",
	}
	if m.screen.BladeName != "" {
		out.From = "job"
	}
	for i, h := range s.Hardness {
		out.Layers = append(out.Layers, Layer{Hardness: h, ThicknessMM: s.layerMM(i)})
	}
	return out, nil
}

// otherMeshes are benches of the same screen on the other meshes of the racks.
func (m maker) otherMeshes(c chooser) ([]bench, error) {
	var out []bench
	for _, x := range m.shop.Meshes {
		if x.Name == c.bench.meshName || x.CountPerInch == c.bench.cloth.CountPerInch && x.ThreadUM == c.bench.cloth.ThreadUM {
			continue
		}
		if c.bench.lines > 0 && x.CountPerInch < meshPerLineLeast*c.bench.lines {
			continue
		}
		b, err := newBench(m.screen, x, m.shop, m.press, c.bench.demand, m.location.WidthMM)
		if err != nil {
			return nil, err
		}
		out = append(out, b)
	}
	return out, nil
}

// nextMeshes are the next finer and the next coarser mesh, by ink volume.
func nextMeshes(b bench, others []bench) []bench {
	var up, down *bench
	for i := range others {
		o := &others[i]
		switch v := o.cloth.VolumeUM; {
		case v > b.cloth.VolumeUM && (up == nil || v < up.cloth.VolumeUM):
			up = o
		case v < b.cloth.VolumeUM && (down == nil || v > down.cloth.VolumeUM):
			down = o
		}
	}
	var out []bench
	for _, o := range []*bench{down, up} {
		if o != nil {
			out = append(out, *o)
		}
	}
	return out
}

func substrate(j *job.Job) Substrate {
	switch {
	case j.Stock != nil:
		return Substrate{Name: j.Stock.Name, Kind: j.Stock.Kind}
	case j.Garment != nil:
		return Substrate{Name: j.Garment.Name, Kind: "garment", Fibre: j.Garment.Fibre, Shade: j.Garment.Shade}
	}
	return Substrate{Kind: "garment"}
}

func pressOf(j *job.Job, shop *job.Shop) job.Press {
	press := shop.Presses[0]
	for _, p := range shop.Presses {
		if p.Name == j.Press {
			press = p
		}
	}
	if press.StrokeMPerS == 0 {
		press.StrokeMPerS = strokeSpeedMPerS
	}
	if press.LoadNPerCM == 0 {
		press.LoadNPerCM = workingLoadNPerCM
	}
	return press
}

// strokeDoubt is what is not known of the film that further wet strokes add, as a relative part
// at one sigma: the share that the next stroke adds may be anything from 0 to 0.8 (from memory;
// no measurement is published), taken as even over that interval.
func strokeDoubt(strokes int) float64 {
	if strokes < 2 {
		return 0
	}
	low, err1 := film.Strokes(strokes, film.NextStrokeShare-nextStrokeSpread)
	high, err2 := film.Strokes(strokes, film.NextStrokeShare+nextStrokeSpread)
	mid, err3 := film.Strokes(strokes, film.NextStrokeShare)
	if err1 != nil || err2 != nil || err3 != nil {
		return 1
	}
	return (high - low) / mid / 2
}
