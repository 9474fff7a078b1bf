package choose

import (
	"cmp"
	"strings"

	"bladecard/calc/ink"
	"bladecard/calc/plan"
)

// inkRun works out the ink of a print and of the run from the wet film and from what sinks into
// bare cloth: per print where the size of the location and the coverage are stated, for the run
// where the quantity is too.
func (m maker) inkRun(sc *plan.Screen) error {
	sc.SinksIn = m.sinksIn()
	sinks, err := ink.ClothOf(sc.SinksIn)
	if err != nil {
		return err
	}
	sc.SinksUM, sc.SinksHalfUM = sinks.MiddleUM(), sinks.HalfUM()
	if m.location.WidthMM == 0 || m.location.HeightMM == 0 || m.screen.Coverage == 0 {
		return nil
	}
	density := m.screen.Ink.DensityKgPerL
	g, err := ink.MassG(m.location.WidthMM, m.location.HeightMM, m.screen.Coverage, sinks.LaidUM(sc.WetUM.Value), density)
	if err != nil {
		return err
	}
	sc.InkGPerPrint = &g
	laid := laidBand(sc.WetUM, sinks)
	weight := func(um float64) float64 { return g * um / laid.Value }
	sc.WeighG = &plan.Band{Low: weight(laid.Low), Value: g, High: weight(laid.High)}
	if m.job.Quantity == 0 {
		return nil
	}
	run, err := ink.RunG(g, m.job.Quantity, m.shop.Waste, m.shop.StaysG)
	if err != nil {
		return err
	}
	ml, err := ink.GToML(run, density)
	if err != nil {
		return err
	}
	sc.InkGRun, sc.InkMLRun = &run, &ml
	return nil
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

// mix sums the ink of a job by class and colour, in the order in which they come up.
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
