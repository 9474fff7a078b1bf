package halftone

// BitmapDotUM is the side in micrometres of the square dot of a bitmap, 25 400/dpi.
//
// Range: 1 to 20 000 dpi; an error outside. Definition.
func BitmapDotUM(dpi float64) (float64, error) {
	if err := checkDPI(dpi); err != nil {
		return 0, err
	}
	return umPerInch / dpi, nil
}
