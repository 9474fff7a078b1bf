package choose_test

import (
	"math"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
)

// onShop computes a job text on a shop text.
func onShop(t *testing.T, shopText, src string) (*plan.Plan, job.Errors) {
	t.Helper()
	shop := plantest.Shop(t, shopText)
	return choose.Make(plantest.Job(t, src, shop), shop)
}

// TestTargets: who asks for the film.
func TestTargets(t *testing.T) {
	white := "ink = \"plastisol white\"\nuse = \"solid\"\nmesh = \"125-71\""
	on := func(shade string) plan.Target {
		return screenOf(t, one("[garment]\nshade = \""+shade+"\"", white)).TargetUM
	}
	dark, medium, light := on("dark"), on("medium"), on("light")
	if dark.From != "hiding" || !(dark.Low > medium.Low && medium.Low > light.Low) {
		t.Errorf("white on dark %+v, medium %+v, light %+v: a darker cloth asks for more", dark, medium, light)
	}
	// a contrast of 0.90 (common practice) on a cloth of 0.04, white of 0.90 and 80 per mm: 46 um,
	// and 10 um into the knit (from memory)
	if math.Abs(dark.Low-50.6) > 0.1 {
		t.Errorf("white on dark asks for %g um; 50.6 is wanted", dark.Low)
	}
	based := planOf(t, "title = \"t\"\n[garment]\nshade = \"dark\"\n[[location]]\n[[location.screen]]\nink = \"plastisol white\"\nuse = \"underbase\"\n[[location.screen]]\n"+white)
	if got := based.Locations[0].Screens[1].TargetUM.From; got != "class" {
		t.Errorf("a white on a base asks by %s; the base hides the cloth", got)
	}
	job := screenOf(t, one("[garment]\nshade = \"dark\"", white+"\nfilm = \"20..90 um\"")).TargetUM
	if job.From != "job" || job.Low != 20 || job.High != 90 {
		t.Errorf("the job's film gives %+v", job)
	}
	puff := screenOf(t, one("", "ink = \"plastisol puff\"\nuse = \"raised\"\nmesh = \"110-80\"\nheight = \"0.35 mm\""))
	if puff.TargetUM.From != "expansion" || math.Abs((puff.TargetUM.Low+puff.TargetUM.High)/2-350/1.94) > 0.1 {
		t.Errorf("0.35 mm after the heat asks for %+v; 350/1.94 um is the middle", puff.TargetUM)
	}
	if h := puff.HeightMM; h == nil || math.Abs(*h-puff.CuredUM.Value*1.94/1000) > 1e-9 {
		t.Errorf("height %v of %g um", puff.HeightMM, puff.CuredUM.Value)
	}
}

