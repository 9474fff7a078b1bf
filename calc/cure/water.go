package cure

import "cmp"

// LatentKJPerKG is the heat that turns a kilogram of water at 100 C into steam, 2256 kJ
// (published steam-table value [42]).
const LatentKJPerKG = 2256.0

// waterKGPerL is the density of water (from memory).
const waterKGPerL = 1.0

// MassSolids is the share of an ink's mass that stays when its water has gone, from the share of
// its volume that stays: volume solids x density of the dried film / density of the wet ink. A
// density of the dried film of 0 is not known: then the ink is taken for solids and water whose
// volumes add up, and the share follows from the other two figures.
//
// Range: volume solids 0 to 1, densities 0.5 to 6 kg/L, the result 0 to 1; an error outside. Kind:
// definition; that volumes add up is derived.
func MassSolids(volumeSolids, dryKGPerL, wetKGPerL float64) (float64, error) {
	if err := first(
		within("volume solids", volumeSolids, 0, 1, "(a share)"),
		within("density of the wet ink", wetKGPerL, 0.5, 6, "kg/L")); err != nil {
		return 0, err
	}
	share := 1 - (1-volumeSolids)*waterKGPerL/wetKGPerL
	if dryKGPerL != 0 {
		if err := within("density of the dried film", dryKGPerL, 0.5, 6, "kg/L"); err != nil {
			return 0, err
		}
		share = volumeSolids * dryKGPerL / wetKGPerL
	}
	return share, within("share of mass that stays", share, 0, 1, "(a share)")
}

// WaterGPerM2 is the water in a wet film in g/m2: wet film x density x (1 - mass solids), see
// MassSolids.
//
// Range: film 0 to 1e4 um, density 0.5 to 3 kg/L, solids 0 to 1; an error outside. Kind: derived.
func WaterGPerM2(wetUM, densityKgPerL, massSolids float64) (float64, error) {
	if err := first(
		within("wet film", wetUM, 0, 1e4, "um"),
		within("density", densityKgPerL, 0.5, 3, "kg/L"),
		within("mass solids", massSolids, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	return wetUM * densityKgPerL * (1 - massSolids), nil
}

// DryC is the temperature in C at which the given share of a film's water has gone.
//
// Range: share 0 to 1; an error outside. Kind: derived, from the course of drying that
// FlashSeconds takes.
func DryC(share float64) (float64, error) {
	if err := within("share of the water", share, 0, 1, "(a share)"); err != nil {
		return 0, err
	}
	return DryingFromC + share*(DryingToC-DryingFromC), nil
}

// moistures is the water in cloth that lies in a shop's air, a share of its mass (from memory: the
// standard moisture regain of the fibres).
var moistures = map[string]float64{"cotton": 0.07, "blend": 0.04, "tri-blend": 0.04, "polyester": 0.004, "nylon": 0.04}

// Moisture is the water in cloth of a fibre, a share of its dry mass. A fibre that is not stated (an empty word)
// counts as cotton, which most garments are and which holds the most water.
//
// Range: cotton, polyester, blend, tri-blend, nylon, an empty word; an error for any other. Kind: from memory,
// the standard moisture regain.
func Moisture(fibre string) (float64, error) {
	m, ok := moistures[cmp.Or(fibre, "cotton")]
	if !ok {
		return 0, errFibre(fibre)
	}
	return m, nil
}
