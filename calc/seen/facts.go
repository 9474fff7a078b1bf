package seen

import (
	"errors"
	"math"
	"slices"
	"strings"

	"bladecard/calc/cure"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/plan"
	"bladecard/calc/tension"
)

// facts are what is known of a screen: figures by their name, whose end is the unit, and what holds of it.
type facts struct {
	figures map[string]float64
	words   map[string]string // codes of words
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

// leastCureRangeC is the range of a cure from which its low end is another setting of a dryer (judgement).
const leastCureRangeC = 3.0

// dyedFibres are those whose dye moves with the heat.
var dyedFibres = []string{"polyester", "blend", "tri-blend"}

// asked is a screen of a plan with what was measured of it.
type asked struct {
	plan     *plan.Plan
	location plan.Location
	screen   plan.Screen
	measured *Measurement
	brief    bool // without the flash after each change of the film, which takes the most time to work out
}

// filmUM is the cured film: as measured, else as expected.
func (a asked) filmUM() float64 {
	if a.measured != nil {
		return a.measured.MeasuredUM
	}
	return a.screen.CuredUM.Value
}

// facts gathers all that the lines of the table may ask for.
func (a asked) facts() facts {
	s, cloth := a.screen, a.plan.Substrate
	f := facts{figures: map[string]float64{
		"expected_um": s.CuredUM.Value, "film_um": a.filmUM(),
		"opening_um": s.Mesh.OpeningUM, "thread_um": s.Mesh.ThreadUM, "pitch_um": s.Mesh.OpeningUM + s.Mesh.ThreadUM, "fabric_um": s.Mesh.FabricUM,
		"eom_um": s.Stencil.EOMUM, "finest_mm": s.FinestMM, "edge_deg": s.EdgeAngleDeg, "load_ncm": s.LoadNPerCM, "comb_um": combUM,
	}, words: map[string]string{}}
	if s.Pressure != nil { // what is set at the press: air, or how firm a hand presses
		f.figures["load_bar"], f.figures["load_psi"] = s.Pressure.Bar, s.Pressure.PSI
	} else {
		f.words["load_class"] = s.LoadClass
	}
	f.interval("wet", "um", &plan.Interval{Low: s.CombUM.Low, High: s.CombUM.High})
	f.interval("angle", "deg", &plan.Interval{Low: s.AngleDeg.Low, High: s.AngleDeg.High})
	f.stated(map[string]*float64{
		"limit_deg": s.EdgeLimitDeg, "hides_um": s.HidesUM, "width_mm": &a.location.WidthMM, "height_print_mm": &a.location.HeightMM, "water_g": &s.WaterGM2,
	})
	if s.WeighG != nil {
		f.interval("weigh", "g", &plan.Interval{Low: s.WeighG.Low, High: s.WeighG.High})
	}
	if s.Base != nil {
		f.figures["base_um"] = s.Base.CuredUM
	}
	r, g, b, swatch := ink.Swatch(s.Swatch)
	garment, lightCloth, darkInk := cloth.Kind == "garment", cloth.Shade == "light", swatch && ink.Lightness(r, g, b) < ink.DarkLightness
	f.holds = map[string]bool{
		"clears": s.Clears, "blunt": s.Blade.Edge != "new", "twice": s.Hits > 1, "sheet": !garment,
		"garment": garment, "manual": a.plan.Press.Kind == "manual", "water": s.WaterGM2 > 0,
		"flashed": s.Flash.Needed, "gels": s.Flash.Does == "gel", "tacks": s.Flash.Does == "tack", "heats": s.Flash.Does != "lamp" && s.Flash.Does != "",
		"heat": s.Cure.By == "heat", "light": s.Cure.By == "light", "air": s.Cure.By == "air",
		"cotton": cloth.Fibre == "cotton", "nylon": cloth.Fibre == "nylon", "light-cloth": lightCloth, "dark-ink": darkInk,
		"dyed":  slices.Contains(dyedFibres, cloth.Fibre) && !lightCloth && (!darkInk || s.Use == "blocker"),
		"rises": s.HeightMM != nil, "dots": s.Halftone != nil, "blocker": s.Use == "blocker", "measured": a.measured != nil,
	}
	if m := a.measured; m != nil {
		f.holds["gauged"] = m.Gauged
		f.holds["film-high"], f.holds["film-low"] = m.MeasuredUM > s.CuredUM.High, m.MeasuredUM < s.CuredUM.Low
		f.holds["film-over"], f.holds["film-short"] = m.OffUM > 0, m.OffUM < 0
	}
	f.dots(s.Halftone, a.filmUM())
	f.holds["none-hold"] = s.Halftone != nil && s.Halftone.HoldsFrom >= 1
	a.neighbors(f)
	a.gap(f)
	a.flash(f)
	a.cure(f)
	return f
}

// stated takes the figures that are stated: those above 0.
func (f facts) stated(figures map[string]*float64) {
	for name, x := range figures {
		if x != nil && *x > 0 {
			f.figures[name] = *x
		}
	}
}

// interval takes the ends of an interval, name_low_unit and name_high_unit, where there is one.
func (f facts) interval(name, unit string, i *plan.Interval) {
	if i != nil {
		f.figures[name+"_low_"+unit], f.figures[name+"_high_"+unit] = i.Low, i.High
	}
}

// dots are the figures of a halftone or a bitmap.
func (f facts) dots(h *plan.Halftone, filmUM float64) {
	if h == nil {
		return
	}
	f.figures["dot_um"], f.figures["holds_um"], f.figures["film_of_dot_percent"] = h.DotUM, h.DotHoldsUM, 100*filmUM/h.DotUM
	f.stated(map[string]*float64{"beat_mm": &h.BeatMM})
	if h.HoldsFrom > 0 && h.HoldsFrom < 1 { // else no dot of this line count holds, and a larger one is no way out
		f.figures["from_percent"] = math.Ceil(100 * h.HoldsFrom)
	}
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
			f.figures["blocker_um"] = o.CuredUM.Value
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
			f.figures["next"] = float64(st.Screen)
		}
	}
}

