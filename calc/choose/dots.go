package choose

import (
	"math"

	"bladecard/calc/halftone"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// When a moire beat is seen as bands (common practice): long against the dots, and of a low
// order of the halftone.
const (
	bandCells      = 6.0 // beats shorter than so many halftone cells are not seen
	bandOrder      = 4   // sum of the halftone's orders above which a beat is too weak
	worstAngleNear = 3.0 // deg round 0, 45 and 90 in which the mesh and the dots line up
)

// thickStencilUM is the stencil from which fine lines print thinner again, and fineLineMM the
// width below which they do (published: a thick-film maker's note [23], hump at 0.25 to 0.46 mm).
const (
	thickStencilUM = 60.0
	fineLineMM     = 0.25
)

// dots judges the halftone or bitmap of a screen against its mesh; nil where it has neither.
func dots(s job.Screen, b bench) (*plan.Halftone, []plan.Warning, error) {
	switch {
	case s.Halftone != nil:
		return halftoneDots(*s.Halftone, useRules[use(s)].smallest, b)
	case s.BitmapDPI > 0:
		return bitmapDots(s.BitmapDPI, b)
	}
	return nil, nil, nil
}

func halftoneDots(h job.Halftone, usual float64, b bench) (*plan.Halftone, []plan.Warning, error) {
	out := &plan.Halftone{LinesPerInch: h.LinesPerInch, Smallest: h.Smallest}
	if out.Smallest == 0 {
		out.Smallest = usual
	}
	var err error
	n := b.cloth.CountPerInch
	if out.MeshRatio, err = halftone.MeshRatio(n, h.LinesPerInch); err != nil {
		return nil, nil, err
	}
	out.RatioHolds = out.MeshRatio >= halftone.MinRatio
	if out.OpeningsPerCell, err = halftone.OpeningsPerCell(n, h.LinesPerInch); err != nil {
		return nil, nil, err
	}
	if out.DotUM, err = halftone.DotDiameterUM(h.LinesPerInch, out.Smallest); err != nil {
		return nil, nil, err
	}
	if err := judgeDot(out, b); err != nil {
		return nil, nil, err
	}
	cell := 25400 / h.LinesPerInch
	out.HoldsFrom = math.Pi * square(out.DotHoldsUM/(2*cell))
	if out.HoldsFrom > math.Pi/4 {
		out.HoldsFrom = 1
	}
	var ws []plan.Warning
	if !out.RatioHolds {
		meshNeeded, err := halftone.MeshForRatio(h.LinesPerInch, halftone.MinRatio)
		if err != nil {
			return nil, nil, err
		}
		lines, err := halftone.LinesForRatio(n, halftone.MinRatio)
		if err != nil {
			return nil, nil, err
		}
		ws = append(ws, warn("halftone-coarse-mesh", vals{"ratio": out.MeshRatio, "least": halftone.MinRatio, "mesh": math.Ceil(meshNeeded), "most_lines_per_inch": math.Floor(lines)}))
	}
	if !out.DotHolds {
		ws = append(ws, b.dotSmall(*out))
	}
	more, err := moire(out, h, b)
	return out, append(ws, more...), err
}

// dotSmall is the warning of a dot that the mesh cannot hold, with what would hold it: larger dots, or fewer
// lines.
func (b bench) dotSmall(h plan.Halftone) plan.Warning {
	w := warn("dot-small", vals{"dot_um": h.DotUM, "holds_um": h.DotHoldsUM, "from_percent": math.Ceil(100 * h.HoldsFrom)})
	if lines := math.Floor(h.LinesPerInch * h.DotUM / h.DotHoldsUM); lines >= coarsestLines {
		w.Code, w.Values["most_lines_per_inch"] = "dot-small-lines", lines
	}
	return w
}

// judgeDot compares the smallest dot with what the cloth holds.
func judgeDot(out *plan.Halftone, b bench) error {
	var err error
	if out.DotHoldsUM, err = halftone.SmallestDotUM(b.cloth.ThreadUM, b.cloth.OpeningUM); err != nil {
		return err
	}
	out.DotHolds = out.DotUM >= out.DotHoldsUM
	out.BlockedShare, err = halftone.BlockedShare(out.DotUM, b.cloth.ThreadUM, b.cloth.PitchUM)
	return err
}

// moire computes the beat of the halftone's angle on the mesh and, where it would show, the
// usual angle that beats least.
func moire(out *plan.Halftone, h job.Halftone, b bench) ([]plan.Warning, error) {
	if h.AngleDeg == nil || b.cloth.CountPerInch < 0.75*h.LinesPerInch {
		return nil, nil
	}
	out.AngleDeg, out.HasAngle = *h.AngleDeg, true
	beat, err := halftone.MoireBeat(b.cloth.CountPerInch, h.LinesPerInch, *h.AngleDeg)
	if err != nil {
		return nil, err
	}
	out.Locked = math.IsInf(beat.PeriodMM, 1)
	if !out.Locked {
		out.BeatMM = beat.PeriodMM
	}
	away := math.Abs(math.Remainder(*h.AngleDeg, 45))
	shows := out.Locked || seen(beat, h.LinesPerInch)
	out.MoireRisk = shows || away < worstAngleNear
	if !out.MoireRisk {
		return nil, nil
	}
	best, least := 0.0, math.Inf(1)
	for _, a := range halftone.UsualAnglesDeg() {
		o, err := halftone.MoireBeat(b.cloth.CountPerInch, h.LinesPerInch, a)
		if err != nil {
			return nil, err
		}
		if !seen(o, h.LinesPerInch) && o.PeriodMM < least {
			best, least = a, o.PeriodMM
		}
	}
	if math.IsInf(least, 1) || best == *h.AngleDeg {
		return []plan.Warning{warn("moire-mesh", vals{"angle_deg": *h.AngleDeg, "beat_mm": out.BeatMM})}, nil
	}
	return []plan.Warning{warn("moire", vals{"angle_deg": *h.AngleDeg, "beat_mm": out.BeatMM, "better_deg": best})}, nil
}

// seen tells whether a beat shows as bands.
func seen(b halftone.Beat, linesPerInch float64) bool {
	order := abs(b.HalftoneOrder[0]) + abs(b.HalftoneOrder[1])
	return b.PeriodMM*linesPerInch/25.4 > bandCells && order <= bandOrder
}

func abs(i int) int {
	if i < 0 {
		return -i
	}
	return i
}

func bitmapDots(dpi float64, b bench) (*plan.Halftone, []plan.Warning, error) {
	out := &plan.Halftone{BitmapDPI: dpi}
	var err error
	if out.DotUM, err = halftone.BitmapDotUM(dpi); err != nil {
		return nil, nil, err
	}
	if err := judgeDot(out, b); err != nil {
		return nil, nil, err
	}
	if out.DotHolds {
		return out, nil, nil
	}
	return out, []plan.Warning{warn("bitmap-fine", vals{"dot_um": out.DotUM, "holds_um": out.DotHoldsUM, "dpi": math.Floor(25400 / out.DotHoldsUM)})}, nil
}
