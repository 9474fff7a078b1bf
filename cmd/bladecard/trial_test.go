package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
)

// TestTrialToFit: a trial of the sample shop is planned, its log is filled in as a shop would that lays 15 % more than
// computed, and fit learns that from it.
func TestTrialToFit(t *testing.T) {
	dir := t.TempDir()
	log, paper := filepath.Join(dir, "trial.csv"), filepath.Join(dir, "trial.pdf")
	var out, errs bytes.Buffer
	if code := run([]string{"trial", "../../samples/shop.toml", "-o", paper, "--log", log}, nil, &out, &errs); code != exitDone {
		t.Fatalf("trial: exit code %d: %s", code, &errs)
	}
	for _, want := range []string{"day 1: ", "now run 32\u00a0% under to 48\u00a0% over", "10 Shore A harder"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("trial does not say %q:\n%s", want, &out)
		}
	}
	if head, err := os.ReadFile(paper); err != nil || !bytes.HasPrefix(head, []byte("%PDF-")) {
		t.Errorf("no sheet: %v", err)
	}
	shop, bad := file.DecodeShop("shop.toml", content(t, "../../samples/shop.toml"))
	if bad != nil {
		t.Fatal(bad)
	}
	patches, bad := choose.PatchesOf(shop, "", "")
	if bad != nil {
		t.Fatal(bad)
	}
	lays := map[string]float64{}
	for _, s := range patches.Setups {
		lays[fmt.Sprint(s.Mesh, s.Blade, s.AngleDeg, s.Strokes)] = 1.15 * s.PredictedUM
	}
	rows, err := csv.NewReader(bytes.NewReader(content(t, log))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[strings.Fields(name)[0]] = i
	}
	var filled strings.Builder
	w := csv.NewWriter(&filled)
	for i, row := range rows {
		if i > 0 {
			um, known := lays[row[at["mesh"]]+row[at["blade"]]+row[at["angle"]]+" "+row[at["strokes"]]]
			if !known {
				t.Fatalf("row %d is of no setup of the shop: %v", i, row)
			}
			row[at["date"]], row[at["cured"]] = "2027-03-01", strconv.FormatFloat(um, 'f', 2, 64)
		}
		if err := w.Write(row); err != nil {
			t.Fatal(err)
		}
	}
	w.Flush()
	write(t, log, filled.String())
	out.Reset()
	if code := run([]string{"fit", log, "../../samples/shop.toml", "--lang", "en"}, nil, &out, &errs); code != exitDone {
		t.Fatalf("fit: exit code %d: %s", code, &errs)
	}
	if want := fmt.Sprintf("%d measured prints, %d of them used", len(rows)-1, len(rows)-1); !strings.Contains(out.String(), want) {
		t.Errorf("fit does not say %q:\n%s", want, &out)
	}
	if !strings.Contains(out.String(), "films run 1.1") {
		t.Errorf("fit does not find films of 1.15 x:\n%s", &out)
	}
}

// TestTrialRefuses: what a trial cannot be made of is an error with what would be accepted.
func TestTrialRefuses(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--press", "nowhere"}, "press"},
		{[]string{"--ink", "soup"}, "the ink class"},
		{[]string{"--hours", "1", "--prints-per-hour", "1"}, "not enough time"},
		{[]string{"a.toml", "b.toml"}, "2 shop files are named"},
		{[]string{"--days", "40"}, "1 to 30 days"},
	} {
		var out, errs bytes.Buffer
		if code := run(append([]string{"trial"}, c.args...), nil, &out, &errs); code == exitDone || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%v: exit code %d, %q; %q is wanted", c.args, code, &errs, c.want)
		}
	}
}
