package cure

// BeltMPerMin is the belt speed in m/min that keeps a print in the heat for the dwell: heated
// length / dwell.
//
// Range: heated length 100 to 50 000 mm, dwell 1 to 3600 s; an error outside. Kind: derived; 6
// ft and 60 s give 6.0 ft/min.
func BeltMPerMin(heatedMM, dwellS float64) (float64, error) {
	if err := first(
		within("heated length", heatedMM, 100, 50000, "mm"),
		within("dwell", dwellS, 1, 3600, "s")); err != nil {
		return 0, err
	}
	return heatedMM / 1000 / (dwellS / 60), nil
}

// GarmentsPerHour is what a dryer takes in an hour: 3600 x lanes x heated length / (dwell x
// pitch), the pitch from one garment to the next along the belt.
//
// Range: 1 to 20 lanes, heated length 100 to 50 000 mm, dwell 1 to 3600 s, pitch 50 to 3000 mm;
// an error outside. Kind: derived: 6 garments in the heat for 60 s are 360 an hour. (A trade
// article prints 60 for the same figures.)
func GarmentsPerHour(lanes int, heatedMM, dwellS, pitchMM float64) (float64, error) {
	if err := first(
		within("lanes", float64(lanes), 1, 20, "lanes"),
		within("heated length", heatedMM, 100, 50000, "mm"),
		within("dwell", dwellS, 1, 3600, "s"),
		within("pitch", pitchMM, 50, 3000, "mm")); err != nil {
		return 0, err
	}
	return 3600 * float64(lanes) * heatedMM / (dwellS * pitchMM), nil
}
