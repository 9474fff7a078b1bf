package file

import (
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/job"
)

const least = "title = \"t\"\n[[location]]\n[[location.screen]]\n"

// inScreen is a job whose one screen has one line more, line 5.
func inScreen(line string) string {
	return "title = \"t\"\n[[location]]\nname = \"full front\"\n[[location.screen]]\n" + line + "\n"
}

const screenAt = `location "full front", screen 1: `

func TestLeastJob(t *testing.T) {
	j, errs := DecodeJob("j.toml", []byte(least))
	if errs != nil {
		t.Fatal(errs)
	}
	if errs := job.Resolve(j, BuiltInShop()); errs != nil {
		t.Fatal(errs)
	}
	s := &j.Locations[0].Screens[0]
	if j.Locations[0].Name != "location 1" || j.Locations[0].WidthMM != 0 || s.Ink == nil || s.Ink.Name != "plastisol" || s.Mesh != nil || s.Blades != nil {
		t.Errorf("the least job is %+v, screen %+v", j, s)
	}
	if s.Pos != (job.Pos{File: "j.toml", Line: 3, Col: 1}) || j.Locations[0].Pos != (job.Pos{File: "j.toml", Line: 2, Col: 1}) {
		t.Errorf("screen at %v, location at %v", s.Pos, j.Locations[0].Pos)
	}
}

