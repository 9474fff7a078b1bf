package trials

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"bladecard/calc/fit"
)

// Limits are what the shop has for its test prints.
type Limits struct {
	Days         int     // 1 or more
	DayMinutes   float64 // on the press, a day
	PrintMinutes float64 // to print and measure once
	BladeMinutes float64 // to put in another blade
	MeshMinutes  float64 // to put up another screen
	MostBlades   int     // different ones; 0: any number
	MostMeshes   int     // different ones, a screen of each has to be made; 0: any number
}

// Usual are limits of one afternoon.
//
// Range: none is taken. Kind: common practice; the minutes are a judgement.
func Usual() Limits {
	return Limits{Days: 1, DayMinutes: 180, PrintMinutes: 4, BladeMinutes: 4, MeshMinutes: 8}
}

// Enough is the least share of the doubt that a print must take away to be worth making (judgement).
const Enough = 0.01

// Trial is a plan of test prints.
type Trial struct {
	Prints  []fit.Print // in the order of printing; Day is "1", "2", ...
	Minutes []float64   // of each day
	Before  Band        // over the shop's setups, as things are
	After   Band        // the same once the prints are made and fitted
	Meshes  []Mesh

	Angle, Hardness, NextStroke Effect // per 10 deg, per 10 Shore A, of the share that a further stroke adds
}

// Band is where nine of ten films lie round the predicted one.
type Band struct {
	Half                      float64 // of the band, on the logarithm
	UnderPercent, OverPercent float64 // its ends, percent of the predicted film below and above it
}

// bandOf is the band of a half.
func bandOf(half float64) Band {
	return Band{half, 100 * (1 - math.Exp(-half)), 100 * (math.Exp(half) - 1)}
}

// Effect is half of the band of nine in ten of a term of the fit.
type Effect struct{ Before, After float64 }

// Mesh is what the prints do to the band of one mesh.
type Mesh struct {
	Name          string
	Prints        int
	Before, After Band // as in Trial
}

// ErrNoTime is returned where the limits leave no room for the fewest prints that a fit takes.
var ErrNoTime = fmt.Errorf("trials: the time holds fewer than the %d prints that a fit takes", fit.Least)

// Plan chooses the test prints among the setups of the shop, a setup as often as it serves. The time is filled with
// prints, each the one that tells most: once for its minutes, once at all, and the better plan stays. Then each is exchanged for a better one until
// none is, and those that take away less than Enough of the doubt are left out again. The order of screens in a day, of
// blades on a screen and of prints with a blade is drawn by lot.
//
// Range: 1 to 100 000 setups inside the ranges of fit.Shop, days of 1 to 30, times above 0; an error outside, and ErrNoTime.
// Kind: derived; greedy choice and exchange for I-optimality after Fedorov 1972 (from memory).
func Plan(setups []fit.Print, pr fit.Priors, l Limits, seed uint64) (Trial, error) {
	if l.Days < 1 || l.Days > 30 || !(l.DayMinutes > 0 && l.PrintMinutes > 0 && l.BladeMinutes >= 0 && l.MeshMinutes >= 0) {
		return Trial{}, errors.New("trials: 1 to 30 days, minutes above 0 for a day and a print and no less than 0 for changes are accepted")
	}
	p := planner{limits: l}
	var days []string
	for d := range l.Days {
		days = append(days, fmt.Sprint(d+1))
	}
	var err error
	if p.design, err = fit.NewDesign(setups, days, pr); err != nil {
		return Trial{}, err
	}
	for _, day := range days {
		for _, s := range setups {
			s.Day = day
			p.candidates = append(p.candidates, s)
		}
	}
	var best []fit.Print
	least := math.Inf(1)
	for _, perMinute := range []bool{true, false} {
		if err := errors.Join(p.clear(), p.grow(perMinute), p.exchange(), p.prune(), p.exchange()); err != nil {
			return Trial{}, err
		}
		if d := p.design.Doubt(); d < least {
			least, best = d, p.prints
		}
	}
	p.prints = best
	if len(p.prints) < fit.Least {
		return Trial{}, ErrNoTime
	}
	return p.trial(setups, pr, rand.New(rand.NewPCG(seed, 0x7472)))
}

type planner struct {
	limits     Limits
	design     *fit.Design
	candidates []fit.Print
	prints     []fit.Print
}

