package seen

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"bladecard/calc/cure"
	"bladecard/calc/ink"
	"bladecard/calc/plan"
	"bladecard/calc/tension"
)

// facts are what is known of a screen: figures by their name, whose end is the unit, and what holds of it.
type facts struct {
	figures map[string]float64
	holds   map[string]bool
}

// gapStepMM is a step of off-contact at the press (common practice: a thirty-second of an inch), and
// combUM what a film comb tells (common practice).
const (
	gapStepMM = 0.8
	combUM    = 5.0
)

// touchHeavyShare is the share of the load from which bringing the screen down to the print counts (judgement).
const touchHeavyShare = 0.25

// darkInk is the lightness of an ink below which the cloth's dye does not show in it (common practice).
const darkInk = 0.25

// dyedFibres are those whose dye moves with the heat.
var dyedFibres = []string{"polyester", "blend", "tri-blend"}

// asked is a screen of a plan with what was measured of it.
type asked struct {
	plan     *plan.Plan
	location plan.Location
	screen   plan.Screen
	measured *Measurement
}

// filmUM is the cured film: as measured, else as expected.
func (a asked) filmUM() float64 {
	if a.measured != nil {
		return a.measured.MeasuredUM
	}
	return a.screen.CuredUM.Value
}

// facts gathers all that the lines of the table may ask for.
func (a asked) facts() (facts, error) {
	s := a.screen
	f := facts{figures: map[string]float64{}, holds: map[string]bool{}}
	f.set("wet_low_um", s.WetUM.Low, "wet_high_um", s.WetUM.High, "expected_um", s.CuredUM.Value, "film_um", a.filmUM(),
		"opening_um", s.Mesh.OpeningUM, "thread_um", s.Mesh.ThreadUM, "pitch_um", s.Mesh.OpeningUM+s.Mesh.ThreadUM, "fabric_um", s.Mesh.FabricUM,
		"eom_um", s.Stencil.EOMUM, "finest_mm", s.FinestMM, "edge_deg", s.EdgeAngleDeg, "load_ncm", s.LoadNPerCM,
		"angle_low_deg", s.AngleDeg.Low, "angle_high_deg", s.AngleDeg.High, "comb_um", combUM)
	f.setKnown("limit_deg", s.EdgeLimitDeg)
	if s.HidesUM != nil {
		f.setPositive("hides_um", *s.HidesUM) // 0: nothing to hide
	}
	f.setPositive("width_mm", a.location.WidthMM, "height_print_mm", a.location.HeightMM, "water_g", s.WaterGM2)
	if s.WeighG != nil {
		f.set("weigh_low_g", s.WeighG.Low, "weigh_high_g", s.WeighG.High)
	}
	if s.Base != nil {
		f.set("base_um", s.Base.CuredUM)
	}
	for name, holds := range map[string]bool{
		"clears": s.Clears, "blunt": s.Blade.Edge != "new", "twice": s.Hits > 1, "sheet": a.plan.Substrate.Kind != "garment",
		"garment": a.plan.Substrate.Kind == "garment", "manual": a.plan.Press.Kind == "manual", "water": s.WaterGM2 > 0,
		"flashed": s.Flash.Needed, "gels": s.Flash.Does == "gel", "tacks": s.Flash.Does == "tack", "heats": s.Flash.Does != "lamp" && s.Flash.Does != "",
		"heat": s.Cure.By == "heat", "light": s.Cure.By == "light", "air": s.Cure.By == "air",
		"cotton": a.plan.Substrate.Fibre == "cotton", "nylon": a.plan.Substrate.Fibre == "nylon", "light-cloth": a.plan.Substrate.Shade == "light",
		"rises": s.HeightMM != nil, "dots": s.Halftone != nil, "blocker": s.Use == "blocker", "measured": a.measured != nil,
	} {
		f.holds[name] = holds
	}
	f.dark(s.Swatch)
	f.holds["dyed"] = slices.Contains(dyedFibres, a.plan.Substrate.Fibre) && !f.holds["light-cloth"] && (!f.holds["dark-ink"] || f.holds["blocker"])
	if m := a.measured; m != nil {
		f.holds["film-high"], f.holds["film-low"] = m.MeasuredUM > s.CuredUM.High, m.MeasuredUM < s.CuredUM.Low
		f.holds["film-over"], f.holds["film-short"] = m.OffUM > 0, m.OffUM < 0
	}
	f.dots(s.Halftone, a.filmUM())
	a.neighbors(f)
	return f, errors.Join(a.gap(f), a.flash(f), a.cure(f))
}