// TestFlash: which screens are flashed, and for how long.
func TestFlash(t *testing.T) {
	src := "title = \"t\"\n%[garment]\nshade = \"dark\"\n[[location]]\n[[location.screen]]\nink = \"plastisol white\"\nuse = \"underbase\"\n[[location.screen]]\n[[location.screen]]\n"
	p := planOf(t, strings.Replace(src, "%", "", 1))
	s := p.Locations[0].Screens
	if !s[0].Flash.Needed || s[1].Flash.Needed || s[2].Flash.Needed {
		t.Errorf("base, color, color: flashes %+v %+v %+v", s[0].Flash, s[1].Flash, s[2].Flash)
	}
	if f := s[0].Flash; f.Seconds == nil || f.ColdSeconds == nil || !(f.ColdSeconds.Low > f.Seconds.Low) {
		t.Errorf("flash %+v: cold platens take longer", f)
	}
	kinds := ""
	for _, st := range p.Locations[0].Stations {
		kinds += st.Kind + " "
	}
	if kinds != "print flash cool print print " || !p.Locations[0].Stations[4].Wet || p.Locations[0].Stations[3].Wet {
		t.Errorf("stations %s%+v", kinds, p.Locations[0].Stations)
	}
	// one timed flash of the shop replaces the default flux
	slow, errs := onShop(t, "[[flash]]\nname = \"old panel\"\ntimed = \"9 s\"\ntimed-film = \"42 um\"\n", strings.Replace(src, "%", "press = \"manual\"\n", 1))
	if errs != nil {
		t.Fatal(errs)
	}
	f := slow.Locations[0].Screens[0].Flash
	wet := slow.Locations[0].Screens[0].WetUM.Value
	if f.Unit != "old panel" || !f.Timed || f.StartS == nil || math.Abs(*f.StartS/9-1) > 0.25 || !(f.Seconds.Low < 9 && 9 < f.Seconds.High) {
		t.Errorf("a panel timed at 9 s on 42 um gives %+v on %g um", f, wet)
	}
	// an ink that is flashed after every color
	hsa := planOf(t, "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"high-solids acrylic\"\n[[location.screen]]\nink = \"high-solids acrylic\"\n")
	if !hsa.Locations[0].Screens[0].Flash.Needed || hsa.Locations[0].Screens[0].Flash.Why != "water" {
		t.Errorf("high-solids acrylic: %+v", hsa.Locations[0].Screens[0].Flash)
	}
	// a sheet is never flashed
	touch := planOf(t, "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"plastisol\"\nflash = \"dry\"\n[[location.screen]]\n").Locations[0].Screens[0].Flash
	if !touch.Needed || touch.Does != "gel" || touch.TemperatureC == nil {
		t.Errorf("plastisol, dry to the touch: %+v; it gels", touch)
	}
	sheet := planOf(t, "title = \"t\"\n[stock]\nkind = \"board\"\n[[location]]\n[[location.screen]]\nuse = \"underbase\"\n[[location.screen]]\n")
	if f := sheet.Locations[0].Screens[0].Flash; f.Needed || f.Why != "sheet" {
		t.Errorf("a sheet: %+v", f)
	}
}