// clear takes all prints out.
func (p *planner) clear() error {
	for _, c := range p.prints {
		if err := p.design.Remove(c); err != nil {
			return err
		}
	}
	p.prints = nil
	return nil
}

// grow adds prints while time is left, each the one that tells most, for its minutes or at all.
func (p *planner) grow(perMinute bool) error {
	for {
		best, most := -1, 0.0
		had := p.minutes(p.prints)
		for i, c := range p.candidates {
			more := p.minutes(append(p.prints, c))
			if !p.fits(more, append(p.prints, c)) {
				continue
			}
			g, err := p.design.Gain(c)
			if err != nil {
				return err
			}
			if perMinute {
				g /= sum(more) - sum(had)
			}
			if g > most {
				best, most = i, g
			}
		}
		if best < 0 {
			return nil
		}
		if err := p.design.Add(p.candidates[best]); err != nil {
			return err
		}
		p.prints = append(p.prints, p.candidates[best])
	}
}

// mostRounds ends an exchange that goes round in the last digits.
const mostRounds = 20

// exchange takes each print out and puts the best in its place, until that changes nothing.
func (p *planner) exchange() error {
	for range mostRounds {
		changed := false
		for i := range p.prints {
			was := p.prints[i]
			others := slices.Delete(slices.Clone(p.prints), i, i+1)
			if err := p.design.Remove(was); err != nil {
				return err
			}
			best := was
			most, err := p.design.Gain(was)
			if err != nil {
				return err
			}
			for _, c := range p.candidates {
				g, err := p.design.Gain(c)
				if err != nil {
					return err
				}
				if with := append(others, c); g > most*(1+1e-9) && p.fits(p.minutes(with), with) {
					best, most, changed = c, g, true
				}
			}
			if err := p.design.Add(best); err != nil {
				return err
			}
			p.prints[i] = best
		}
		if !changed {
			return nil
		}
	}
	return nil
}

// prune leaves out the prints that tell too little, the least first.
func (p *planner) prune() error {
	for len(p.prints) > fit.Least {
		least, at := math.Inf(1), -1
		for i, c := range p.prints {
			if err := p.design.Remove(c); err != nil {
				return err
			}
			lost, err := p.design.Gain(c)
			if err == nil {
				err = p.design.Add(c)
			}
			if err != nil {
				return err
			}
			if lost < least {
				least, at = lost, i
			}
		}
		if least > Enough*p.design.Doubt() {
			return nil
		}
		if err := p.design.Remove(p.prints[at]); err != nil {
			return err
		}
		p.prints = slices.Delete(p.prints, at, at+1)
	}
	return nil
}

// minutes is how long the prints of each day take: a screen is put up once a day and a blade once on it.
func (p *planner) minutes(prints []fit.Print) []float64 {
	out := make([]float64, p.limits.Days)
	type part struct{ day, mesh, blade string }
	seen := map[part]bool{}
	add := func(k part, day int, minutes float64) {
		if !seen[k] {
			seen[k] = true
			out[day] += minutes
		}
	}
	for _, c := range prints {
		day := dayOf(c)
		add(part{c.Day, c.Mesh, ""}, day, p.limits.MeshMinutes)
		add(part{c.Day, c.Mesh, c.Blade}, day, p.limits.BladeMinutes)
		out[day] += p.limits.PrintMinutes
	}
	return out
}

// dayOf is the number of a print's day, from 0; Plan has written it.
func dayOf(p fit.Print) int {
	n, _ := strconv.Atoi(p.Day)
	return n - 1
}

// fits tells whether the prints keep to the limits.
func (p *planner) fits(minutes []float64, prints []fit.Print) bool {
	if slices.Max(minutes) > p.limits.DayMinutes {
		return false
	}
	blades, meshes := map[string]bool{}, map[string]bool{}
	for _, c := range prints {
		blades[c.Blade], meshes[c.Mesh] = true, true
	}
	return (p.limits.MostBlades == 0 || len(blades) <= p.limits.MostBlades) && (p.limits.MostMeshes == 0 || len(meshes) <= p.limits.MostMeshes)
}

func square(x float64) float64 { return x * x }

func sum(list []float64) float64 {
	s := 0.0
	for _, x := range list {
		s += x
	}
	return s
}
