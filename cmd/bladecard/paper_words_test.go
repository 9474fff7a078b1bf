package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// word is a word as another program reads it, its box in pt.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// lead is the leading above the letters of a word, and below them.
func (w word) lead() float64 { return (w.YMax - w.YMin) / 6 }

type wordsOfPage struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []word  `xml:"word"`
}

// read lists the words of a document page by page; it skips the test where the machine cannot.
func read(t *testing.T, file string) []wordsOfPage {
	t.Helper()
	var doc struct {
		Pages []wordsOfPage `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(outside(t, "pdftotext", "-bbox", file, "-")), &doc); err != nil {
		t.Fatalf("%s: %v", filepath.Base(file), err)
	}
	return doc.Pages
}

// searchable: the figures' signs, known labels and the language's own letters come out as text,
// and no word stands at the page's edge or on another.
func searchable(t *testing.T, d document, e edition) {
	text := strings.Join(strings.Fields(outside(t, "pdftotext", d.path, "-")), " ")
	for _, b := range saysBanned(e.lang, text) {
		t.Errorf("it says %s", b)
	}
	want := append([]string{"µm", "°"}, d.labels...)
	if e.lang == "es" {
		want = append(want, "á", "ó")
		if strings.HasSuffix(d.path, "handout.pdf") {
			want = append(want, "ñ")
		}
	}
	for _, s := range want {
		if !strings.Contains(text, strings.Join(strings.Fields(s), " ")) {
			t.Errorf("no %q is found in its text", s)
		}
	}
	for i, p := range read(t, d.path) {
		if len(p.Words) < 15 {
			t.Errorf("page %d has %d words", i+1, len(p.Words))
		}
		apart(t, i+1, p)
	}
}

// apart: every word of a page is inside the strip that printers leave white, and the letters of no two words
// overlap by more than half a point in both directions. A word's box has the font's leading above and below the
// letters, a sixth of it each, into which the row of another size may reach.
func apart(t *testing.T, number int, p wordsOfPage) {
	t.Helper()
	const slack = 0.5
	edge := page.EdgeMM / canvas.MMPerPT
	for k, w := range p.Words {
		if w.XMin < edge-slack || w.XMax > p.Width-edge+slack || w.YMin < edge-slack || w.YMax > p.Height-edge+slack {
			t.Errorf("page %d: %q stands at the edge, %.1f, %.1f to %.1f, %.1f pt", number, w.Text, w.XMin, w.YMin, w.XMax, w.YMax)
		}
		for _, o := range p.Words[:k] {
			across, down := min(w.XMax, o.XMax)-max(w.XMin, o.XMin), min(w.YMax-w.lead(), o.YMax-o.lead())-max(w.YMin+w.lead(), o.YMin+o.lead())
			if across > slack && down > slack {
				t.Errorf("page %d: %q lies %.1f by %.1f pt on %q", number, w.Text, across, down, o.Text)
			}
		}
	}
}

// crowd writes a job of sixteen screens with long names, and its shop, and returns its path.
func crowd(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	const shop = "name = \"Taller Año Nuevo\"\n[[press]]\nname = \"carousel\"\nkind = \"automatic\"\nheads = 40\nbore = \"25 mm\"\ncylinders = 2\nstroke-speed = \"0.3 m/s\"\nload = \"5 N/cm\"\nflood = true\n"
	name := strings.Repeat("ñandú Überdruck ", 10)
	job := fmt.Sprintf("title = %q\njob = %q\nshop = \"shop.toml\"\n[garment]\nname = %q\nfibre = \"polyester\"\nshade = \"dark\"\n[[location]]\nname = %q\nwidth = \"250 mm\"\nheight = \"300 mm\"\n",
		name+"end", strings.Repeat("W", 32), name, name)
	inks := []string{"plastisol white", "discharge", "plastisol puff", "water-based"}
	for i := range 16 {
		job += fmt.Sprintf("[[location.screen]]\ncolor = %q\nink = %q\nswatch = \"#20%02x40\"\n", fmt.Sprint(i, " ", name), inks[i%len(inks)], 15*i)
		if i%3 == 1 {
			job += "halftone = { lines = \"65 lpi\", angle = 22.5, smallest = \"3 %\" }\n"
		}
	}
	path := filepath.Join(dir, "crowd.toml")
	for file, text := range map[string]string{path: job, filepath.Join(dir, "shop.toml"): shop} {
		write(t, file, text)
	}
	return path
}

// TestWordsKeepToTheirCard: as another program reads the imposed cards, every word lies in the
// safe area of a card or in a note of the margin, and each card carries the words of its boxes.
// All samples and a job of sixteen screens with long names, each in both languages, on both papers and turned about both
// edges, on two of the four sizes, and with BLADECARD_FULL on all four.
func TestWordsKeepToTheirCard(t *testing.T) {
	jobs := append(sampleJobs(t), crowd(t))
	full := os.Getenv(fullEnv) != ""
	for i, e := range editions {
		flip := page.Flip(i % 2) // long, short
		t.Run(e.lang+" "+e.paper, func(t *testing.T) {
			t.Parallel()
			for k, j := range jobs {
				if k%2 != i/2 && !full {
					continue
				}
				size := page.Sizes[(i+k)%len(page.Sizes)]
				name := strings.TrimSuffix(filepath.Base(j), ".toml")
				t.Run(name+" "+size.Name, func(t *testing.T) { keepToCard(t, e, j, name, size, flip) })
			}
		})
	}
}

func keepToCard(t *testing.T, e edition, job, name string, size page.Size, flip page.Flip) {
	dir := t.TempDir()
	edge := []string{flipLong, flipShort}[flip]
	commanded(t, "cards", job, "-o", dir, "--lang", e.lang, "--paper", e.paper, "--size", size.Name, "--flip", edge)
	file := filepath.Join(dir, name+"-cards.pdf")
	laid, err := documents{size: size.Name, paper: e.paper, flip: edge}.cardSheets(planned(t, e, job))
	if err != nil {
		t.Fatal(err)
	}
	var sheets []page.Sheet
	for s, err := range laid {
		if err != nil {
			t.Fatal(err)
		}
		sheets = append(sheets, s)
	}
	smallEnough(t, file, sheets)
	pages := read(t, file)
	if len(pages) != len(sheets) {
		t.Fatalf("%d pages; %d are wanted", len(pages), len(sheets))
	}
	for i, s := range sheets {
		apart(t, i+1, pages[i])
		for k, have := range sorted(t, s, i+1, pages[i]) {
			face := s.Cards[k].Face
			for _, text := range texts(face) {
				for _, w := range strings.Fields(text) {
					if have[w] == 0 {
						t.Errorf("%s: the reader does not find %q of %q", face.Name, w, text)
					}
				}
			}
		}
	}
}

// smallEnough holds the bytes of a document of cards, a page and, beyond the fonts, a card.
func smallEnough(t *testing.T, file string, sheets []page.Sheet) {
	t.Helper()
	src := content(t, file)
	cards := 0
	for _, s := range sheets {
		if !s.Back {
			cards += len(s.Cards)
		}
	}
	start, end := bytes.Index(src, []byte("/Subtype /Type0")), bytes.LastIndex(src, []byte("xref\n0 "))
	fonts := end - start // their objects stand together behind the pages
	if start < 0 || fonts < 10_000 || len(src) > len(sheets)*most {
		t.Errorf("%d bytes on %d pages, %d of fonts; at most %d a page are accepted", len(src), len(sheets), fonts, most)
	}
	if beyond := (len(src) - fonts) / cards; beyond > mostOfACard {
		t.Errorf("%d bytes a card beyond the fonts; at most %d are accepted", beyond, mostOfACard)
	}
}

// mostOfACard is the bytes of a card, both sides, beyond the fonts.
const mostOfACard = 11 << 10

// sorted counts the words of a page by the card that they stand on.
func sorted(t *testing.T, s page.Sheet, number int, p wordsOfPage) []map[string]int {
	t.Helper()
	half := func(in page.Rect, w, h float64) page.Rect { // after half a turn in w by h
		return page.Rect{X: w - in.Right(), Y: h - in.Bottom(), W: in.W, H: in.H}
	}
	out := make([]map[string]int, len(s.Cards))
	var places []page.Rect
	for i, c := range s.Cards {
		out[i] = map[string]int{}
		safe := c.Face.Safe
		if s.Turned {
			safe = half(safe, c.Trim.W, c.Trim.H)
		}
		safe.X += c.Trim.X
		safe.Y += c.Trim.Y
		places = append(places, safe)
	}
	for _, n := range s.Notes {
		r := n.Rect
		if s.Turned {
			r = half(r, s.W, s.H)
		}
		places = append(places, r)
	}
	const mm, slack = canvas.MMPerPT, 0.2
words:
	for _, w := range p.Words {
		for i, r := range places {
			if w.XMin*mm >= r.X-slack && w.XMax*mm <= r.Right()+slack && w.YMin*mm >= r.Y-slack && w.YMax*mm <= r.Bottom()+slack {
				if i < len(out) {
					out[i][w.Text]++
				}
				continue words
			}
		}
		t.Errorf("page %d: %q from %.1f, %.1f to %.1f, %.1f mm is in no safe area and no note", number, w.Text, w.XMin*mm, w.YMin*mm, w.XMax*mm, w.YMax*mm)
	}
	return out
}

// texts are the texts of a face, those inside drawings too.
func texts(f page.Face) []string {
	var out []string
	for _, b := range f.Boxes {
		if b.Text != "" {
			out = append(out, b.Text)
		}
		for _, x := range b.Art.Texts() {
			out = append(out, x.Text)
		}
	}
	return out
}
