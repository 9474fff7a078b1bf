package file

import (
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
	"bladecard/calc/unit"
	"bladecard/templates"
)

func TestBuiltInShop(t *testing.T) {
	s := BuiltInShop()
	if s.Units != "metric" || s.Paper != "a4" || s.Language != "en" {
		t.Errorf("units %q, paper %q, language %q", s.Units, s.Paper, s.Language)
	}
	if len(s.Blades) < 5 || len(s.Meshes) < 9 || len(s.Presses) != 2 || len(s.Flashes) != 1 || len(s.Dryers) != 1 || len(s.Inks) < 11 {
		t.Errorf("%d blades, %d meshes, %d presses, %d flashes, %d dryers, %d inks", len(s.Blades), len(s.Meshes), len(s.Presses), len(s.Flashes), len(s.Dryers), len(s.Inks))
	}
	if p, ok := s.FindPress(""); !ok || p.Kind != "automatic" || p.Flood == nil || !*p.Flood || p.LoadNPerCM != 5 || p.StrokeMPerS != 0.3 {
		t.Errorf("the first press is %+v", p)
	}
	for _, b := range s.Blades {
		sum := 0.0
		for _, l := range b.LayersMM {
			sum += l
		}
		if b.Name != b.Layup || len(b.Hardness) != len(b.LayersMM) || !(sum > 9.499 && sum < 9.501) || b.FreeHeightMM != 25 || b.Edge != "new" || len(b.LengthsMM) < 5 || b.Count < 1 {
			t.Errorf("blade %+v", b)
		}
	}
	for i, m := range s.Meshes {
		if !m.OnRack || m.ThreadUM == 0 || m.Weave != "plain" || m.TensionNPerCM < 25 || m.FrameWidthMM != 510 || i > 0 && m.CountPerInch < s.Meshes[i-1].CountPerInch {
			t.Errorf("mesh %+v", m)
		}
	}
	if s == BuiltInShop() || &s.Inks[0] == &BuiltInShop().Inks[0] {
		t.Error("two calls share a shop")
	}
}

// Each built-in class has what a plan needs; each mesh that a use names is on the racks.
func TestBuiltInInks(t *testing.T) {
	s := BuiltInShop()
	for _, k := range s.Inks {
		if !(k.Solids > 0 && k.Solids <= 1) || !(k.DensityKgPerL > 0.9 && k.DensityKgPerL < 1.6) || k.Dries == "" || k.On == "" || k.N == 0 || k.EtaInfPaS == 0 || len(k.Cautions) == 0 || len(k.Uses) == 0 {
			t.Errorf("%s lacks something: %+v", k.Name, k)
		}
		if (k.Dries == "fuse") != (k.GelC != nil) || (k.On == "garment") != (k.CureC != nil) || (k.On == "garment") != (k.DwellS != nil) {
			t.Errorf("%s: gel %v, cure %v, dwell %v", k.Name, k.GelC, k.CureC, k.DwellS)
		}
		for use, c := range k.Uses {
			if c.FilmUM == nil || c.EOM == nil || (c.EOM.UM == 0) == (c.EOM.Share == 0) {
				t.Errorf("%s, %s: %+v", k.Name, use, c)
			}
			found := false
			for _, m := range s.Meshes {
				found = found || m.Name == c.Mesh
			}
			if !found {
				t.Errorf("%s, %s: the mesh %q is not on the racks", k.Name, use, c.Mesh)
			}
		}
	}
}