// Each key of a job, once in metric and once in inch units.
func TestWholeJob(t *testing.T) {
	src := `
job = "2417"
title = """Lakeside
  regatta"""
customer = "Lakeside Rowing Club"
quantity = 288
due = 2026-12-04
shop = "shop.toml"
press = "manual"
[garment]
name = "ring-spun tee, navy"
fibre = "cotton"
shade = "dark"
[[location]]
name = "full front"
width = "12 in"
height = "35 cm"
[[location.screen]]
color = "white"
swatch = "#f7f7f2"
ink = "plastisol white"
use = "underbase"
mesh = "156-64"
eom = "20 %"
halftone = { lines = "18 l/cm", angle = 22.5, smallest = "5 %" }
feature = "0.1 in"
finest = "0.5 mm"
coverage = "38 %"
film = "1.5..3 mil"
blade = "65/90/65"
strokes = 2
angle = "15 deg"
load = "3 lbf/in"
[[location.screen]]
bitmap = "300 dpi"
eom = "1 mil"
`
	j, errs := DecodeJob("j.toml", []byte(src))
	if errs != nil {
		t.Fatal(errs)
	}
	if errs := job.Resolve(j, BuiltInShop()); errs != nil {
		t.Fatal(errs)
	}
	l := j.Locations[0]
	s := l.Screens[0]
	for _, c := range []struct{ name, got, want any }{
		{"number", j.Number, "2417"}, {"title", j.Title, "Lakeside regatta"}, {"due", j.Due, job.Date{Year: 2026, Month: 12, Day: 4}}, {"quantity", j.Quantity, 288},
		{"garment", *j.Garment, job.Garment{Name: "ring-spun tee, navy", Fibre: "cotton", Weave: "knit", Shade: "dark"}}, {"width", l.WidthMM, 304.8}, {"height", l.HeightMM, 350.0},
		{"eom", *s.EOM, job.EOM{Share: 0.2}}, {"lines", s.Halftone.LinesPerInch, 45.72}, {"halftone angle", *s.Halftone.AngleDeg, 22.5},
		{"smallest", s.Halftone.Smallest, 0.05}, {"feature", s.FeatureMM, 2.54}, {"finest", s.FinestMM, 0.5}, {"coverage", s.Coverage, 0.38},
		{"film", *s.FilmUM, job.Range{Low: 38.1, High: 76.2}}, {"strokes", s.Strokes, 2}, {"angle", *s.AngleDeg, 15.0},
		{"ink", s.Ink.Name, "plastisol white"}, {"mesh", s.Mesh.OnRack, true}, {"mesh count", s.Mesh.CountPerInch, 156.0}, {"blade", s.Blades[0].Layup, "65/90/65"},
		{"dpi", l.Screens[1].BitmapDPI, 300.0}, {"eom of screen 2", *l.Screens[1].EOM, job.EOM{UM: 25.4}},
	} {
		if !reflect.DeepEqual(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if !(s.LoadNCM > 5.2538 && s.LoadNCM < 5.2539) { // 3 x 4.4482216152605/2.54, exact factors
		t.Errorf("load %v N/cm", s.LoadNCM)
	}
}

// TestWhereItIs: what breaks a file is told where it stands, by its name.
func TestWhereItIs(t *testing.T) {
	const utf8 = "; UTF-8 is accepted: save the file as UTF-8"
	for src, want := range map[string]string{
		"title = \"t\"\n[[location]]\nname = \"full front\nwidth = \"30 cm\"\n": "j.toml:3:8: this quote is not closed on its line; a text with a quote at each end is accepted",
		"title = '''t\n[[location]]\n":                                          "j.toml:1:9: this quote is never closed; a text with a quote at each end is accepted",
		"title = \"Crew, caf\xe9\"\n":                                           "j.toml:1:19: the byte 0xe9 is not UTF-8" + utf8,
		"\xff\xfe\x00\x00t\x00\x00\x00":                                         "j.toml:1:1: the file is UTF-32" + utf8,
		"\x00\x00\xfe\xff\x00\x00\x00t":                                         "j.toml:1:1: the file is UTF-32" + utf8,
		"\xff\xfet\x00":                                                         "j.toml:1:1: the file is UTF-16" + utf8,
		"title = \"t\"\nquantity = 2\x00\n":                                     "j.toml:2:13: there is a NUL byte: this is no text file, or one with two bytes a letter" + utf8,
		inScreen("strokes = 2.0"):                                               `j.toml:5:11: location "full front", screen 1: strokes: 2 is written with a point; a whole number without quotes is accepted, 1 to 6`,
	} {
		if _, errs := DecodeJob("j.toml", []byte(src)); len(errs) != 1 || errs[0].Error() != want {
			t.Errorf("%q: %v; want %s", src, errs, want)
		}
	}
	j, errs := DecodeJob("j.toml", []byte("title = \"t\"\n[[location]]\nwidth = \"11 1/2 in\"\nheight = \"3/4 in\"\n[[location.screen]]\n"))
	if errs != nil || j.Locations[0].WidthMM != 292.1 || j.Locations[0].HeightMM != 19.05 {
		t.Errorf("fractions of an inch: %+v, %v", j, errs)
	}
}

// TestFlashWish: the three words of the key, and what is none of them.
func TestFlashWish(t *testing.T) {
	for text, want := range map[string]job.FlashWish{"true": job.FlashYes, "false": job.FlashNo, `"dry"`: job.FlashDry} {
		j, errs := DecodeJob("j.toml", []byte(inScreen("flash = "+text)))
		if errs != nil || j.Locations[0].Screens[0].FlashWish != want {
			t.Errorf("flash = %s: %q, %v", text, j.Locations[0].Screens[0].FlashWish, errs)
		}
	}
	for _, bad := range []string{`"yes"`, "1", `"3 s"`, `"Dry"`, "[true]"} {
		_, errs := DecodeJob("j.toml", []byte(inScreen("flash = "+bad)))
		if len(errs) != 1 || !strings.Contains(errs[0].Error(), `j.toml:5:9: location "full front", screen 1: flash: `) || !strings.Contains(errs[0].Error(), `true, false or "dry" is accepted`) {
			t.Errorf("flash = %s: %v", bad, errs)
		}
	}
	if _, errs := DecodeJob("j.toml", []byte(inScreen("flash = false\nhits = 2"))); len(errs) != 1 || !strings.Contains(errs[0].Error(), "hits: 2 hits stand beside flash = false") {
		t.Errorf("two hits without a flash: %v", errs)
	}
}

// One rule a line: the whole error, at its place.
func TestJobErrors(t *testing.T) {
	const uses = `"underbase", "solid", "detail", "halftone", "highlight", "blocker", "raised" or "clear" is accepted`
	const lengths = `, in mm, um, cm, m, in, ft or mil`
	const mesh = `threads per inch and thread in um, "156-64", or threads per cm, "61/cm-64", is accepted, or the count alone, "156", of a mesh on the racks`
	for _, c := range []struct{ src, want string }{
		// keys
		{inScreen(`colour = "red"`), `j.toml:5:1: ` + screenAt + `colour: is not a key of this table; did you mean color? accepted are color, swatch, ink, use, mesh, eom, halftone, bitmap, feature, finest, coverage, film, height, blade, strokes, hits, flash, angle or load`},
		{inScreen(`halftone = { lines = "45 lpi", Angle = 3 }`), `j.toml:5:32: ` + screenAt + `halftone.Angle: is not a key of this table; keys are written in small letters: angle. accepted are lines, angle or smallest`},
		{"title = \"t\"\n\"a b\" = 1\n[[location]]\n[[location.screen]]", `j.toml:2:1: "a b": is not a key of this table; accepted are job, title, customer, quantity, due, shop, press, garment, stock or location`},
		{inScreen(`mesh = "156-64"` + "\n" + `mesh = "230-48"`), `j.toml:6:1: the key "location.screen.mesh" is there already; each key once in a table is accepted`},
		{inScreen("halftone.lines = \"45 lpi\"\nhalftone = 2"), `j.toml:6:1: the key is there already; each key once in a table is accepted`},
		{inScreen("name = \"x\""), `j.toml:5:1: ` + screenAt + `name: is not a key of this table; accepted are color, swatch, ink, use, mesh, eom, halftone, bitmap, feature, finest, coverage, film, height, blade, strokes, hits, flash, angle or load`},
		{"Title = \"t\"\n" + least, `j.toml:1:1: Title: is not a key of this table; keys are written in small letters: title. accepted are job, title, customer, quantity, due, shop, press, garment, stock or location`},
		// missing
		{"[[location]]\n[[location.screen]]", `j.toml:1:1: title: is missing; a text in quotes is accepted`},
		{"title = \" \"\n[[location]]\n[[location.screen]]", `j.toml:1:9: title: is empty; a text in quotes is accepted`},
		{"title = \"t\"", `j.toml:1:1: location: is missing; one or more tables are accepted, each under a header [[...]] that ends in location`},
		{"title = \"t\"\nlocation = []", `j.toml:2:12: location: is empty; one or more tables are accepted, each under a header [[...]] that ends in location`},
		{"title = \"t\"\n[[location]]\nname = \"back\"", `j.toml:2:1: location "back": screen: is missing; one or more tables are accepted, each under a header [[...]] that ends in screen`},
		{inScreen(`halftone = { angle = 3 }`), `j.toml:5:12: ` + screenAt + `halftone.lines: is missing; a line count such as "45 lpi" is accepted, in lpi or l/cm`},
		{inScreen("[location.screen.halftone]\nangle = 3"), `j.toml:5:1: ` + screenAt + `halftone.lines: is missing; a line count such as "45 lpi" is accepted, in lpi or l/cm`},
		{least + "[stock]\nname = \"x\"", `j.toml:4:1: stock.kind: is missing; "paper", "board", "metal", "plastic", "glass" or "wood" is accepted`},
		// types
		{"title = \"t\"\n[location]\n", `j.toml:2:1: location: is a single table; one or more tables are accepted, each under a header [[...]] that ends in location`},
		{"title = \"t\"\nlocation = 3", `j.toml:2:12: location: 3 is a number; one or more tables are accepted, each under a header [[...]] that ends in location`},
		{"job = 2417\n" + least, `j.toml:1:7: job: 2417 is a number; a text in quotes is accepted`},
		{"quantity = \"288\"\n" + least, `j.toml:1:12: quantity: "288" is a text; a whole number without quotes is accepted, 1 to 10000000`},
		{"quantity = 2.5\n" + least, `j.toml:1:12: quantity: 2.5 is written with a point; a whole number without quotes is accepted, 1 to 10000000`},
		{"garment = \"tee\"\n" + least, `j.toml:1:11: garment: "tee" is a text; a table is accepted, with the keys name, fibre, weave, shade or outline`},
		{inScreen(`color = true`), `j.toml:5:9: ` + screenAt + `color: true is a truth value; a text in quotes is accepted`},
		{inScreen(`film = 45`), `j.toml:5:8: ` + screenAt + `film: 45 is a number; a length range such as "45..70 um" is accepted` + lengths},
		{inScreen(`eom = ["20 %"]`), `j.toml:5:7: ` + screenAt + `eom: is a list; ` + acceptedEOM},
		// units
		{inScreen(`load = 20`), `j.toml:5:8: ` + screenAt + `load: 20 has no unit; a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm`},
		{inScreen(`load = "20"`), `j.toml:5:8: ` + screenAt + `load: "20" has no unit; a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm`},
		{inScreen(`coverage = 0.38`), `j.toml:5:12: ` + screenAt + `coverage: 0.38 has no unit; a share such as "38 %" is accepted, in %`},
		{inScreen(`film = "45 um"`), `j.toml:5:8: ` + screenAt + `film: "45 um" is not a range; a length range such as "45..70 um" is accepted` + lengths},
		{inScreen(`film = "70..45 um"`), `j.toml:5:8: ` + screenAt + `film: "70..45 um" runs downward; a length range such as "45..70 um" is accepted` + lengths},
		{inScreen(`eom = 20`), `j.toml:5:7: ` + screenAt + `eom: 20 has no unit; ` + acceptedEOM},
		{inScreen(`eom = "20 lpi"`), `j.toml:5:7: ` + screenAt + `eom: "20 lpi" is not a length; ` + acceptedEOM},
		// range
		{inScreen(`coverage = "101 %"`), `j.toml:5:12: ` + screenAt + `coverage: "101 %" is out of range; 0.1 to 100 % is accepted`},
		{inScreen(`angle = 60.5`), `j.toml:5:9: ` + screenAt + `angle: 60.5 is out of range; 0 to 60 deg is accepted`},
		{inScreen(`angle = nan`), `j.toml:5:9: ` + screenAt + `angle: NaN is not a finite number; an angle such as 22.5 or "22.5 deg" is accepted, in deg`},
		{inScreen(`angle = -inf`), `j.toml:5:9: ` + screenAt + `angle: -Inf is not a finite number; an angle such as 22.5 or "22.5 deg" is accepted, in deg`},
		{inScreen(`strokes = 7`), `j.toml:5:11: ` + screenAt + `strokes: 7 is out of range; a whole number without quotes is accepted, 1 to 6`},
		{inScreen(`film = "0..70 um"`), `j.toml:5:8: ` + screenAt + `film: "0..70 um" is out of range; 1 to 2000 um is accepted`},
		{inScreen(`eom = "0 um"`), `j.toml:5:7: ` + screenAt + `eom: "0 um" is out of range; ` + acceptedEOM},
		{inScreen(`eom = "401 %"`), `j.toml:5:7: ` + screenAt + `eom: "401 %" is out of range; ` + acceptedEOM},
		// words and forms
		{inScreen(`use = "solit"`), `j.toml:5:7: ` + screenAt + `use: "solit" is not known; did you mean "solid"? ` + uses},
		{inScreen(`use = "Solid"`), `j.toml:5:7: ` + screenAt + `use: "Solid" is not known; did you mean "solid"? ` + uses},
		{inScreen(`swatch = "f7f7f2"`), `j.toml:5:10: ` + screenAt + `swatch: "f7f7f2" is not a color; a color such as "#f7f7f2" is accepted, # and six digits of 0-9 and a-f`},
		{inScreen(`swatch = "#f7f7g2"`), `j.toml:5:10: ` + screenAt + `swatch: "#f7f7g2" is not a color; a color such as "#f7f7f2" is accepted, # and six digits of 0-9 and a-f`},
		{inScreen(`mesh = 156`), `j.toml:5:8: ` + screenAt + `mesh: 156 is a number; ` + mesh},
		{inScreen(`mesh = "fine"`), `j.toml:5:8: ` + screenAt + `mesh: "fine" is not a mesh; ` + mesh},
		{inScreen(`mesh = "355-80"`), `j.toml:5:8: ` + screenAt + `mesh: "355-80" has no opening: the thread, 80 um, is not thinner than the pitch, 71.5493 um; ` + mesh},
		{inScreen(`color = "a\u0007"`), `j.toml:5:9: ` + screenAt + `color: holds the control character U+0007; a text in quotes is accepted`},
		{inScreen(`color = "` + strings.Repeat("é", 201) + `"`), `j.toml:5:9: ` + screenAt + `color: has 201 characters; at most 200 are accepted`},
		// dates
		{"due = \"2026-12-04\"\n" + least, `j.toml:1:7: due: "2026-12-04" is a text; a day of 2000 to 2099 without quotes, such as 2026-12-04, is accepted`},
		{"due = 2026-12-04T10:00:00Z\n" + least, `j.toml:1:7: due: is a date or a time; a day of 2000 to 2099 without quotes, such as 2026-12-04, is accepted`},
		{"due = 2026-12-04T10:00:00\n" + least, `j.toml:1:7: due: is a date or a time; a day of 2000 to 2099 without quotes, such as 2026-12-04, is accepted`},
		{"due = 1926-12-04\n" + least, `j.toml:1:7: due: 1926-12-04 is out of range; a day of 2000 to 2099 without quotes, such as 2026-12-04, is accepted`},
		// keys together
		{inScreen("bitmap = \"300 dpi\"\nhalftone.lines = \"45 lpi\""), `j.toml:6:1: ` + screenAt + `halftone: stands beside bitmap; one of the two is accepted`},
		{"garment = {}\nstock = { kind = \"paper\" }\n" + least, `j.toml:1:1: garment: stands beside stock; one of the two is accepted`},
		{inScreen("feature = \"1 mm\"\nfinest = \"2 mm\""), `j.toml:6:10: ` + screenAt + `finest: 2 mm is wider than the typical feature, 1 mm; at most the width of the typical feature is accepted`},
		{"title = \"t\"\n[[location]]\nwidth = \"9 cm\"\nheight = \"5 cm\"\n[[location.screen]]\nfeature = \"1 m\"", `j.toml:6:11: location 1, screen 1: feature: 1000 mm is wider than the location; at most 90 mm is accepted`},
		// syntax
		{"title = \"t", `j.toml:1:9: this quote is never closed; a text with a quote at each end is accepted`},
		{"title = \"é\" x\n", `j.toml:1:12: "x" stands where the line should end; one key with its value on a line is accepted, texts and figures with a unit in quotes, such as "12 in"`},
		{"a=\"\\\n\"", `j.toml:1:4: a backslash stands at the end of the line; \\ for a backslash, \" for a quote, or a text in single quotes is accepted`},
		{"title = \"a\"\r\nx = 09\r\n", `j.toml:2:5: "09" begins with a zero; a plain number is accepted, or a text in quotes`},
	} {
		if _, errs := DecodeJob("j.toml", []byte(c.src)); errs.Error() != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.src, errs.Error(), c.want)
		}
	}
}

