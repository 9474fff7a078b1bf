package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/calc/day"
	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/render/daysheet"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
	"bladecard/render/say"
)

// fewBlades is a shop with two presses that run at once and too few blades for both.
const fewBlades = `name = "Two Press Room"
sharpen-after = 3000
[[blade]]
layup = "70"
count = 4
prints = 2500
[[blade]]
layup = "65/90/65"
count = 3
[[blade]]
layup = "80"
count = 2
[[press]]
name = "carousel"
kind = "automatic"
heads = 10
bore = "25 mm"
cylinders = 2
[[press]]
name = "bench"
kind = "manual"
heads = 6
`

// fortyJobs writes the jobs of a busy week into a folder: few inks in many colors on tees of both shades.
func fortyJobs(t *testing.T, dir string) {
	t.Helper()
	put := func(name, text string) { write(t, filepath.Join(dir, name), text) }
	put("shop.toml", fewBlades)
	r := rand.New(rand.NewPCG(40, 4))
	colors := []string{"signal red", "sky blue", "lantern amber", "kelp green", "slate"}
	for i := range 40 {
		var b strings.Builder
		shade, press := []string{"dark", "light"}[r.IntN(2)], []string{"carousel", "bench"}[r.IntN(2)]
		fmt.Fprintf(&b, "job = \"W-%02d\"\ntitle = \"order %d\"\nquantity = %d\ndue = 2027-06-%02d\npress = %q\n[garment]\nfibre = \"cotton\"\nshade = %q\n", i+1, i+1, 12+r.IntN(200), 1+r.IntN(5), press, shade)
		b.WriteString("[[location]]\nname = \"front\"\nwidth = \"25 cm\"\nheight = \"30 cm\"\n")
		if shade == "dark" {
			b.WriteString("[[location.screen]]\ncolor = \"white base\"\nswatch = \"#f4f4ee\"\nink = \"plastisol white\"\nuse = \"underbase\"\nmesh = \"156-64\"\ncoverage = \"30 %\"\n")
		}
		for range 1 + r.IntN(3) {
			use := []string{"solid", "detail"}[r.IntN(2)]
			fmt.Fprintf(&b, "[[location.screen]]\ncolor = %q\nink = \"plastisol\"\nuse = %q\nmesh = \"230-48\"\ncoverage = \"%d %%\"\n", colors[r.IntN(len(colors))], use, 5+r.IntN(20))
		}
		put(fmt.Sprintf("w-%02d.toml", i+1), b.String())
	}
}

// TestDayOfForty: forty jobs are laid out with fewer changes than as the files stand; each stock that is short is
// settled or its want told; the sums of ink are those of the jobs; a span of days takes the jobs that are due in it.
func TestDayOfForty(t *testing.T) {
	dir := t.TempDir()
	fortyJobs(t, dir)
	ask := func(args ...string) string {
		t.Helper()
		var out, errs bytes.Buffer
		if code := run(append(args, "--lang", "en"), nil, &out, &errs); code != exitDone {
			t.Fatalf("%v: exit code %d: %s", args, code, &errs)
		}
		return out.String()
	}
	var d day.Day
	if err := json.Unmarshal([]byte(ask("day", dir, "--json")), &d); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d changes, %d in the order of the files", d.Changes, d.FileOrder)
	if 2*d.Changes > d.FileOrder {
		t.Errorf("%d changes in this order, %d in that of the files: half is asked", d.Changes, d.FileOrder)
	}
	if len(d.Presses) != 2 || len(d.Presses[0].Jobs)+len(d.Presses[1].Jobs) != 40 {
		t.Fatalf("%d presses", len(d.Presses))
	}
	if len(d.Clashes) == 0 {
		t.Error("no stock is short, and two are")
	}
	for _, c := range d.Clashes {
		t.Logf("%s: %d wanted, %d there, %d swaps, %d left", c.Blade, c.Wanted, c.Count, len(c.Swaps), c.Left)
		if c.Wanted <= c.Count || len(c.Swaps) == 0 && c.Left == 0 || c.Left >= c.Wanted {
			t.Errorf("%+v", c)
		}
	}
	if len(d.Sharpen) == 0 || d.Sharpen[0].Blade != "70" || d.Sharpen[0].Now {
		t.Errorf("sharpen: %+v", d.Sharpen)
	}
	files, err := filepath.Glob(filepath.Join(dir, "w-*.toml"))
	if err != nil {
		t.Fatal(err)
	}
	sum, sums := 0.0, 0.0
	dec := json.NewDecoder(strings.NewReader(ask(append([]string{"show", "--json"}, files...)...)))
	for dec.More() {
		var p plan.Plan
		if err := dec.Decode(&p); err != nil {
			t.Fatal(err)
		}
		for _, m := range p.Mix {
			sum += m.G
		}
	}
	for _, x := range d.Inks {
		sums += x.G
	}
	if math.Abs(sums/sum-1) > 1e-9 {
		t.Errorf("%g g of ink, the jobs take %g g", sums, sum)
	}
	var part day.Day
	if err := json.Unmarshal([]byte(ask("day", dir, "--json", "--due", "2027-06-02..2027-06-03")), &part); err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, p := range part.Presses {
		for _, j := range p.Jobs {
			if n++; j.Due != "2027-06-02" && j.Due != "2027-06-03" {
				t.Errorf("%s is due on %s", j.Job, j.Due)
			}
		}
	}
	if n == 0 || n == 40 {
		t.Errorf("%d jobs of two days", n)
	}
	said := ask("day", dir, "--csv", filepath.Join(dir, "day.csv"), "-o", filepath.Join(dir, "day.pdf"))
	for _, want := range []string{"Not enough blades", "Blades to sharpen", "Ink to mix", "Dryer settings"} {
		if !strings.Contains(said, want) {
			t.Errorf("day does not say %q", want)
		}
	}
	rows, err := os.ReadFile(filepath.Join(dir, "day.csv"))
	if got := bytes.Count(rows, []byte("\n")) - 1; err != nil || got != len(d.Screens) {
		t.Errorf("%d rows of %d screens, %v", got, len(d.Screens), err)
	}
	paperOfDay(t, dir, files)
}

