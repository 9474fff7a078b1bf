package phone_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plan"
	"bladecard/render/phone"
	"bladecard/render/say"
)

// pages are the pages of the samples, by file name.
func pages(t *testing.T, language, units string) map[string][]byte {
	t.Helper()
	src, err := os.ReadFile("../../samples/shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	shop, errs := file.DecodeShop("shop.toml", src)
	if errs != nil {
		t.Fatal(errs)
	}
	v, err := say.New(language, units)
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal("no samples", err)
	}
	planner, out := choose.NewPlanner(shop), map[string][]byte{}
	for _, path := range files {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		j, errs := file.DecodeJob(path, src)
		if errs == nil {
			errs = job.Resolve(j, shop)
		}
		if errs != nil {
			t.Fatal(errs)
		}
		p, errs := planner.Make(j)
		if errs != nil {
			t.Fatal(errs)
		}
		v.Fill(p)
		var b bytes.Buffer
		if err := phone.Write(&b, p, v); err != nil {
			t.Fatal(err)
		}
		out[strings.TrimSuffix(filepath.Base(path), ".toml")+".html"] = b.Bytes()
		holds(t, b.String(), p, v)
	}
	return out
}

// holds checks that a page says what the plan says of each screen, and needs nothing beside itself.
func holds(t *testing.T, page string, p *plan.Plan, v *say.Voice) {
	t.Helper()
	for _, no := range []string{"<script", "src=", "http://", "https://fonts", "{{", "{temperature"} {
		if strings.Contains(strings.ReplaceAll(page, "http://www.w3.org", ""), no) {
			t.Errorf("%s: %s stands in the page", p.Title, no)
		}
	}
	plain := strings.NewReplacer("\u00a0", " ")
	for i, l := range p.Locations {
		for _, s := range l.Screens {
			id := fmt.Sprintf(`<section id="location%d-screen%d">`, i+1, s.Number)
			_, at, found := strings.Cut(page, id)
			if !found {
				t.Errorf("%s: no %s", p.Title, id)
				continue
			}
			at, _, _ = strings.Cut(at, "</section>")
			if first, _, _ := strings.Cut(at, `<dl class="set">`); len(s.Warnings) > 0 && !strings.Contains(first, `class="brief"`) {
				t.Errorf("%s, %s: no warning stands above what hands set", p.Title, id)
			}
			wanted := []string{s.Blade.Layup, v.Angle(s.AngleDeg.Set), fmt.Sprint(s.Strokes), v.FilmUM(s.CuredUM.Value), s.Mesh.Name}
			if s.HeightMM != nil {
				wanted = append(wanted, v.T("phone.flat"))
			}
			if s.Halftone != nil {
				wanted = append(wanted, v.Dots(*s.Halftone))
			}
			for _, want := range wanted {
				if !strings.Contains(plain.Replace(at), ">"+plain.Replace(want)) {
					t.Errorf("%s, %s: %q is not there", p.Title, id, want)
				}
			}
			if n := strings.Count(at, "<svg"); n != 2 {
				t.Errorf("%s, %s: %d charts", p.Title, id, n)
			}
		}
	}
}

// TestPages: the pages of the samples say what the plans say, in both languages.
func TestPages(t *testing.T) {
	for _, language := range []string{"en", "es"} {
		for name, page := range pages(t, language, "metric") {
			if !bytes.Contains(page, []byte(`<html lang="`+language+`">`)) {
				t.Errorf("%s: no language", name)
			}
			if n := len(page); n > 600_000 {
				t.Errorf("%s: %d bytes", name, n)
			}
		}
	}
}

// TestUnbroken: in no text of a page may a browser part a range behind its dash, or a number from its word
// or from what it is of.
func TestUnbroken(t *testing.T) {
	breaks := regexp.MustCompile(`\d–\d|\D \d+ \pL|(mesh|blade|angle|EOM) \d`)
	for name, page := range pages(t, "en", "inch") {
		for _, part := range regexp.MustCompile(`(?s)<style>.*?</style>|<svg.*?</svg>|<title>.*?</title>|<h1>.*?</h1>`).Split(string(page), -1) {
			if found := breaks.FindString(part); found != "" {
				t.Errorf("%s: %q may break", name, found)
			}
		}
	}
}

// TestNames: what a job file may hold is text on the page, never markup.
func TestNames(t *testing.T) {
	v, err := say.New("en", "inch")
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	p := &plan.Plan{Job: `"><script>alert(1)</script>`, Title: "a & b <i>"}
	if err := phone.Write(&b, p, v); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "<script") || !strings.Contains(b.String(), "a &amp; b &lt;i&gt;") {
		t.Errorf("%s", &b)
	}
	b.Reset()
	if err := phone.WriteIndex(&b, []phone.Job{{File: "javascript:alert(1)", Title: "<b>"}}, v); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), `href="javascript:`) || strings.Contains(b.String(), "<b>") {
		t.Errorf("%s", &b)
	}
}

var widths = regexp.MustCompile(`data-w="(\d+)"`)

// TestNarrow: in a browser of 360 px no page is wider than its window, with the charts open.
func TestNarrow(t *testing.T) {
	browser := ""
	for _, name := range []string{"chromium-headless-shell", "chromium", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			browser = path
			break
		}
	}
	if browser == "" {
		t.Skip("no headless browser on this machine")
	}
	dir := t.TempDir()
	var frames strings.Builder
	n := 0
	for name, page := range pages(t, "es", "inch") {
		page = bytes.ReplaceAll(page, []byte("<details>"), []byte("<details open>"))
		if err := os.WriteFile(filepath.Join(dir, name), page, 0o666); err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&frames, `<iframe src="%s" style="width:360px;height:640px;border:0"></iframe>`, name)
		n++
	}
	// The frame page, not the page itself, measures how wide each has become.
	outer := `<!DOCTYPE html><body>` + frames.String() + `<script>onload=()=>{for(const f of document.querySelectorAll("iframe"))f.dataset.w=f.contentDocument.documentElement.scrollWidth}</script>`
	if err := os.WriteFile(filepath.Join(dir, "outer.html"), []byte(outer), 0o666); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--allow-file-access-from-files", "--user-data-dir="+filepath.Join(dir, "profile"),
		"--virtual-time-budget=10000", "--dump-dom", "file://"+filepath.Join(dir, "outer.html")).Output()
	if err != nil {
		t.Fatal(err)
	}
	found := widths.FindAllSubmatch(out, -1)
	if len(found) != n {
		t.Fatalf("%d of %d pages were measured", len(found), n)
	}
	for _, w := range found {
		if string(w[1]) != "360" && string(w[1]) != "345" { // with a scroll bar
			t.Errorf("a page is %s px wide", w[1])
		}
	}
}