// The place of a wrong value, whatever comes before it and however it is written.
func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		name, src string
		line, col int
	}{
		{"first of several tables", "title = \"t\"\n[[location]]\n[[location.screen]]\nstrokes = 9\n[[location.screen]]\nstrokes = 1\n[[location]]\n[[location.screen]]\n", 4, 11},
		{"second of three tables", "title = \"t\"\n[[location]]\n[[location.screen]]\n[[location.screen]]\n  strokes = 9\n[[location.screen]]\n", 5, 13},
		{"first location, after the second began", "title = \"t\"\n[[location]]\nwidth = 9\n[[location.screen]]\n[[location]]\n[[location.screen]]\n", 3, 9},
		{"inline table", "title = \"t\"\nlocation = [{ screen = [{}, { strokes = 9 }] }]", 2, 41},
		{"inline table over lines", "title = \"t\"\nlocation = [\n  { screen = [\n    {},\n    {strokes = 9}] }]", 5, 16},
		{"dotted key", "title = \"t\"\n[[location]]\n[[location.screen]]\nhalftone.lines = \"45 lpi\"\nhalftone . smallest = 9", 5, 23},
		{"quoted key", "title = \"t\"\n[[location]]\n[['location'.\"screen\"]]\n\"strokes\" = 9", 4, 13},
		{"header with spaces", "title = \"t\"\n[[location]]\n  [[ location . screen ]]\n\tstrokes\t=\t9", 4, 12},
		{"after a text of lines", "title = \"\"\"t\nstrokes = 1\n[[location]]\n\"\"\"\n[[location]]\n[[location.screen]]\nstrokes = 9", 7, 11},
		{"after a literal text of lines", "title = '''t\n\n'''\n[[location]]\n[[location.screen]]\nstrokes = 9", 6, 11},
		{"line ends of two bytes", "title = \"t\"\r\n# é\r\n[[location]]\r\n[[location.screen]]\r\nstrokes = 9\r\n", 5, 11},
		{"columns count characters", "title = \"t\"\nlocation = [{ name = \"café µm\", screen = [{ strokes = 9 }] }]", 2, 55},
		{"byte order mark", "\ufeffquantity = 0\n" + least, 1, 12},
		{"long line", "title = \"t\"\nlocation = [{ name = \"" + strings.Repeat("é", 199) + "\", screen = [{ color = \"" + strings.Repeat("ü", 199) + "\", strokes = 9 }] }]", 2, 458},
		{"missing in the second inline table", "title = \"t\"\nlocation = [{ screen = [{}] },\n  { name = \"b\" }, { screen = [{}] }]", 3, 3},
		{"missing in an empty inline table", "title = \"t\"\nlocation = [{ screen = [{}] }, {}]", 2, 32},
		{"missing, key with dots", "title = \"t\"\n[[location]]\n[[location.screen]]\nhalftone.angle = 3", 4, 1},
		{"missing, first of two headers", "title = \"t\"\n[[location]]\n[[location.screen]]\n [location.screen.halftone]\n[[location.screen]]\n[location.screen.halftone]\nlines = \"45 lpi\"", 4, 2},
		{"nan in the first of two tables", "title = \"t\"\n[[location]]\n[[location.screen]]\nangle = nan\n[[location.screen]]\nangle = 15", 4, 9},
		{"two bytes a line end, in a text of lines", "title = \"\"\"t\r\nu\r\n\"\"\"\r\n[[location]]\r\n[[location.screen]]\r\nstrokes = 9\r\n", 6, 11},
		{"byte order mark and two bytes a line end", "\ufeffquantity = 2\r\n# x\r\ndue = 3\r\n" + least, 3, 7},
		{"entry of a list", "title = \"t\"\nlocation = [{ screen = [{}] }, 3]", 2, 12},
	} {
		_, errs := DecodeJob("j.toml", []byte(c.src))
		if len(errs) != 1 || errs[0].Pos != (job.Pos{File: "j.toml", Line: c.line, Col: c.col}) {
			t.Errorf("%s: want one error at %d:%d, got\n%s", c.name, c.line, c.col, errs.Error())
		}
	}
}

