package tension

import "fmt"

// The off-contacts that trade articles give, in mm; they differ from one to another.
const (
	offLeastMM = 1.6 // 1/16 in, water-based, and the lower end of screen printing at large (published [28])
	offUsualMM = 3.2 // 1/8 in, plastisol, and its upper end (published [28])
	offLargeMM = 4.8 // 3/16 in, on a large frame (published [29])
)

// LargeFrameMM is the inside width from which a frame counts as large here: 640 mm, wider than
// a 23 x 31 in frame (from memory). One article prints 3/16 in for a 23 x 31 in frame too, with a
// hinged blade at 5 deg and 27 N/cm (Printwear, March 2015, p. 86 [29]); the others say large without
// a figure. The smaller gap is kept for it: the least that lets the cloth snap off is the right one.
const LargeFrameMM = 640.0

// OffContactMM is the customary range of off-contact in mm for an ink by how it dries, and for
// the inside width of the frame (0: not known, taken as not large).
//
//	water   1.6          published
//	fuse    1.6 to 3.2   plastisol: 3.2 is published, the lower end is that of printing at large
//	solvent 1.6 to 3.2   published for printing at large (PrintWiki, Off-Contact Printing [28])
//	uv      1.6 to 3.2   the same
//	react   1.6 to 3.2   silicone, taken as plastisol (from memory)
//
// On a large frame (LargeFrameMM) the upper end is 4.8 (published). The least that lets the
// cloth snap off behind the blade is the right one: start at the low end.
//
// Range: width 0 or 50 to 5000 mm, the five words above; an error outside. Kind: published in
// trade articles, which differ; common practice as a range, from memory where it says so.
func OffContactMM(dries string, frameWidthMM float64) (low, high float64, err error) {
	if frameWidthMM != 0 {
		if err := within("inside width of the frame", frameWidthMM, 50, 5000, "mm"); err != nil {
			return 0, 0, err
		}
	}
	low, high = offLeastMM, offUsualMM
	switch dries {
	case "fuse", "react", "solvent", "uv":
	case "water":
		high = offLeastMM
	default:
		return 0, 0, fmt.Errorf("tension: an ink that dries by %q is not known; fuse, water, solvent, uv and react are accepted", dries)
	}
	if frameWidthMM >= LargeFrameMM {
		high = offLargeMM
	}
	return low, high, nil
}

// ThinThreadUM is the thread diameter up to which a thread counts as thin here: 40 um (from
// memory; the article says thin and gives no figure).
const ThinThreadUM = 40.0

// The verdicts of TensionVerdict.
const (
	Restretch  = "restretch"  // the cloth has to be stretched again, or a new one
	Low        = "low"        // prints, but under what the work asks for
	Acceptable = "acceptable" // in use, not the best
	Ideal      = "ideal"
	High       = "high" // above what is published for this thread
)

// TensionVerdict judges a tension in N/cm for a thread in um, and for raised work:
//
//	10 and less    restretch
//	to 15          low
//	to 25          acceptable   (published: 15 to 20; between 20 and 25 nothing is said)
//	25 to 35       ideal; thin thread 25 to 30
//	above          high
//
// Raised work asks for 30 and more: under that it is low.
//
// Range: tension 0.5 to 100 N/cm, thread 5 to 10 000 um; an error outside. Source: Graphics
// Pro, January 2023, p. 45 [27], and other trade articles (published); the gaps between the
// published ranges go to the lower class, thin is ThinThreadUM (from memory).
func TensionVerdict(tensionNPerCM, threadUM float64, raised bool) (string, error) {
	if err := first(
		within("tension", tensionNPerCM, 0.5, 100, "N/cm"),
		within("thread", threadUM, 5, 10000, "um")); err != nil {
		return "", err
	}
	top := 35.0
	if threadUM <= ThinThreadUM {
		top = 30
	}
	switch t := tensionNPerCM; {
	case t <= 10:
		return Restretch, nil
	case t < 15 || raised && t < 30:
		return Low, nil
	case t < 25:
		return Acceptable, nil
	case t <= top:
		return Ideal, nil
	}
	return High, nil
}

// BladeBeyondMM is how much longer than the image a blade is on each side, in mm (common
// practice).
const BladeBeyondMM = 25.0

// BladeLengthMM is the customary blade length in mm for an image width in mm, 25 mm longer on
// each side.
//
// Range: 5 to 5000 mm; an error outside. Kind: common practice.
func BladeLengthMM(imageMM float64) (float64, error) {
	if err := within("image width", imageMM, 5, 5000, "mm"); err != nil {
		return 0, err
	}
	return imageMM + 2*BladeBeyondMM, nil
}

// The customary free mesh beside the blade in mm (common practice), and the published least
// inside of the frame over the blade path (SGIA, 2021 [31]).
const (
	MarginLowMM  = 75.0
	MarginHighMM = 100.0
	PathRatio    = 1.5
)

// Fit is how a blade stands in a frame.
type Fit struct {
	MarginMM    float64 // free mesh on each side of the blade in mid-frame
	Ratio       float64 // inside of the frame / blade
	MarginHolds bool    // MarginLowMM or more on each side
	RatioHolds  bool    // PathRatio or more
	ShortMM     float64 // what the frame lacks for both, 0 when both hold
}

// BladePathFits is how much free mesh a frame leaves beside the blade path. It holds for either
// direction: across, the length of the blade; along the stroke, the length of the stroke.
//
// Range: inside of the frame 50 to 5000 mm, blade path 5 mm to the inside of the frame; an
// error outside. Kind: margins common practice, ratio published (SGIA, 2021 [31]).
func BladePathFits(frameInsideMM, bladeMM float64) (Fit, error) {
	if err := first(
		within("inside of the frame", frameInsideMM, 50, 5000, "mm"),
		within("blade path", bladeMM, 5, frameInsideMM, "mm")); err != nil {
		return Fit{}, err
	}
	f := Fit{MarginMM: (frameInsideMM - bladeMM) / 2, Ratio: frameInsideMM / bladeMM}
	f.MarginHolds = f.MarginMM >= MarginLowMM
	f.RatioHolds = f.Ratio >= PathRatio
	if !f.MarginHolds || !f.RatioHolds {
		f.ShortMM = max(bladeMM+2*MarginLowMM, PathRatio*bladeMM) - frameInsideMM
	}
	return f, nil
}
