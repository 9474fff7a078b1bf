package mesh

// BridgeMM is the feature width at which half of the emulsion over mesh counts: 9.5 mm, the
// width (3/8 in) up to which a thick stencil is said to help (published: Printwear, November
// 2015, p. 73 [22]).
const BridgeMM = 9.5

// StencilShare is the share of the emulsion over mesh that adds to the film of a feature of
// this width in mm: 1/(1 + (W/9.5)^2). The blade bridges a narrow feature and leaves the
// stencil's whole height in ink; on a wide solid the cloth gives way and little of it counts.
//
// Range: 0.01 to 5000 mm; an error outside. Lines under about 0.25 mm print thinner again
// (published: a thick-film maker's note [23]), which is not modelled. Kind: the width is published
// (BridgeMM), the form of the curve is from memory and not measured.
func StencilShare(featureMM float64) (float64, error) {
	if err := within("feature width", featureMM, 0.01, 5000, "mm"); err != nil {
		return 0, err
	}
	r := featureMM / BridgeMM
	return 1 / (1 + r*r), nil
}

// HoldsUM is the most wet film in micrometres that cloth and stencil hold, open area x fabric
// thickness + emulsion over mesh.
//
// Range: open area above 0 to 1, thickness 5 to 20 000 um, emulsion 0 to 2000 um; an error
// outside. Source: Tw = Tm AO + Te, a thick-film maker's rule (published: micrasem.com [23]).
func HoldsUM(openArea, fabricUM, eomUM float64) (float64, error) {
	if err := within("emulsion over mesh", eomUM, 0, 2000, "um"); err != nil {
		return 0, err
	}
	v, err := VolumeUM(openArea, fabricUM)
	if err != nil {
		return 0, err
	}
	return v + eomUM, nil
}
