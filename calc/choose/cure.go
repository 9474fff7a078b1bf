package choose

import (
	"cmp"
	"fmt"
	"math"

	"bladecard/calc/cure"
	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/job"
	"bladecard/calc/plan"
)

// garmentPitchMM is how much of the belt a garment takes, and garmentWidthMM of its width
// (common practice).
const (
	garmentPitchMM = 750.0
	garmentWidthMM = 600.0
)

// smallOnBelt is what smaller pieces take of that, each way, by outline (common practice).
var smallOnBelt = map[string]float64{"youth": 0.8, "tote": 0.6, "cap": 0.4}

// onBelt is what the job's piece takes of the room of a garment on the belt, each way.
func (m maker) onBelt() float64 {
	if m.job.Garment == nil {
		return 1
	}
	return cmp.Or(smallOnBelt[m.job.Garment.Outline], 1)
}

// cure is how the ink of one screen is set for good.
func (m maker) cure(sc *plan.Screen) {
	ink := m.screen.Ink
	switch {
	case ink.Dries == "uv":
		sc.Cure.By = "light"
		return
	case ink.CureC == nil:
		sc.Cure.By = "air"
		return
	}
	sc.Cure.By, sc.Cure.TopC = "heat", ink.CureTopC
	sc.Cure.TemperatureC = &plan.Interval{Low: ink.CureC.Low, High: ink.CureC.High}
	if ink.CureTopC > 0 {
		sc.Cure.TemperatureC.High = ink.CureTopC
	}
	if ink.DwellS != nil {
		sc.Cure.DwellS = &plan.Interval{Low: ink.DwellS.Low, High: ink.DwellS.High}
	}
}

// cures joins the cures of a garment: all of it goes through the dryer at once, so that all its inks
// share one temperature, the lowest of their tops and the longest of their times. What the fibre bears ends the
// temperature; the shop's first dryer sets the belt. Sheets are cured pass by pass.
func (w work) cures(p *plan.Plan) *job.Error {
	var screens []*plan.Screen
	var makers []maker
	for k, l := range p.Locations {
		for i := range l.Screens {
			if sc := &l.Screens[i]; sc.Cure.By == "heat" {
				screens, makers = append(screens, sc), append(makers, w.maker(k, i))
			}
		}
	}
	if len(screens) == 0 {
		return nil
	}
	if !makers[0].onSheet() {
		if fail := oneCure(screens, makers); fail != nil {
			return fail
		}
	}
	for i, m := range makers {
		if fail := m.try("ink", "a cure and a dryer inside the ranges of the formulas", func() { m.dryer(screens[i], i == 0 || m.onSheet()) }); fail != nil {
			return fail
		}
	}
	return nil
}

// oneCure gives all screens of a garment the cure that they share.
func oneCure(screens []*plan.Screen, makers []maker) *job.Error {
	window := plan.Interval{Low: 0, High: math.Inf(1)}
	var dwell plan.Interval  // the longest of their times; none: nothing is stated
	hottest, coolest := 0, 0 // the screens that end the window
	for i, sc := range screens {
		c := sc.Cure.TemperatureC
		if c.Low > window.Low {
			window.Low, hottest = c.Low, i
		}
		if c.High < window.High {
			window.High, coolest = c.High, i
		}
		if d := sc.Cure.DwellS; d != nil {
			dwell.Low, dwell.High = math.Max(dwell.Low, d.Low), math.Max(dwell.High, d.High)
		}
	}
	if window.Low > window.High {
		later := max(hottest, coolest)
		return makers[later].fail("ink", fmt.Sprintf("%s cures from %.0f C and %s up to %.0f C: one garment goes through the dryer at one temperature",
			screens[hottest].Ink, window.Low, screens[coolest].Ink, window.High),
			"inks that share a cure temperature, or an ink class with the cure of your can")
	}
	var cloth cloth
	if fail := makers[0].try("ink", "a fiber that is known", func() { cloth = makers[0].cloth(window) }); fail != nil {
		return fail
	}
	top := 0.0 // what no part of the garment may pass; 0: nothing beyond the window
	for _, sc := range screens {
		if t := sc.Cure.TopC; t > 0 && (top == 0 || t < top) {
			top = t
		}
	}
	if stop := cloth.limit.StopC; cloth.fibre != "" && (stop < top || stop < window.Low) {
		top = stop
	}
	for i, sc := range screens {
		sc.Warnings = append(sc.Warnings, cloth.warnings(screens, makers, i)...)
		window := cloth.window
		sc.Cure.TemperatureC, sc.Cure.TopC = &window, top
		if longest := dwell; longest != (plan.Interval{}) {
			sc.Cure.DwellS = &longest
		}
	}
	return nil
}

// cloth is what the garment's fibre says to the cure.
type cloth struct {
	fibre  string // empty: not stated
	limit  cure.Fibre
	window plan.Interval // of the cure, ended by what the fibre bears
	needs  float64       // temperature that the inks need
}

// discharges is the warning of a fibre whose dye no discharge agent takes out, or not all of it: it works on the dyes
// of cotton (common practice).
var discharges = map[string]string{"polyester": "discharge-none", "nylon": "discharge-none", "blend": "discharge-part", "tri-blend": "discharge-part"}

