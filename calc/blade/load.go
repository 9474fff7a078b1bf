package blade

import "math"

// Line loads of the three classes in N/cm (from memory; customary words without a published
// figure). The aim on press is the least load that passes the wipe test (common practice).
const (
	LightNPerCM  = 2.0
	MediumNPerCM = 5.0
	FirmNPerCM   = 8.0
)

// LoadClass is a word for a line load.
type LoadClass string

// The classes of line load.
const (
	Light  LoadClass = "light"
	Medium LoadClass = "medium"
	Firm   LoadClass = "firm"
)

// ClassOf is the class whose load is nearest to the given one in N/cm: light below 3.5, firm
// from 6.5.
//
// Range: 0 to 100 N/cm; an error outside. Kind: from memory, see LightNPerCM.
func ClassOf(loadNPerCM float64) (LoadClass, error) {
	if err := within("line load", loadNPerCM, 0, 100, "N/cm"); err != nil {
		return "", err
	}
	switch {
	case loadNPerCM < (LightNPerCM+MediumNPerCM)/2:
		return Light, nil
	case loadNPerCM < (MediumNPerCM+FirmNPerCM)/2:
		return Medium, nil
	}
	return Firm, nil
}

// CylinderPressureBar is the gauge pressure in bar at which air cylinders give the line load in N per cm of
// blade, p = load x length / (n pi d^2/4): d the bore in mm, n the number of cylinders on this blade, the
// blade's length in mm. Spring return and friction are left out.
//
// Range: load 0 to 100 N/cm, bore 5 to 200 mm, 1 to 8 cylinders, length 30 to 3000 mm; an error outside, and
// where the load takes more than 16 bar. Kind: derived.
func CylinderPressureBar(loadNPerCM, boreMM float64, cylinders int, bladeLengthMM float64) (float64, error) {
	if err := first(
		within("line load", loadNPerCM, 0, 100, "N/cm"),
		within("bore", boreMM, 5, 200, "mm"),
		within("number of cylinders", float64(cylinders), 1, 8, "cylinders"),
		within("blade length", bladeLengthMM, 30, 3000, "mm")); err != nil {
		return 0, err
	}
	areaMM2 := math.Pi * boreMM * boreMM / 4 * float64(cylinders)
	bar := loadNPerCM * bladeLengthMM / areaMM2 // the tenths of N/cm x mm and the tens of bar in N/mm2 cancel
	if err := within("air pressure for this load:", bar, 0, 16, "bar"); err != nil {
		return 0, err
	}
	return bar, nil
}
