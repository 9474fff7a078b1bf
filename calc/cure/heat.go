package cure

// Print is a print that is brought to a cure temperature: its wet film, and the water in film and cloth.
type Print struct {
	FilmUM        float64
	InkWaterGM2   float64 // see WaterGPerM2
	ClothMoisture float64 // a share of the cloth's dry mass, see Moisture
}

// HeatKJPerM2 is the heat in kJ/m2 that brings a print and the 0.5 mm of cloth under it from the air of the shop to
// a cure temperature in C: ink and cloth are warmed, the water in both goes. What the surface loses on the way is
// not in it. Where the dryer stays as it is, the time that two films take goes with their heats.
//
// Range: film 0 to 1e4 um, cure 60 to 250 C, water in the ink 0 to 2000 g/m2, in the cloth 0 to 0.3 of its mass; an
// error outside. Kind: derived, on properties from memory.
func HeatKJPerM2(p Print, cureC float64) (float64, error) {
	if err := first(
		within("film", p.FilmUM, 0, 1e4, "um"),
		within("cure temperature", cureC, 60, 250, "C"),
		within("water in the ink", p.InkWaterGM2, 0, 2000, "g/m2"),
		within("moisture of the cloth", p.ClothMoisture, 0, 0.3, "of its mass")); err != nil {
		return 0, err
	}
	warmed := (p.FilmUM*1e-6*inkHeatCapacity + fabricM*fabricHeatCapacity) * (cureC - airC) / 1000
	waterKG := p.InkWaterGM2/1000 + p.ClothMoisture*fabricM*fabricKGPerM3
	return warmed + waterKG*LatentKJPerKG, nil
}
