package choose

import (
	"math"

	"bladecard/calc/ink"
)

// The figures of this file are customs of the trade (common practice, no published source):
// the workhorse, what a departure from it costs, and how far a bent edge may lean for the
// feature that must hold. They are data: change one here and every choice follows. They were
// calibrated once, on the trade's picks in picks_test.go, and are not fitted to any one job.

// reference is the setup that films are compared with: one layer of 70 Shore A, 9.5 mm thick,
// 25 mm free, 15 deg, 5 N/cm, new edge (common practice: the blade that a shop starts with).
const (
	workhorseShoreA       = 70.0
	workhorseThicknessMM  = 9.5
	workhorseFreeHeightMM = 25.0
	workhorseAngleDeg     = 15.0
	workhorseStrokes      = 1
	workingLoadNPerCM     = 5.0
	strokeSpeedMPerS      = 0.3
)

// What a departure from the workhorse costs (common practice, calibrated on the picks).
const (
	costBladeStep   = 1.0  // a step to the next blade in the rack, by stiffness
	costAngle5Deg   = 0.5  // 5 deg more lean
	costAngleBelow5 = 1.5  // 5 deg below the workhorse's angle
	costStroke      = 1.5  // another print stroke
	costHit         = 2.5  // another hit: a flash, a cool-down and a pass or a screen more
	costHitFlashed  = 1.75 // the same where the print is flashed anyway
	costMeshStep    = 1.0  // a step to the next mesh on the racks, where the job leaves the mesh open
)

// The angles that are tried, and how finely (common practice).
const (
	angleStepDeg   = 2.5
	angleLeastDeg  = 5.0
	angleMostDeg   = 45.0
	strokesMost    = 3
	hitsMost       = 2    // of flat work
	hitsMostThick  = 6    // of raised and clear work
	strokesAgain   = 2    // wet strokes of a hit where there are several
	handStepDeg    = 5.0  // what a hand can keep
	rangeReachDeg  = 10.0 // how far from the set angle a printed range may reach
	narrowRangeDeg = 5.0  // a whole range below this needs a press, not a hand
)

// The errors that a setup must bear: angle 5 deg, hardness 5 Shore A (the trade's tolerance of
// blade hardness: Elliot 2007 [5]), load a quarter, free height 2 mm, speed half as much again or less.
const (
	angleErrorDeg       = 5.0
	hardnessErrorShoreA = 5.0
	loadErrorShare      = 0.25
	freeHeightErrorMM   = 2.0
	speedErrorTimes     = 1.5
	movesMost           = 0.10 // film movement that is borne, root sum of squares of angle and hardness
)

// slips are the errors that a setup must stand one at a time and still clear the screen (common
// practice), by the word that a warning says them with.
var slips = []struct {
	word string
	off  slip
}{
	{"load-more", slip{loadShare: loadErrorShare}}, {"load-less", slip{loadShare: -loadErrorShare}},
	{"angle-more", slip{angleDeg: angleErrorDeg}}, {"angle-less", slip{angleDeg: -angleErrorDeg}},
	{"softer", slip{hardnessShoreA: -hardnessErrorShoreA}}, {"harder", slip{hardnessShoreA: hardnessErrorShoreA}},
	{"free-more", slip{freeHeightMM: freeHeightErrorMM}}, {"free-less", slip{freeHeightMM: -freeHeightErrorMM}},
	{"faster", slip{speedShare: speedErrorTimes - 1}}, {"slower", slip{speedShare: 1/speedErrorTimes - 1}},
}

// raisedEdgeDeg is the most that a bent edge may lean for raised work, and thickEdgeDeg for clear and
// gel work on a thick stencil, whose sharp wall is the aim beside the film (common practice).
const (
	raisedEdgeDeg = 65.0
	thickEdgeDeg  = 45.0
)

// What one unit of a miss is, so that a film miss and a cut miss can be added (common practice).
const (
	missFilmUnit = 0.10 // 10 % of film outside the target
	missCutUnit  = 2.0  // 2 deg of bent edge above the limit
	missMoveUnit = 0.05 // 5 % of movement above what is borne
	missFrail    = 10.0 // a slip that the setup does not stand
)

// What a correction weighs, in steps of a blade swap (common practice): angle and strokes are
// changed at the press, an edge is cut in minutes, an emulsion or a mesh takes a new screen.
const (
	costSharpen     = 1.0
	costNewStencil  = 4.0
	costNewMesh     = 5.0
	costLosesDetail = 4.0
	costLeavesInk   = 8.0
	costLongerFlash = 1.0
)

// flashFeelsShare is the growth of a flashed film from which its flash must be set anew
// (common practice: its time is affine in the thickness).
const flashFeelsShare = 0.10

