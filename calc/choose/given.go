package choose

import (
	"cmp"

	"bladecard/calc/film"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
)

// given is what a setup is judged with and does not change: cloth, stencil, ink, press, and what is asked of
// the screen.
type given struct {
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
	bends     bends // the planner's bent blades
}

// given puts the maker's screen on a mesh.
func (m maker) given(on job.Mesh, d demand) given {
	s := m.screen
	cloth := sure.Of(on.Cloth())
	g := given{
		cloth: cloth, meshName: on.Name, frame: on, eomUM: eomUM(s, cloth.FabricUM), featureMM: featureMM(s),
		flow:   film.Flow{EtaInfPaS: s.Ink.EtaInfPaS, KPaSn: s.Ink.KPaSn, N: s.Ink.N},
		solids: s.Ink.Solids, speedMPS: m.press.StrokeMPerS, flood: m.press.Flood == nil || *m.press.Flood,
		loadNCM: cmp.Or(s.LoadNCM, m.press.LoadNPerCM), learned: m.learned, imageMM: m.location.WidthMM, demand: d, bends: m.bends,
	}
	if s.Halftone != nil {
		g.lines = s.Halftone.LinesPerInch
	}
	g.share = sure.Of(mesh.StencilShare(g.featureMM))
	return g
}

// setup is what the choice varies.
type setup struct {
	stock    stock
	angleDeg float64
	strokes  int // wet strokes of a hit
	hits     int // prints with a flash between; 0 is 1
}

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

// slip is by how much a setup is off.
type slip struct {
	angleDeg, hardnessShoreA, loadShare, freeHeightMM, speedShare float64
}

// try computes what a setup does when it is off by slip.
func (g given) try(s setup, off slip) outlook {
	p := g.press(s, off)
	out := outlook{fault: p.fault, why: p.why, edgeDeg: p.edgeDeg, liftOver: p.edge.LiftRatio}
	if p.fault != "" {
		return out
	}
	laid := sure.Of(film.Lay(film.Setup{Cloth: g.cloth, EOMUM: g.eomUM, StencilShare: g.share, EdgeAngleDeg: p.edgeDeg, Flood: g.flood}, p.edge))
	out.onceUM = sure.Of(film.CuredUM(film.Tau*laid.TotalUM*g.factor(s, off), g.solids))
	out.clears = film.Clears(laid)
	g.repeat(&out, s.strokes, s.hits)
	return out
}

// repeat makes the film of one stroke that of several strokes and hits.
func (g given) repeat(o *outlook, strokes, hits int) {
	o.curedUM = o.onceUM * sure.Of(film.Strokes(strokes, g.nextStroke())) * float64(max(1, hits))
	o.wetUM = o.curedUM / g.solids
}
