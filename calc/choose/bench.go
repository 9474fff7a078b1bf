package choose

import (
	"math"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// bench is one screen set up to be tried: everything that a blade, an angle and a stroke count
// do not change.
type bench struct {
	cloth     mesh.Cloth
	meshName  string
	frame     job.Mesh // with its frame and tension; without sizes where the mesh is not on the racks
	eomUM     float64
	featureMM float64
	share     float64 // of the EOM that counts in the film
	flow      film.Flow
	solids    float64
	speedMPS  float64
	flood     bool
	loadNCM   float64
	learned   *learned // of the shop's own prints; nil: nothing was measured
	imageMM   float64  // along the blade; 0: not stated
	lines     float64  // halftone lines per inch; 0: none
	demand    demand
}

// setup is what the choice varies.
type setup struct {
	stock    stock
	angleDeg float64
	strokes  int // wet strokes of a hit
	hits     int // prints with a flash between; 0 is 1
}

// fault is why a setup gives no figure; the empty fault is none.
type fault string

const (
	folds  fault = "folds"
	floats fault = "floats"
)

// outlook is what a setup is expected to do.
type outlook struct {
	fault    fault
	why      error   // what the fault is, for a printer
	liftOver float64 // lift on the blade / load on it
	edgeDeg  float64
	onceUM   float64 // cured, of one stroke
	wetUM    float64
	curedUM  float64
	clears   bool
}

// errors of a setup that are tried one at a time.
type slip struct {
	angleDeg, hardnessShoreA, loadShare, freeHeightMM, speedShare float64
}

// try computes what a setup does on the bench when it is off by slip.
func (b bench) try(s setup, off slip) (outlook, error) {
	p, err := b.press(s, off)
	if err != nil {
		return outlook{}, err
	}
	out := outlook{fault: p.fault, why: p.why, edgeDeg: p.edgeDeg, liftOver: p.edge.LiftRatio}
	if p.fault != "" {
		return out, nil
	}
	dep, err := film.Lay(film.Setup{
		Cloth: b.cloth, EOMUM: b.eomUM, StencilShare: b.share, EdgeAngleDeg: p.edgeDeg, Flood: b.flood,
	}, p.edge)
	if err != nil {
		return outlook{}, err
	}
	times, err := film.Strokes(s.strokes, b.nextStroke())
	if err != nil {
		return outlook{}, err
	}
	out.onceUM = film.Tau * dep.TotalUM * b.factor(s, off) * b.solids
	out.curedUM = out.onceUM * times * float64(max(1, s.hits))
	out.wetUM = out.curedUM / b.solids
	out.clears = film.Clears(dep)
	return out, nil
}

// pressed is a blade pressed on the screen, whatever the cloth.
type pressed struct {
	fault   fault
	why     error
	edgeDeg float64
	edge    film.Edge
}

// mostKnown is how many pressed blades a rack keeps: some inks' worth, about 1 MB.
const mostKnown = 1 << 12

// pressKey is what pressed depends on, each figure by its bits: those hash at a stroke.
type pressKey struct {
	stock                     int
	off                       slip
	angle                     uint64
	load, speed, etaInf, k, n uint64
}

func (b bench) pressKey(s setup, off slip) pressKey {
	bits := math.Float64bits
	return pressKey{
		stock: s.stock.id, angle: bits(s.angleDeg), off: off,
		load: bits(b.loadNCM), speed: bits(b.speedMPS), etaInf: bits(b.flow.EtaInfPaS), k: bits(b.flow.KPaSn), n: bits(b.flow.N),
	}
}

// press bends the blade and works out what its edge does. The same blades, angles and errors
// come up on every mesh, so the rack keeps what it has worked out.
func (b bench) press(s setup, off slip) (pressed, error) {
	if s.stock.known == nil {
		return b.bend(s, off)
	}
	key := b.pressKey(s, off)
	if p, ok := s.stock.known[key]; ok {
		return p, nil
	}
	p, err := b.bend(s, off)
	if err == nil {
		if len(s.stock.known) >= mostKnown {
			clear(s.stock.known)
		}
		s.stock.known[key] = p
	}
	return p, err
}

func (b bench) bend(s setup, off slip) (pressed, error) {
	ls, err := s.stock.layers(off.hardnessShoreA)
	if err != nil {
		return pressed{}, err
	}
	d, err := blade.RigidityNM(ls)
	if err != nil {
		return pressed{}, err
	}
	load := b.loadNCM * (1 + off.loadShare)
	var p pressed
	p.edgeDeg, err = blade.EdgeAngleDeg(blade.Bend{
		SetDeg:       math.Max(0, s.angleDeg+off.angleDeg),
		LoadNPerCM:   load,
		FreeHeightMM: s.stock.FreeHeightMM + off.freeHeightMM,
		RigidityNM:   d,
		Friction:     blade.Friction,
	})
	if isFold(err) {
		return pressed{fault: folds, why: err}, nil
	}
	if err != nil {
		return pressed{}, err
	}
	radius, err := s.stock.edgeRadiusMM()
	if err != nil {
		return pressed{}, err
	}
	p.edge, err = film.EdgeOf(film.Contact{
		ModulusMPa: ls[0].ModulusMPa, RadiusMM: radius, LoadNPerCM: load, SpeedMPerS: b.speedMPS * (1 + off.speedShare), Flow: b.flow,
	}, p.edgeDeg)
	if isFloat(err) {
		p.fault, p.why = floats, err
		return p, nil
	}
	return p, err
}

// frail names the first slip that a setup does not stand: it then folds over, floats, or leaves ink in
// the screen; empty where it stands them all. Mesh and stencil have no say in it.
func (b bench) frail(s setup) (string, error) {
	for _, one := range slips {
		off := one.off
		off.angleDeg = math.Max(off.angleDeg, -s.angleDeg)
		p, err := b.press(s, off)
		if err != nil {
			return "", err
		}
		if p.fault != "" || p.edge.LiftRatio > film.ClearRatio {
			return one.word, nil
		}
	}
	return "", nil
}

// moves computes what the usual errors of angle and hardness do to the film of a setup.
func (b bench) moves(s setup, at outlook) (plan.Moves, error) {
	angleDown := math.Min(angleErrorDeg, s.angleDeg)
	angle, dA, err := b.move(s, at, angleErrorDeg, slip{angleDeg: -angleDown}, slip{angleDeg: angleErrorDeg})
	if err != nil {
		return plan.Moves{}, err
	}
	hardness, dH, err := b.move(s, at, hardnessErrorShoreA, slip{hardnessShoreA: -hardnessErrorShoreA}, slip{hardnessShoreA: hardnessErrorShoreA})
	return plan.Moves{Angle: angle, Hardness: hardness, Together: math.Hypot(dA, dH)}, err
}

// loadMove is what the usual error of the load does. No choice hangs on it: it is for paper.
func (b bench) loadMove(s setup, at outlook) (plan.Move, error) {
	m, _, err := b.move(s, at, loadErrorShare, slip{loadShare: -loadErrorShare}, slip{loadShare: loadErrorShare})
	return m, err
}

// move is the film's change for less and for more of one thing, and the larger of the two.
func (b bench) move(s setup, at outlook, step float64, less, more slip) (m plan.Move, worst float64, err error) {
	m.Step = step
	if m.Less, err = b.changeBy(s, at, less); err != nil {
		return m, 0, err
	}
	if m.More, err = b.changeBy(s, at, more); err != nil {
		return m, 0, err
	}
	for _, by := range []*float64{m.Less, m.More} {
		if by == nil {
			worst = math.Max(worst, 1) // no figure at all: as bad as losing the film
			continue
		}
		worst = math.Max(worst, math.Abs(*by))
	}
	return m, worst, nil
}

// changeBy is the film's relative change under a slip; nil where the setup then fails.
func (b bench) changeBy(s setup, at outlook, off slip) (*float64, error) {
	o, err := b.try(s, off)
	if err != nil || o.fault != "" {
		return nil, err
	}
	by := o.curedUM/at.curedUM - 1
	return &by, nil
}

// newBench sets up a screen on a mesh.
func newBench(s job.Screen, m job.Mesh, shop *job.Shop, press job.Press, d demand, imageMM float64, day job.Date) (bench, error) {
	cloth, err := mesh.New(mesh.Spec{
		CountPerInch: m.CountPerInch, ThreadUM: m.ThreadUM,
		OpeningUM: m.OpeningUM, FabricUM: m.FabricUM, Twill: m.Weave == "twill",
	})
	if err != nil {
		return bench{}, err
	}
	eom := eomUM(s, cloth.FabricUM)
	b := bench{
		cloth: cloth, meshName: m.Name, frame: m, eomUM: eom, featureMM: featureMM(s),
		flow:   film.Flow{EtaInfPaS: s.Ink.EtaInfPaS, KPaSn: s.Ink.KPaSn, N: s.Ink.N},
		solids: s.Ink.Solids, speedMPS: press.StrokeMPerS, flood: press.Flood == nil || *press.Flood,
		loadNCM: press.LoadNPerCM, imageMM: imageMM, demand: d,
	}
	if s.Halftone != nil {
		b.lines = s.Halftone.LinesPerInch
	}
	if s.LoadNCM > 0 {
		b.loadNCM = s.LoadNCM
	}
	if b.learned, err = learn(shop.Calibration, day); err != nil {
		return bench{}, err
	}
	if b.share, err = mesh.StencilShare(b.featureMM); err != nil {
		return bench{}, err
	}
	return b, nil
}
