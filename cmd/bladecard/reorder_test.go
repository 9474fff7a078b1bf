package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/calc/plan"
)

const (
	reorderJob = "job = \"T-1\"\ntitle = \"Towpath tees\"\n[garment]\nshade = \"dark\"\n[[location]]\nname = \"front\"\nwidth = \"30 cm\"\nheight = \"20 cm\"\n" +
		"[[location.screen]]\ncolor = \"white\"\nuse = \"underbase\"\nmesh = \"125-71\"\nblade = \"70\"\n[[location.screen]]\ncolor = \"red\"\nmesh = \"156-64\"\nblade = \"70\"\nangle = 15\nstrokes = 1\n"
	reorderShop = "name = \"Quay Mill\"\nlog = \"press-log.csv\"\n[[press]]\nname = \"big one\"\nkind = \"automatic\"\nheads = 8\nbore = \"40 mm\"\n"
)

// reorderBench is a folder with a job, its shop and their press log.
type reorderBench struct {
	t   *testing.T
	dir string
}

func (b reorderBench) path(name string) string { return filepath.Join(b.dir, name) }

// run runs a command whose words may name files of the folder, and wants its exit code.
func (b reorderBench) run(code int, args ...string) (out, errs string) {
	b.t.Helper()
	for i, a := range args {
		if ext := filepath.Ext(a); ext == ".toml" || ext == ".csv" || a == "out" {
			args[i] = b.path(a)
		}
	}
	var o, e bytes.Buffer
	if got := run(args, nil, &o, &e); got != code {
		b.t.Fatalf("%v: code %d; %d is wanted\n%s", args, got, code, e.String())
	}
	return o.String(), e.String()
}

// fill writes cells into the row of a screen of the log: what stands before a unit names the column.
func (b reorderBench) fill(log string, comma rune, row int, cells map[string]string) {
	b.t.Helper()
	r := csv.NewReader(bytes.NewReader(content(b.t, b.path(log))))
	r.Comma = comma
	all, err := r.ReadAll()
	if err != nil {
		b.t.Fatal(err)
	}
	left := len(cells)
	for i, head := range all[0] {
		name, _, _ := strings.Cut(head, " ")
		if text, named := cells[name]; named {
			all[row][i] = text
			left--
		}
	}
	if left > 0 {
		b.t.Fatalf("%d of %v have no column in %v", left, cells, all[0])
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.Comma = comma
	w.WriteAll(all)
	write(b.t, b.path(log), out.String())
}

func newReorder(t *testing.T, shop string) reorderBench {
	b := reorderBench{t, t.TempDir()}
	write(t, b.path("job.toml"), reorderJob)
	write(t, b.path("shop.toml"), shop)
	b.run(exitDone, "log", "job.toml", "-o", "press-log.csv")
	return b
}

// TestReorder: a job runs, its log is filled in, and when it comes again, its cards, sheet, page and show tell what
// it ran with, what was measured, and what is different now. The log stays one that fit reads.
func TestReorder(t *testing.T) {
	t.Parallel()
	b := newReorder(t, reorderShop)
	if out, _ := b.run(exitDone, "show", "job.toml"); strings.Contains(out, "Last run") {
		t.Errorf("a job that has not run has a last run:\n%s", out)
	}
	b.run(exitDone, "build", "job.toml", "-o", "out", "--html")
	b.fill("press-log.csv", ',', 1, map[string]string{"date": "2026-11-10", "blade": "60", "angle": "20", "cured": "41.5", "wiped": "yes", "cure": "162", "wash": "pass", "name": "Ana"})
	b.fill("press-log.csv", ',', 2, map[string]string{"date": "2026-11-10", "cured": "300", "wiped": "no", "wash": "fail"})

	var p plan.Plan
	out, _ := b.run(exitDone, "show", "job.toml", "--json")
	if err := json.Unmarshal([]byte(out), &p); err != nil {
		t.Fatal(err)
	}
	white, red := p.Locations[0].Screens[0].Last, p.Locations[0].Screens[1].Last
	if white == nil || white.Blade != "60" || white.AngleDeg != 20 || *white.CuredUM != 41.5 || white.CuredFrom != "gauge" || *white.CureC != 162 || white.Differences[0].What != "blade" {
		t.Errorf("white ran with %+v", white)
	}
	if red == nil || red.Wiped != "no" || len(red.Differences) != 1 || red.Differences[0].What != "film" || *red.Differences[0].Was != 300 {
		t.Errorf("red ran with %+v", red)
	}

	tells := []string{"Last run 2026-11-10: ", "blade 60 then, 70 now", "Measured 300 µm cured, outside of the"}
	says := func(where, text string, want ...string) {
		t.Helper()
		text = strings.Join(strings.Fields(text), " ")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s does not tell %q:\n%s", where, w, text)
			}
		}
	}
	out, _ = b.run(exitDone, "show", "job.toml")
	says("show", out, append(tells, "125-71, blade 60, 20°, 1 stroke, ", "Signed off by Ana, came clean, cure reached 162 °C, wash passed.", "Did not come clean, wash failed.")...)
	out, errs := b.run(exitDone, "build", "job.toml", "-o", "out", "--html")
	if !strings.Contains(errs, "1 made") || !strings.Contains(out, "job.html") {
		t.Errorf("a job whose rows changed is not made again: %s%s", out, errs)
	}
	says("page", string(content(t, b.path("out/job.html"))), append(tells, "Signed off by Ana")...)
	out, _ = b.run(exitDone, "show", "job.toml", "--lang", "es")
	says("show in Spanish", out, "Última vez 10/11/2026: ", "racleta 60 entonces, 70 ahora", "Visto bueno de Ana")

	write(t, b.path("far.csv"), strings.Replace(string(content(t, b.path("press-log.csv"))), "300", "", 1))
	for _, day := range []string{"2026-11-11", "2026-11-12", "2026-11-13"} {
		b.fill("far.csv", ',', 1, map[string]string{"date": day})
		write(t, b.path("far.csv"), string(content(t, b.path("far.csv")))+lineOf(t, b.path("far.csv"), 1))
	}
	out, _ = b.run(exitDone, "fit", "far.csv", "shop.toml")
	says("fit", out, "4 measured prints")
	write(t, b.path("far.csv"), string(content(t, b.path("far.csv")))+lineOf(t, b.path("press-log.csv"), 2))
	out, errs = b.run(exitDone, "fit", "far.csv", "shop.toml", "--json")
	says("fit", out, `"prints":4`, `"unwiped":[7]`)
	says("fit", errs, "1 measured print is left out, since the log says that ink stayed in the screen: line 7")

	says("cards", outside(t, "pdftotext", b.path("out/job-cards.pdf"), "-"), tells...)
	says("sheet", outside(t, "pdftotext", "-layout", b.path("out/job-sheet.pdf"), "-"), "what ran before", "2026-11-10", "blade 60 then, 70", "angle 20° then, 15° now", "signed off by Ana")
}

