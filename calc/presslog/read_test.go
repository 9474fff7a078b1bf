package presslog

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
)

const plainHead = "mesh,eom (um),blade,angle (deg),wet (um)\n"

// TestRead: units, decimals and separators come to the same rows.
func TestRead(t *testing.T) {
	for name, src := range map[string]string{
		"commas":         "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12.5,70,15,2,45.2\n",
		"semicolons":     "mesh;eom (um);blade;angle (deg);strokes;wet (um)\n156-64;12,5;70;15;2;45,2\n",
		"points in them": "mesh;eom (um);blade;angle (deg);strokes;wet (um)\n156-64;12.5;70;15;2;45.2\n",
		"other units":    "MESH,eom (mm),blade,angle (deg),strokes,wet (mm)\n156-64,0.0125,70,15,2,0.0452\n",
		"BOM, CRLF":      "\uFEFFmesh,eom (um),blade,angle (deg),strokes,wet (um)\r\n156-64,12.5,70,15,2,45.2\r\n",
		"empty rows":     "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12.5,70,15,2,\n156-64,12.5,70,15,2,45.2\n",
		"order, quotes":  "wet (um),blade,strokes,\"mesh\",angle (deg),eom (um)\n45.2,70,2,156-64,15,12.5\n",
	} {
		rows, errs := Read("l.csv", []byte(src))
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
		{"binary", "a\x00b", "is not a text in UTF-8"},
		{"bad UTF-8", plainHead + "156\xff", "is not a text in UTF-8"},
		{"unknown column", "mash,eom (um)\n", `"mash" is not a column`},
		{"no unit", "mesh,eom,blade,angle (deg),wet (um)\n", `column "eom" has no unit`},
		{"wrong unit", "mesh,eom (kg),blade,angle (deg),wet (um)\n", `"kg" is not a unit of it`},
		{"column twice", "mesh,eom (um),blade,angle (deg),wet (um),wet (mil)\n", `column "wet" stands twice`},
		{"column lacking", "mesh,eom (um),blade,wet (um)\n", `there is no column "angle (deg)"`},
		{"nothing measured", "mesh,eom (um),blade,angle (deg),before (g)\n", "no column holds a measurement"},
		{"decimal comma", plainHead + "156-64,12,70,15,45,2\n", "a decimal comma parts cells here"},
		{"quoted comma", plainHead + "156-64,12,70,15,\"45,2\"\n", "l.csv:2:5: wet: \"45,2\" has a comma"},
		{"two signs", strings.ReplaceAll(plainHead, ",", ";") + "156-64;12;70;15;1.045,2\n", "more than one decimal sign"},
		{"word", plainHead + "156-64,12,70,15,thick\n", `wet: "thick" is not a number`},
		{"NaN", plainHead + "156-64,12,70,15,NaN\n", `"NaN" is not a number`},
		{"negative", plainHead + "156-64,12,70,15,-4\n", "wet: -4 is out of range; 0.5 to 3000 um"},
		{"absurd", plainHead + "156-64,12,70,85,45\n", "angle: 85 is out of range; 0 to 60 deg"},
		{"no blade", plainHead + "156-64,12,,15,45\n", "blade: is empty"},
		{"half a stroke", "mesh,eom (um),blade,angle (deg),strokes,wet (um)\n156-64,12,70,15,1.5,45\n", "1.5 is no whole number"},
		{"lighter", "mesh,eom (um),blade,angle (deg),before (g),after (g),area (cm2)\n156-64,12,70,15,150,149,300\n", "is no more than the 150 g before"},
		{"open quote", plainHead + "156-64,\"12,70,15,45\n", "row: "},
	} {
		_, errs := Read("l.csv", []byte(c.src))
		if errs == nil || !strings.Contains(errs[0].Error(), c.want) {
			t.Errorf("%s: %v; %q is wanted", c.name, errs, c.want)
		}
	}
}

// TestFilm: gauge, comb and weight of one film agree. 45 um wet on 300 cm2 at 1.2 kg/L are 1.62 g
// (definition).
func TestFilm(t *testing.T) {
	r := Empty()
	if !math.IsNaN(r.Film(0.5, 1.2)) || r.Measured() {
		t.Error("an empty row has a film")
	}
	wet := r
	wet.WetUM = 45
	cured := r
	cured.CuredUM = 22.5
	weighed := r
	weighed.BeforeG, weighed.AfterG, weighed.AreaCM2 = 150, 151.62, 300
	all := wet
	all.CuredUM, all.BeforeG, all.AfterG, all.AreaCM2 = 22.5, 150, 151.62, 300
	for name, row := range map[string]Row{"comb": wet, "gauge": cured, "weight": weighed, "all": all} {
		if um := row.Film(0.5, 1.2); math.Abs(um-22.5) > 1e-9 || !row.Measured() {
			t.Errorf("%s: %g um cured; 22.5 is wanted", name, um)
		}
	}
	weighed.DensityKgPerL = 1.5
	if um := weighed.Film(0.5, 1.2); math.Abs(um-18) > 1e-9 {
		t.Errorf("the row's own density: %g um; 18 is wanted", um)
	}
}

// TestWriteReads: a log that is written is read again.
func TestWriteReads(t *testing.T) {
	r := Empty()
	r.Mesh, r.EOMUM, r.Blade, r.AngleDeg, r.Strokes, r.WetUM, r.Note = "156-64", 12.5, "75; \"graphics\"", 17.5, 2, 45.25, "a;b"
	var b bytes.Buffer
	if err := Write(&b, []Row{r}); err != nil {
		t.Fatal(err)
	}
	rows, errs := Read("l.csv", b.Bytes())
	if errs != nil || len(rows) != 1 || rows[0].Blade != r.Blade || rows[0].WetUM != r.WetUM || rows[0].Note != r.Note || rows[0].EOMUM != r.EOMUM {
		t.Errorf("%+v, %v", rows, errs)
	}
}

// TestLongLog: a hundred thousand rows are read in a moment, and too many are refused.
func TestLongLog(t *testing.T) {
	row := "156-64,12,70,15,45.2\n"
	start := time.Now()
	rows, errs := Read("l.csv", []byte(plainHead+strings.Repeat(row, 100_000)))
	if errs != nil || len(rows) != 100_000 {
		t.Fatalf("%d rows, %v", len(rows), errs)
	}
	if took := time.Since(start); took > 5*time.Second {
		t.Errorf("100 000 rows took %v", took)
	}
	if _, errs := Read("l.csv", []byte(plainHead+strings.Repeat(row, MaxRows+1))); errs == nil {
		t.Error("too many rows are taken")
	}
	bad := fmt.Sprint(plainHead, strings.Repeat("156-64,12,70,15,x\n", 1000))
	if _, errs := Read("l.csv", []byte(bad)); len(errs) != mostErrs {
		t.Errorf("%d errors are listed; the first %d are enough", len(errs), mostErrs)
	}
}

// FuzzRead: whatever the bytes, there are rows with finite numbers, or errors, never a panic.
func FuzzRead(f *testing.F) {
	f.Add([]byte(plainHead + "156-64,12,70,15,45.2\n"))
	f.Add([]byte("mesh;eom (mil);blade;angle (°);before (g);after (g);area (in2)\n156-64;0,5;70;15;1;2;3\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		rows, errs := Read("l.csv", src)
		if len(errs) > 0 && rows != nil {
			t.Error("rows beside errors")
		}
		for _, r := range rows {
			if math.IsInf(r.Film(1, 1), 0) || r.Strokes < 1 {
				t.Errorf("%+v", r)
			}
		}
	})
}