func TestShopWithBladesOnly(t *testing.T) {
	s, errs := DecodeShop("s.toml", []byte("name = \"Corner\"\nunits = \"inch\"\n[[blade]]\nlayup = \"75\"\n"))
	if errs != nil {
		t.Fatal(errs)
	}
	base := BuiltInShop()
	if s.File != "s.toml" || s.Name != "Corner" || s.Units != "inch" || s.Paper != "a4" {
		t.Errorf("%q %q %q %q", s.File, s.Name, s.Units, s.Paper)
	}
	want := job.Blade{Name: "75", Layup: "75", ThicknessMM: 9.5, LayersMM: []float64{9.5}, FreeHeightMM: 25, Count: 1, Edge: "new", Hardness: []float64{75}}
	if !reflect.DeepEqual(s.Blades, []job.Blade{want}) {
		t.Errorf("blades %+v, want %+v", s.Blades, want)
	}
	for name, pair := range map[string][2]any{"meshes": {s.Meshes, base.Meshes}, "presses": {s.Presses, base.Presses}, "flashes": {s.Flashes, base.Flashes}, "dryers": {s.Dryers, base.Dryers}, "inks": {s.Inks, base.Inks}} {
		if !reflect.DeepEqual(pair[0], pair[1]) {
			t.Errorf("%s are not the built-in ones", name)
		}
	}
	if kinds := []string{"mesh", "press", "flash", "dryer"}; !reflect.DeepEqual(s.BuiltIn, kinds) {
		t.Errorf("built in are %q, want %q", s.BuiltIn, kinds)
	}
}

func TestEmptyShopIsBuiltIn(t *testing.T) {
	s, errs := DecodeShop("built-in shop", nil)
	if errs != nil || !reflect.DeepEqual(s, BuiltInShop()) {
		t.Errorf("an empty shop file gives another shop, errors %v", errs)
	}
}

func TestWholeShop(t *testing.T) {
	src := `
name = "Corner"
[[blade]]
name = "old 60"
layup = "65/90/65"
layers = ["3 mm", "4 mm", "3 mm"]
free-height = "1 in"
lengths = ["12 in", "35 cm"]
count = 0
edge = "worn"
modulus = ["5 MPa", "20 MPa", "700 psi"]
[[mesh]]
mesh = "61/cm-64"
opening = "90 um"
fabric = "100 um"
weave = "twill"
[[press]]
name = "p"
kind = "flatbed"
flood = false
[[flash]]
name = "f"
flux = "12 kW/m2"
[[dryer]]
name = "d"
top-temperature = "400 F"
belt-speed = "1..12 ft/min"
[calibration]
factor = 1.1
scatter = 0.12
count = 14
date = 2026-11-02
`
	s, errs := DecodeShop("s.toml", []byte(src))
	if errs != nil {
		t.Fatal(errs)
	}
	b := s.Blades[0]
	if b.ThicknessMM != 10 || b.FreeHeightMM != 25.4 || !reflect.DeepEqual(b.LengthsMM, []float64{304.8, 350}) || b.Count != 0 || b.Edge != "worn" || !(b.ModulusMPa[2] > 4.826 && b.ModulusMPa[2] < 4.827) {
		t.Errorf("blade %+v", b)
	}
	if m := s.Meshes[0]; m.CountPerInch != 61*2.54 || m.ThreadUM != 64 || m.OpeningUM != 90 || m.Weave != "twill" {
		t.Errorf("mesh %+v", m)
	}
	if p := s.Presses[0]; *p.Flood || p.LoadNPerCM != 5 || p.StrokeMPerS != 0.3 {
		t.Errorf("press %+v", p)
	}
	if f, d := s.Flashes[0], s.Dryers[0]; f.Kind != "panel" || f.FluxKWM2 != 12 || !(d.MaxC > 204.44 && d.MaxC < 204.45) || d.BeltMPerMin.Low != 0.3048 {
		t.Errorf("flash %+v, dryer %+v", f, d)
	}
	if want := (job.Calibration{Factor: 1.1, Error: 0.12, Scatter: 0.12, Day: 0.08, Count: 14, Date: job.Date{Year: 2026, Month: 11, Day: 2}, MeanDeg: 15, MeanShoreA: 70,
		AngleError: 0.0305, HardnessError: 0.04, NextStroke: 0.4, NextStrokeError: 0.2}); !reflect.DeepEqual(*s.Calibration, want) {
		t.Errorf("calibration %+v", s.Calibration)
	}
}