// lineOf is a line of a file, counted from 0.
func lineOf(t *testing.T, path string, n int) string {
	t.Helper()
	lines := strings.SplitAfter(string(content(t, path)), "\n")
	if n >= len(lines) {
		t.Fatalf("%s has %d lines", path, len(lines))
	}
	return lines[n]
}

// TestLogIsAnInput: a build makes the jobs again whose rows of the press log changed, and no others; what is wrong
// with the log is told at its place, and no command writes over it.
func TestLogIsAnInput(t *testing.T) {
	t.Parallel()
	b := newReorder(t, reorderShop)
	for i := range 4 {
		write(t, b.path(fmt.Sprintf("jobs/%d.toml", i)), strings.Replace(reorderJob, "T-1", fmt.Sprintf("T-%d", i), 1))
	}
	builds := func(want string) {
		t.Helper()
		if code, said := built(b.path("jobs"), "-o", b.path("out")); code != exitDone || !strings.Contains(said, want) {
			t.Errorf("code %d, %s; %s is wanted", code, said, want)
		}
	}
	builds("4 jobs: 4 made, 0 unchanged, 0 failed")
	builds("4 jobs: 0 made, 4 unchanged, 0 failed")
	b.fill("press-log.csv", ',', 1, map[string]string{"cured": "41"})
	builds("4 jobs: 1 made, 3 unchanged, 0 failed")
	builds("4 jobs: 0 made, 4 unchanged, 0 failed")

	log := string(content(t, b.path("press-log.csv")))
	for _, args := range [][]string{
		{"sweep", "job.toml", "--vary", "angle=0..20", "-o", "press-log.csv", "--force"},
		{"trial", "shop.toml", "--log", "press-log.csv", "--force"},
	} {
		if _, errs := b.run(exitFile, args...); !strings.Contains(errs, "press-log.csv is read by this very command") {
			t.Errorf("%v: %s", args, errs)
		}
	}
	if err := os.Remove(b.path("out/1-cards.pdf")); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(b.path("press-log.csv"), b.path("out/1-cards.pdf")); err == nil {
		if code, said := built(b.path("jobs"), "-o", b.path("out"), "--force"); code != exitFile || !strings.Contains(said, "is the same file as "+b.path("press-log.csv")+", which is read") {
			t.Errorf("code %d, %s", code, said)
		}
		os.Remove(b.path("out/1-cards.pdf"))
	}
	if now := string(content(t, b.path("press-log.csv"))); now != log {
		t.Errorf("the log is %s; it was %s", now, log)
	}

	b.fill("press-log.csv", ',', 2, map[string]string{"angle": "steep"})
	for _, args := range [][]string{{"show", "job.toml"}, {"build", "job.toml", "-o", "out"}, {"check", "job.toml"}, {"check", "shop.toml"}} {
		if out, errs := b.run(exitJob, args...); !strings.Contains(out+errs, "press-log.csv:3:") || !strings.Contains(out+errs, `angle: "steep" is not a number`) {
			t.Errorf("%v: %s%s", args, out, errs)
		}
	}
	if err := os.Remove(b.path("press-log.csv")); err != nil {
		t.Fatal(err)
	}
	if _, errs := b.run(exitJob, "show", "job.toml"); !strings.Contains(errs, "log: there is no file "+b.path("press-log.csv")+"; a press log is accepted, which bladecard log JOB -o") {
		t.Error(errs)
	}
	b.run(exitDone, "log", "job.toml", "-o", "press-log.csv")
	b.run(exitDone, "show", "job.toml")
}

// TestLogForTheSpreadsheet: a log has the separators of a spreadsheet in the shop's language, and is read back.
func TestLogForTheSpreadsheet(t *testing.T) {
	t.Parallel()
	for language, comma := range map[string]rune{"en": ',', "es": ';', "es-MX": ','} {
		b := newReorder(t, "language = \""+language+"\"\n"+reorderShop)
		decimal := map[rune]string{',': "41.5", ';': "41,5"}[comma]
		b.fill("press-log.csv", comma, 1, map[string]string{"date": "2026-11-10", "cured": decimal, "wiped": "sí"})
		out, _ := b.run(exitDone, "show", "job.toml", "--json")
		if !strings.Contains(out, `"cured_um":41.5`) || !strings.Contains(out, `"wiped":"yes"`) {
			t.Errorf("%s: %s", language, out)
		}
	}
}
