package cure

// The start of a flash in a running shop (from memory): ink at the shop's temperature, a platen that
// has been round some times.
const (
	InkStartC   = 25.0
	PlatenWarmC = 45.0
)

// HeatKJPerM2 is the heat in kJ/m2 that a garment with a film on it takes up in a dryer: cloth and film
// from the air of the shop to the cure temperature, and the latent heat of the water in both. A thicker film
// wants as much longer in the same dryer as its heat is more.
//
//	(Cf + d c) (T - 25 C) + L (wi + m Mf)
//
// with Cf the heat that 0.5 mm of cloth takes up a kelvin and Mf its mass, d c that of the film, wi the
// ink's water and m the cloth's moisture. Properties are those of FlashSeconds.
//
// Range: wet film 0.5 to 5000 um, water in the ink 0 to 5000 g/m2, moisture 0 to 0.3, cure 30 to 250 C; an
// error outside. Kind: derived (lumped body), on properties partly from memory.
func HeatKJPerM2(filmUM, inkWaterGM2, moisture, cureC float64) (float64, error) {
	if err := first(
		within("film", filmUM, 0.5, 5000, "um"),
		within("water in the ink", inkWaterGM2, 0, 5000, "g/m2"),
		within("moisture of the cloth", moisture, 0, 0.3, "(a share)"),
		within("cure temperature", cureC, 30, 250, "C")); err != nil {
		return 0, err
	}
	perK := fabricM*fabricHeatCapacity + filmUM*1e-6*inkHeatCapacity // J/(m2 K)
	water := inkWaterGM2/1000 + moisture*fabricKGPerM3*fabricM       // kg/m2
	return perK*(cureC-airC)/1000 + water*LatentKJPerKG, nil
}
