package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// fullEnv has the tests of paper print every job in every edition.
const fullEnv = "BLADECARD_FULL"

// edition is one language on one paper.
type edition struct{ lang, paper string }

var editions = []edition{{"en", "a4"}, {"es", "letter"}, {"en", "letter"}, {"es", "a4"}}

// document is a PDF that a command wrote and what it must say of itself.
type document struct {
	path                   string
	title, author, subject string
	labels                 []string // printed in it, word for word
}

const sampleShop = "../../samples/shop.toml"

func sampleJobs(t *testing.T) []string {
	t.Helper()
	jobs, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(jobs) < 5 {
		t.Fatal(jobs, err)
	}
	return jobs
}

// commanded runs a command that must succeed.
func commanded(t *testing.T, args ...string) {
	t.Helper()
	var errs bytes.Buffer
	if code := run(args, nil, io.Discard, &errs); code != exitDone {
		t.Fatalf("%v: exit code %d\n%s", args, code, errs.String())
	}
}

// planned loads a job as the commands do.
func planned(t *testing.T, e edition, path string) loaded {
	t.Helper()
	l, err := (&call{lang: e.lang}).load(path)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return l
}

// printing are the commands that write the documents of jobs, and the handout, of an edition to dir.
func printing(e edition, dir string, jobs []string) [][]string {
	flags := []string{"--lang", e.lang, "--paper", e.paper, "-o"}
	return [][]string{
		append(append([]string{"cards"}, append(flags, dir)...), jobs...),
		append(append([]string{"sheet"}, append(flags, dir)...), jobs...),
		append(append([]string{"handout"}, append(flags, filepath.Join(dir, "handout.pdf"))...), sampleShop),
		append(append([]string{"handout", "--level", "wall"}, append(flags, filepath.Join(dir, "wall.pdf"))...), sampleShop),
	}
}

// printed writes the documents of jobs in an edition.
func printed(t *testing.T, e edition, jobs []string) []document {
	t.Helper()
	dir := t.TempDir()
	for _, args := range printing(e, dir, jobs) {
		commanded(t, args...)
	}
	var out []document
	for _, j := range jobs {
		l := planned(t, e, j)
		base := filepath.Join(dir, strings.TrimSuffix(filepath.Base(j), ".toml"))
		title := strings.TrimSpace(l.plan.Job + " " + l.plan.Title)
		out = append(out,
			document{base + "-cards.pdf", title, l.plan.Shop, l.voice.T("sheet.subject"),
				[]string{l.voice.T("card.scale"), l.voice.T("card.wrong")}},
			document{base + "-sheet.pdf", title, l.plan.Shop, l.voice.T("sheet-doc.subject"),
				[]string{l.voice.T("sheet-doc.first-sign"), l.voice.T("sheet-doc.details")}})
	}
	l := planned(t, e, "../../samples/jobs/lantern-crew.toml") // of the sample shop
	return append(out, document{filepath.Join(dir, "handout.pdf"), l.voice.T("handout.title"), l.plan.Shop,
		l.voice.T("handout.subject"), []string{l.voice.T("handout.wipe.head"), l.voice.T("handout.answers.head")}},
		document{filepath.Join(dir, "wall.pdf"), l.voice.T("handout.title"), l.plan.Shop, l.voice.T("handout.subject"), []string{l.voice.T("handout.wall.title"), l.voice.T("handout.wall.look")}})
}

