package choose

import (
	"cmp"
	"math"
	"strings"

	"bladecard/calc/halftone"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/mesh"
	"bladecard/calc/plan"
)

// When a moire beat is seen as bands (common practice): long against the dots, and of a low
// order of the halftone.
const (
	bandCells      = 6.0 // beats shorter than so many halftone cells are not seen
	bandOrder      = 4   // sum of the halftone's orders above which a beat is too weak
	worstAngleNear = 3.0 // deg round 0, 45 and 90 in which the mesh and the dots line up
)

// dots judges the halftone or bitmap of a screen, where it has one, against its mesh.
func (m maker) dots(sc *plan.Screen, g given) (ws []plan.Warning) {
	switch s := m.screen; {
	case s.Halftone != nil:
		sc.Halftone, ws = halftoneDots(*s.Halftone, useRules[use(s)].smallest, g)
	case s.BitmapDPI > 0:
		sc.Halftone, ws = bitmapDots(s.BitmapDPI, g)
	}
	return ws
}

func halftoneDots(h job.Halftone, usual float64, g given) (*plan.Halftone, []plan.Warning) {
	n, lines := g.cloth.CountPerInch, h.LinesPerInch
	out := &plan.Halftone{
		LinesPerInch: lines, Smallest: cmp.Or(h.Smallest, usual),
		MeshRatio: sure.Of(halftone.MeshRatio(n, lines)), OpeningsPerCell: sure.Of(halftone.OpeningsPerCell(n, lines)),
	}
	out.RatioHolds = out.MeshRatio >= halftone.MinRatio
	g.judgeDot(out, sure.Of(halftone.DotDiameterUM(lines, out.Smallest)))
	out.HoldsFrom = math.Pi * square(out.DotHoldsUM*lines/(2*mesh.UMPerInch))
	if out.HoldsFrom > math.Pi/4 {
		out.HoldsFrom = 1
	}
	var ws []plan.Warning
	if !out.RatioHolds {
		ws = append(ws, warn("halftone-coarse-mesh", vals{
			"ratio": out.MeshRatio, "least": halftone.MinRatio, "mesh": math.Ceil(sure.Of(halftone.MeshForRatio(lines, halftone.MinRatio))),
			"most_lines_per_inch": math.Floor(sure.Of(halftone.LinesForRatio(n, halftone.MinRatio))),
		}))
	}
	if !out.DotHolds {
		ws = append(ws, g.dotSmall(*out))
	}
	return out, append(ws, moire(out, h, g)...)
}

// dotSmall is the warning of a dot that the mesh cannot hold, with what would hold it: larger dots, or fewer
// lines.
func (g given) dotSmall(h plan.Halftone) plan.Warning {
	w := warn("dot-small", vals{"dot_um": h.DotUM, "holds_um": h.DotHoldsUM, "from_percent": math.Ceil(100 * h.HoldsFrom)})
	if lines := math.Floor(h.LinesPerInch * h.DotUM / h.DotHoldsUM); lines >= coarsestLines {
		w.Code, w.Values["most_lines_per_inch"] = "dot-small-lines", lines
	}
	if h.HoldsFrom >= 1 { // larger dots are no way out
		w.Code = strings.Replace(w.Code, "dot-small", "dot-none", 1)
	}
	return w
}

// judgeDot compares the smallest dot with what the cloth holds.
func (g given) judgeDot(out *plan.Halftone, dotUM float64) {
	out.DotUM, out.DotHoldsUM = dotUM, sure.Of(halftone.SmallestDotUM(g.cloth.ThreadUM, g.cloth.OpeningUM))
	out.DotHolds = dotUM >= out.DotHoldsUM
	out.BlockedShare = sure.Of(halftone.BlockedShare(dotUM, g.cloth.ThreadUM, g.cloth.PitchUM))
}

// moire computes the beat of the halftone's angle on the mesh and, where it would show, the
// usual angle that beats least.
func moire(out *plan.Halftone, h job.Halftone, g given) []plan.Warning {
	if h.AngleDeg == nil || g.cloth.CountPerInch < 0.75*h.LinesPerInch {
		return nil
	}
	beatAt := func(deg float64) (beat halftone.Beat, shows bool) {
		beat = sure.Of(halftone.MoireBeat(g.cloth.CountPerInch, h.LinesPerInch, deg))
		order := abs(beat.HalftoneOrder[0]) + abs(beat.HalftoneOrder[1])
		return beat, beat.PeriodMM*h.LinesPerInch/25.4 > bandCells && order <= bandOrder
	}
	out.AngleDeg, out.HasAngle = *h.AngleDeg, true
	beat, shows := beatAt(*h.AngleDeg)
	if out.Locked = math.IsInf(beat.PeriodMM, 1); !out.Locked {
		out.BeatMM = beat.PeriodMM
	}
	linedUp := math.Abs(math.Remainder(*h.AngleDeg, 45)) < worstAngleNear
	if out.MoireRisk = shows || out.Locked || linedUp; !out.MoireRisk {
		return nil
	}
	best, least := 0.0, math.Inf(1)
	for _, deg := range halftone.UsualAnglesDeg() {
		if o, shows := beatAt(deg); !shows && o.PeriodMM < least {
			best, least = deg, o.PeriodMM
		}
	}
	w := warn("moire-mesh", vals{"angle_deg": *h.AngleDeg, "beat_mm": out.BeatMM})
	if !math.IsInf(least, 1) && best != *h.AngleDeg {
		w.Code, w.Values["better_deg"] = "moire", best
	}
	return []plan.Warning{w}
}

func abs(i int) int { return max(i, -i) }

func bitmapDots(dpi float64, g given) (*plan.Halftone, []plan.Warning) {
	out := &plan.Halftone{BitmapDPI: dpi}
	g.judgeDot(out, sure.Of(halftone.BitmapDotUM(dpi)))
	if out.DotHolds {
		return out, nil
	}
	return out, []plan.Warning{warn("bitmap-fine", vals{"dot_um": out.DotUM, "holds_um": out.DotHoldsUM, "dpi": math.Floor(mesh.UMPerInch / out.DotHoldsUM)})}
}