// TestDryerAndFibre: the belt of the shop's dryer, and what fibre and dryer forbid.
func TestDryerAndFibre(t *testing.T) {
	dryer := func(length, more string) plan.Screen {
		p, errs := onShop(t, "[[dryer]]\nname = \"d\"\nheated-length = \""+length+"\"\nbelt-width = \"60 cm\"\n"+more, one("", ""))
		if errs != nil {
			t.Fatal(errs)
		}
		return p.Locations[0].Screens[0]
	}
	short, long := dryer("1.5 m", ""), dryer("3 m", "")
	if !(long.Cure.BeltMPerMin.Low > short.Cure.BeltMPerMin.Low && long.Cure.GarmentsPerHour.High > short.Cure.GarmentsPerHour.High) {
		t.Errorf("1.5 m: %+v; 3 m: %+v: a longer dryer runs faster", short.Cure.BeltMPerMin, long.Cure.BeltMPerMin)
	}
	// 3 m in 90 and 45 s (arithmetic)
	if b := long.Cure.BeltMPerMin; math.Abs(b.Low-2) > 1e-9 || math.Abs(b.High-4) > 1e-9 {
		t.Errorf("3 m in 45 to 90 s: %+v m/min; 2 to 4", *b)
	}
	for _, c := range []struct{ more, code string }{
		{"belt-speed = \"5..9 m/min\"\n", "dryer-short"}, {"belt-speed = \"0.1..1 m/min\"\n", "dryer-fast"}, {"top-temperature = \"120 C\"\n", "dryer-cool"},
	} {
		if got := codesOf(dryer("3 m", c.more)); !strings.Contains(got, c.code) {
			t.Errorf("a dryer with %s warns %q; %s is wanted", strings.TrimSpace(c.more), got, c.code)
		}
	}
	// a belt is never printed outside of what the dryer can do, and passes make up for a short one
	brisk, lazy := dryer("3 m", "belt-speed = \"5..9 m/min\"\n"), dryer("3 m", "belt-speed = \"0.1..1 m/min\"\n")
	if b := brisk.Cure.BeltMPerMin; b.Low != 5 || b.High != 5 || brisk.Cure.Passes != 2 {
		t.Errorf("3 m, 5 to 9 m/min, 45 to 90 s: %+v m/min, %d passes; 5 m/min and two passes of 36 s", *b, brisk.Cure.Passes)
	}
	if b := lazy.Cure.BeltMPerMin; b.Low != 1 || b.High != 1 || lazy.Cure.Passes != 1 {
		t.Errorf("3 m, 0.1 to 1 m/min, 45 to 90 s: %+v m/min, %d passes; 1 m/min", *b, lazy.Cure.Passes)
	}
	poly := screenOf(t, one("[garment]\nfibre = \"polyester\"", ""))
	if got := codesOf(poly); !strings.Contains(got, "dyes-migrate") {
		t.Errorf("plastisol on polyester warns %q", got)
	}
	if high := poly.Cure.TemperatureC.High; high != 154 {
		t.Errorf("plastisol on polyester is cured up to %g C; 154 is the most (published, performance fabrics note [44])", high)
	}
	if got := codesOf(screenOf(t, one("[garment]\nfibre = \"nylon\"", "ink = \"water-based\""))); !strings.Contains(got, "fibre-stops") || !strings.Contains(got, "nylon-bond") {
		t.Errorf("water-based on nylon warns %q", got)
	}
	// white or light cloth has no dye to lose, a blocker holds it, and black ink does not show it (common practice)
	for src, want := range map[string]bool{
		one("[garment]\nfibre = \"polyester\"\nshade = \"light\"", ""):                                                                false,
		one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", ""):                                                                 true,
		one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", "swatch = \"#101010\""):                                             false,
		one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", "swatch = \"#f4f4f0\""):                                             true,
		one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", "ink = \"silicone\""):                                               false,
		one("[garment]\nfibre = \"cotton\"\nshade = \"dark\"", ""):                                                                    false,
		one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", "ink = \"blocker\"\nuse = \"blocker\"") + "\n[[location.screen]]\n": false,
	} {
		got := ""
		for _, sc := range planOf(t, src).Locations[0].Screens {
			got += codesOf(sc)
		}
		if strings.Contains(got, "dyes-migrate") != want {
			t.Errorf("%s\nwarns %q; dyes move: %v is wanted", src, got, want)
		}
	}
}

// TestTooHotInk: of inks that share a cure the one that the fibre does not bear is named, and no other; and discharge is
// told where there is no dye of cotton, or not only.
func TestTooHotInk(t *testing.T) {
	screens := planOf(t, one("[garment]\nfibre = \"polyester\"\nshade = \"dark\"", "ink = \"plastisol\"")+"\n[[location.screen]]\nink = \"water-based\"\n").Locations[0].Screens
	if first, second := codesOf(screens[0]), codesOf(screens[1]); strings.Contains(first, "fibre-stops") || !strings.Contains(second, "fibre-stops") {
		t.Errorf("plastisol warns %q, water-based beside it %q; only the second needs more than polyester takes", first, second)
	}
	for fibre, code := range map[string]string{"cotton": "", "polyester": "discharge-none", "nylon": "discharge-none", "blend": "discharge-part", "tri-blend": "discharge-part"} {
		for ink, want := range map[string]string{"discharge": code, "water-based": ""} {
			got := codesOf(screenOf(t, one("[garment]\nfibre = \""+fibre+"\"", "ink = \""+ink+"\"")))
			if want == "" && strings.Contains(got, "discharge-") || !strings.Contains(got, want) {
				t.Errorf("%s on %s warns %q; %q is wanted", ink, fibre, got, want)
			}
		}
	}
}

