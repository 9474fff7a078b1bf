// Command plans plans made-up jobs and prints the figures of each screen, for the table of constants
// (constants_test.go), which builds it with one constant moved at a time. It plans each job twice: with the choice
// free, and with the setups of a run before, which stand in the file that is named.
package main

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/samples/bench"
)

// Figures are what a screen comes to. What it has none of is 0.
type Figures struct {
	Film, Band, Flash, Ink, Belt float64
	Setup                        string // with the choice free
	All                          string // the sum of the whole plan of the screen
	Mesh, Blade                  string // of the setup
	Angle                        float64
	Strokes, Hits                int
}

const jobs, screens = 20, 3

func main() {
	var before []Figures
	if len(os.Args) > 1 {
		text, err := os.ReadFile(os.Args[1])
		must(err)
		must(json.Unmarshal(text, &before))
	}
	var out []Figures
	for n := range jobs {
		free := made(n, nil)
		fixed := free
		if before != nil {
			fixed = made(n, before[n*screens:(n+1)*screens])
		}
		for i, s := range free {
			f := of(fixed[i])
			f.Mesh, f.Blade, f.Angle, f.Strokes, f.Hits = s.Mesh.Name, s.Blade.Name, s.AngleDeg.Set, s.Strokes, s.Hits
			f.Setup = fmt.Sprint(f.Mesh, f.Blade, f.Angle, f.Strokes, f.Hits)
			all, err := json.Marshal(s)
			must(err)
			f.All = fmt.Sprintf("%x", sha256.Sum256(all))
			out = append(out, f)
		}
	}
	must(json.NewEncoder(os.Stdout).Encode(out))
}

