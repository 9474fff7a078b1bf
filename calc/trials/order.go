package trials

import (
	"math"
	"math/rand/v2"
	"slices"

	"bladecard/calc/fit"
)

// trial puts the chosen prints in order and says what they do to the bands.
func (p *planner) trial(setups []fit.Print, pr fit.Priors, lot *rand.Rand) (Trial, error) {
	t := Trial{Prints: shuffled(p.prints, lot), Minutes: p.minutes(p.prints)}
	r, err := fit.Foretell(p.prints, pr)
	if err != nil {
		return Trial{}, err
	}
	before, err := fit.NewDesign(setups, []string{"1"}, pr)
	if err != nil {
		return Trial{}, err
	}
	terms := r.Terms
	effect := func(prior, after float64) Effect {
		return Effect{fit.HalfOfNormal(prior), terms.NinetyOf(after, prior)}
	}
	t.Angle, t.Hardness = effect(pr.Angle, terms.Angle.Error), effect(pr.Hardness, terms.Hardness.Error)
	t.NextStroke = effect(pr.NextStroke, terms.NextStroke.Error)
	t.Before = bandOf(fit.HalfOfNormal(before.Sigma()))
	if t.After, err = meanBand(terms, setups); err != nil {
		return Trial{}, err
	}
	for _, group := range grouped(setups, func(s fit.Print) string { return s.Mesh }) {
		m := Mesh{Name: group[0].Mesh}
		for _, c := range p.prints {
			if c.Mesh == m.Name {
				m.Prints++
			}
		}
		if before, err = fit.NewDesign(group, []string{"1"}, pr); err != nil {
			return Trial{}, err
		}
		m.Before = bandOf(fit.HalfOfNormal(before.Sigma()))
		if m.After, err = meanBand(terms, group); err != nil {
			return Trial{}, err
		}
		t.Meshes = append(t.Meshes, m)
	}
	return t, nil
}

// meanBand is the band whose half is the root mean square, over setups, of the halves that a calibration gives.
func meanBand(t fit.Terms, setups []fit.Print) (Band, error) {
	total := 0.0
	for _, s := range setups {
		known, err := t.Error(s.Mesh, s.Blade, s.AngleDeg, s.HardnessShoreA, s.Strokes)
		if err != nil {
			return Band{}, err
		}
		total += square(t.Half(known, 0, 0))
	}
	return bandOf(math.Sqrt(total / float64(len(setups)))), nil
}

// shuffled draws the order of screens in a day, of blades on a screen and of prints with a blade by lot.
func shuffled(prints []fit.Print, lot *rand.Rand) []fit.Print {
	var out []fit.Print
	days := grouped(prints, func(p fit.Print) string { return p.Day })
	slices.SortFunc(days, func(a, b []fit.Print) int { return dayOf(a[0]) - dayOf(b[0]) })
	for _, day := range days {
		for _, screen := range drawn(grouped(day, func(p fit.Print) string { return p.Mesh }), lot) {
			for _, blade := range drawn(grouped(screen, func(p fit.Print) string { return p.Blade }), lot) {
				out = append(out, drawn(blade, lot)...)
			}
		}
	}
	return out
}

func drawn[T any](list []T, lot *rand.Rand) []T {
	lot.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

// grouped parts prints by a key, in the order in which the keys come up.
func grouped(prints []fit.Print, key func(fit.Print) string) [][]fit.Print {
	at := map[string]int{}
	var out [][]fit.Print
	for _, p := range prints {
		i, known := at[key(p)]
		if !known {
			i = len(out)
			at[key(p)] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], p)
	}
	return out
}
