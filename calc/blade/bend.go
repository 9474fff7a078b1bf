package blade

import (
	"fmt"
	"math"
)

// Friction is the default coefficient of friction between the edge and the wet mesh (from
// memory; 0 to 0.6 is plausible).
const Friction = 0.3

// FoldDeg is the edge angle from which a blade no longer wipes but lies on its flank, in
// degrees from vertical. The equation of EdgeAngleDeg is not trusted beyond it (derived).
const FoldDeg = 80.0

// Bend is a blade pressed on the mesh.
type Bend struct {
	SetDeg       float64 // angle of the holder from vertical
	LoadNPerCM   float64 // line load
	FreeHeightMM float64 // rubber below the holder
	RigidityNM   float64 // of RigidityNM
	Friction     float64 // coefficient, usually the constant Friction
}

// ErrFolds is the error of a setup in which the blade folds over: no edge angle below FoldDeg
// carries the load. Get at it with errors.As.
type ErrFolds struct {
	Bend Bend
}

// Error tells a printer what happens and what would mend it.
func (e ErrFolds) Error() string {
	return fmt.Sprintf("the blade folds over: at %g° and %g N/cm its edge leans past %g° and lies flat on the mesh (%g mm free height, rigidity %.3g N m); a harder or thicker blade, less free height, less load or a more upright angle is needed",
		e.Bend.SetDeg, e.Bend.LoadNPerCM, FoldDeg, e.Bend.FreeHeightMM, e.Bend.RigidityNM)
}

// EdgeAngleDeg is the angle from vertical of the bent edge, in degrees: set angle a0 plus the
// bending th, the smallest root of
//
//	th = L^2/(2 D) [W sin(a0 + 5 th/6) + mu W cos(a0 + 5 th/6)]
//
// with free height L, rigidity D, line load W and friction mu. A vertical blade without
// friction stays straight up to its buckling load and leans beyond it.
//
// Range: set angle 0 to 75 deg, load 0 to 100 N/cm, free height 1 to 200 mm, rigidity 1e-5 to
// 1e5 N m, friction 0 to 0.6; an error outside. ErrFolds when there is no root below 80 deg.
//
// Kind: derived, a cantilever's tip rotation under a load that turns with 5/6 of it. Against
// the exact elastica (Bisshopp and Drucker 1945 [3]) the rotation is 0.4, 1.1 and 3.2 % large at
// P L^2/D = 1, 2 and 5, and the buckling load is 2.40 D/L^2 against pi^2/4.
func EdgeAngleDeg(b Bend) (float64, error) {
	if err := first(
		within("set angle", b.SetDeg, 0, 75, "deg"),
		within("line load", b.LoadNPerCM, 0, 100, "N/cm"),
		within("free height", b.FreeHeightMM, 1, 200, "mm"),
		within("rigidity", b.RigidityNM, 1e-5, 1e5, "N m"),
		within("friction", b.Friction, 0, 0.6, "(a ratio)")); err != nil {
		return 0, err
	}
	a0 := b.SetDeg * math.Pi / 180
	l := b.FreeHeightMM / 1e3
	c := l * l / (2 * b.RigidityNM) * b.LoadNPerCM * 100
	th, ok := bending(a0, c, b.Friction, FoldDeg*math.Pi/180-a0)
	if !ok {
		return 0, ErrFolds{Bend: b}
	}
	return b.SetDeg + th*180/math.Pi, nil
}

// bending is the smallest stable root in radians of th = c [sin(a0 + 5 th/6) + mu cos(...)],
// up to limit; false when there is none.
//
// The difference of the two sides is concave in th (a sine whose argument stays below 180 deg,
// less a straight line) and not negative at 0. Past 0 it changes sign once or never. Newton's
// tangent of a concave function lies above it, so that from a limit where it is negative the steps
// fall towards the root and never pass it.
func bending(a0, c, friction, limit float64) (float64, bool) {
	excess := func(th float64) float64 {
		sin, cos := math.Sincos(a0 + 5*th/6)
		return c*(sin+friction*cos) - th
	}
	const tiny = 1e-12
	if excess(limit) > 0 {
		return 0, false
	}
	if excess(tiny) <= 0 {
		return 0, true
	}
	th := limit
	for range 100 {
		sin, cos := math.Sincos(a0 + 5*th/6)
		slope := 5*c/6*(cos-friction*sin) - 1
		next := th - (c*(sin+friction*cos)-th)/slope
		if !(next < th) { // the last digits are reached
			break
		}
		th = next
	}
	return th, true
}