// gap is the off-contact with its peel and stretch, as it is and a step more.
func (a asked) gap(f facts) {
	o := a.screen.OffContact
	up := o.High + gapStepMM
	f.interval("gap", "mm", &plan.Interval{Low: o.Low, High: o.High})
	f.figures["gap_up_mm"] = up
	f.stated(map[string]*float64{"stretch_mm": o.StretchMM, "touch_ncm": o.TouchNCM, "tension_ncm": &o.Tension})
	f.holds["touch-heavy"] = o.TouchNCM != nil && *o.TouchNCM >= touchHeavyShare*a.screen.LoadNPerCM
	f.holds["has-gap-range"] = o.High > o.Low
	if o.FrameMM == 0 {
		return
	}
	peel := func(mm float64) float64 { return sure.Of(tension.PeelAngleDeg(mm, o.FrameMM/2)) }
	f.interval("peel", "deg", &plan.Interval{Low: peel(o.Low), High: peel(o.High)})
	f.figures["peel_up_deg"] = peel(up)
	if o.StretchMM != nil {
		f.figures["stretch_low_mm"] = sure.Of(tension.StretchMM(o.Low, o.FrameMM, (o.FrameMM-a.location.HeightMM)/2))
	}
}

// flash is the flash as planned, and for the film that was measured.
func (a asked) flash(f facts) {
	p := a.screen.Flash
	f.interval("flash", "s", p.Seconds)
	f.interval("cold", "s", p.ColdSeconds)
	f.interval("gel", "c", p.TemperatureC)
	f.stated(map[string]*float64{"flash_s": p.StartS})
	if a.unexpected() {
		if s, known := a.flashS(a.filmUM()); known {
			f.figures["flash_now_s"] = s
		}
	}
}

// unexpected tells whether a film was measured that the plan did not expect.
func (a asked) unexpected() bool { return a.measured != nil && !a.measured.InBand }

