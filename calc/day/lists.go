package day

import (
	"slices"

	"bladecard/calc/job"
)

// Screen is one to make.
type Screen struct {
	Where
	Color     string    `json:"color"`
	Ink       string    `json:"ink"`
	Mesh      string    `json:"mesh"`
	EOMUM     float64   `json:"eom_um"`
	Coats     int       `json:"coats"`
	FilmsUM   []float64 `json:"films_um"`
	Tension   float64   `json:"tension_n_per_cm"` // 0: not stated
	Lines     float64   `json:"lines_per_inch"`   // 0: no halftone
	BitmapDPI float64   `json:"bitmap_dpi"`
	AngleDeg  *float64  `json:"angle_deg"` // of the halftone; null: none
	Pieces    int       `json:"screens"`   // 2 and more: one for each hit of a turn
	count     float64
}

// screens are those to make, the coarsest mesh first.
func screens(presses []Press) []Screen {
	var out []Screen
	for _, p := range presses {
		for _, j := range p.Jobs {
			for _, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					x := Screen{
						Where: whereOf(p.Name, j, l, s), Color: s.Color, Ink: s.Ink, Mesh: s.Mesh.Name, EOMUM: s.Stencil.EOMUM, Coats: s.Stencil.Coats,
						FilmsUM: s.Stencil.FilmsUM, Tension: s.OffContact.Tension, Pieces: max(1, len(s.Heads)), count: s.Mesh.CountPerInch,
					}
					if h := s.Halftone; h != nil {
						x.Lines, x.BitmapDPI = h.LinesPerInch, h.BitmapDPI
						if h.HasAngle {
							x.AngleDeg = &h.AngleDeg
						}
					}
					out = append(out, x)
				}
			}
		}
	}
	return sorted(out, by(func(x Screen) float64 { return x.count }), by(func(x Screen) string { return x.Mesh }), by(func(x Screen) float64 { return x.EOMUM }))
}

// Ink is what to mix of one ink, over all jobs.
type Ink struct {
	Ink   string   `json:"ink"`
	Color string   `json:"color"`
	G     float64  `json:"g"`
	ML    float64  `json:"ml"`
	Jobs  []string `json:"jobs"`
}

func inks(presses []Press) []Ink {
	at := map[[2]string]int{}
	var out []Ink
	for _, p := range presses {
		for _, j := range p.Jobs {
			for _, m := range j.Plan.Mix {
				k := [2]string{m.Ink, m.Color}
				i, known := at[k]
				if !known {
					i = len(out)
					at[k] = i
					out = append(out, Ink{Ink: m.Ink, Color: m.Color})
				}
				out[i].G += m.G
				out[i].ML += m.ML
				out[i].Jobs = append(out[i].Jobs, nameOfJob(j))
			}
		}
	}
	return sorted(out, by(func(x Ink) string { return x.Ink }), by(func(x Ink) string { return x.Color }))
}

func nameOfJob(j Job) string {
	if j.Job != "" {
		return j.Job
	}
	return j.Title
}

// Dryer is one setting of a dryer that does for several jobs. They stand in the order in which the presses come to
// them; of those that come as early, the cooler first, since a tunnel heats faster than it cools.
type Dryer struct {
	Dryer string   `json:"dryer"`
	Film  Range    `json:"film_c"`
	Belt  Range    `json:"belt_m_per_min"`
	Jobs  []string `json:"jobs"`

	first int // place of its earliest job in the order of a press
}

// dryers joins what the jobs ask of a dryer as long as temperature and belt have a value in common. They are taken
// in the order in which their temperatures end, which needs the fewest settings where the belts agree.
func dryers(presses []Press) []Dryer {
	var out []Dryer
	type wish struct {
		cure
		job string
		at  int
	}
	var wishes []wish
	for _, p := range presses {
		for at, j := range p.Jobs {
			for _, r := range j.runs {
				for _, c := range r.cures {
					wishes = append(wishes, wish{c, nameOfJob(j), at})
				}
			}
		}
	}
	sorted(wishes, by(func(w wish) string { return w.dryer }), by(func(w wish) float64 { return w.film.High }), by(func(w wish) float64 { return w.belt.High }))
	for _, w := range wishes {
		i := slices.IndexFunc(out, func(d Dryer) bool {
			return d.Dryer == w.dryer && !d.Film.with(w.film).empty() && !d.Belt.with(w.belt).empty()
		})
		if i < 0 {
			i = len(out)
			out = append(out, Dryer{Dryer: w.dryer, Film: w.film, Belt: w.belt, first: w.at})
		}
		d := &out[i]
		d.Film, d.Belt, d.first = d.Film.with(w.film), d.Belt.with(w.belt), min(d.first, w.at)
		if !slices.Contains(d.Jobs, w.job) {
			d.Jobs = append(d.Jobs, w.job)
		}
	}
	return sorted(out, by(func(d Dryer) string { return d.Dryer }), by(func(d Dryer) int { return d.first }), by(func(d Dryer) float64 { return d.Film.Low }), by(func(d Dryer) float64 { return -d.Belt.High }))
}

// Sharpen is a stock whose blades are due.
type Sharpen struct {
	Blade  string `json:"blade"`
	Prints int    `json:"prints"` // since the edges were cut, each
	Today  int    `json:"today"`  // strokes of the day for each blade of the stock that is in use
	After  int    `json:"after"`  // prints after which the shop sharpens
	Now    bool   `json:"now"`    // before the day; false: by its end
}

// sharpen tells which stocks are due before the day or by its end, where the shop counts the prints of its edges.
func sharpen(shop *job.Shop, presses []Press) []Sharpen {
	if shop.SharpenAfter == 0 {
		return nil
	}
	strokes, used := map[string]int{}, map[string]int{}
	for _, p := range presses {
		for _, j := range p.Jobs {
			for _, l := range j.Plan.Locations {
				for _, s := range l.Screens {
					strokes[s.Blade.Name] += j.Pieces * s.Strokes * max(1, s.Hits)
					used[s.Blade.Name] = max(used[s.Blade.Name], max(1, len(s.Heads)))
				}
			}
		}
	}
	var out []Sharpen
	for _, b := range shop.Blades {
		name := nameOf(b)
		x := Sharpen{Blade: name, Prints: b.Prints, After: shop.SharpenAfter, Now: b.Prints >= shop.SharpenAfter}
		if n := used[name]; n > 0 {
			x.Today = (strokes[name] + n - 1) / n
		}
		if x.Prints+x.Today >= x.After {
			out = append(out, x)
		}
	}
	return out
}
