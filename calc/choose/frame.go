package choose

import (
	"bladecard/calc/internal/sure"
	"bladecard/calc/plan"
	"bladecard/calc/tension"
)

// frame works out the off-contact and what it does to image and load, and judges the frame:
// its tension, and the free mesh beside blade and stroke.
func (m maker) frame(sc *plan.Screen, g given) []plan.Warning {
	f := g.frame
	low, high := sure.Both(tension.OffContactMM(m.screen.Ink.Dries, f.FrameWidthMM))
	off := plan.OffContact{Low: low, High: high, FrameMM: f.FrameHeightMM, Tension: f.TensionNPerCM}
	var ws []plan.Warning
	if margin := (f.FrameHeightMM - m.location.HeightMM) / 2; m.location.HeightMM > 0 && margin > 0 && margin >= 4*high {
		mm := sure.Of(tension.StretchMM(high, f.FrameHeightMM, margin))
		off.StretchMM = &mm
	}
	if f.FrameHeightMM > 0 && f.TensionNPerCM > 0 {
		n := sure.Of(tension.TouchForceNPerCM(f.TensionNPerCM, high, f.FrameHeightMM/2, f.FrameHeightMM/2))
		if off.TouchNCM = &n; n >= g.loadNCM {
			ws = append(ws, warn("touch-heavy", vals{"touch_ncm": n, "load_ncm": g.loadNCM, "gap_mm": high}))
		}
	}
	sc.OffContact = off
	return append(ws, m.frameWarnings(g, sc.Blade.LengthMM)...)
}

// frameWarnings judges the tension and the free mesh of a frame.
func (m maker) frameWarnings(g given, bladeMM float64) []plan.Warning {
	f := g.frame
	var ws []plan.Warning
	if f.TensionNPerCM > 0 {
		verdict := sure.Of(tension.TensionVerdict(f.TensionNPerCM, g.cloth.ThreadUM, g.demand.heavy))
		if verdict == tension.Restretch || verdict == tension.Low {
			ws = append(ws, warn("tension-"+verdict, vals{"tension_ncm": f.TensionNPerCM}))
		}
	}
	for _, way := range []struct {
		code         string
		inside, path float64
	}{{"frame-narrow", f.FrameWidthMM, bladeMM}, {"frame-short", f.FrameHeightMM, m.location.HeightMM}} {
		if way.inside == 0 || way.path == 0 {
			continue
		}
		if way.path >= way.inside {
			ws = append(ws, warn("frame-small", vals{"inside_mm": way.inside, "path_mm": way.path}))
			continue
		}
		if fit := sure.Of(tension.BladePathFits(way.inside, way.path)); !fit.MarginHolds {
			ws = append(ws, warn(way.code, vals{"inside_mm": way.inside, "path_mm": way.path, "margin_mm": fit.MarginMM, "least_mm": tension.MarginLowMM}))
		}
	}
	return ws
}