// TestPressOfTheStock: a job that names no press runs on the first that takes its stock; one that names another is told.
func TestPressOfTheStock(t *testing.T) {
	const carousel, bench, bed = "[[press]]\nname = \"carousel\"\nkind = \"automatic\"\nheads = 8\n", "[[press]]\nname = \"bench\"\nkind = \"manual\"\nheads = 4\n", "[[press]]\nname = \"bed\"\nkind = \"flatbed\"\nheads = 1\n"
	const sheet, garment, row = "[stock]\nkind = \"board\"\n", "[garment]\nfibre = \"cotton\"\n", "[[location]]\n[[location.screen]]\n"
	for name, c := range map[string]struct{ shop, job, press, warns string }{
		"sheets pass by a carousel":     {carousel + bench + bed, sheet, "bed", ""},
		"to a manual press if need be":  {carousel + bench, sheet, "bench", ""},
		"garments pass by a flatbed":    {bed + carousel, garment, "carousel", ""},
		"the first where it will do":    {bench + bed, sheet, "bench", ""},
		"the carousel that a job names": {carousel + bed, "press = \"carousel\"\n" + sheet, "carousel", "press-stock"},
	} {
		p, errs := onShop(t, c.shop, "title = \"t\"\n"+c.job+row)
		if errs != nil {
			t.Errorf("%s: %v", name, errs)
			continue
		}
		got := ""
		for _, w := range p.Locations[0].Warnings {
			got += w.Code
		}
		if p.Press.Name != c.press || got != c.warns {
			t.Errorf("%s: on %s, warns %q; %s and %q are wanted", name, p.Press.Name, got, c.press, c.warns)
		}
	}
}

// TestOneCure: all inks of a garment share one cure, in the longest of their times; two that share none
// are an error that names both; sheets are cured pass by pass.
func TestOneCure(t *testing.T) {
	two := func(first, second string) (*plan.Plan, job.Errors) {
		return onShop(t, "", "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \""+first+"\"\n[[location]]\n[[location.screen]]\nink = \""+second+"\"\n")
	}
	p, errs := two("plastisol", "plastisol puff")
	if errs != nil {
		t.Fatal(errs)
	}
	for _, l := range p.Locations {
		// 149 to 171 C and 155 to 176 C share 155 to 171 C
		if c := l.Screens[0].Cure; *c.TemperatureC != (plan.Interval{Low: 155, High: 171}) || *c.DwellS != (plan.Interval{Low: 45, High: 90}) {
			t.Errorf("%s: %+v %+v; 155 to 171 C in 45 to 90 s", l.Screens[0].Ink, *c.TemperatureC, *c.DwellS)
		}
	}
	_, errs = two("plastisol", "plastisol low-cure")
	if len(errs) != 1 || !strings.Contains(errs[0].Error(), `location 2, screen 1: ink: plastisol cures from 149 C and plastisol low-cure up to 143 C`) {
		t.Errorf("plastisol and low-cure: %v", errs)
	}
}

// TestFlashDoes: each ink sets between two prints in its own way, and no class ends in "never".
func TestFlashDoes(t *testing.T) {
	for class, want := range map[string]string{"plastisol": "gel", "water-based": "dry", "high-solids acrylic": "dry", "silicone": "tack"} {
		src := "title = \"t\"\n[[location]]\n[[location.screen]]\nink = \"" + class + "\"\nuse = \"underbase\"\nfilm = \"5..90 um\"\n[[location.screen]]\nink = \"" + class + "\"\n"
		f := planOf(t, src).Locations[0].Screens[0].Flash
		if f.Does != want || f.Seconds == nil || f.Seconds.Low < 0.5 || (want == "tack") != (f.StartS == nil) {
			t.Errorf("%s: %+v; %s is wanted", class, f, want)
		}
	}
	sheet := planOf(t, "title = \"t\"\n[stock]\nkind = \"paper\"\n[[location]]\n[[location.screen]]\nink = \"uv graphics\"\n")
	if f := sheet.Locations[0].Screens[0].Flash; f.Does != "lamp" || f.Needed {
		t.Errorf("uv graphics: %+v; a lamp", f)
	}
}

