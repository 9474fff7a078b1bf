package pdf

import (
	"bytes"
	"fmt"
	"iter"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
)

// one is a page of 100 x 50 mm.
func one(draw func(canvas.Canvas)) iter.Seq2[Page, error] {
	return func(yield func(Page, error) bool) { yield(Page{Name: "card 7", W: 100, H: 50, Draw: draw}, nil) }
}

func says(s string) func(canvas.Canvas) {
	return func(c canvas.Canvas) { c.Text(10, 20, s, canvas.Font{SizePT: 10}, canvas.Black, 0) }
}

// Layout and PDF must advance alike: the library's own widths are the reference, rune by rune.
func TestWidthIsThatOfThePDF(t *testing.T) {
	for _, face := range canvas.Faces {
		doc := fpdf.New("P", "pt", "A4", "")
		doc.AddUTF8FontFromBytes("text", style(face), bytes.Clone(canvas.TTF(face)))
		doc.SetFont("text", style(face), 1000)
		n := 0
		for r := range rune(0x2800) {
			s := string(r)
			if _, err := canvas.Clean(s); err != nil || canvas.NFC(s) != s {
				continue
			}
			n++
			if mine, theirs := float64(canvas.Advance(s, face)), doc.GetStringWidth(s); math.Abs(mine-theirs) > 1e-9 {
				t.Fatalf("style %q: %U is %v wide here, %v in the PDF", style(face), r, mine, theirs)
			}
		}
		if n < 1500 {
			t.Errorf("style %q has %d runes only", style(face), n)
		}
		if err := doc.Error(); err != nil {
			t.Fatal(err)
		}
	}
}

// What the last table of places leads to is a catalog with the preferences and all that the one before
// it had; the first table is still led to.
func TestPreferences(t *testing.T) {
	for _, c := range []struct {
		duplex Duplex
		want   string
	}{
		{"", "/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>"},
		{FlipLongEdge, "/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true /Duplex /DuplexFlipLongEdge>>"},
		{FlipShortEdge, "/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true /Duplex /DuplexFlipShortEdge>>"},
	} {
		var out bytes.Buffer
		if err := Write(&out, Meta{Title: "Lakeside", Language: "en-GB", Duplex: c.duplex}, one(says("words"))); err != nil {
			t.Fatal(err)
		}
		doc := out.String()
		table, size, root, info, before := 0, 0, 0, 0, 0
		if _, err := fmt.Sscanf(doc[strings.LastIndex(doc, "startxref"):], "startxref\n%d\n%%%%EOF", &table); err != nil {
			t.Fatal(err)
		}
		number, place := 0, 0
		if _, err := fmt.Sscanf(doc[table:], "xref\n%d 1\n%d 00000 n \ntrailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n/Prev %d\n>>", &number, &place, &size, &root, &info, &before); err != nil {
			t.Fatal(err)
		}
		catalog, _, _ := strings.Cut(doc[place:], "endobj")
		if number != root || !strings.HasPrefix(catalog, fmt.Sprintf("%d 0 obj\n", root)) {
			t.Errorf("object %d is updated and begins with %.9q; the catalog is %d", number, catalog, root)
		}
		for _, want := range []string{c.want, "/Type /Catalog", "/Pages 1 0 R", "/Lang (en-GB)", "/Version /1.7"} {
			if !strings.Contains(catalog, want) {
				t.Errorf("duplex %q: no %s in the catalog %s", c.duplex, want, catalog)
			}
		}
		if !strings.HasPrefix(doc[before:], fmt.Sprintf("xref\n0 %d\n", size)) {
			t.Errorf("the first table is not at %d", before)
		}
		if qpdf, err := exec.LookPath("qpdf"); err == nil {
			file := filepath.Join(t.TempDir(), "one.pdf")
			if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
				t.Fatal(err)
			}
			if said, err := exec.Command(qpdf, "--check", file).CombinedOutput(); err != nil {
				t.Errorf("qpdf: %s", said)
			}
			said, err := exec.Command(qpdf, fmt.Sprintf("--show-object=%d", root), file).CombinedOutput()
			if err != nil || !strings.Contains(string(said), "/PrintScaling /None") {
				t.Errorf("qpdf reads the catalog %s", said)
			}
		}
	}
}

func TestPreferencesRefuses(t *testing.T) {
	var out bytes.Buffer
	if err := fpdf.New("P", "pt", "A4", "").Output(&out); err != nil {
		t.Fatal(err)
	}
	for what, change := range map[string][2]string{
		"no table's place": {"startxref\n", "startxref\nx"},
		"a far place":      {"startxref\n", "startxref\n9"},
		"no trailer":       {"trailer\n", "trail er"},
		"no root":          {"/Root ", "/Boot "},
	} {
		if _, err := withPreferences(bytes.Replace(out.Bytes(), []byte(change[0]), []byte(change[1]), 1), ""); err == nil {
			t.Errorf("%s: error %v", what, err)
		}
	}
}

// A text with rare runes gets the whole face, and it alone.
func TestRareRunes(t *testing.T) {
	for _, c := range []struct {
		text string
		want int // faces
	}{{"Łódź 20 µm → ½ ≥ ✓", 1}, {"Привет", 1}, {"Lakeside Привет", 1}, {"", 0}} {
		var out bytes.Buffer
		if err := Write(&out, Meta{}, one(says(c.text))); err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(out.Bytes(), []byte("/FontFile2")); n != c.want {
			t.Errorf("%q: %d faces are embedded; %d are wanted", c.text, n, c.want)
		}
	}
}

// The common font lacks no glyph of the whole face that a text may ask it for.
func TestCommonFont(t *testing.T) {
	for _, f := range canvas.Faces {
		cut, err := sfnt.Parse(commonFonts()[f])
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, r := range printable() {
			n++
			if g, err := cut.GlyphIndex(nil, r); err != nil || g == 0 {
				t.Errorf("style %q lacks %U: %v", style(f), r, err)
			}
		}
		if n < 400 {
			t.Errorf("%d runes are common", n)
		}
	}
}

// What cannot be printed is an error that names the page; so is a panic.
func TestWriteRefuses(t *testing.T) {
	for _, c := range []struct {
		draw func(canvas.Canvas)
		want string
	}{
		{says("漢"), "page 1: card 7: text"},
		{says("\U00010000"), "U+10000"},
		{func(canvas.Canvas) { panic("broken") }, "page 1: card 7: the PDF library gave up: broken"},
	} {
		var out bytes.Buffer
		if err := Write(&out, Meta{}, one(c.draw)); err == nil || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("error %v, want %q; %d bytes are written", err, c.want, out.Len())
		}
	}
	failed := func(yield func(Page, error) bool) { yield(Page{}, fmt.Errorf("no room")) }
	if err := Write(&bytes.Buffer{}, Meta{}, failed); err == nil || err.Error() != "page 1: no room" {
		t.Errorf("an error in place of a page: %v", err)
	}
}
