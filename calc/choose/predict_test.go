package choose_test

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plantest"
)

const logHead = "date,mesh,eom (um),blade,angle (deg),wet (um),before (g),after (g),area (cm2)\n"

// TestPrints: a row is predicted by its setting, whatever was measured, and the latest day is told.
func TestPrints(t *testing.T) {
	src := logHead + "2026-11-20,156-64,12,70,15,45,,,\n2026-11-12,156-64,12,70,15,46,,,\n,156-64,12,70,15,,,,\n,156-64,12,80,25,30,,,\n"
	log, errs := choose.Prints("l.csv", []byte(src), file.BuiltInShop())
	prints, last := log.Prints, log.Last
	if errs != nil || len(prints) != 3 || last != (job.Date{Year: 2026, Month: 11, Day: 20}) {
		t.Fatalf("%d prints to %v, %v", len(prints), last, errs)
	}
	if a, b, c := prints[0], prints[1], prints[2]; a.PredictedUM != b.PredictedUM || math.Abs(a.MeasuredUM-45) > 1e-9 || math.Abs(b.MeasuredUM-46) > 1e-9 || c.PredictedUM == a.PredictedUM ||
		a.Line != 2 || c.Line != 5 || c.HardnessShoreA != 80 || c.Blade != "80" {
		t.Errorf("%+v", prints)
	}
}

// TestPrintsUnwiped: a print whose screen did not come clean is left out, and its line is told; one that nobody
// looked at counts.
func TestPrintsUnwiped(t *testing.T) {
	src := "mesh,eom (um),blade,angle (deg),wiped,cured (um)\n156-64,12,70,15,no,30\n156-64,12,70,15,yes,31\n156-64,12,70,15,,32\n156-64,12,70,15,no,\n"
	log, errs := choose.Prints("l.csv", []byte(src), file.BuiltInShop())
	if errs != nil || len(log.Prints) != 2 || log.Prints[0].MeasuredUM != 31 || log.Prints[1].MeasuredUM != 32 || !slices.Equal(log.Unwiped, []int{2}) {
		t.Errorf("%+v, %v", log, errs)
	}
}

// TestPrintsHits: a film of two hits is predicted twice that of one, so that a fit takes it for no heavier ink; a
// log without the column has prints of one hit.
func TestPrintsHits(t *testing.T) {
	src := "mesh,eom (um),blade,angle (deg),hits,cured (um)\n156-64,12,70,15,,30\n156-64,12,70,15,1,30\n156-64,12,70,15,2,60\n"
	log, errs := choose.Prints("l.csv", []byte(src), file.BuiltInShop())
	prints := log.Prints
	if errs != nil || len(prints) != 3 {
		t.Fatal(prints, errs)
	}
	if a, b, c := prints[0].PredictedUM, prints[1].PredictedUM, prints[2].PredictedUM; a != b || math.Abs(c-2*a) > 1e-9 {
		t.Errorf("predicted %g, %g, %g um", a, b, c)
	}
	rows := choose.LogOf(planOf(t, "title = \"t\"\n[[location]]\n[[location.screen]]\nhits = 2\n[[location.screen]]\n"))
	if rows[0].Hits != 2 || rows[1].Hits != 1 {
		t.Errorf("an empty log has %d and %d hits", rows[0].Hits, rows[1].Hits)
	}
}

// TestPrintsRefuse: what the shop does not know, and what gives no figure, is an error at its cell.
func TestPrintsRefuse(t *testing.T) {
	rack := plantest.Shop(t, "[[blade]]\nlayup = \"70\"\nfree-height = \"70 mm\"\n[[blade]]\nlayup = \"80\"\n[[mesh]]\nmesh = \"156-64\"\n")
	for row, want := range map[string]string{
		",156-64,12,99,15,45,,,":           `l.csv:2:12: blade: the rack has no blade "99"`,
		",15664,12,80,15,45,,,":            "l.csv:2:2: mesh: ",
		",156-64,12,70,15,45,,,":           "l.csv:2:15: angle: this setup gives no figure: ",
		",156-64,12,80,15,,100,5000,0.2":   "l.csv:2:23: after: weights and area say a film of ",
		"31.12.2026,156-64,12,80,15,45,,,": `l.csv:2:1: date: "31.12.2026" is not a day`,
	} {
		if _, errs := choose.Prints("l.csv", []byte(logHead+row+"\n"), rack); len(errs) != 1 || !strings.HasPrefix(errs[0].Error(), want) {
			t.Errorf("%s: %v; %q is wanted", row, errs, want)
		}
	}
}

// TestLongLogsStaySmall: of a long log whose settings all differ, no more is kept than what a fit needs of each print.
func TestLongLogsStaySmall(t *testing.T) {
	const rows = 10_000
	var b strings.Builder
	b.WriteString(logHead)
	for i := range rows {
		fmt.Fprintf(&b, "2026-11-20,156-64,%d,70,%.3f,45,,,\n", 5+i%20, 10+15*float64(i)/rows)
	}
	src, shop := []byte(b.String()), file.BuiltInShop()
	heap := func() int64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.GC() // what the first one found to be finished
		runtime.ReadMemStats(&m)
		return int64(m.HeapAlloc)
	}
	before := heap()
	log, errs := choose.Prints("l.csv", src, shop)
	prints := log.Prints
	after := heap()
	if errs != nil || len(prints) != rows {
		t.Fatalf("%d prints, %v", len(prints), errs)
	}
	if each := float64(after-before) / rows; each > 120 || each < 50 {
		t.Errorf("%.0f bytes are kept of each print; 50 to 120 are wanted", each)
	}
	runtime.KeepAlive(prints)
	runtime.KeepAlive(src)
	runtime.KeepAlive(shop)
}