// warningOf is the screen's warning of that code; nil where it has none.
func warningOf(s plan.Screen, code string) *plan.Warning {
	for i := range s.Warnings {
		if s.Warnings[i].Code == code {
			return &s.Warnings[i]
		}
	}
	return nil
}

// TestFlashesOfMadeUpJobs: over the screens of all made-up jobs no flash is shorter than a hand can keep, none
// has its start outside its range, and "never" comes with the heat that would do it.
func TestFlashesOfMadeUpJobs(t *testing.T) {
	flashed, never := 0, 0
	for n, m := range madeUp() {
		for _, l := range m.plan.Locations {
			for _, s := range l.Screens {
				f := s.Flash
				if !f.Needed {
					continue
				}
				flashed++
				if f.Seconds == nil {
					never++
					w := warningOf(s, "flash-never")
					if w == nil || !(w.Values["needs_kwm2"] > f.FluxKWM2) {
						t.Errorf("job %d: never, and %+v", n, w)
					}
				} else if s := f.Seconds; s.Low < 0.5 || s.High > 40 || f.StartS != nil && !(s.Low <= *f.StartS && *f.StartS <= s.High) {
					t.Errorf("job %d: flash %+v", n, *s)
				}
			}
		}
	}
	t.Logf("%d screens flashed, %d never", flashed, never)
	if flashed < 120 {
		t.Errorf("only %d screens are flashed", flashed)
	}
}

// TestNoPressIsAnError: a location that no press can take is an error that says what each has.
func TestNoPressIsAnError(t *testing.T) {
	_, errs := onShop(t, "[[press]]\nname = \"small one\"\nkind = \"automatic\"\nheads = 4\n", "title = \"t\"\n[[location]]\nname = \"front\"\n"+strings.Repeat("[[location.screen]]\n", 6))
	if len(errs) != 1 || !strings.Contains(errs[0].Error(), `job.toml:2:1: location "front": screen: no press has the stations`) || !strings.Contains(errs[0].Error(), "small one 4/6") {
		t.Errorf("six screens on four heads: %v", errs)
	}
	// A flatbed would take any number of passes, but prints no garments: the carousel lacks heads.
	_, errs = onShop(t, "[[press]]\nname = \"carousel\"\nkind = \"automatic\"\nheads = 10\n[[press]]\nname = \"bed\"\nkind = \"flatbed\"\nheads = 1\n", "title = \"t\"\n[garment]\nfibre = \"cotton\"\n[[location]]\n"+strings.Repeat("[[location.screen]]\n", 16))
	if len(errs) != 1 || !strings.Contains(errs[0].Error(), "carousel 10/16") || strings.Contains(errs[0].Error(), "bed 1") {
		t.Errorf("sixteen screens on ten heads beside a flatbed: %v", errs)
	}
	// A flatbed alone prints no garments: that is a warning, since the rest of the setup holds.
	p, errs := onShop(t, "[[press]]\nname = \"bed\"\nkind = \"flatbed\"\nheads = 1\n", "title = \"t\"\n[garment]\nfibre = \"cotton\"\n[[location]]\n[[location.screen]]\n[[location.screen]]\n")
	if errs != nil || len(p.Locations[0].Warnings) != 1 || p.Locations[0].Warnings[0].Code != "press-kind" {
		t.Errorf("a garment on a flatbed: %v", errs)
	}
}

// TestHeadsUnknown: a press whose heads the shop file leaves out is not taken for one without heads.
func TestHeadsUnknown(t *testing.T) {
	p, errs := onShop(t, "[[press]]\nname = \"old one\"\nkind = \"automatic\"\n", "title = \"t\"\n[[location]]\n[[location.screen]]\n[[location.screen]]\n")
	if errs != nil || len(p.Locations[0].Presses) != 1 {
		t.Fatalf("%+v, %v", p, errs)
	}
	found := false
	for _, w := range p.Locations[0].Warnings {
		found = found || w.Code == "heads-unknown" && w.Values["heads"] == 2 && w.Names["press"] == "old one"
	}
	if !found {
		t.Errorf("warnings %+v", p.Locations[0].Warnings)
	}
}

