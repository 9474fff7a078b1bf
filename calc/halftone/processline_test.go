package halftone

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestProcessLineIsAsPublished compares the table with the published page, copied with its
// source in each row. The row that contradicts itself (59 - 53 is not 8) is not used.
func TestProcessLineIsAsPublished(t *testing.T) {
	f, err := os.Open("testdata/process_line.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	used := 0
	for _, row := range rows[1:] {
		num := func(i int) float64 {
			v, err := strconv.ParseFloat(row[i], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		film, printed, gain := num(0), num(1), num(2)
		if strings.Contains(row[3], "leave this point out") {
			if printed-film == gain {
				t.Errorf("%v agrees with itself after all", row)
			}
			continue
		}
		got, err := PrintedShare(film / 100)
		if err != nil || math.Abs(100*got-printed) > 1e-9 {
			t.Errorf("film %g %%: %.3f %%, %v; published %g %%", film, 100*got, err, printed)
		}
		used++
	}
	if used != len(ProcessLine()) || used != 14 {
		t.Errorf("%d rows used, %d steps in the table", used, len(ProcessLine()))
	}
}

// TestPrintedShareRises checks the curve between its steps.
func TestPrintedShareRises(t *testing.T) {
	last := -1.0
	for x := 0.01; x <= 0.99; x += 0.001 {
		y, err := PrintedShare(x)
		if err != nil || !(y > last) || y > 1 {
			t.Fatalf("film %g: %g after %g, %v", x, y, last, err)
		}
		last = y
	}
	if y, err := PrintedShare(0.58); err != nil || math.Abs(y-(0.53+11.0/16*0.23)) > 1e-12 {
		t.Errorf("film 58 %%: %g, %v", y, err)
	}
	steps := ProcessLine()
	steps[0].Printed = 5
	if ProcessLine()[0].Printed == 5 {
		t.Error("the table can be written to from outside")
	}
}