func TestInkClasses(t *testing.T) {
	src := `
[[ink]]
name = "plastisol"
density = "1.25 kg/L"
consistency = "0 Pa.s^n"
[[ink]]
name = "our white"
like = "our base"
solids = "90 %"
[[ink]]
name = "our base"
like = "plastisol"
[ink.use.solid]
film = "20..30 um"
[[ink]]
name = "mud"
solids = "50 %"
density = "1.5 kg/L"
dries = "water"
`
	s, errs := DecodeShop("s.toml", []byte(src))
	if errs != nil {
		t.Fatal(errs)
	}
	base, _ := BuiltInShop().FindInk("plastisol")
	plastisol, _ := s.FindInk("plastisol")
	if plastisol.DensityKgPerL != 1.25 || plastisol.KPaSn != 0 || plastisol.Solids != base.Solids || !reflect.DeepEqual(plastisol.Uses, base.Uses) {
		t.Errorf("plastisol %+v", plastisol)
	}
	white, _ := s.FindInk("our white")
	if white.DensityKgPerL != 1.25 || white.KPaSn != 0 || white.Solids != 0.9 || *white.CureC != *base.CureC {
		t.Errorf("our white %+v", white)
	}
	if solid := white.Uses["solid"]; *solid.FilmUM != (job.Range{Low: 20, High: 30}) || solid.Mesh != base.Uses["solid"].Mesh || white.Uses["halftone"] == nil {
		t.Errorf("our white, solid %+v", solid)
	}
	if mud, ok := s.FindInk("mud"); !ok || mud.EtaInfPaS != 3 || mud.KPaSn != 50 || mud.N != 0.5 || mud.On != "garment" {
		t.Errorf("mud %+v", mud)
	}
	if n := len(BuiltInShop().Inks) + 3; len(s.Inks) != n {
		t.Errorf("%d classes, want %d", len(s.Inks), n)
	}
	white.CureC.Low = 1 // the classes must not share what they point to
	if again, _ := s.FindInk("our base"); again.CureC.Low == 1 || plastisol.CureC.Low == 1 {
		t.Error("two classes share a range")
	}
}