// TestImageBeyondTheFrames: an image that no frame takes is an error of the job, at the screen.
func TestImageBeyondTheFrames(t *testing.T) {
	_, errs := onShop(t, "[[mesh]]\nmesh = \"156-64\"\nframe-width = \"30 cm\"\nframe-height = \"30 cm\"\n", one("", ""))
	if len(errs) != 1 || !strings.Contains(errs[0].Error(), "screen 1: mesh: the image, 300 x 350 mm, fits in no frame of the racks; a larger frame") {
		t.Errorf("30 by 35 cm in a frame of 30: %v", errs)
	}
}

// TestFrame: off-contact, tension, and the room beside blade and image.
func TestFrame(t *testing.T) {
	shop := func(inside, tension string) string {
		return "[[mesh]]\nmesh = \"156-64\"\nframe-width = \"" + inside + "\"\nframe-height = \"66 cm\"\ntension = \"" + tension + "\"\n"
	}
	get := func(shopText, src string) plan.Screen {
		p, errs := onShop(t, shopText, src)
		if errs != nil {
			t.Fatal(errs)
		}
		return p.Locations[0].Screens[0]
	}
	s := get(shop("56 cm", "25 N/cm"), one("", "mesh = \"156-64\""))
	// derived: h 3.2 mm on a span of 660 mm, image 350 mm: h^2 (1/155 - 1/505)
	if o := s.OffContact; o.StretchMM == nil || math.Abs(*o.StretchMM-3.2*3.2*(1/155.-1/505.)) > 1e-9 {
		t.Errorf("off-contact %+v", o)
	}
	if codes := codesOf(s); strings.Contains(codes, "frame") || strings.Contains(codes, "tension") {
		t.Errorf("a good frame warns %q", codes)
	}
	if codes := codesOf(get(shop("42 cm", "25 N/cm"), one("", "mesh = \"156-64\""))); !strings.Contains(codes, "frame-narrow") {
		t.Errorf("35 cm of blade in 42 cm: %q", codes)
	}
	if codes := codesOf(get(shop("56 cm", "9 N/cm"), one("", "mesh = \"156-64\""))); !strings.Contains(codes, "tension-restretch") {
		t.Errorf("9 N/cm: %q (published: 10 and less is stretched again)", codes)
	}
	water := get(shop("56 cm", "25 N/cm"), one("", "mesh = \"156-64\"\nink = \"water-based\""))
	if water.OffContact.High != 1.6 {
		t.Errorf("water-based: %+v; 1.6 mm is published", water.OffContact)
	}
}

// TestCautionsFollow: cautions of a flash that is not lit or a press that no motor moves are not shown.
func TestCautionsFollow(t *testing.T) {
	auto := screenOf(t, one("", ""))
	manual := screenOf(t, one("press = \"manual\"", ""))
	has := func(s plan.Screen, code string) bool { return strings.Contains(strings.Join(s.Cautions, " "), code) }
	if !has(auto, "moving-press") || has(manual, "moving-press") || has(auto, "hot-flash") || !has(auto, "hot-dryer") {
		t.Errorf("automatic %v, manual %v", auto.Cautions, manual.Cautions)
	}
	if s := screenOf(t, one("", "ink = \"discharge\"")); !has(s, "discharge-agent") {
		t.Errorf("discharge: %v", s.Cautions)
	}
	if s := screenOf(t, one("", "ink = \"uv graphics\"")); !has(s, "uv-lamp") || s.Cure.By != "light" {
		t.Errorf("uv graphics: %v, cured by %s", s.Cautions, s.Cure.By)
	}
	if s := screenOf(t, one("", "ink = \"solvent graphics\"")); !has(s, "solvent") || !has(s, "flammable") {
		t.Errorf("solvent graphics: %v", s.Cautions)
	}
}

