package mesh

import "fmt"

// Spec is a cloth as a file describes it. A zero OpeningUM or FabricUM means that nothing was
// measured and geometry is used.
type Spec struct {
	CountPerInch float64 // threads per inch
	ThreadUM     float64 // nominal thread diameter
	OpeningUM    float64 // measured opening, 0: geometry
	FabricUM     float64 // measured thickness, 0: fit
	Twill        bool
}

// Cloth is a cloth with its geometry, lengths in micrometres.
type Cloth struct {
	CountPerInch float64
	ThreadUM     float64
	PitchUM      float64
	OpeningUM    float64
	OpenArea     float64 // share, 0 to 1
	FabricUM     float64
	VolumeUM     float64 // theoretical ink volume, cm3/m2 = um

	MeasuredOpening bool // OpeningUM was stated, not computed
	MeasuredFabric  bool // FabricUM was stated, not computed
}

// New works out the cloth of a spec: pitch, opening, open area, thickness, ink volume. A
// measured opening or thickness is taken as it is; the rest comes from PitchUM, OpeningUM,
// OpenArea, FabricUM and VolumeUM, with their sources.
//
// Range: count 2 to 1000 threads per inch; thread 5 to 10 000 um and thinner than the pitch;
// a measured opening above 0 and below the pitch; a measured thickness from one thread
// diameter's half (calendered cloth) to four diameters. An error outside. Kind: derived.
func New(s Spec) (Cloth, error) {
	c := Cloth{CountPerInch: s.CountPerInch, ThreadUM: s.ThreadUM}
	var err error
	if c.PitchUM, err = PitchUM(s.CountPerInch); err != nil {
		return Cloth{}, err
	}
	if c.OpeningUM, err = OpeningUM(c.PitchUM, s.ThreadUM); err != nil {
		return Cloth{}, err
	}
	if s.OpeningUM != 0 {
		c.OpeningUM, c.MeasuredOpening = s.OpeningUM, true
	}
	if c.OpenArea, err = OpenArea(c.OpeningUM, c.PitchUM); err != nil {
		return Cloth{}, err
	}
	if s.FabricUM != 0 {
		if !(s.FabricUM >= s.ThreadUM/2 && s.FabricUM <= 4*s.ThreadUM) {
			return Cloth{}, fmt.Errorf("mesh: fabric thickness %g um does not fit a thread of %g um; %g to %g um is accepted", s.FabricUM, s.ThreadUM, s.ThreadUM/2, 4*s.ThreadUM)
		}
		c.FabricUM, c.MeasuredFabric = s.FabricUM, true
	} else if c.FabricUM, err = FabricUM(s.ThreadUM, c.PitchUM, s.Twill); err != nil {
		return Cloth{}, err
	}
	if c.VolumeUM, err = VolumeUM(c.OpenArea, c.FabricUM); err != nil {
		return Cloth{}, err
	}
	return c, nil
}