func TestAllErrorsAtOnce(t *testing.T) {
	src := `titel = "t"
quantity = 0
[[location]]
name = "full front"
width = 12
[[location.screen]]
mesh = "fine"
ink = "plastisool"
[[location.screen]]
use = "solit"
blade = "75"
[[location]]
[[location.screen]]
mesh = "7/cm"
`
	want := []string{
		`j.toml:1:1: titel: is not`, `j.toml:1:1: title: is missing`, `j.toml:2:12: quantity: 0 is out of range`,
		`j.toml:5:9: location "full front": width: 12 has no unit`, `j.toml:7:8: location "full front", screen 1: mesh: "fine" is not a mesh`,
		`j.toml:10:7: location "full front", screen 2: use: "solit" is not known`,
	}
	check := func(errs job.Errors, want []string) {
		t.Helper()
		if len(errs) != len(want) {
			t.Errorf("%d errors, want %d:\n%s", len(errs), len(want), errs.Error())
			return
		}
		for i, e := range errs {
			if !strings.HasPrefix(e.Error(), want[i]) {
				t.Errorf("error %d is %s, want %s", i, e.Error(), want[i])
			}
		}
	}
	j, errs := DecodeJob("j.toml", []byte(src))
	check(errs, want)
	check(job.Resolve(j, BuiltInShop()), []string{ // the rest, from the job that came back beside the errors
		`j.toml:8:7: location "full front", screen 1: ink: the ink class "plastisool" is not known; did you mean "plastisol"? accepted are: "plastisol", `,
		`j.toml:11:9: location "full front", screen 2: blade: the rack has no blade "75"; in the rack are: "60", "65/90/65", "70", "70/90/70", "80"`,
		`j.toml:14:8: location 2, screen 1: mesh: "7/cm" does not say the thread, and no mesh on the racks has that count; `,
	})
}

