package presslog

import (
	"fmt"
	"math"

	"bladecard/calc/ink"
	"bladecard/calc/job"
)

// Row is one print as the log states it. A number that is not stated is NaN, a day the zero Date.
type Row struct {
	Line                                int // where its first cell stands
	Date                                job.Date
	Job, Location, Screen, Color        string
	Press, Mesh, Ink, Blade, Note       string
	Cloth                               string // under the print, in the words of ink.ClothOf
	EOMUM, FeatureMM, AngleDeg, LoadNCM float64
	AirBar, FlashS                      float64
	Strokes                             int // wet print strokes of a hit
	Hits                                int // prints with a flash between: a gauge and a scale measure all, a comb the last
	WetUM, CuredUM, BeforeG, AfterG     float64
	AreaCM2, DensityKgPerL              float64

	// What the first print was signed off with.
	Wiped string  // Yes or No: the image area came clean
	CureC float64 // that the film reached in the dryer
	Wash  string  // Pass or Fail: of a wash or stretch test
	Name  string  // who looked at it
}

// Empty returns a row of a setup in which nothing was measured yet.
func Empty() Row {
	nan := math.NaN()
	return Row{AirBar: nan, FlashS: nan, CureC: nan, EOMUM: nan, FeatureMM: nan, AngleDeg: nan, LoadNCM: nan, Strokes: 1, Hits: 1,
		WetUM: nan, CuredUM: nan, BeforeG: nan, AfterG: nan, AreaCM2: nan, DensityKgPerL: nan}
}

// Measured tells whether the row holds a measurement.
func (r Row) Measured() bool {
	return !math.IsNaN(r.WetUM) || !math.IsNaN(r.CuredUM) || r.weighed()
}

// Ran tells whether anything was filled in that a run of the press leaves: a day, a measurement, or what the
// first print was signed off with.
func (r Row) Ran() bool {
	return r.Date != (job.Date{}) || r.Measured() || !math.IsNaN(r.CureC) || r.Wiped+r.Wash+r.Name != ""
}

func (r Row) weighed() bool {
	return !math.IsNaN(r.BeforeG) && !math.IsNaN(r.AfterG) && !math.IsNaN(r.AreaCM2)
}

// Film is the cured film in um that stands on the cloth by the row's measurements: gauge, comb, weight, or
// where there are several their geometric mean. A comb reads one hit, on others that are set. Comb and weight
// are wet, and shrink by the ink's volume
// solids; the weight needs a density in kg/L, the row's own or the ink's, and is less what the cloth takes
// in. Doubt is one standard deviation of the logarithm of the film: what is not known of that, the same for
// all prints on one cloth. NaN where nothing was measured; the fault is that of a weight or a cloth.
func (r Row) Film(solids, densityKgPerL float64) (um, doubt float64, fault Fault) {
	sum, n := 0.0, 0.0
	add := func(um float64) {
		if um > 0 {
			sum += math.Log(um)
			n++
		}
	}
	add(r.CuredUM)
	add(r.WetUM * float64(max(1, r.Hits)) * solids)
	cloth, err := ink.ClothOf(r.Cloth)
	if err != nil {
		return 0, 0, Fault{"cloth", fmt.Sprintf("%q is no cloth", r.Cloth), "fiber and weave, such as cotton knit, nylon woven or fleece; none on a base or a sheet"}
	}
	if r.weighed() {
		if !math.IsNaN(r.DensityKgPerL) {
			densityKgPerL = r.DensityKgPerL
		}
		laid, err := ink.GainedUM(r.AfterG-r.BeforeG, r.AreaCM2, densityKgPerL)
		if err != nil {
			return 0, 0, Fault{"after", err.Error(), "the weights of one print"}
		}
		stands, err := cloth.StandsUM(laid)
		if err != nil {
			return 0, 0, Fault{"after", fmt.Sprintf("weights and area say %.3g um of wet ink, no more than the %.3g um that the cloth takes in", laid, cloth.MiddleUM()), "a print with a film on it; the cloth under it, or none, in column cloth"}
		}
		add(stands * solids)
		doubt = cloth.HalfUM() / ninety / stands / n
	}
	if n == 0 {
		return math.NaN(), 0, Fault{}
	}
	um = math.Exp(sum / n)
	if !(um >= leastCuredUM && um <= mostFilmUM) {
		return um, doubt, Fault{"after", fmt.Sprintf("weights and area say a film of %.3g um", um), fmt.Sprintf("%g to %g um", leastCuredUM, mostFilmUM)}
	}
	return um, doubt, Fault{}
}

// ninety is how many standard deviations lie to either side of nine in ten of a normal spread.
const ninety = 1.6449