// flashS is where to start the screen's flash for another cured film, on warm platens. It is not known where
// the screen has no timed flash, or the unit never sets that film.
func (a asked) flashS(curedUM float64) (s float64, known bool) {
	p := a.screen.Flash
	if p.StartS == nil || p.TemperatureC == nil {
		return 0, false
	}
	times := curedUM / a.screen.CuredUM.Value / float64(max(1, a.screen.Hits))
	s, err := cure.FlashSeconds(cure.Flash{
		FilmUM: a.screen.WetUM.Value * times, InkWaterGM2: a.screen.WaterGM2 * times, FluxKWM2: p.FluxKWM2, ClothMoisture: a.moisture(),
		GelC: (p.TemperatureC.Low + p.TemperatureC.High) / 2, InkC: cure.InkStartC, PlatenC: cure.PlatenWarmC,
	})
	if never := (cure.ErrNeverGels{}); errors.As(err, &never) {
		return 0, false
	}
	return math.Max(cure.LeastS, sure.Of(s, err)), true
}

// moisture is that of the cloth.
func (a asked) moisture() float64 { return sure.Of(cure.Moisture(a.plan.Substrate.Fibre)) }

// cure is the cure as planned, for the film that was measured, and for twice the film.
func (a asked) cure(f facts) {
	c := a.screen.Cure
	if c.TemperatureC == nil {
		return
	}
	f.interval("cure", "c", c.TemperatureC)
	f.holds["cure-range"] = c.TemperatureC.High-c.TemperatureC.Low >= leastCureRangeC
	f.stated(map[string]*float64{"top_c": &c.TopC})
	f.holds["cure-clash"] = c.TopC > 0 && c.TemperatureC.Low > c.TopC // no heat does
	if c.Passes > 1 {
		f.figures["passes"] = float64(c.Passes)
	}
	if fibre := a.plan.Substrate.Fibre; fibre != "" {
		limit := sure.Of(cure.FibreLimit(fibre))
		for name, at := range map[string]float64{"warn_c": limit.WarnC, "stop_c": limit.StopC} {
			if !math.IsInf(at, 1) {
				f.figures[name] = at
			}
		}
		f.holds["dye-moves"] = c.TemperatureC.Low > limit.WarnC // at every heat that cures
	}
	f.figures["twice_um"] = 2 * a.screen.CuredUM.Value
	now := a.filmUM() / a.screen.CuredUM.Value
	if h := a.screen.HeightMM; h != nil {
		f.figures["height_mm"], f.figures["height_now_mm"] = *h, *h*now
	}
	a.through(f, "", 1)
	a.through(f, "_twice", 2)
	if a.unexpected() {
		a.through(f, "_now", now)
	}
}

// through is the way through the dryer of so many times the film: it takes longer as it takes more heat.
func (a asked) through(f facts, name string, times float64) {
	moist := 0.0
	if a.plan.Substrate.Kind == "garment" {
		moist = a.moisture()
	}
	c := a.screen.Cure
	heat := func(times float64) float64 {
		return sure.Of(cure.HeatKJPerM2(a.screen.WetUM.Value*times, a.screen.WaterGM2*times, moist, c.TemperatureC.Low))
	}
	longer := heat(times) / heat(1)
	if d := c.DwellS; d != nil {
		f.interval("dwell"+name, "s", &plan.Interval{Low: d.Low * longer, High: d.High * longer})
	}
	if b := c.BeltMPerMin; b != nil {
		f.interval("belt"+name, "mpm", &plan.Interval{Low: b.Low / longer, High: b.High / longer})
	}
}

// line is a sentence of the table with its figures, and whether all that it needs is so.
func (f facts) line(l line) (Line, bool) {
	out := Line{Code: l.code}
	for _, need := range strings.Fields(l.needs) {
		x, figure := f.figures[strings.TrimLeft(need, "?!")]
		word, said := f.words[strings.TrimLeft(need, "?!")]
		holds := figure || said || f.holds[strings.TrimLeft(need, "?!")]
		switch {
		case need[0] == '!' && holds, need[0] != '!' && !holds:
			return Line{}, false
		case said && need[0] != '!':
			out.Names = map[string]string{need: word}
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