func must(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// made are the screens of a made-up job, with the setups as they were where some are given.
func made(n int, before []Figures) []plan.Screen {
	shop := file.BuiltInShop()
	move(shop)
	j, errs := file.DecodeJob("job.toml", special(bench.Job(n, screens, ""), n))
	if errs != nil {
		must(errs)
	}
	i := 0
	for l := range j.Locations {
		for s := range j.Locations[l].Screens {
			if before != nil {
				b, sc := before[i], &j.Locations[l].Screens[s]
				sc.MeshName, sc.BladeName, sc.AngleDeg, sc.Strokes, sc.Hits = b.Mesh, b.Blade, &b.Angle, b.Strokes, b.Hits
			}
			i++
		}
	}
	if errs := job.Resolve(j, shop); errs != nil {
		must(errs)
	}
	p, errs := choose.Make(j, shop)
	if errs != nil {
		must(errs)
	}
	var out []plan.Screen
	for _, l := range p.Locations {
		out = append(out, l.Screens...)
	}
	return out
}

// special turns every second job to one of the inks that made-up jobs have not, so that each built-in class is
// among them.
func special(text []byte, n int) []byte {
	inks := [][2]string{{"plastisol puff", "raised"}, {"plastisol clear gel", "clear"}, {"plastisol metallic", "solid"}, {"high-solids acrylic", "solid"},
		{"high-solids acrylic white", "solid"}, {"silicone", "solid"}, {"discharge", "solid"}, {"blocker", "blocker"}, {"solvent graphics", "solid"}, {"uv graphics", "detail"}}
	if n%2 == 0 {
		return text
	}
	ink := inks[n/2%len(inks)]
	lines := strings.Split(string(text), "\n")
	for i, l := range lines {
		switch key, _, _ := strings.Cut(l, " = "); key {
		case "ink":
			lines[i] = "ink = " + strconv.Quote(ink[0])
		case "use":
			lines[i] = "use = " + strconv.Quote(ink[1])
		case "film", "mesh", "eom", "halftone", "blade":
			lines[i] = ""
		case "[garment]", "fibre", "shade":
			if strings.HasSuffix(ink[0], "graphics") {
				lines[i] = map[string]string{"[garment]": "[stock]", "fibre": "kind = \"board\""}[key]
			}
		}
	}
	return []byte(strings.Join(lines, "\n"))
}

func of(s plan.Screen) Figures {
	f := Figures{Film: s.CuredUM.Value, Band: s.CuredUM.High / s.CuredUM.Low}
	if s.Flash.StartS != nil {
		f.Flash = *s.Flash.StartS
	} else if s.Flash.Seconds != nil {
		f.Flash = s.Flash.Seconds.High
	}
	if s.InkGRun != nil {
		f.Ink = *s.InkGRun
	}
	if s.Cure.GarmentsPerHour != nil {
		f.Belt = s.Cure.GarmentsPerHour.High
	}
	return f
}

// move sets the figure of an ink class or of the shop that KNOB names, "ink:CLASS:KEY" or "shop:KEY".
func move(shop *job.Shop) {
	part := strings.Split(os.Getenv("KNOB"), ":")
	if part[0] != "ink" && part[0] != "shop" {
		return
	}
	v, err := strconv.ParseFloat(os.Getenv("KNOB_VALUE"), 64)
	must(err)
	if part[0] == "shop" {
		for i := range shop.Blades {
			b := &shop.Blades[i]
			switch part[1] {
			case "free-height":
				b.FreeHeightMM = v
			case "thickness":
				b.ThicknessMM = v
			}
		}
		for i := range shop.Presses {
			p := &shop.Presses[i]
			switch part[1] {
			case "load":
				p.LoadNPerCM = v
			case "stroke-speed":
				p.StrokeMPerS = v
			}
		}
		for i := range shop.Meshes {
			if part[1] == "tension" {
				shop.Meshes[i].TensionNPerCM = v
			}
		}
		for i := range shop.Dryers {
			if part[1] == "top-temperature" {
				shop.Dryers[i].MaxC = v
			}
		}
		switch part[1] {
		case "waste":
			shop.Waste = v
		case "stays-in-screen":
			shop.StaysG = v
		}
		return
	}
	was := map[string]float64{}
	for _, k := range shop.Inks {
		if k.Name == part[1] {
			was = plain(k)
		}
	}
	for i := range shop.Inks {
		k := &shop.Inks[i]
		if part[1] != "*" && k.Name != part[1] && !follows(*k, part[1], part[2], was) {
			continue
		}
		scale := func(r **job.Range) {
			if *r != nil {
				*r = &job.Range{Low: (*r).Low + v, High: (*r).High + v}
			}
		}
		switch part[2] {
		case "density":
			k.DensityKgPerL = v
		case "solids":
			k.Solids = v
		case "scattering":
			k.ScatterPerMM = v
		case "whiteness":
			k.Whiteness = v
		case "eta-inf":
			k.EtaInfPaS = v
		case "consistency":
			k.KPaSn = v
		case "flow-index":
			k.N = v
		case "rise":
			k.Rise = v
		case "gel":
			scale(&k.GelC)
		case "cure":
			scale(&k.CureC)
		case "dwell":
			scale(&k.DwellS)
		case "tack":
			scale(&k.TackS)
		case "use":
			for _, u := range k.Uses {
				if u.FilmUM != nil {
					u.FilmUM = &job.Range{Low: u.FilmUM.Low * v, High: u.FilmUM.High * v}
				}
			}
		case "use-eom":
			for _, u := range k.Uses {
				if u.EOM != nil {
					u.EOM = &job.EOM{UM: u.EOM.UM * v, Share: u.EOM.Share * v}
				}
			}
		default:
			must(fmt.Errorf("ink key %q is not moved here", part[2]))
		}
	}
}

// plain are the figures of a class that classes like it take over.
func plain(k job.Ink) map[string]float64 {
	return map[string]float64{"density": k.DensityKgPerL, "solids": k.Solids, "scattering": k.ScatterPerMM, "whiteness": k.Whiteness}
}

// follows tells whether a class has a figure from the class that it is like.
func follows(k job.Ink, class, key string, was map[string]float64) bool {
	v, takes := plain(k)[key]
	return k.Like == class && takes && v == was[key]
}
