package halftone

// Range of mesh count to line count that holds a halftone (common practice; weavers' guidance [25] prints 2.5,
// 3.75 and 5). Coudray, Screen Printing, April 2003 [20], quotes 3.5 and 4 as what is most often recommended, to
// argue that no such ratio predicts moire: that is what the beat of MoireBeat is for.
const (
	MinRatio = 3.5
	MaxRatio = 5.0
)

// UsualAnglesDeg are the usual angles of a halftone to the mesh in degrees, chosen for short
// beats; 0, 45 and 90 deg are the worst. All colors at 22.5 is usual too.
// Range: a quarter turn, after which the mesh repeats.
//
// Source: weavers' guidance [25] (published).
func UsualAnglesDeg() [4]float64 { return [4]float64{7.5, 22.5, 52.5, 82.5} }

// MeshRatio is mesh count over line count, both per inch. MinRatio to MaxRatio is the usual
// range.
//
// Range: mesh 2 to 1000, lines 1 to 1000 per inch; an error outside. Kind: definition.
func MeshRatio(countPerInch, linesPerInch float64) (float64, error) {
	if err := first(checkMesh(countPerInch), checkLines(linesPerInch)); err != nil {
		return 0, err
	}
	return countPerInch / linesPerInch, nil
}

// MeshForRatio is the mesh count per inch that gives the ratio to a line count per inch:
// 65 lines at 3.5 and 4 ask for 227.5 and 260 threads per inch.
//
// Range: lines 1 to 1000 per inch, ratio 0.5 to 20; an error outside. Kind: definition; 3.5 and 4 are
// the common recommendation as Coudray quotes it (Screen Printing, April 2003 [20]), who argues against it.
func MeshForRatio(linesPerInch, ratio float64) (float64, error) {
	if err := first(checkLines(linesPerInch), within("mesh to line ratio", ratio, 0.5, 20, "(a ratio)")); err != nil {
		return 0, err
	}
	return linesPerInch * ratio, nil
}

// LinesForRatio is the line count per inch that a mesh count per inch holds at a ratio.
//
// Range: mesh 2 to 1000 per inch, ratio 0.5 to 20; an error outside. Source: weavers' guidance [25]
// (published): 150 threads per cm at 3.75 and 5 hold 40 and 30 lines per cm.
func LinesForRatio(countPerInch, ratio float64) (float64, error) {
	if err := first(checkMesh(countPerInch), within("mesh to line ratio", ratio, 0.5, 20, "(a ratio)")); err != nil {
		return 0, err
	}
	return countPerInch / ratio, nil
}

// OpeningsPerCell is the number of mesh openings behind one halftone cell, (mesh/lines)^2.
//
// Range: mesh 2 to 1000, lines 1 to 1000 per inch; an error outside. Kind: derived.
func OpeningsPerCell(countPerInch, linesPerInch float64) (float64, error) {
	r, err := MeshRatio(countPerInch, linesPerInch)
	return r * r, err
}
