package film

import (
	"math"

	"bladecard/calc/mesh"
)

// Setup is the screen under one print stroke, and how the bent blade stands on it.
type Setup struct {
	Cloth        mesh.Cloth
	EOMUM        float64 // emulsion over mesh
	StencilShare float64 // share of it that counts, mesh.StencilShare
	EdgeAngleDeg float64 // of the bent edge from vertical, blade.EdgeAngleDeg
	Flood        bool
}

// Deposit is what one stroke lays, before the factor Tau, and what it is made of, in
// micrometres.
type Deposit struct {
	FillDepthUM  float64 // zw, of FillDepthUM
	Fill         float64 // share of the column that is filled, 0 to 1
	ColumnUM     float64 // depth of the column: fabric thickness + counted stencil
	EdgeFilmUM   float64 // the whole film under the edge; half of it is laid
	HydroplaneUM float64 // film left by the lift, at most the column; half of it is laid
	LiftRatio    float64 // lift of the ink / line load
	TotalUM      float64 // f: the ink laid; Tau times it is the wet film
}

// Edge is what a blade's edge does to the ink whatever the cloth.
type Edge struct {
	FilmUM       float64 // the whole film under the edge
	HydroplaneUM float64 // film left by the lift
	LiftRatio    float64 // lift of the ink / line load
}

// EdgeOf is what an edge of the given contact at the given bent angle does to the ink: EdgeFilmUM
// and Hydroplane together. ErrFloats when the lift ratio is above FloatRatio; the edge then holds
// the lift ratio and nothing else.
//
// Range: edge angle 0 to 80 deg, the contact as in EdgeFilmUM; an error outside. Kind: derived.
func EdgeOf(c Contact, edgeAngleDeg float64) (Edge, error) {
	if err := within("edge angle", edgeAngleDeg, 0, 80, "deg"); err != nil {
		return Edge{}, err
	}
	var e Edge
	var err error
	if e.HydroplaneUM, e.LiftRatio, err = Hydroplane(c, 90-edgeAngleDeg, BeadMM); err != nil {
		return Edge{}, err
	}
	if e.LiftRatio > FloatRatio {
		return Edge{LiftRatio: e.LiftRatio}, ErrFloats{LiftRatio: e.LiftRatio, EdgeAngleDeg: edgeAngleDeg, LoadNPerCM: c.LoadNPerCM, SpeedMPerS: c.SpeedMPerS}
	}
	e.FilmUM, err = EdgeFilmUM(c)
	return e, err
}

// Lay is the deposit of one stroke of an edge,
//
//	f = fill (A0 T + s EOM) + h/2 + hydroplane/2
//
// with the open area A0, the fabric thickness T and the counted stencil s EOM. Two caps hold
// it to what there is: the hydroplane film is no thicker than the column, and the wet film
// Tau f is no more than mesh and stencil hold, A0 T + EOM (published: Tw = Tm AO + Te, a
// thick-film maker's rule [23]). From below, f is never less than fill A0 T.
//
// Range: edge angle 0 to 80 deg, stencil 0 to 2000 um, share 0 to 1, cloth of mesh.New; an error
// outside. Kind: derived.
func Lay(s Setup, e Edge) (Deposit, error) {
	if err := s.check(); err != nil {
		return Deposit{}, err
	}
	d := Deposit{EdgeFilmUM: e.FilmUM, HydroplaneUM: e.HydroplaneUM, LiftRatio: e.LiftRatio}
	var err error
	wedge := 90 - s.EdgeAngleDeg
	if d.FillDepthUM, err = FillDepthUM(s.Cloth.OpeningUM, wedge, BeadMM); err != nil {
		return Deposit{}, err
	}
	stencil := s.StencilShare * s.EOMUM
	d.ColumnUM = s.Cloth.FabricUM + stencil
	prefill := 0.0
	if s.Flood {
		prefill = Prefill
	}
	if d.Fill, err = Fill(d.ColumnUM, d.FillDepthUM, prefill); err != nil {
		return Deposit{}, err
	}
	d.HydroplaneUM = math.Min(d.HydroplaneUM, d.ColumnUM)
	most, err := mesh.HoldsUM(s.Cloth.OpenArea, s.Cloth.FabricUM, s.EOMUM)
	if err != nil {
		return Deposit{}, err
	}
	laid := d.Fill*(s.Cloth.OpenArea*s.Cloth.FabricUM+stencil) + d.EdgeFilmUM/2 + d.HydroplaneUM/2
	d.TotalUM = math.Min(laid, most/Tau)
	return d, nil
}

func (s Setup) check() error {
	return first(
		within("emulsion over mesh", s.EOMUM, 0, 2000, "um"),
		within("counted share of the stencil", s.StencilShare, 0, 1, "(a share)"),
		within("edge angle", s.EdgeAngleDeg, 0, 80, "deg"),
		within("open area", s.Cloth.OpenArea, 1e-4, 1, "(a share)"),
		within("fabric thickness", s.Cloth.FabricUM, 5, 20000, "um"),
		within("opening", s.Cloth.OpeningUM, 1, 20000, "um"))
}