// paperOfDay checks the list in both languages and on both papers.
func paperOfDay(t *testing.T, dir string, files []string) {
	shop, bad := file.DecodeShop("shop.toml", content(t, filepath.Join(dir, "shop.toml")))
	if bad != nil {
		t.Fatal(bad)
	}
	c := call{told: map[string]bool{}, cores: 1, stderr: &bytes.Buffer{}}
	var plans []*plan.Plan
	for _, path := range files {
		l, err := c.load(path)
		if err != nil {
			t.Fatal(err)
		}
		plans = append(plans, l.plan)
	}
	d := day.Of(shop, plans)
	for _, language := range []string{"en", "es"} {
		for _, paper := range []page.Paper{page.A4, page.Letter} {
			v, err := say.New(language, "inch")
			if err != nil {
				t.Fatal(err)
			}
			faces, err := daysheet.Pages(d, shop.Name, "2027-06-01", paper, v)
			if err != nil {
				t.Fatal(err)
			}
			ticks, want := 0, len(d.Blades)+len(d.Screens)+len(d.Inks)+len(d.Dryers)+len(plans)
			for _, f := range faces {
				for _, err := range pagecheck.Check(f, flow.SmallPT) {
					t.Errorf("%s, %s: %v", language, paper.Name, err)
				}
				for _, b := range f.Boxes {
					if strings.HasSuffix(b.Name, " tick") {
						if ticks++; b.W < 5 || b.H < 5 {
							t.Errorf("%s: %s is %.1f x %.1f mm, too small for a glove", language, b.Name, b.W, b.H)
						}
					}
				}
			}
			if ticks != want {
				t.Errorf("%s, %s: %d boxes to tick, %d things to do", language, paper.Name, ticks, want)
			}
		}
	}
}

// TestDayRefuses: what is no day is an error that says what would be accepted.
func TestDayRefuses(t *testing.T) {
	sample := "../../samples/jobs/lantern-crew.toml"
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "no job file or folder is named"},
		{[]string{sample, "--due", "tomorrow"}, "accepted: 2027-05-21"},
		{[]string{sample, "--due", "2027-05-21..2027-05-01"}, "ends before it begins"},
		{[]string{sample, "--due", "2030-01-01"}, "no job is due then"},
		{[]string{"nowhere.toml"}, "nowhere.toml"},
	} {
		var out, errs bytes.Buffer
		if code := run(append([]string{"day"}, c.args...), nil, &out, &errs); code == exitDone || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%v: exit code %d, %q; %q is wanted", c.args, code, &errs, c.want)
		}
	}
}
