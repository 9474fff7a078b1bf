package halftone

import "math"

// meshOrders are the harmonics of the mesh that are looked at, up to sign: the two thread
// systems and their two diagonals.
var meshOrders = [...][2]int{{1, 0}, {0, 1}, {1, 1}, {1, -1}}

// Beat is the moire between mesh and halftone: the pair of harmonics that lie nearest to each
// other, and the period of their beat.
type Beat struct {
	PeriodMM      float64 // +Inf for an exact lock: no bands, but a fixed phase
	MeshOrder     [2]int  // harmonic of the mesh, in mesh counts along and across
	HalftoneOrder [2]int  // harmonic of the halftone, in line counts along and across its angle
}

// MoireBeat is the longest moire beat of a square halftone lattice of the given line count at
// an angle on a square mesh at 0 deg. The spatial frequency of the mesh is n (h, k), that of
// the halftone f (i, j) turned by the angle; the difference of the nearest two is the beat,
// its inverse the period. Looked at are the mesh's threads and diagonals, (1,0), (0,1), (1,1),
// (1,-1), each with its nearest harmonic of the halftone; of equally long beats that of the
// lowest order is returned.
//
// A beat is weaker the higher its halftone order, and one of a few cells' length is no visible
// band. An infinite period is a lock: each dot sits alike on the threads, which prints no
// bands but gains or loses all dots at once.
//
// Range: mesh 2 to 1000, lines 1 to 1000 per inch, mesh 0.75 to 1000 times as fine, angle -360
// to 360 deg; an error outside. A difference below 1e-9 of the mesh count is a lock. Kind:
// derived.
func MoireBeat(countPerInch, linesPerInch, angleDeg float64) (Beat, error) {
	if err := first(
		checkMesh(countPerInch),
		checkLines(linesPerInch),
		within("mesh to line ratio", countPerInch/linesPerInch, 0.75, 1000, "(a ratio)"),
		within("angle", angleDeg, -360, 360, "deg")); err != nil {
		return Beat{}, err
	}
	ratio := countPerInch / linesPerInch
	sin, cos := math.Sincos(angleDeg * math.Pi / 180)
	lock := 1e-9 * ratio
	best, bestOrder := math.Inf(1), math.Inf(1)
	var beat Beat
	for _, m := range meshOrders {
		x, y := ratio*float64(m[0]), ratio*float64(m[1])
		// In the halftone's own axes its harmonics are the whole numbers: the nearest is
		// found by rounding. From a ratio of 0.71 on that is never (0, 0).
		u, v := x*cos+y*sin, y*cos-x*sin
		i, j := math.Round(u), math.Round(v)
		gap := math.Hypot(u-i, v-j)
		order := math.Hypot(i, j) + math.Hypot(float64(m[0]), float64(m[1]))
		if gap < best-lock || gap <= best+lock && order < bestOrder {
			best, bestOrder = gap, order
			beat = Beat{MeshOrder: m, HalftoneOrder: [2]int{int(i), int(j)}}
		}
	}
	beat.PeriodMM = math.Inf(1)
	if best > lock {
		beat.PeriodMM = umPerInch / 1000 / (best * linesPerInch)
	}
	return beat, nil
}
