package choose

import (
	"cmp"
	"strings"

	"bladecard/calc/ink"
	"bladecard/calc/internal/sure"
	"bladecard/calc/plan"
)

// inkRun works out the ink of a print and of the run from the wet film and from what sinks into
// bare cloth: per print where the size of the location and the coverage are stated, for the run
// where the quantity is too.
func (m maker) inkRun(sc *plan.Screen) {
	sc.SinksIn = m.sinksIn()
	sinks := sure.Of(ink.ClothOf(sc.SinksIn))
	sc.SinksUM, sc.SinksHalfUM = sinks.MiddleUM(), sinks.HalfUM()
	if m.location.WidthMM == 0 || m.location.HeightMM == 0 || m.screen.Coverage == 0 {
		return
	}
	density, laid := m.screen.Ink.DensityKgPerL, laidBand(sc.WetUM, sinks)
	g := sure.Of(ink.MassG(m.location.WidthMM, m.location.HeightMM, m.screen.Coverage, laid.Value, density))
	sc.InkGPerPrint = &g
	if w := (plan.Band{Low: g * laid.Low / laid.Value, Value: g, High: g * laid.High / laid.Value}); w.High-w.Low >= 2*scaleStepG && (sc.Hits <= 1 || m.screen.Ink.Solids == 1) {
		sc.WeighG = &w // else no scale of a shop tells one end from the other, or the flash took a part of the first hit
	}
	if m.job.Quantity > 0 {
		run := sure.Of(ink.RunG(g, m.job.Quantity, m.shop.Waste, m.shop.StaysG))
		ml := sure.Of(ink.GToML(run, density))
		sc.InkGRun, sc.InkMLRun = &run, &ml
	}
}

// sinksIn tells in words which cloth takes ink of the screen in.
func (m maker) sinksIn() string {
	switch g := m.ground(); {
	case g.hard || g.based:
		return ink.Nothing
	case m.job.Garment != nil:
		return strings.TrimSpace(m.job.Garment.Fibre + " " + cmp.Or(m.job.Garment.Weave, ink.Knit))
	}
	return ink.Knit
}

// mix sums the ink of a job by class and color, in the order in which they come up.
func mix(locations []plan.Location) []plan.Mix {
	out := []plan.Mix{}
	at := map[[2]string]int{}
	for _, l := range locations {
		for _, s := range l.Screens {
			if s.InkGRun == nil || s.InkMLRun == nil {
				continue
			}
			key := [2]string{s.Ink, s.Color}
			i, known := at[key]
			if !known {
				i = len(out)
				at[key] = i
				out = append(out, plan.Mix{Ink: s.Ink, Color: s.Color})
			}
			out[i].G += *s.InkGRun
			out[i].ML += *s.InkMLRun
		}
	}
	return out
}
