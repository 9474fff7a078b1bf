package press

import "fmt"

// OverrunMM is how far a stroke runs beyond the image, both ends together (common practice).
const OverrunMM = 100.0

// Pace is how quickly a press and those who stand at it work, and what they print.
type Pace struct {
	Kind       string    // manual, automatic, flatbed
	StrokeMPS  float64   // speed of the print stroke, and of the blade's way back
	IndexS     float64   // from one station to the next; on a manual press to turn it and lower the screen
	LoadS      float64   // to take a piece off and put the next one on
	CoolS      float64   // a cool-down after a flash
	SetupS     float64   // to hang, register and take down a screen
	ImageMM    float64   // of the image along the stroke
	StrokesOf  []int     // print strokes of a hit, screen by screen
	FlashSOf   []float64 // a flash, screen by screen; 0: none
	Turns      int       // how often the pieces go round
	SetScreens int       // screens that are hung
}

// Time is what a location takes on a press.
type Time struct {
	PieceS  float64 // from one finished piece to the next
	Slowest Station // that sets the pace, on an automatic; the longest one on other presses
	Load    bool    // it is none of the stations but the loading
	SetupS  float64 // all screens together
}

// StrokeS is the time of one print stroke in seconds: the blade's way over the image and its overrun, and the
// way back, with the flood or without.
//
// Range: image 5 to 3000 mm, speed 0.01 to 3 m/s; an error outside. Kind: derived; the overrun is common practice.
func StrokeS(imageMM, speedMPS float64) (float64, error) {
	for _, err := range []error{
		within("image along the stroke", imageMM, 5, 3000, "mm"),
		within("stroke speed", speedMPS, 0.01, 3, "m/s"),
	} {
		if err != nil {
			return 0, err
		}
	}
	return 2 * (imageMM + OverrunMM) / 1000 / speedMPS, nil
}

// TimeOf is how long a location takes on a press. Every print station takes its strokes, a flash its time, a
// cool-down its own, the loading its own. Then
//
//	automatic  all stations work at once: the slowest one and the index, as often as the pieces go round
//	manual     one pair of hands: the sum of all, and an index before each station
//	flatbed    a pass for each print: the sum of strokes and loading; nothing is flashed or cooled there
//
// Range: the three kinds, the ranges of StrokeS, 1 to 6 strokes, times 0 to 600 s, setup 0 to 7200 s, 1 to
// 400 turns; an error outside, or for a station of a screen that Pace does not know. Kind: derived from the layout;
// the times themselves are the shop's, or common practice.
func TimeOf(stations []Station, p Pace) (Time, error) {
	stroke, err := StrokeS(p.ImageMM, p.StrokeMPS)
	if err != nil {
		return Time{}, err
	}
	for _, err := range []error{
		within("index time", p.IndexS, 0, 600, "s"),
		within("loading time", p.LoadS, 0, 600, "s"),
		within("cool-down", p.CoolS, 0, 600, "s"),
		within("setup of a screen", p.SetupS, 0, 7200, "s"),
		within("turns", float64(p.Turns), 1, 400, "turns"),
	} {
		if err != nil {
			return Time{}, err
		}
	}
	out := Time{SetupS: p.SetupS * float64(p.SetScreens), Load: true}
	slowest, sum := p.LoadS, 0.0
	prints := 0
	for _, s := range stations {
		at, err := p.stationS(s, stroke)
		if err != nil {
			return Time{}, err
		}
		if at > slowest {
			slowest, out.Slowest, out.Load = at, s, false
		}
		if s.Kind == Print {
			prints++
		}
		sum += at
	}
	switch p.Kind {
	case "automatic":
		out.PieceS = float64(p.Turns) * (slowest + p.IndexS)
	case "manual":
		out.PieceS = p.LoadS + sum + float64(len(stations))*p.IndexS
	case "flatbed":
		out.PieceS = sum + float64(prints)*p.LoadS
	default:
		return Time{}, fmt.Errorf("press: the kind %q is not known; manual, automatic and flatbed are accepted", p.Kind)
	}
	return out, nil
}

// stationS is how long a piece stands at a station.
func (p Pace) stationS(s Station, strokeS float64) (float64, error) {
	if s.Screen < 0 || s.Screen >= len(p.StrokesOf) || s.Screen >= len(p.FlashSOf) {
		return 0, fmt.Errorf("press: there is a station of screen %d and strokes and flashes of %d screens; a figure for each is accepted", s.Screen+1, min(len(p.StrokesOf), len(p.FlashSOf)))
	}
	switch s.Kind {
	case Print:
		n := float64(p.StrokesOf[s.Screen])
		return n * strokeS, within("print strokes", n, 1, 6, "strokes")
	case Flash:
		return p.FlashSOf[s.Screen], within("flash", p.FlashSOf[s.Screen], 0, 600, "s")
	}
	return p.CoolS, nil
}

// PiecesPerHour is how many pieces come off a press in an hour that runs without a stop.
//
// Range: 0.01 to 36 000 s a piece; an error outside. Kind: derived.
func PiecesPerHour(pieceS float64) (float64, error) {
	if err := within("time of a piece", pieceS, 0.01, 36000, "s"); err != nil {
		return 0, err
	}
	return 3600 / pieceS, nil
}

// RunS is how long a run takes in seconds, setup left out: the time of a piece for each.
//
// Range: 0.01 to 36 000 s a piece, 1 to 10 000 000 pieces; an error outside. Kind: derived.
func RunS(pieceS float64, pieces int) (float64, error) {
	if err := within("time of a piece", pieceS, 0.01, 36000, "s"); err != nil {
		return 0, err
	}
	if err := within("pieces", float64(pieces), 1, 1e7, "pieces"); err != nil {
		return 0, err
	}
	return pieceS * float64(pieces), nil
}
