package cure

import (
	"errors"
	"math"
)

// platenDoubtK is how far the platen of a running press is from the stated temperature, nine of ten
// (from memory).
const platenDoubtK = 10.0

// What is not known of the heat that a print takes up, as a share, nine of ten: of a unit that
// nobody timed, and of one that the shop timed once (judgement).
const (
	FluxDoubtUntimed = 0.30
	FluxDoubtTimed   = 0.15
)

// Doubt is what is not known of a flash: nine of ten lie inside.
type Doubt struct {
	FluxShare             float64 // of the flux, see FluxDoubtUntimed
	FilmLowUM, FilmHighUM float64 // wet film
	GelLowC, GelHighC     float64 // gel temperature
}

// FlashRange is a flash time in seconds with the range that holds nine of ten: each thing that is
// not known is moved to either end alone, and the changes of the time's logarithm are added as
// a root of squares, each side for itself. The platen may be 10 K off. No time is below LeastS, and
// an end that never gels is NeverS.
//
// Range: that of FlashSeconds for each end, flux share 0 to 0.9; an error outside, ErrNeverGels
// where the flash itself never gels the film. Kind: derived from FlashSeconds.
func FlashRange(f Flash, d Doubt) (low, seconds, high float64, err error) {
	if err := within("doubt of the flux", d.FluxShare, 0, 0.9, "(a share)"); err != nil {
		return 0, 0, 0, err
	}
	if seconds, err = FlashSeconds(f); err != nil {
		return 0, 0, 0, err
	}
	shorter, longer := f, f
	var fewer, more float64 // squares of the logarithms
	for _, move := range []func(short, long *Flash){
		func(s, l *Flash) { s.FluxKWM2 *= 1 + d.FluxShare; l.FluxKWM2 *= 1 - d.FluxShare },
		func(s, l *Flash) { s.GelC, l.GelC = d.GelLowC, d.GelHighC },
		func(s, l *Flash) { s.film(d.FilmLowUM); l.film(d.FilmHighUM) },
		func(s, l *Flash) { s.PlatenC += platenDoubtK; l.PlatenC = math.Max(0, l.PlatenC-platenDoubtK) },
	} {
		shorter, longer = f, f
		move(&shorter, &longer)
		s, err := FlashSeconds(shorter)
		if err != nil {
			return 0, 0, 0, err
		}
		l, err := FlashSeconds(longer)
		if never := (ErrNeverGels{}); errors.As(err, &never) {
			l, err = math.Inf(1), nil
		}
		if err != nil {
			return 0, 0, 0, err
		}
		fewer += square(math.Log(seconds / math.Max(s, 1e-3)))
		more += square(math.Log(l / math.Max(seconds, 1e-3)))
	}
	low = math.Max(LeastS, seconds*math.Exp(-math.Sqrt(fewer)))
	high = math.Min(NeverS, seconds*math.Exp(math.Sqrt(more)))
	seconds = math.Max(LeastS, seconds)
	return low, seconds, math.Max(seconds, high), nil
}

// film sets the film, its water with it.
func (f *Flash) film(um float64) {
	f.InkWaterGM2 *= um / f.FilmUM
	f.FilmUM = um
}

func square(x float64) float64 { return x * x }