func (f facts) set(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		f.figures[pairs[i].(string)] = pairs[i+1].(float64)
	}
}

func (f facts) setKnown(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		if x := pairs[i+1].(*float64); x != nil {
			f.figures[pairs[i].(string)] = *x
		}
	}
}

func (f facts) setPositive(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		if x := pairs[i+1].(float64); x > 0 {
			f.figures[pairs[i].(string)] = x
		}
	}
}

// dark judges an ink by its swatch.
func (f facts) dark(swatch string) {
	var r, g, b uint8
	if n, _ := fmt.Sscanf(swatch, "#%02x%02x%02x", &r, &g, &b); n == 3 {
		f.holds["dark-ink"] = ink.Lightness(r, g, b) < darkInk
	}
}

// dots are the figures of a halftone or a bitmap.
func (f facts) dots(h *plan.Halftone, filmUM float64) {
	if h == nil {
		return
	}
	f.set("dot_um", h.DotUM, "holds_um", h.DotHoldsUM, "film_of_dot_percent", 100*filmUM/h.DotUM)
	f.setPositive("from_percent", math.Ceil(100*h.HoldsFrom), "beat_mm", h.BeatMM)
	f.holds["dot-holds"], f.holds["bitmap"] = h.DotHolds, h.BitmapDPI > 0
}

// neighbors looks at what prints before and after the screen in its location.
func (a asked) neighbors(f facts) {
	for _, o := range a.location.Screens {
		if o.Number >= a.screen.Number {
			break
		}
		f.holds["based"] = f.holds["based"] || o.Use == "underbase"
		if o.Use == "blocker" {
			f.holds["blocked"] = true
			f.set("blocker_um", o.CuredUM.Value)
		}
	}
	passed := false
	for _, st := range a.location.Stations {
		switch {
		case st.Kind != "print":
		case st.Screen == a.screen.Number:
			passed, f.holds["wet-on-wet"] = true, st.Wet
		case passed && !f.holds["next"]:
			f.holds["next"], f.holds["next-wet"] = true, st.Wet
			f.set("next", float64(st.Screen))
		}
	}
}

// gap is the off-contact with its peel and stretch, as it is and a step more.
func (a asked) gap(f facts) error {
	o := a.screen.OffContact
	f.set("gap_low_mm", o.Low, "gap_high_mm", o.High, "gap_up_mm", o.High+gapStepMM)
	f.setKnown("stretch_mm", o.StretchMM, "touch_ncm", o.TouchNCM)
	f.setPositive("tension_ncm", o.Tension)
	f.holds["touch-heavy"] = o.TouchNCM != nil && *o.TouchNCM >= touchHeavyShare*a.screen.LoadNPerCM
	f.holds["has-gap-range"] = o.High > o.Low
	if o.FrameMM == 0 {
		return nil
	}
	for name, mm := range map[string]float64{"peel_low_deg": o.Low, "peel_high_deg": o.High, "peel_up_deg": o.High + gapStepMM} {
		deg, err := tension.PeelAngleDeg(mm, o.FrameMM/2)
		if err != nil {
			return err
		}
		f.set(name, deg)
	}
	if o.StretchMM == nil {
		return nil
	}
	mm, err := tension.StretchMM(o.Low, o.FrameMM, (o.FrameMM-a.location.HeightMM)/2)
	f.set("stretch_low_mm", mm)
	return err
}

// flash is the flash as planned, and for the film that was measured.
func (a asked) flash(f facts) error {
	p := a.screen.Flash
	if p.Seconds != nil {
		f.set("flash_low_s", p.Seconds.Low, "flash_high_s", p.Seconds.High)
	}
	f.setKnown("flash_s", p.StartS)
	if p.ColdSeconds != nil {
		f.set("cold_high_s", p.ColdSeconds.High)
	}
	if p.TemperatureC != nil {
		f.set("gel_low_c", p.TemperatureC.Low, "gel_high_c", p.TemperatureC.High)
	}
	if a.measured == nil || a.measured.InBand {
		return nil
	}
	s, known, err := a.flashS(a.filmUM())
	if known {
		f.set("flash_now_s", s)
	}
	return err
}

