package choose

import (
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/tension"
)

// frame works out the off-contact and what it does to image and load, and judges the frame:
// its tension, and the free mesh beside blade and stroke.
func (m maker) frame(b bench, bladeMM float64) (plan.OffContact, []plan.Warning, error) {
	f := b.frame
	out := plan.OffContact{FrameMM: f.FrameHeightMM, Tension: f.TensionNPerCM}
	var err error
	if out.Low, out.High, err = tension.OffContactMM(m.screen.Ink.Dries, f.FrameWidthMM); err != nil {
		return out, nil, err
	}
	var ws []plan.Warning
	if f.FrameHeightMM > 0 && m.location.HeightMM > 0 && f.FrameHeightMM > m.location.HeightMM {
		margin := (f.FrameHeightMM - m.location.HeightMM) / 2
		if margin >= 4*out.High {
			mm, err := tension.StretchMM(out.High, f.FrameHeightMM, margin)
			if err != nil {
				return out, nil, err
			}
			out.StretchMM = &mm
		}
	}
	if f.FrameHeightMM > 0 && f.TensionNPerCM > 0 {
		half := f.FrameHeightMM / 2
		n, err := tension.TouchForceNPerCM(f.TensionNPerCM, out.High, half, half)
		if err != nil {
			return out, nil, err
		}
		out.TouchNCM = &n
		if n >= b.loadNCM {
			ws = append(ws, warn("touch-heavy", vals{"touch_ncm": n, "load_ncm": b.loadNCM, "gap_mm": out.High}))
		}
	}
	more, err := m.frameWarnings(f, b, bladeMM)
	return out, append(ws, more...), err
}

// frameWarnings judges the tension and the free mesh of a frame.
func (m maker) frameWarnings(f job.Mesh, b bench, bladeMM float64) ([]plan.Warning, error) {
	var ws []plan.Warning
	if f.TensionNPerCM > 0 {
		verdict, err := tension.TensionVerdict(f.TensionNPerCM, b.cloth.ThreadUM, b.demand.heavy)
		if err != nil {
			return nil, err
		}
		if verdict == tension.Restretch || verdict == tension.Low {
			ws = append(ws, warn("tension-"+verdict, vals{"tension_ncm": f.TensionNPerCM}))
		}
	}
	for _, way := range []struct {
		code   string
		inside float64
		path   float64
	}{{"frame-narrow", f.FrameWidthMM, bladeMM}, {"frame-short", f.FrameHeightMM, m.location.HeightMM}} {
		if way.inside == 0 || way.path == 0 {
			continue
		}
		if way.path >= way.inside {
			ws = append(ws, warn("frame-small", vals{"inside_mm": way.inside, "path_mm": way.path}))
			continue
		}
		fit, err := tension.BladePathFits(way.inside, way.path)
		if err != nil {
			return nil, err
		}
		if !fit.MarginHolds {
			ws = append(ws, warn(way.code, vals{"inside_mm": way.inside, "path_mm": way.path, "margin_mm": fit.MarginMM, "least_mm": tension.MarginLowMM}))
		}
	}
	return ws, nil
}
