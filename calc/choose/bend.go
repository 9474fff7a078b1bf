package choose

import (
	"errors"
	"math"

	"bladecard/calc/blade"
	"bladecard/calc/film"
	"bladecard/calc/internal/sure"
)

// fault is why a setup gives no figure; the empty fault is none.
type fault string

const (
	folds  fault = "folds"
	floats fault = "floats"
)

// pressed is a blade pressed on the screen, whatever the cloth.
type pressed struct {
	fault   fault
	why     error
	edgeDeg float64
	edge    film.Edge
}

// bends keeps pressed blades, since the same blades, angles and slips come up on every mesh.
type bends map[bendKey]pressed

// mostBends is how many pressed blades are kept: some inks' worth, about 1 MB.
const mostBends = 1 << 12

// bendKey is what a pressed blade depends on, each figure by its bits: those hash at a stroke.
type bendKey struct {
	stock                     int
	off                       slip
	angle                     uint64
	load, speed, etaInf, k, n uint64
}

// press bends the blade and works out what its edge does, or takes both from what is kept.
func (g given) press(s setup, off slip) pressed {
	if s.stock.id == madeUp {
		return g.bend(s, off)
	}
	bits := math.Float64bits
	key := bendKey{
		stock: s.stock.id, off: off, angle: bits(s.angleDeg), load: bits(g.loadNCM), speed: bits(g.speedMPS),
		etaInf: bits(g.flow.EtaInfPaS), k: bits(g.flow.KPaSn), n: bits(g.flow.N),
	}
	p, known := g.bends[key]
	if !known {
		p = g.bend(s, off)
		if len(g.bends) >= mostBends {
			clear(g.bends)
		}
		g.bends[key] = p
	}
	return p
}

func (g given) bend(s setup, off slip) pressed {
	layers := s.stock.layers(off.hardnessShoreA)
	load := g.loadNCM * (1 + off.loadShare)
	edgeDeg, err := blade.EdgeAngleDeg(blade.Bend{
		SetDeg:       math.Max(0, s.angleDeg+off.angleDeg),
		LoadNPerCM:   load,
		FreeHeightMM: s.stock.FreeHeightMM + off.freeHeightMM,
		RigidityNM:   sure.Of(blade.RigidityNM(layers)),
		Friction:     blade.Friction,
	})
	if over := (blade.ErrFolds{}); errors.As(err, &over) {
		return pressed{fault: folds, why: err}
	}
	sure.Check(err)
	p := pressed{edgeDeg: edgeDeg}
	p.edge, err = film.EdgeOf(film.Contact{
		ModulusMPa: layers[0].ModulusMPa, RadiusMM: sure.Of(film.EdgeRadiusMM(s.stock.Edge)), LoadNPerCM: load,
		SpeedMPerS: g.speedMPS * (1 + off.speedShare), Flow: g.flow,
	}, edgeDeg)
	if above := (film.ErrFloats{}); errors.As(err, &above) {
		p.fault, p.why = floats, err
		return p
	}
	sure.Check(err)
	return p
}
