package presslog

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"bladecard/calc/job"
)

const plainHead = "mesh,eom (um),blade,angle (deg),wet (um)\n"

// read is the measured rows of a log, with its errors.
func read(src string) ([]Row, job.Errors) {
	var rows []Row
	errs := Read("l.csv", []byte(src), func(r Row) Fault {
		if r.Measured() {
			rows = append(rows, r)
		}
		return Fault{}
	})
	return rows, errs
}

// TestRead: units, decimals and separators come to the same rows.
func TestRead(t *testing.T) {
	for name, src := range map[string]string{
		"commas":         "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12.5,70,15,2,45.2\n",
		"semicolons":     "mesh;eom (um);blade;angle (deg);strokes;wet (um)\n156-64;12,5;70;15;2;45,2\n",
		"points in them": "mesh;eom (um);blade;angle (deg);strokes;wet (um)\n156-64;12.5;70;15;2;45.2\n",
		"other units":    "MESH,eom (mm),blade,angle (deg),strokes,wet (mm)\n156-64,0.0125,70,15,2,0.0452\n",
		"BOM, CRLF":      "\uFEFFmesh,eom (um),blade,angle (deg),strokes,wet (um)\r\n156-64,12.5,70,15,2,45.2\r\n",
		"empty lines":    "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n,,,,,\n156-64,12.5,70,15,2,45.2\n,,\n",
		"empty rows":     "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12.5,70,15,2,\n156-64,12.5,70,15,2,45.2\n",
		"order, quotes":  "wet (um),blade,strokes,\"mesh\",angle (deg),eom (um)\n45.2,70,2,156-64,15,12.5\n",
	} {
		rows, errs := read(src)
		if errs != nil || len(rows) != 1 {
			t.Errorf("%s: %d rows, %v", name, len(rows), errs)
			continue
		}
		if r := rows[0]; r.Mesh != "156-64" || math.Abs(r.EOMUM-12.5) > 1e-9 || r.Blade != "70" || r.AngleDeg != 15 || r.Strokes != 2 || math.Abs(r.WetUM-45.2) > 1e-9 || !math.IsNaN(r.CuredUM) {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

// TestRefused: each fault is named with its place.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"empty", " \n", "l.csv:1:1: file: is empty"},
		{"NUL", plainHead + "156\x00", "l.csv:2:4: there is a NUL byte: this is no text file"},
		{"Latin-1", plainHead + "156-64,12,70,15,45\nM\xfcller,12,70,15,45\n", "l.csv:3:2: the byte 0xfc is not UTF-8; UTF-8 is accepted"},
		{"UTF-16", "\xff\xfem\x00", "l.csv:1:1: the file is UTF-16; UTF-8 is accepted"},
		{"UTF-32", "\xff\xfe\x00\x00m\x00\x00\x00", "l.csv:1:1: the file is UTF-32"},
		{"escape", plainHead + "\x1b[2J,12,70,15,45\n", "l.csv:2:1: there is a control character, 0x1b"},
		{"day of another order", "date,mesh,eom (um),blade,angle (deg),wet (um)\n01.02.2027,156-64,12,70,15,45\n", `l.csv:2:1: date: "01.02.2027" is not a day; a day from 2000 to 2099, written as 2026-11-20`},
		{"no such day", "mesh,eom (um),blade,angle (deg),wet (um),date\n156-64,12,70,15,45,2027-02-29\n", `l.csv:2:20: date: "2027-02-29" is not a day`},
		{"day of the past", "mesh,eom (um),blade,angle (deg),wet (um),date\n156-64,12,70,15,45,1999-12-31\n", `l.csv:2:20: date: "1999-12-31" is not a day`},
		{"day of the future", "mesh,eom (um),blade,angle (deg),wet (um),date\n156-64,12,70,15,45,2100-01-01\n", `l.csv:2:20: date: "2100-01-01" is not a day`},
		{"unknown column", "mash,eom (um)\n", `"mash" is not a column`},
		{"no unit", "mesh,eom,blade,angle (deg),wet (um)\n", `column "eom" has no unit`},
		{"wrong unit", "mesh,eom (kg),blade,angle (deg),wet (um)\n", `"kg" is not a unit of it`},
		{"column twice", "mesh,eom (um),blade,angle (deg),wet (um),wet (mil)\n", `column "wet" stands twice`},
		{"column lacking", "mesh,eom (um),blade,wet (um)\n", `there is no column "angle (deg)"`},
		{"nothing measured", "mesh,eom (um),blade,angle (deg),before (g)\n", "no column holds a measurement"},
		{"decimal comma", plainHead + "156-64,12,70,15,45,2\n", "a decimal comma parts cells here"},
		{"quoted comma", plainHead + "156-64,12,70,15,\"45,2\"\n", "l.csv:2:17: wet: \"45,2\" has a comma"},
		{"two signs", strings.ReplaceAll(plainHead, ",", ";") + "156-64;12;70;15;1.045,2\n", "more than one decimal sign"},
		{"word", plainHead + "156-64,12,70,15,thick\n", `l.csv:2:17: wet: "thick" is not a number; a number without its unit, such as 42.5`},
		{"NaN", plainHead + "156-64,12,70,15,NaN\n", `"NaN" is not a number`},
		{"negative", plainHead + "156-64,12,70,15,-4\n", "wet: -4 is out of range; 0.5 to 3000 um"},
		{"absurd", plainHead + "156-64,12,70,85,45\n", "angle: 85 is out of range; 0 to 60 deg"},
		{"no such mark", "mesh,eom (um),blade,angle (deg),wet (um),wiped\n156-64,12,70,15,45,perhaps\n", `l.csv:2:20: wiped: "perhaps" is not known; n, no, si, sí, y, yes, or nothing`},
		{"no such test", "mesh,eom (um),blade,angle (deg),wet (um),wash\n156-64,12,70,15,45,7\n", `l.csv:2:20: wash: "7" is not known; fail, failed, falla, pasa, pass, passed, or nothing`},
		{"cold cure", "mesh,eom (um),blade,angle (deg),wet (um),cure (F)\n156-64,12,70,15,45,32\n", "cure: 32 is out of range; 20 to 400 C"},
		{"no blade", plainHead + "156-64,12,,15,45\n", "blade: is empty"},
		{"half a stroke", "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12,70,15,1.5,45\n", "1.5 is no whole number"},
		{"lighter", "mesh,eom (um),blade,angle (deg),before (g),after (g),area (cm2)\n156-64,12,70,15,150,149,300\n", "is no more than the 150 g before"},
		{"open quote", plainHead + "156-64,12,70,15,45\n156-64,\"12,70,15,45\n156-64,12,70,15,45\n", "l.csv:3:8: row: the quote that opens here is not closed"},
		{"quote closed by the next", plainHead + "ü,\"12,70,15,45\n156-64,\"12\",70,15,45\n", "l.csv:2:3: row: the quote that opens here is not closed"},
		{"quote inside", plainHead + "156-64,12,70\",15,45\n", "l.csv:2:13: row: a quote stands inside a cell"},
		{"open quote in the header", "mesh,\"eom (um)\n", "l.csv:1:6: header: the quote that opens here"},
		{"behind letters of two bytes", "note,mesh,eom (um),blade,angle (deg),wet (um)\nüüü, 156-64,12,70,15,x\n", "l.csv:2:22: wet: \"x\" is not a number"},
		{"behind a cell of two lines", "note,mesh,eom (um),blade,angle (deg),wet (um)\n\"a\nb\",156-64,12,70,15,x\n", "l.csv:3:20: wet: \"x\" is not a number"},
	} {
		_, errs := read(c.src)
		if len(errs) == 0 || !strings.Contains(errs[0].Error(), c.want) {
			t.Errorf("%s: %v; %q is wanted", c.name, errs, c.want)
		}
	}
}

// TestFilm: gauge, comb and weight of one film agree. 45 um wet on 300 cm2 at 1.2 kg/L are 1.62 g
// (definition); on bare cotton knit 12.5 um more sink in, which the weight holds and the film does not.
func TestFilm(t *testing.T) {
	film := func(r Row) (um, doubt float64) {
		um, doubt, fault := r.Film(0.5, 1.2)
		if fault != (Fault{}) {
			t.Errorf("%+v: %+v", r, fault)
		}
		return um, doubt
	}
	r := Empty()
	if um, _ := film(r); !math.IsNaN(um) || r.Measured() {
		t.Error("an empty row has a film")
	}
	wet := r
	wet.WetUM = 45
	second := r
	second.WetUM, second.Hits = 22.5, 2
	cured := r
	cured.CuredUM = 22.5
	weighed := r
	weighed.BeforeG, weighed.AfterG, weighed.AreaCM2, weighed.Cloth = 150, 151.62, 300, "none"
	bare := weighed
	bare.AfterG, bare.Cloth = 150+1.2*300*(45+12.5)/1e4, "cotton knit"
	unsaid := bare
	unsaid.Cloth = ""
	nylon := weighed
	nylon.AfterG, nylon.Cloth = 150+1.2*300*(45+3)/1e4, "Nylon woven"
	all := bare
	all.WetUM, all.CuredUM = 45, 22.5
	sigma := 2.5 / 1.6449 / 45
	for name, c := range map[string]struct {
		row   Row
		doubt float64
	}{
		"comb": {wet, 0}, "comb on the second hit": {second, 0}, "gauge": {cured, 0}, "weight": {weighed, 0}, "on cotton": {bare, sigma}, "on a knit of which nothing is said": {unsaid, sigma},
		"on nylon": {nylon, 2 / 1.6449 / 45}, "all": {all, sigma / 3},
	} {
		if um, doubt := film(c.row); math.Abs(um-22.5) > 1e-9 || math.Abs(doubt-c.doubt) > 1e-9 || !c.row.Measured() {
			t.Errorf("%s: %g um cured, doubt %g; 22.5 and %g are wanted", name, um, doubt, c.doubt)
		}
	}
	weighed.DensityKgPerL = 1.5
	if um, _ := film(weighed); math.Abs(um-18) > 1e-9 {
		t.Errorf("the row's own density: %g um; 18 is wanted", um)
	}
	thin := bare
	thin.AfterG = 150 + 1.2*300*12/1e4
	if _, _, fault := thin.Film(0.5, 1.2); fault.Column != "after" || !strings.Contains(fault.Wrong, "no more than the 12.5 um") {
		t.Errorf("12 um on cotton: %+v", fault)
	}
	bare.Cloth = "wool"
	if _, _, fault := bare.Film(0.5, 1.2); fault.Column != "cloth" {
		t.Errorf("wool: %+v", fault)
	}
}

// TestWriteReads: a log that is written is read again as it was, and no cell of it is run by a spreadsheet.
func TestWriteReads(t *testing.T) {
	full := Row{
		Line: 2, Date: job.Date{Year: 2027, Month: 2, Day: 1}, Job: "=HYPERLINK(\"x\")", Location: "+1", Screen: "-1", Press: "@SUM(A1)", Mesh: "156-64",
		EOMUM: 12.5, FeatureMM: 6, Ink: "'=1", Blade: "75; \"graphics\"", AngleDeg: 17.5, LoadNCM: 5, Strokes: 2, Hits: 3, WetUM: 45.25, CuredUM: 22,
		BeforeG: 150, AfterG: 151.5, AreaCM2: 300, Cloth: "cotton knit", DensityKgPerL: 1.2,
		Color: "-white", AirBar: 2.25, FlashS: 4.5, Wiped: Yes, CureC: 162.5, Wash: Fail, Name: "=A", Note: "\t=1+1, 'tis\nthe second line",
	}
	bare := Empty()
	bare.Line, bare.Mesh, bare.EOMUM, bare.Blade, bare.AngleDeg = 4, "110-80", 20, "70", 15
	for decimalComma, sign := range map[bool]string{false: ",45.25,", true: ";45,25;"} {
		var b bytes.Buffer
		if err := Write(&b, []Row{full, bare}, decimalComma); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(b.String(), sign) {
			t.Errorf("%q is wanted in %s", sign, b.String())
		}
		var rows []Row
		if errs := Read("l.csv", b.Bytes(), func(r Row) Fault { rows = append(rows, r); return Fault{} }); errs != nil {
			t.Fatal(errs)
		}
		want := fmt.Sprintf("%+v", []Row{full, bare})
		if got := fmt.Sprintf("%+v", rows); got != want {
			t.Errorf("%s\n%s was written", got, want)
		}
		cells := csv.NewReader(&b)
		cells.Comma = rune(sign[0])
		lines, err := cells.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, cell := range slices.Concat(lines...) {
			if first := strings.TrimLeft(cell, " \t"); first != "" && strings.ContainsRune("=+-@", rune(first[0])) {
				t.Errorf("a spreadsheet runs %q", cell)
			}
		}
	}
}

// TestTakeFinds: what the taker finds wrong stands at its cell, beside what the reader finds.
func TestTakeFinds(t *testing.T) {
	src := plainHead + "156-64,12,99,15,45\n156-64,12,70,15,x\n156-64,12,99,15,45\n"
	errs := Read("l.csv", []byte(src), func(r Row) Fault {
		if r.Blade == "99" {
			return Fault{"blade", "is not of this rack", "70"}
		}
		return Fault{"ink", "is called for good rows only", ""}
	})
	want := "l.csv:2:11: blade: is not of this rack; 70\nl.csv:3:17: wet: \"x\" is not a number; a number without its unit, such as 42.5\nl.csv:4:11: blade: is not of this rack; 70"
	if errs.Error() != want {
		t.Errorf("%v; %s is wanted", errs, want)
	}
}

// TestLongLog: a hundred thousand rows are read in a moment, and too many are refused.
func TestLongLog(t *testing.T) {
	row := "156-64,12,70,15,45.2\n"
	start := time.Now()
	rows, errs := read(plainHead + strings.Repeat(row, 100_000))
	if errs != nil || len(rows) != 100_000 {
		t.Fatalf("%d rows, %v", len(rows), errs)
	}
	if took := time.Since(start); took > 5*time.Second {
		t.Errorf("100 000 rows took %v", took)
	}
	if _, errs := read(plainHead + strings.Repeat(row, MaxRows+1)); errs == nil {
		t.Error("too many rows are taken")
	}
	if _, errs := read(plainHead + strings.Repeat("156-64,12,70,15,x\n", 1000)); len(errs) != mostFaults {
		t.Errorf("%d errors are listed; the first %d are enough", len(errs), mostFaults)
	}
}

// FuzzRead: whatever the bytes, there are rows with finite numbers, or errors, never a panic.
func FuzzRead(f *testing.F) {
	f.Add([]byte(plainHead + "156-64,12,70,15,45.2\n"))
	f.Add([]byte("mesh;eom (mil);blade;angle (°);before (g);after (g);area (in2)\n156-64;0,5;70;15;1;2;3\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		rows, errs := read(string(src))
		for _, e := range errs {
			if e.Line < 1 || e.Col < 1 || e.Wrong == "" {
				t.Errorf("%+v", e)
			}
		}
		for _, r := range rows {
			if um, doubt, _ := r.Film(1, 1); math.IsInf(um, 0) || math.IsInf(doubt, 0) || r.Strokes < 1 {
				t.Errorf("%+v", r)
			}
		}
	})
}
