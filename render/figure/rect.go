package figure

import (
	"errors"
	"fmt"
	"math"
)

// Kinds of errors.
var (
	ErrNoRoom = errors.New("no room")
	ErrNoData = errors.New("no data")
)

// Rect is the place that a drawing may use, in mm, y downward.
type Rect struct{ X, Y, W, H float64 }

// Right is the x of the right side.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the y of the lower side.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// check refuses a rectangle that is not a place on paper.
func (r Rect) check(what string) error {
	if !finite(r.X, r.Y) || !(r.W > 0 && r.W <= 2000) || !(r.H > 0 && r.H <= 2000) {
		return fmt.Errorf("%s: the place %.4g x %.4g mm at %.4g, %.4g is none; accepted are sides over 0 to 2000 mm",
			what, r.W, r.H, r.X, r.Y)
	}
	return nil
}

func noRoom(what string, r Rect, why string) error {
	return fmt.Errorf("%s: %w in %.1f x %.1f mm: %s", what, ErrNoRoom, r.W, r.H, why)
}

func finite(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// clamp puts v between lo and hi; lo wins when the two cross.
func clamp(v, lo, hi float64) float64 { return math.Max(lo, math.Min(v, hi)) }