// filmStepUM is the step of a stencil of capillary film, as coatUM is of emulsion (from memory:
// what the thicknesses on the market differ by).
const filmStepUM = 50.0

// filmSeenShare is the difference of film below which two blades are alike: the trade's
// tolerance of hardness moves the film by more (common practice, from Elliot's 5 Shore A).
const filmSeenShare = 0.02

// What a shop's instruments tell apart (from memory): the steps of a film comb, um of wet film, and of a scale on
// which a garment takes up and loses moisture, g.
const (
	combStepUM = 5.0
	scaleStepG = 0.1
)

// cutLimit is the bent edge angle up to which a feature of the given size still prints whole.
type cutLimit struct{ finestMM, edgeDeg float64 }

// cutLimits is common practice, finest last; between two rows the limit runs straight over the
// logarithm of the size. 0.116 mm is the 5 % dot of 55 lines, 0.098 mm that of 65 lines.
var cutLimits = []cutLimit{
	{2, 45}, {0.5, 35}, {0.2, 26}, {0.116, 26}, {0.098, 23}, {0.090, 22},
}

// hardStockEdgeDeg is the limit on hard smooth stock whatever the feature: thin ink on a surface
// that takes none in shows every lean of the edge (common practice).
const hardStockEdgeDeg = 23.0

// edgeLimitDeg is the most that a bent edge may lean from vertical, deg, for the smallest
// feature that must hold, mm (0.02 to 2000). Common practice.
func edgeLimitDeg(finestMM float64) float64 {
	if finestMM >= cutLimits[0].finestMM {
		return cutLimits[0].edgeDeg
	}
	for i := 1; i < len(cutLimits); i++ {
		coarse, fine := cutLimits[i-1], cutLimits[i]
		if finestMM >= fine.finestMM {
			t := math.Log(coarse.finestMM/finestMM) / math.Log(coarse.finestMM/fine.finestMM)
			return coarse.edgeDeg + t*(fine.edgeDeg-coarse.edgeDeg)
		}
	}
	return cutLimits[len(cutLimits)-1].edgeDeg
}

// useRule is what a use asks for where the job says no more (common practice).
type useRule struct {
	finestMM  float64 // smallest feature that must hold
	featureMM float64 // width of the typical feature, for the stencil's share
	smallest  float64 // smallest dot of a halftone that must hold, share
	coverMM   float64 // spread of an edge that the colors printed over it hide (the choke)
	heavy     bool    // the aim is film: the stencil's wall, not the blade's edge, makes the shape
	thick     bool    // the aim is a sharp wall: upright, and as many hits as it takes
	contrast  float64 // contrast ratio on the cloth that a white must reach; 0: none asked
	eomShare  float64 // customary emulsion over mesh, share of the fabric
}

var useRules = map[string]useRule{
	"solid":     {finestMM: 2, featureMM: 50, smallest: 0.05, contrast: ink.HidesTextile, eomShare: 0.20},
	"underbase": {finestMM: 2, featureMM: 50, smallest: 0.05, coverMM: 0.15, contrast: baseHides, eomShare: 0.20},
	"blocker":   {finestMM: 2, featureMM: 50, smallest: 0.05, coverMM: 0.15, eomShare: 0.20},
	"detail":    {finestMM: 0.3, featureMM: 1, smallest: 0.05, eomShare: 0.15},
	"halftone":  {finestMM: 0.142, featureMM: 1, smallest: 0.05, eomShare: 0.15},
	"highlight": {finestMM: 0.3, featureMM: 1, smallest: 0.05, eomShare: 0.15},
	"raised":    {finestMM: 2, featureMM: 5, smallest: 0.10, heavy: true, eomShare: 1},
	"clear":     {finestMM: 2, featureMM: 5, smallest: 0.10, thick: true, eomShare: 1},
}

// coarsestLines is where the search for a coarser line count ends (common practice).
const coarsestLines = 20.0

// baseHides is the contrast ratio that an underbase must reach alone: the colors on it hide
// the rest (common practice).
const baseHides = 0.80

// heightSpread is how far the film for a stated height may be off. Of the film that hides, hidingSlack may
// lack, which no eye tells, as its scattering is known to a factor of two at best; hidingSpread times
// as much is still wanted (common practice).
const (
	heightSpread = 0.15
	hidingSlack  = 0.10
	hidingSpread = 1.3
)

// halftoneFeatureMM is the typical feature of any screen with a halftone or bitmap.
const halftoneFeatureMM = 1.0

// Mesh count against line count where the job leaves the mesh open: 3.5 is the least that the
// trade recommends, 4.5 sits inside the usual 3.5 to 5 (common practice).
const (
	meshPerLineLeast = 3.5
	meshPerLineUsual = 4.5
)

// defaultMeshPerInch is the mesh for work that nothing is said of (common practice).
const defaultMeshPerInch = 156.0
