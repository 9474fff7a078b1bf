package cure

// LatentKJPerKG is the heat that turns a kilogram of water at 100 C into steam, 2256 kJ
// (published steam-table value).
const LatentKJPerKG = 2256.0

// WaterGPerM2 is the water in a wet film in g/m2: wet film x density x (1 - solids), the solids
// a share of the mass.
//
// Range: film 0 to 1e4 um, density 0.5 to 3 kg/L, solids 0 to 1; an error outside. Kind: derived.
func WaterGPerM2(wetUM, densityKgPerL, solids float64) (float64, error) {
	if err := first(
		within("wet film", wetUM, 0, 1e4, "um"),
		within("density", densityKgPerL, 0.5, 3, "kg/L"),
		within("solids", solids, 0, 1, "(a share)")); err != nil {
		return 0, err
	}
	return wetUM * densityKgPerL * (1 - solids), nil
}

// EvaporationKJPerM2 is the heat in kJ/m2 that turns the given water into steam at 100 C.
//
// Range: 0 to 1e5 g/m2; an error outside. Kind: derived; the latent heat is published.
func EvaporationKJPerM2(waterGPerM2 float64) (float64, error) {
	if err := within("water", waterGPerM2, 0, 1e5, "g/m2"); err != nil {
		return 0, err
	}
	return waterGPerM2 / 1000 * LatentKJPerKG, nil
}

// EvaporationSeconds is the least time in seconds in which a flux drives off the given water:
// the plateau near 100 C, with no heat lost. What the garment takes up comes on top. For a share
// of the water give that share.
//
// Range: 0 to 1e5 g/m2, flux 0.1 to 200 kW/m2; an error outside. Kind: derived, a lower bound.
func EvaporationSeconds(waterGPerM2, fluxKWM2 float64) (float64, error) {
	kj, err := EvaporationKJPerM2(waterGPerM2)
	if err != nil {
		return 0, err
	}
	if err := within("flux", fluxKWM2, 0.1, 200, "kW/m2"); err != nil {
		return 0, err
	}
	return kj / fluxKWM2, nil
}