func TestErrorParts(t *testing.T) {
	for _, c := range []struct {
		e    job.Error
		want string
	}{
		{job.Error{Pos: job.Pos{File: "a.toml", Line: 3, Col: 7}, Where: "location 1, screen 2", Key: "mesh", Wrong: "is wrong", Accepted: "this is right"}, "a.toml:3:7: location 1, screen 2: mesh: is wrong; this is right"},
		{job.Error{Pos: job.Pos{File: "a.toml", Line: 3, Col: 7}, Where: "", Key: "", Wrong: "is wrong", Accepted: ""}, "a.toml:3:7: is wrong"},
		{job.Error{Pos: job.Pos{File: "a.toml", Line: 0, Col: 0}, Where: "", Key: "press", Wrong: "is wrong", Accepted: ""}, "a.toml: press: is wrong"},
	} {
		if got := c.e.Error(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if job.Errors(nil).Err() != nil || (job.Errors{{}}).Err() == nil {
		t.Error("Err is nil exactly when there are no errors")
	}
}

func TestNearest(t *testing.T) {
	words := []string{"color", "coverage", "mesh", "halftone"}
	for text, want := range map[string]string{"colour": "color", "COLOR": "color", "mehs": "mesh", "halftones": "halftone", "zebra": "", "": "", "covrage": "coverage", strings.Repeat("c", 99): ""} {
		if got := job.Nearest(text, words); got != want {
			t.Errorf("nearest to %q is %q, want %q", text, got, want)
		}
	}
}

func FuzzDecodeJob(f *testing.F) {
	for _, s := range []string{least, inScreen(`halftone = { lines = "45 lpi", angle = nan }`), "a.b=1\na=2", "[[location]]\n[location]", "location=[{screen=[{},[]]}]", "x=\"\"\"\n\"\"\"\"\"", "due=2026-12-04\n[[location.screen]]", "[[location]]\n[[location.screen]]\nmesh='61/cm'\neom='1 mil'"} {
		f.Add([]byte(s))
	}
	shop := BuiltInShop()
	f.Fuzz(func(t *testing.T, src []byte) {
		j, errs := DecodeJob("j.toml", src)
		if j == nil && len(errs) == 0 {
			t.Fatal("neither a job nor an error")
		}
		if j != nil {
			errs = append(errs, job.Resolve(j, shop)...)
		}
		for _, e := range errs {
			if e.Line < 1 || e.Col < 1 || e.Wrong == "" || strings.ContainsAny(e.Error(), "\n\r") {
				t.Fatalf("a bad error: %#v", e)
			}
		}
	})
}

// What the paper cannot print is an error at its place, not of the PDF: turned and hidden
// characters, scripts that the font lacks. Marks that compose with their letter are composed.
func TestPrintable(t *testing.T) {
	for _, c := range []struct{ text, wrong string }{
		{"Zażółć gęślą jaźń, Łódź ½ °C µ → ✓", ""},
		{"Việt Nam, Ελλάδα, Київ", ""},
		{"a\u202eb", "U+202E"}, {"a\u200fb", "U+200F"}, {"a\u2066b", "U+2066"}, {"a\u200bb", "U+200B"}, {"a\u00adb", "U+00AD"},
		{"שלום", "U+05E9, U+05DC, U+05D5, U+05DD"}, {"漢字", "U+6F22, U+5B57"}, {"😀", "U+1F600"}, {"a\ufffd", "U+FFFD"}, {"q\u0301", "U+0301"},
	} {
		j, errs := DecodeJob("j.toml", []byte("title = \"t\"\ncustomer = \""+c.text+"\"\n[[location]]\n[[location.screen]]"))
		if c.wrong == "" {
			if errs != nil || j.Customer != c.text {
				t.Errorf("%q: %v, %q", c.text, errs, j.Customer)
			}
			continue
		}
		if want := "j.toml:2:12: customer: holds what cannot be printed: " + c.wrong + "; " + acceptedText; len(errs) != 1 || errs[0].Error() != want {
			t.Errorf("%q: %v, %s is wanted", c.text, errs, want)
		}
	}
	if j, errs := DecodeJob("j.toml", []byte("title = \"e\u0301\"\nshop = \"\u6f22.toml\"\n[[location]]\n[[location.screen]]")); errs != nil || j.Title != "é" || j.ShopPath != "漢.toml" {
		t.Errorf("%v, %+v", errs, j)
	}
}