// TestMoreCoverageMoreInk, and the run is the sum of its prints, waste and what stays.
func TestMoreCoverageMoreInk(t *testing.T) {
	at := func(coverage string) plan.Screen {
		return screenOf(t, one("quantity = 100", "mesh = \"156-64\"\ncoverage = \""+coverage+"\""))
	}
	little, much := at("10 %"), at("40 %")
	if !(*much.InkGPerPrint > *little.InkGPerPrint && *much.InkGRun > *little.InkGRun) {
		t.Errorf("10 %%: %g g; 40 %%: %g g", *little.InkGPerPrint, *much.InkGPerPrint)
	}
	if want := *much.InkGPerPrint*100*1.1 + 150; math.Abs(*much.InkGRun-want) > 1e-9 {
		t.Errorf("run of %g g; %g is wanted", *much.InkGRun, want)
	}
	// what sinks into bare cloth, 10 to 15 um (from memory), is printed too
	w, wet := *much.WeighG, much.WetUM
	perUM := w.Value / (wet.Value + 12.5)
	low, high := wet.Value+12.5-math.Hypot(wet.Value-wet.Low, 2.5), wet.Value+12.5+math.Hypot(wet.High-wet.Value, 2.5)
	if w.Value != *much.InkGPerPrint || much.SinksUM != 12.5 || math.Abs(w.Low/perUM-low) > 1e-9 || math.Abs(w.High/perUM-high) > 1e-9 {
		t.Errorf("a print weighs %v more; its band must be that of the wet film, %v, and of what sinks in", w, wet)
	}
	for side, weighs := range map[string]bool{"8": false, "20": true} { // cm: less than a scale tells of a shirt is not weighed
		s := planOf(t, "title = \"t\"\n[[location]]\nwidth = \""+side+" cm\"\nheight = \""+side+" cm\"\n[[location.screen]]\ncoverage = \"50 %\"\n").Locations[0].Screens[0]
		if s.InkGPerPrint == nil || (s.WeighG != nil) != weighs {
			t.Errorf("%s cm wide: %v g a print, weighed %v", side, *s.InkGPerPrint, s.WeighG)
		}
	}
	// a comb reads the last of several hits, and the flash between them has dried what is weighed of water-based ink
	for name, weighs := range map[string]bool{"plastisol": true, "water-based": false} {
		s := planOf(t, "title = \"t\"\n[[location]]\nwidth = \"30 cm\"\nheight = \"30 cm\"\n[[location.screen]]\nink = \""+name+"\"\nhits = 2\ncoverage = \"50 %\"\n").Locations[0].Screens[0]
		if math.Abs(s.CombUM.Value-s.WetUM.Value/2) > 1e-9 || math.Abs(s.CombUM.High-s.WetUM.High/2) > 1e-9 || (s.WeighG != nil) != weighs {
			t.Errorf("%s, 2 hits of %v um together: comb %v, scale %v", name, s.WetUM, s.CombUM, s.WeighG)
		}
	}
	based := planOf(t, "title = \"t\"\n[[location]]\nwidth = \"20 cm\"\nheight = \"20 cm\"\n[[location.screen]]\nuse = \"underbase\"\n[[location.screen]]\ncoverage = \"30 %\"\n").Locations[0].Screens[1]
	if based.SinksUM != 0 {
		t.Errorf("%g um sink into a base; none do", based.SinksUM)
	}
}

// TestEquivalentsAreEqual: an equivalent put into the job file gives its film, inside the band.
func TestEquivalentsAreEqual(t *testing.T) {
	const base = "ink = \"plastisol\"\neom = \"12 um\"\n"
	s := screenOf(t, one("", base+"mesh = \"156-64\""))
	if len(s.Equivalents) < 4 {
		t.Errorf("equivalents %+v; every other blade of the rack does it", s.Equivalents)
	}
	for _, e := range s.Equivalents {
		got := screenOf(t, one("", base+"mesh = \""+e.Mesh+"\"\nblade = \""+e.Blade+"\"\nangle = "+jsonNumber(e.AngleDeg)+"\nstrokes = "+itoa(e.Strokes)+"\nhits = "+itoa(e.Hits)))
		if math.Abs(got.CuredUM.Value-e.CuredUM) > 1e-9*e.CuredUM || !got.MeetsAll {
			t.Errorf("%+v gives %g um, all demands met: %v", e, got.CuredUM.Value, got.MeetsAll)
		}
		if !(e.CuredUM >= s.CuredUM.Low && e.CuredUM <= s.CuredUM.High) {
			t.Errorf("%+v is outside the band %+v", e, s.CuredUM)
		}
	}
}