// flashS is where to start the screen's flash for another cured film, on warm platens. It is not known where
// the screen has no timed flash, or the unit never sets that film.
func (a asked) flashS(curedUM float64) (s float64, known bool, err error) {
	p := a.screen.Flash
	if p.StartS == nil || p.TemperatureC == nil {
		return 0, false, nil
	}
	times := curedUM / a.screen.CuredUM.Value / float64(max(1, a.screen.Hits))
	f := cure.Flash{
		FilmUM: a.screen.WetUM.Value * times, InkWaterGM2: a.screen.WaterGM2 * times, FluxKWM2: p.FluxKWM2,
		GelC: (p.TemperatureC.Low + p.TemperatureC.High) / 2, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC,
	}
	if f.ClothMoisture, err = a.moisture(); err != nil {
		return 0, false, err
	}
	s, err = cure.FlashSeconds(f)
	if never := (cure.ErrNeverGels{}); errors.As(err, &never) {
		return 0, false, nil
	}
	return math.Max(cure.LeastS, s), err == nil, err
}

// moisture is that of the cloth; of one that is not stated, cotton's.
func (a asked) moisture() (float64, error) {
	fibre := a.plan.Substrate.Fibre
	if fibre == "" {
		fibre = "cotton"
	}
	return cure.Moisture(fibre)
}

// cure is the cure as planned, for the film that was measured, and for twice the film.
func (a asked) cure(f facts) error {
	c := a.screen.Cure
	if c.TemperatureC == nil {
		return nil
	}
	f.set("cure_low_c", c.TemperatureC.Low, "cure_high_c", c.TemperatureC.High)
	f.setPositive("top_c", c.TopC)
	if c.Passes > 1 {
		f.set("passes", float64(c.Passes))
	}
	if fibre := a.plan.Substrate.Fibre; fibre != "" {
		limit, err := cure.FibreLimit(fibre)
		if err != nil {
			return err
		}
		for name, at := range map[string]float64{"warn_c": limit.WarnC, "stop_c": limit.StopC} {
			if !math.IsInf(at, 1) {
				f.set(name, at)
			}
		}
	}
	f.set("twice_um", 2*a.screen.CuredUM.Value)
	of := map[string]float64{"": 1, "_twice": 2}
	if a.measured != nil && !a.measured.InBand {
		of["_now"] = a.filmUM() / a.screen.CuredUM.Value
	}
	if a.screen.HeightMM != nil {
		f.set("height_mm", *a.screen.HeightMM, "height_now_mm", *a.screen.HeightMM*a.filmUM()/a.screen.CuredUM.Value)
	}
	for name, times := range of {
		longer, err := a.longer(times)
		if err != nil {
			return err
		}
		if c.DwellS != nil {
			f.set("dwell"+name+"_low_s", c.DwellS.Low*longer, "dwell"+name+"_high_s", c.DwellS.High*longer)
		}
		if c.BeltMPerMin != nil {
			f.set("belt"+name+"_low_mpm", c.BeltMPerMin.Low/longer, "belt"+name+"_high_mpm", c.BeltMPerMin.High/longer)
		}
	}
	return nil
}

// longer is how much longer the dryer takes for so many times the film.
func (a asked) longer(times float64) (float64, error) {
	moist := 0.0
	if a.plan.Substrate.Kind == "garment" {
		var err error
		if moist, err = a.moisture(); err != nil {
			return 0, err
		}
	}
	heat := func(times float64) (float64, error) {
		return cure.HeatKJPerM2(a.screen.WetUM.Value*times, a.screen.WaterGM2*times, moist, a.screen.Cure.TemperatureC.Low)
	}
	usual, err := heat(1)
	if err != nil {
		return 0, err
	}
	now, err := heat(times)
	return now / usual, err
}

// line is a sentence of the table with its figures, and whether all that it needs is so.
func (f facts) line(l line) (Line, bool) {
	out := Line{Code: l.code}
	for _, need := range strings.Fields(l.needs) {
		x, figure := f.figures[strings.TrimLeft(need, "?!")]
		holds := figure || f.holds[strings.TrimLeft(need, "?!")]
		switch {
		case need[0] == '!' && holds, need[0] != '!' && !holds:
			return Line{}, false
		case figure && need[0] != '?' && need[0] != '!':
			if out.Values == nil {
				out.Values = map[string]float64{}
			}
			out.Values[need] = x
		}
	}
	return out, true
}

// lines are those that hold.
func (f facts) lines(all []line) []Line {
	out := []Line{}
	for _, l := range all {
		if made, holds := f.line(l); holds {
			out = append(out, made)
		}
	}
	return out
}
