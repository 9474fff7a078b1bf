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

// BitmapPitches is the side of a bitmap's dot in mesh pitches, count/dpi.
//
// Range: 1 to 20 000 dpi, mesh 2 to 1000 per inch; an error outside. Kind: derived.
func BitmapPitches(dpi, countPerInch float64) (float64, error) {
	if err := first(checkDPI(dpi), checkMesh(countPerInch)); err != nil {
		return 0, err
	}
	return countPerInch / dpi, nil
}

// CellPixels is the side of a halftone cell in pixels of the film output, dpi/lines.
//
// Range: 1 to 20 000 dpi, 1 to 1000 lines per inch; an error outside. Source: a film maker's
// note on minimum dot size [28] (published): 2400 dpi at 150 lines give 16 pixels.
func CellPixels(dpi, linesPerInch float64) (float64, error) {
	if err := first(checkDPI(dpi), checkLines(linesPerInch)); err != nil {
		return 0, err
	}
	return dpi / linesPerInch, nil
}

// CellLevels is the number of grey steps of a cell whose side is n pixels, n^2 - 1, and the
// size of one step as a share.
//
// Range: side 2 to 1000 pixels; an error outside. Source: Coudray, "Choosing Halftone Dot
// Shape [27]" [27] (published): 16 pixels give 255 steps. 255 levels above paper make 256 with it.
func CellLevels(sidePixels float64) (steps, step float64, err error) {
	if err := within("cell side", sidePixels, 2, 1000, "pixels"); err != nil {
		return 0, 0, err
	}
	steps = sidePixels*sidePixels - 1
	return steps, 1 / steps, nil
}

// PixelDotShare is the tone of a dot made of the given number of pixels in a cell of the given
// side in pixels, dot/side^2, as a share.
//
// Range: side 1 to 1000 pixels, dot 1 pixel to the whole cell; an error outside. Source: a
// film maker's note on minimum dot size [28] (published): 16 and 4 pixels in 16 x 16 are 6.25 and
// 1.56 %.
func PixelDotShare(dotPixels, sidePixels float64) (float64, error) {
	if err := first(
		within("cell side", sidePixels, 1, 1000, "pixels"),
		within("dot", dotPixels, 1, sidePixels*sidePixels, "pixels")); err != nil {
		return 0, err
	}
	return dotPixels / (sidePixels * sidePixels), nil
}
