package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

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
				[]string{l.voice.T("card.x-angle"), l.voice.T("card.y-film")}},
			document{base + "-sheet.pdf", title, l.plan.Shop, l.voice.T("sheet-doc.subject"),
				[]string{l.voice.T("sheet-doc.film"), l.voice.T("sheet-doc.held")}})
	}
	l := planned(t, e, "../../samples/jobs/lantern-crew.toml") // of the sample shop
	return append(out, document{filepath.Join(dir, "handout.pdf"), l.voice.T("handout.title"), l.plan.Shop,
		l.voice.T("handout.subject"), []string{l.voice.T("handout.wipe.head"), l.voice.T("handout.answers.head")}})
}

// TestPaper: every document of every sample is read by other programs without a complaint, says
// what it is, holds its fonts, stays small, can be searched, and no word leaves its page or lies
// on another. Each job is printed in both languages and on both papers; the one of spot colours,
// the one with most screens and the handout in all four editions.
func TestPaper(t *testing.T) {
	jobs := sampleJobs(t)
	for i, e := range editions {
		var some []string
		for k, j := range jobs {
			if k%2 == i/2 || strings.Contains(j, "crew") || strings.Contains(j, "scene") {
				some = append(some, j)
			}
		}
		t.Run(e.lang+" "+e.paper, func(t *testing.T) {
			t.Parallel()
			all := []string{"-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=nullpage"}
			for _, d := range printed(t, e, some) {
				all = append(all, d.path)
				t.Run(filepath.Base(d.path), func(t *testing.T) {
					readElsewhere(t, d.path)
					selfDescribed(t, d, e)
					searchable(t, d, e)
				})
			}
			if out, ok := tool(t, "gs", all...); ok && out != "" { // all at once: its start is slow
				t.Errorf("gs: %s", out)
			}
		})
	}
}

// packages tell where a program that reads PDFs comes from; .ci/run installs them.
var packages = map[string]string{"qpdf": "qpdf", "mutool": "mupdf-tools", "gs": "ghostscript",
	"pdffonts": "poppler-utils", "pdfinfo": "poppler-utils", "pdftoppm": "poppler-utils", "pdftotext": "poppler-utils"}

// tool runs a program on a document and returns all that it says; false, with a word in the log,
// where the machine lacks it.
func tool(t *testing.T, name string, args ...string) (string, bool) {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Logf("%s is not on this machine and was not asked: apt-get install %s", name, packages[name])
		return "", false
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Errorf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out), true
}

func readElsewhere(t *testing.T, file string) {
	if out, ok := tool(t, "qpdf", "--check", file); ok && strings.Contains(strings.ToLower(out), "warning") {
		t.Errorf("qpdf: %s", out)
	}
	for name, args := range map[string][]string{
		"mutool":   {"draw", "-N", "-q", "-r", "20", "-o", os.DevNull, "-F", "pnm"}, // -N: builds without colour management warn
		"pdftoppm": {"-r", "20"},
	} {
		args = append(args, file)
		if name == "pdftoppm" { // it needs a name for the pages
			args = append(args, filepath.Join(t.TempDir(), "page"))
		}
		if out, ok := tool(t, name, args...); ok && out != "" {
			t.Errorf("%s: %s", name, out)
		}
	}
	if out, ok := tool(t, "pdffonts", file); ok {
		rows := strings.Split(strings.TrimSpace(out), "\n")[2:]
		for _, row := range rows {
			if f := strings.Fields(row); len(f) < 8 || f[len(f)-5] != "yes" || strings.Contains(row, "Type 3") {
				t.Errorf("a font is not embedded: %s", row)
			}
		}
		if len(rows) != 2 {
			t.Errorf("%d fonts; two faces are wanted", len(rows))
		}
	}
}

// most is what a page of cards, front or back, may take in bytes, the fonts' share included.
const most = 60_000

// clock is a date in a PDF; a moment that is no midnight comes from the machine's clock.
var clock = regexp.MustCompile(`\(D:\d{8}(\d{6})[^)]*\)`)

func selfDescribed(t *testing.T, d document, e edition) {
	src, err := os.ReadFile(d.path)
	if err != nil {
		t.Fatal(err)
	}
	for _, date := range clock.FindAllSubmatch(src, -1) {
		if string(date[1]) != "000000" {
			t.Errorf("the date %s is of the clock", date[0])
		}
	}
	info, ok := tool(t, "pdfinfo", d.path)
	if !ok {
		return
	}
	fields := map[string]string{}
	for line := range strings.Lines(info) {
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
	if catalog, ok := tool(t, "mutool", "show", d.path, "trailer/Root/Lang"); ok && strings.TrimSpace(catalog) != "("+e.lang+")" {
		t.Errorf("the catalog says the language %s; %s is wanted", catalog, e.lang)
	}
	pages, err := strconv.Atoi(fields["Pages"])
	if err != nil {
		t.Fatal(err)
	}
	if strings.HasSuffix(d.path, "-cards.pdf") && len(src) > pages*most {
		t.Errorf("%d bytes on %d pages; at most %d a page are accepted", len(src), pages, most)
	}
}