func TestShopErrors(t *testing.T) {
	const layup = `the Shore A hardness of the layers, 40 to 95 each, is accepted, such as "70" or "65/90/65"`
	for _, c := range []struct{ src, want string }{
		{"[[blade]]\n", `s.toml:1:1: blade 1: layup: is missing; ` + layup},
		{"[[blade]]\nlayup = \"65/100/65\"", `s.toml:2:9: blade 1: layup: "65/100/65" has a layer of 100 Shore A; ` + layup},
		{"[[blade]]\nlayup = \"red\"", `s.toml:2:9: blade 1: layup: "red" is not a layup; ` + layup},
		{"[[blade]]\nname = \"soft\"\nlayup = \"60\"\nlayers = [\"3 mm\", \"3 mm\"]", `s.toml:4:10: blade "soft": layers: has 2 entries, and the layup "60" has 1 layers; one entry for each layer is accepted`},
		{"[[blade]]\nlayup = \"60/90\"\nthickness = \"9 mm\"\nlayers = [\"3 mm\", \"3 mm\"]", `s.toml:4:10: blade 1: layers: add up to 6 mm, and the thickness is 9 mm; layers that add up to the thickness within 5 % are accepted`},
		{"[[blade]]\nlayup = \"60\"\nlengths = [\"30 cm\", 30]", `s.toml:3:21: blade 1: lengths: 30 has no unit; a length such as "30 cm" or "12 in" is accepted, in mm, um, cm, m, in, ft or mil`},
		{"[[blade]]\nlayup = \"60\"\nlengths = \"30 cm\"", `s.toml:3:11: blade 1: lengths: "30 cm" is a text; a list of texts with unit, each such as "30 cm" or "12 in" is accepted, in mm, um, cm, m, in, ft or mil`},
		{"[[blade]]\nlayup = \"60\"\n[[blade]]\nlayup = \"60\"\nedge = \"worn\"", `s.toml:3:1: blade 2: name: the name "60" is taken by another blade of this file; a name of its own is accepted`},
		{"[[blade]]\nlayup = \"60/70/60\"\nlayers = [\"3 mm\", 3, \"3 mm\"]", `s.toml:3:19: blade 1: layers: 3 has no unit; a length such as "3 mm" is accepted, in mm, um, cm, m, in, ft or mil`},
		{"[[blade]]\nlayup = \"60\"\nlayers = [\"0.3 mm\"]", `s.toml:3:10: blade 1: layers: add up to a blade of 0.3 mm; 3 to 25 mm is accepted`},
		{"[[blade]]\nlayup = \"60\"\nthickness = 9.5", `s.toml:3:13: blade 1: thickness: 9.5 has no unit; a length such as "9.5 mm" is accepted, in mm, um, cm, m, in, ft or mil`},
		{"[[dryer]]\nname = \"d\"\nbelt-speed = 3", `s.toml:3:14: dryer "d": belt-speed: 3 is a number; a speed range such as "0.5..4 m/min" is accepted, in m/s, in/s, ft/min or m/min`},
		{"[[mesh]]\nname = \"m\"\nmesh = \"156-64\"", `s.toml:2:1: mesh 1: name: is not a key of this table; accepted are mesh, opening, fabric, weave, frame-width, frame-height or tension`},
		{"[[mesh]]\nmesh = \"156\"", `s.toml:2:8: mesh 1: mesh: "156" does not say the thread; ` + job.AcceptedMesh},
		{"[[mesh]]\nmesh = \"156-64\"\nopening = \"163 um\"", `s.toml:3:11: mesh 1: opening: 163 um is not smaller than the pitch of 156-64, 162.821 um; an opening below the pitch is accepted`},
		{"[[mesh]]\nmesh = \"156-64\"\nfabric = \"60 um\"", `s.toml:3:10: mesh 1: fabric: 60 um is thinner than the thread, 64 um; a fabric at least as thick as its thread is accepted`},
		{"[[press]]\nname = \"p\"\nkind = \"robot\"", `s.toml:3:8: press "p": kind: "robot" is not known; "manual", "automatic" or "flatbed" is accepted`},
		{"[[press]]\nname = \"p\"\nkind = \"manual\"\nflood = 1", `s.toml:4:9: press "p": flood: 1 is a number; true or false is accepted`},
		{"language = \"xx\"", `s.toml:1:12: language: the program has no language "xx"; ` + acceptedLanguage()},
		{"[calibration]\nfactor = inf\nscatter = 0.1\ncount = 3", `s.toml:2:10: calibration.factor: +Inf is not a finite number; a number without quotes is accepted, 0.2 to 5`},
		{"[calibration]\nfactor = \"1\"\nscatter = 0.1\ncount = 3", `s.toml:2:10: calibration.factor: "1" is a text; a number without quotes is accepted, 0.2 to 5`},
		{"[[ink]]\nname = \"a\"\nlike = \"plastisoll\"", `s.toml:3:8: ink "a": like: the ink class "plastisoll" is not known; did you mean "plastisol"? accepted are: ` + strings.Join(words.Quoted(words.Names(BuiltInShop().Inks, func(x *job.Ink) string { return x.Name })), ", ")},
		{"[[ink]]\nname = \"a\"\nsolids = \"50 %\"\ndensity = \"1 kg/L\"", `s.toml:1:1: ink "a": dries: is missing; "fuse", "water", "solvent", "uv" or "react" is accepted, or like = "plastisol" to take the figures of that class`},
		{"[[ink]]\nname = \"a\"\nlike = \"b\"\n[[ink]]\nname = \"b\"\nlike = \"a\"", `s.toml:6:8: ink "b": like: "a" leads back to this class; a class that does not is accepted`},
		{"[[ink]]\nname = \"a\"\nlike = \"a\"", `s.toml:3:8: ink "a": like: the ink class "a" is not known; accepted are: ` + strings.Join(words.Quoted(words.Names(BuiltInShop().Inks, func(x *job.Ink) string { return x.Name })), ", ")},
		{"[[ink]]\nname = \"plastisol\"\ncure-top = \"150 C\"", `s.toml:3:12: ink "plastisol": cure-top: 150 C is below the top of the cure range, 171 C; a temperature at or above the cure range is accepted: state cure too`},
		{"[[ink]]\nname = \"plastisol\"\ngel = \"180..190 C\"", `s.toml:3:7: ink "plastisol": gel: starts at 180 C, above the cure range, which ends at 171 C; a gel temperature below the cure range is accepted`},
		{"[[ink]]\nname = \"plastisol\"\ncautions = [\"fumes\"]", `s.toml:3:13: ink "plastisol": cautions: "fumes" is not known; did you mean "fume"? a list of these is accepted: "hot-flash", "hot-dryer", "fume", "moving-press", "solvent", "discharge-agent", "uv-lamp", "uv-skin", "flammable"`},
		{"[[ink]]\nname = \"plastisol\"\nuse.solit.film = \"1..2 um\"", `s.toml:3:5: ink "plastisol": use.solit: is not a key of this table; did you mean solid? accepted are underbase, solid, detail, halftone, highlight, blocker, raised or clear`},
		{"[[ink]]\nname = \"plastisol\"\nuse.solid.film = \"2 um\"", `s.toml:3:18: ink "plastisol": use.solid.film: "2 um" is not a range; a length range such as "45..70 um" is accepted, in mm, um, cm, m, in, ft or mil`},
	} {
		if _, errs := DecodeShop("s.toml", []byte(c.src)); errs.Error() != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.src, errs.Error(), c.want)
		}
	}
}