// TestPlacement: as the job says, else as the name says, else none.
func TestPlacement(t *testing.T) {
	at := func(location string) *plan.Placement {
		return planOf(t, "title = \"t\"\n[[location]]\n"+location+"\n[[location.screen]]\n").Locations[0].Placement
	}
	if p := at(`name = "Left chest"`); p == nil || p.Place != "left-chest" || !p.Left || p.AcrossMM == nil || p.DownFrom != "custom" {
		t.Errorf("left chest by name: %+v", p)
	}
	if p := at("name = \"crest\"\nplace = \"left-chest\"\ndown = \"8 cm\"\nacross = \"9 cm\""); p == nil || p.DownMM != (plan.Interval{Low: 80, High: 80}) || p.AcrossMM.Low != 90 || p.DownFrom != "job" {
		t.Errorf("by the job's keys: %+v", p)
	}
	if p := at(`name = "somewhere"`); p != nil {
		t.Errorf("an unknown name: %+v", p)
	}
	if p := planOf(t, "title = \"t\"\n[stock]\nkind = \"paper\"\n[[location]]\nname = \"full front\"\n[[location.screen]]\n").Locations[0].Placement; p != nil {
		t.Errorf("on a sheet: %+v", p)
	}
	for outline, from := range map[string]string{"hood": "custom", "cap": "", "tote": "", "apron": ""} { // guides count from a collar
		on := func(location string) *plan.Plan {
			return planOf(t, "title = \"t\"\n[garment]\noutline = \""+outline+"\"\n[[location]]\n"+location+"\n[[location.screen]]\n")
		}
		p := on(`name = "full front"`)
		if got := p.Locations[0].Placement; got == nil || got.DownFrom != from || (got.DownMM == plan.Interval{}) != (from == "") || p.Substrate.Outline != outline {
			t.Errorf("%s: placed %+v", outline, got)
		}
		if got := on("name = \"x\"\nplace = \"full-front\"\ndown = \"5 cm\"").Locations[0].Placement; got == nil || got.DownFrom != "job" || got.DownMM.Low != 50 {
			t.Errorf("%s: 5 cm down: %+v", outline, got)
		}
		if got := on("name = \"left sleeve\"\ndown = \"3 cm\"").Locations[0].Placement; (got != nil) != (from != "") {
			t.Errorf("%s: on its sleeve: %+v", outline, got)
		}
	}
}

// TestOneTop: a garment goes through the dryer once, so that none of its screens may pass what the most delicate ink,
// or the cloth, bears.
func TestOneTop(t *testing.T) {
	for _, c := range []struct {
		fibre, second string
		top           float64
	}{
		{"cotton", "plastisol", 0},
		{"cotton", "plastisol puff", 176},
		{"polyester", "plastisol puff", 154},
		{"polyester", "discharge", 154},
	} {
		p := planOf(t, "title = \"t\"\n[garment]\nfibre = \""+c.fibre+"\"\n[[location]]\n[[location.screen]]\nink = \"plastisol\"\n[[location.screen]]\nink = \""+c.second+"\"\n")
		for _, s := range p.Locations[0].Screens {
			if s.Cure.TopC != c.top {
				t.Errorf("plastisol and %s on %s: screen %d never above %g C, want %g", c.second, c.fibre, s.Number, s.Cure.TopC, c.top)
			}
		}
	}
}