// cloth judges a cure against the garment's fibre.
func (m maker) cloth(window plan.Interval) cloth {
	c := cloth{window: window, needs: window.Low}
	if m.job.Garment == nil || m.job.Garment.Fibre == "" {
		return c
	}
	c.fibre = m.job.Garment.Fibre
	c.limit = sure.Of(cure.FibreLimit(c.fibre))
	c.window.High = math.Max(c.window.Low, math.Min(c.window.High, c.limit.StopC))
	return c
}

// warnings are what the fibre says of a screen: too hot for it, its dye in the print, a bond that needs
// help. What holds for a location is said at its first screen that it concerns.
func (c cloth) warnings(screens []*plan.Screen, makers []maker, i int) []plan.Warning {
	if c.fibre == "" {
		return nil
	}
	names := map[string]string{"fibre": c.fibre}
	var out []plan.Warning
	earlier := func(holds func(maker) bool) bool { // of the same location
		for k := range i {
			if makers[k].location.Pos == makers[i].location.Pos && makers[k].location.Name == makers[i].location.Name && holds(makers[k]) {
				return true
			}
		}
		return false
	}
	if own := screens[i].Cure.TemperatureC.Low; own > c.limit.StopC { // the ink that is too hot, not those that share its cure
		out = append(out, plan.Warning{Code: "fibre-stops", Values: vals{"stop_c": c.limit.StopC, "cure_c": own}, Names: names})
	}
	if code := discharges[c.fibre]; code != "" && takesDyeOut(makers[i].screen) {
		out = append(out, plan.Warning{Code: code, Names: names})
	}
	if c.needs >= c.limit.WarnC && c.needs <= c.limit.StopC && c.takesDye(makers[i]) && !earlier(c.takesDye) {
		out = append(out, plan.Warning{Code: "dyes-migrate", Values: vals{"warn_c": c.limit.WarnC, "cure_c": c.needs}, Names: names})
	}
	if c.fibre == "nylon" && !earlier(func(maker) bool { return true }) {
		out = append(out, plan.Warning{Code: "nylon-bond", Names: names})
	}
	return out
}

// takesDye tells whether the cloth's dye can spoil a screen's print: the cloth is dyed, no blocker lies
// under the print, and the ink is light enough to show it.
func (c cloth) takesDye(m maker) bool {
	if m.job.Garment.Shade == "light" || use(m.screen) == "blocker" {
		return false
	}
	for _, s := range m.location.Screens[:m.number-1] {
		if use(s) == "blocker" {
			return false
		}
	}
	l, known := lightness(m.screen)
	return !known || l >= ink.DarkLightness
}

// lightness is how light a screen's ink is, 0 to 1, from its swatch.
func lightness(s job.Screen) (light float64, known bool) {
	r, g, b, known := ink.Swatch(s.Swatch)
	return ink.Lightness(r, g, b), known
}

// dryer sets the belt of the shop's first dryer for the dwell, inside what its belt can do; says tells
// whether to warn.
func (m maker) dryer(sc *plan.Screen, says bool) {
	if len(m.shop.Dryers) == 0 || m.onSheet() || m.shop.Dryers[0].HeatedMM == 0 || sc.Cure.DwellS == nil {
		return
	}
	d := m.shop.Dryers[0]
	sc.Cure.Dryer, sc.Cure.Passes = d.Name, 1
	slow, fast := sure.Of(cure.BeltMPerMin(d.HeatedMM, sc.Cure.DwellS.High)), sure.Of(cure.BeltMPerMin(d.HeatedMM, sc.Cure.DwellS.Low))
	dwellS := func(beltMPerMin float64) float64 { return d.HeatedMM / 1000 / beltMPerMin * 60 }
	var ws []plan.Warning
	if r := d.BeltMPerMin; r != nil {
		switch {
		case fast < r.Low: // one pass is too short even on the slowest belt
			sc.Cure.Passes = int(math.Ceil(r.Low/fast - 1e-9))
			ws = append(ws, warn("dryer-short", vals{"belt_mpm": fast, "least_mpm": r.Low, "passes": float64(sc.Cure.Passes)}))
		case slow > r.High: // the fastest belt keeps the print in longer than asked
			ws = append(ws, warn("dryer-fast", vals{"belt_mpm": slow, "most_mpm": r.High, "dwell_s": dwellS(r.High), "cure_c": sc.Cure.TemperatureC.Low}))
		}
		slow, fast = math.Min(math.Max(slow, r.Low), r.High), math.Min(math.Max(fast, r.Low), r.High)
	}
	if d.MaxC > 0 && d.MaxC < sc.Cure.TemperatureC.Low {
		ws = append(ws, warn("dryer-cool", vals{"top_c": d.MaxC, "cure_c": sc.Cure.TemperatureC.Low}))
	}
	if says {
		sc.Warnings = append(sc.Warnings, ws...)
	}
	sc.Cure.BeltMPerMin = &plan.Interval{Low: slow, High: fast}
	room := m.onBelt()
	lanes := max(1, int(d.BeltMM/(garmentWidthMM*room)))
	perHour := func(belt float64) float64 {
		return sure.Of(cure.GarmentsPerHour(lanes, d.HeatedMM, dwellS(belt), garmentPitchMM*room)) / float64(sc.Cure.Passes)
	}
	sc.Cure.GarmentsPerHour = &plan.Interval{Low: perHour(slow), High: perHour(fast)}
}