func acceptedLanguage() string {
	_, accepted := languageForm("")
	return accepted
}

// The tags of all types are sound: each field can be read, units are known, ranges run upward,
// defaults are accepted, forms and excluded keys exist.
func TestTags(t *testing.T) {
	english, err := templates.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	asked := map[string]bool{}
	eachField(t, func(typ reflect.Type, f field) {
		var b binder
		v := reflect.New(typ).Elem()
		where := typ.Name() + "." + f.key
		if f.key != strings.ToLower(f.key) || !(f.min <= f.max) {
			t.Errorf("%s: range %v to %v", where, f.min, f.max)
		}
		asked[f.text] = true
		if english[f.text] == "" {
			t.Errorf("%s: the languages do not say what it means under %s", where, f.text)
		}
		if f.unit != "" && unit.Accepted(f.unit) == "" {
			t.Errorf("%s: the unit %q is not known", where, f.unit)
		}
		if f.form != "" && f.form != "path" && f.form != "ink" && forms[f.form].check == nil {
			t.Errorf("%s: the form %q is not known", where, f.form)
		}
		if f.excludes != "" && !words.Has(keysOf(fieldsOf(typ)), f.excludes) {
			t.Errorf("%s: excludes %q, which is no key", where, f.excludes)
		}
		accepted := f.accepted()
		if accepted == "" {
			t.Errorf("%s: nothing is accepted", where)
		}
		if example, ok := exampleIn(accepted); ok && f.unit != "" {
			sample := reflect.New(v.Field(f.index).Type()).Elem()
			var raw any = example
			if sample.Kind() == reflect.Slice {
				raw = []any{example}
			}
			var try binder
			if (slot{binder: &try, f: &f}).fill(sample, raw); len(try.errs) > 0 {
				t.Errorf("%s: the example %q is not accepted: %v", where, example, try.errs)
			}
		} else if f.unit != "" {
			t.Errorf("%s: no example in %q", where, accepted)
		}
		if e := v.Field(f.index).Type(); e.Kind() == reflect.Slice && e.Elem().Kind() == reflect.Struct && words.Has(nameless, f.key) == words.Has(keysOf(fieldsOf(e.Elem())), "name") {
			t.Errorf("%s: entries with a key name, or nameless, and not both", where)
		}
		if f.preset != "" {
			b.preset(v.Field(f.index), &f) // panics when the default is not accepted
		}
		slot{binder: &b, f: &f}.fill(v.Field(f.index), []any{}) // panics when there is no way to read the type
	})
	for text := range english {
		if key, is := strings.CutPrefix(text, "key."); is && !asked[text] && key != "range" && !strings.HasPrefix(key, "file.") {
			t.Errorf("%s stands in the languages, and no file has that key", text)
		}
	}
}

