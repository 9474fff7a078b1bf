package presslog

import (
	"bytes"
	"strings"
	"testing"

	"bladecard/calc/job"
)

// printed are the rows of a job with two screens.
func printed() []Row {
	var rows []Row
	for _, screen := range []string{"1", "2"} {
		r := Empty()
		r.Job, r.Location, r.Screen, r.Press = "T-1", "front", screen, "automatic"
		r.Mesh, r.EOMUM, r.Ink, r.Blade, r.AngleDeg, r.LoadNCM, r.Strokes = "156-64", 12.7, "plastisol; white", "70", 15, 5, 2
		rows = append(rows, r)
	}
	return rows
}

const appendHead = "job,location,screen,mesh,eom (um),blade,angle (deg),strokes,cured (um)\n"

// TestAppend: the rows that a log lacks come behind its own, in its own words; not a byte before
// them changes.
func TestAppend(t *testing.T) {
	for name, c := range map[string]struct {
		src, want string
		lacking   int
	}{
		"both lack":                    {appendHead, "T-1,front,1,156-64,12.7,70,15,2,\nT-1,front,2,156-64,12.7,70,15,2,\n", 2},
		"one lacks":                    {appendHead + "T-1,front,1,110-80,9,80,10,1,41\n", "T-1,front,2,156-64,12.7,70,15,2,\n", 1},
		"none lacks":                   {appendHead + "T-1,front,2,110-80,9,80,10,1,41\nT-1,front,1,110-80,9,80,10,1,\n", "", 0},
		"others":                       {appendHead + "T-1,back,2,110-80,9,80,10,1,41\nT-2,front,1,110-80,9,80,10,1,\n", "T-1,front,1,156-64,12.7,70,15,2,\nT-1,front,2,156-64,12.7,70,15,2,\n", 2},
		"no last line end":             {appendHead + "T-1,front,1,110-80,9,80,10,1,41", "\nT-1,front,2,156-64,12.7,70,15,2,\n", 1},
		"nothing and no last line end": {appendHead + "T-1,front,1,110-80,9,80,10,1,41\nT-1,front,2,110-80,9,80,10,1,41", "", 0},
		"CRLF, no last line end":       {crlf(appendHead) + "T-1,front,1,110-80,9,80,10,1,41", "\r\nT-1,front,2,156-64,12.7,70,15,2,\r\n", 1},
		"semicolons, decimal commas, other order and units": {
			"\uFEFFcured (mil);Screen;location;JOB;mesh;eom (mil);blade;angle (deg);ink\n1,5;1;front;T-1;156-64;0,5;70;12,5;\"a;b\"\n", ";2;front;T-1;156-64;0,5;70;15;\"plastisol; white\"\n", 1,
		},
		"semicolons, decimal points": {"job;location;screen;mesh;eom (um);blade;angle (deg);wet (um)\nT-1;front;1;156-64;12.5;70;15;45\n", "T-1;front;2;156-64;12.7;70;15;\n", 1},
		"blank lines at the end":     {appendHead + "T-1,front,1,110-80,9,80,10,1,41\n\n", "T-1,front,2,156-64,12.7,70,15,2,\n", 1},
	} {
		text, lacking, errs := Append("l.csv", []byte(c.src), printed())
		if errs != nil || string(text) != c.want || lacking != c.lacking {
			t.Errorf("%s: %d rows, %v\ngot  %q\nwant %q", name, lacking, errs, text, c.want)
			continue
		}
		whole := append([]byte(c.src), text...)
		if more, lacking, errs := Append("l.csv", whole, printed()); len(more) > 0 || lacking > 0 || errs != nil {
			t.Errorf("%s: a second time %d rows come, %v", name, lacking, errs)
		}
		before, _ := measured([]byte(c.src))
		if after, errs := measured(whole); errs != nil || after != before {
			t.Errorf("%s: %d measured rows were %d, %v", name, after, before, errs)
		}
	}
}

// TestAppendHits: a row of two hits goes to a log that can say so, and to no other: a fit would take it for one.
func TestAppendHits(t *testing.T) {
	rows := printed()
	rows[1].Hits = 2
	text, _, errs := Append("l.csv", []byte("job,location,screen,mesh,eom (um),blade,angle (deg),hits,cured (um)\n"), rows)
	if want := "T-1,front,1,156-64,12.7,70,15,1,\nT-1,front,2,156-64,12.7,70,15,2,\n"; errs != nil || string(text) != want {
		t.Errorf("%q, %v; %q is wanted", text, errs, want)
	}
	if text, _, errs := Append("l.csv", []byte(appendHead), rows); len(text) > 0 || errs == nil || !strings.Contains(errs.Error(), `no column "hits"`) {
		t.Errorf("without the column %q, %v", text, errs)
	}
	if _, lacking, errs := Append("l.csv", []byte(appendHead+"T-1,front,2,156-64,12.7,70,15,2,41\n"), rows); errs != nil || lacking != 1 {
		t.Errorf("where the row stands already, %d rows, %v", lacking, errs)
	}
}

// measured counts the measured rows of a log.
func measured(src []byte) (n int, errs job.Errors) {
	errs = Read("l.csv", src, func(r Row) Fault {
		if r.Measured() {
			n++
		}
		return Fault{}
	})
	return n, errs
}

func crlf(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }

// What is written to a fresh log and what is added to one are the same.
func TestAppendIsWrite(t *testing.T) {
	var all, one bytes.Buffer
	if err := Write(&all, printed(), true); err != nil {
		t.Fatal(err)
	}
	if err := Write(&one, printed()[:1], true); err != nil {
		t.Fatal(err)
	}
	text, _, errs := Append("l.csv", one.Bytes(), printed())
	if errs != nil || one.String()+string(text) != all.String() {
		t.Errorf("%v\ngot  %q\nwant %q", errs, one.String()+string(text), all.String())
	}
}

// What is no press log, or tells no row from another, is refused.
func TestAppendRefuses(t *testing.T) {
	for src, want := range map[string]string{
		"":                         "l.csv:1:1: file: is empty",
		"title = \"a job file\"\n": "l.csv:1:9: header: ",
		"a,b\n1,2\n":               `"a" is not a column`,
		"mesh,eom (um),blade,angle (deg),wet (um)\n156-64,12,70,15,45\n": `there is no column "job"`,
		appendHead + "\"T-1,front\n":                                     "row: ",
		"job\x00":                                                        "NUL",
	} {
		if text, _, errs := Append("l.csv", []byte(src), printed()); len(errs) == 0 || text != nil || !strings.Contains(errs.Error(), want) {
			t.Errorf("%q: %v", src, errs)
		}
	}
}