// TestPaper checks every document of every sample. Other programs read it without a complaint, it
// says what it is, holds its fonts, stays small and can be searched, and no word leaves its page or
// lies on another. The jobs take turns at the four editions; the job of spot colors is printed in both languages and on
// both papers, the handout in all four editions, and with BLADECARD_FULL everything is. A check that needs a program
// which the machine lacks is skipped.
func TestPaper(t *testing.T) {
	jobs := sampleJobs(t)
	full := os.Getenv(fullEnv) != ""
	for i, e := range editions {
		var some []string
		for k, j := range jobs {
			if k%len(editions) == i || i < 2 && strings.Contains(j, "crew") || full {
				some = append(some, j)
			}
		}
		t.Run(e.lang+" "+e.paper, func(t *testing.T) {
			t.Parallel()
			all := []string{"-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=nullpage"}
			for _, d := range printed(t, e, some) {
				all = append(all, d.path)
				t.Run(filepath.Base(d.path), func(t *testing.T) {
					noClock(t, d.path)
					for name, check := range readers {
						t.Run(name, func(t *testing.T) { check(t, d, e) })
					}
				})
			}
			t.Run("gs", func(t *testing.T) { // all documents at once, since its start is slow
				if out := outside(t, "gs", all...); out != "" {
					t.Error(out)
				}
			})
		})
	}
}

// readers are the programs that read a document, each with what it must find.
var readers = map[string]func(*testing.T, document, edition){
	"qpdf": func(t *testing.T, d document, _ edition) {
		if out := outside(t, "qpdf", "--check", d.path); strings.Contains(strings.ToLower(out), "warning") {
			t.Error(out)
		}
	},
	"mutool": func(t *testing.T, d document, e edition) {
		// -N, since builds without color management warn.
		if out := outside(t, "mutool", "draw", "-N", "-q", "-r", "20", "-o", os.DevNull, "-F", "pnm", d.path); out != "" {
			t.Error(out)
		}
		if said := strings.TrimSpace(outside(t, "mutool", "show", d.path, "trailer/Root/Lang")); said != "("+e.lang+")" {
			t.Errorf("the catalog says the language %s; %s is wanted", said, e.lang)
		}
	},
	"pdftoppm": func(t *testing.T, d document, _ edition) {
		if out := outside(t, "pdftoppm", "-r", "20", d.path, filepath.Join(t.TempDir(), "page")); out != "" {
			t.Error(out)
		}
	},
	"pdffonts":  embedded,
	"pdfinfo":   selfDescribed,
	"pdftotext": searchable,
}

// outside runs a program of another maker, returns all that it says, and fails the test where the
// program fails. Where the machine lacks the program, the test is skipped.
func outside(t *testing.T, name string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not on this machine", name)
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Errorf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}

func embedded(t *testing.T, d document, _ edition) {
	rows := strings.Split(strings.TrimSpace(outside(t, "pdffonts", d.path)), "\n")[2:]
	for _, row := range rows {
		if f := strings.Fields(row); len(f) < 8 || f[len(f)-5] != "yes" || strings.Contains(row, "Type 3") {
			t.Errorf("a font is not embedded: %s", row)
		}
	}
	if len(rows) != 2 {
		t.Errorf("%d fonts; two faces are wanted", len(rows))
	}
}

// clock is a date in a PDF; a moment that is no midnight comes from the machine's clock.
var clock = regexp.MustCompile(`\(D:\d{8}(\d{6})[^)]*\)`)

func noClock(t *testing.T, file string) {
	src := content(t, file)
	for _, date := range clock.FindAllSubmatch(src, -1) {
		if string(date[1]) != "000000" {
			t.Errorf("the date %s is of the clock", date[0])
		}
	}
}

// most is what a page of cards, front or back, may take in bytes, the fonts' share included.
const most = 60_000

func selfDescribed(t *testing.T, d document, e edition) {
	fields := map[string]string{}
	for line := range strings.Lines(outside(t, "pdfinfo", d.path)) {
		k, v, _ := strings.Cut(line, ":")
		fields[k] = strings.TrimSpace(v)
	}
	for k, want := range map[string]string{"Title": d.title, "Author": d.author, "Subject": d.subject, "Producer": "bladecard"} {
		if fields[k] != want || want == "" && k != "Author" { // the built-in shop has no name
			t.Errorf("%s %q; %q is wanted", k, fields[k], want)
		}
	}
	if !strings.Contains(strings.ToLower(fields["Page size"]), "("+e.paper+")") {
		t.Errorf("page size %s; %s is wanted", fields["Page size"], e.paper)
	}
}