// exampleIn is the first text in quotes behind "such as".
func exampleIn(accepted string) (string, bool) {
	_, rest, ok := strings.Cut(accepted, " such as ")
	if !ok {
		return "", false
	}
	_, rest, ok = strings.Cut(rest, `"`)
	example, _, closed := strings.Cut(rest, `"`)
	return example, ok && closed
}

// Both lists of a blade that lack entries are reported, each at its place; blanks in a layup do
// not make it another one.
// TestMeshThatNobodyComputes: a cloth outside what geometry tells is the shop's error, at its line.
func TestMeshThatNobodyComputes(t *testing.T) {
	_, errs := DecodeShop("s.toml", []byte("[[mesh]]\nmesh = \"156-64\"\n[[mesh]]\nmesh = \"40-30\"\n"))
	if len(errs) != 1 || !strings.HasPrefix(errs[0].Error(), `s.toml:4:8: mesh 2: mesh: "40-30" cannot be computed: thread/pitch`) {
		t.Errorf("%v", errs)
	}
	if _, errs := DecodeShop("s.toml", []byte("[[mesh]]\nmesh = \"40-30\"\nfabric = \"60 um\"\n")); errs != nil {
		t.Errorf("with its measured thickness: %v", errs)
	}
}

func TestBladeLists(t *testing.T) {
	_, errs := DecodeShop("s.toml", []byte("[[blade]]\nlayup = \"60/70\"\nmodulus = [\"3 MPa\"]\nlayers = [\"3 mm\"]"))
	want := `s.toml:3:11: blade 1: modulus: has 1 entries, and the layup "60/70" has 2 layers; one entry for each layer is accepted
s.toml:4:10: blade 1: layers: has 1 entries, and the layup "60/70" has 2 layers; one entry for each layer is accepted`
	if errs.Error() != want {
		t.Errorf("got\n%s\nwant\n%s", errs.Error(), want)
	}
	s, errs := DecodeShop("s.toml", []byte("[[blade]]\nlayup = \" 65 / 90/ 65\"\n"))
	if errs != nil || s.Blades[0].Layup != "65/90/65" || s.Blades[0].Name != "65/90/65" {
		t.Errorf("blade %+v, errors %v", s.Blades[0], errs)
	}
	if b := s.FindBlades("65 /90/65"); len(b) != 1 || len(b[0].Hardness) != 3 {
		t.Errorf("blades %+v", b)
	}
}

func FuzzDecodeShop(f *testing.F) {
	for _, s := range []string{"[[blade]]\nlayup = \"65/90/65\"\nlayers = [\"3 mm\"]", "[[ink]]\nname = \"a\"\nlike = \"a\"", "[[ink]]\nlike=\"plastisol\"\nuse.solid = 1\n[[ink]]\nname='plastisol'\nuse={}", "[[mesh]]\nmesh='156-64'\nopening='1 mm'", "ink=[{name='x',use.solid.eom='5 %'}]", "[calibration]\nfactor=nan"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		s, errs := DecodeShop("s.toml", src)
		if s == nil && len(errs) == 0 {
			t.Fatal("neither a shop nor an error")
		}
		for _, e := range errs {
			if e.Line < 1 || e.Col < 1 || e.Wrong == "" || strings.ContainsAny(e.Error(), "\n\r") {
				t.Fatalf("a bad error: %#v", e)
			}
		}
		if s != nil {
			j, _ := DecodeJob("j.toml", []byte(inScreen(`mesh = "156"`)))
			job.Resolve(j, s)
		}
	})
}
