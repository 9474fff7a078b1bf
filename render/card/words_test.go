package card_test

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/render/card"
	"bladecard/render/page"

	"github.com/BurntSushi/toml"
)

// sampleCards are the cards of all sample jobs.
func sampleCards(t *testing.T, size page.Size) []page.Card {
	t.Helper()
	files, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	var out []page.Card
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		p, v := made(t, filepath.Dir(f), string(src))
		cards, err := card.All(p, size, v)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, cards...)
	}
	return out
}

// TestOnlyLabelsAreTheSame: a text that all cards share is one of the language file without a
// figure or a name to fill in. Everything else differs somewhere.
func TestOnlyLabelsAreTheSame(t *testing.T) {
	var file map[string]any
	if _, err := toml.DecodeFile("../../templates/lang/en.toml", &file); err != nil {
		t.Fatal(err)
	}
	labels := map[string]bool{}
	for _, table := range file {
		if words, is := table.(map[string]any); is {
			for _, w := range words {
				if s, is := w.(string); is && !strings.Contains(s, "{") {
					labels[strings.Join(strings.Fields(s), " ")] = true
				}
			}
		}
	}
	cards := sampleCards(t, page.Card132)
	for side, face := range map[string]func(page.Card) page.Face{
		"front": func(c page.Card) page.Face { return c.Front },
		"back":  func(c page.Card) page.Face { return c.Back },
	} {
		common := drawn(face(cards[0]))
		for _, c := range cards[1:] {
			words := drawn(face(c))
			for name, text := range common {
				if words[name] != text {
					delete(common, name)
				}
			}
		}
		same := 0
		for name, text := range common {
			if text == "" { // a rule or the colour
				continue
			}
			if same++; !labels[text] {
				t.Errorf("%s: every card has %q in %q, which is no label", side, text, name)
			}
		}
		if side == "back" && same < 5 {
			t.Errorf("%d labels are shared; the log strip alone has six", same)
		}
	}
}

// TestOutsideReader reads the PDF with pdftotext: every word lies inside its card's safe area,
// and all words of the boxes are there.
func TestOutsideReader(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Log("pdftotext is not installed; the layout is checked without it")
		return
	}
	size := page.Card132
	cards := sampleCards(t, size)
	sheets, err := page.Impose(page.A4, size, cards, page.Options{Single: true})
	if err != nil {
		t.Fatal(err)
	}
	var pdf bytes.Buffer
	if err := page.Write(&pdf, page.Meta{Title: "cards"}, sheets); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "cards.pdf")
	if err := os.WriteFile(file, pdf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-bbox", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Pages []struct {
			Width  float64 `xml:"width,attr"`
			Height float64 `xml:"height,attr"`
			Words  []struct {
				XMin float64 `xml:"xMin,attr"`
				YMin float64 `xml:"yMin,attr"`
				XMax float64 `xml:"xMax,attr"`
				YMax float64 `xml:"yMax,attr"`
				Text string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal(out, &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Pages) != 2*len(cards) {
		t.Fatalf("%d pages for %d cards", len(doc.Pages), len(cards))
	}
	const ptPerMM, slackPT = 72 / 25.4, 0.6
	for i, p := range doc.Pages {
		face := cards[i/2].Front
		if i%2 == 1 {
			face = cards[i/2].Back
		}
		// The reader's boxes are as high as the font's own line, which is higher than the row.
		left, right := face.Safe.X*ptPerMM, face.Safe.Right()*ptPerMM
		top, bottom := face.Safe.Y*ptPerMM, face.Safe.Bottom()*ptPerMM
		read := map[string]int{}
		for _, w := range p.Words {
			mid := (w.YMin + w.YMax) / 2
			if w.XMin < left-slackPT || w.XMax > right+slackPT || mid < top || mid > bottom {
				t.Errorf("%s: %q from %.1f, %.1f to %.1f, %.1f pt is outside the safe area", face.Name, w.Text, w.XMin, w.YMin, w.XMax, w.YMax)
			}
			read[w.Text]++
		}
		for name, text := range joined(face) {
			for _, word := range strings.Fields(text) {
				if read[word] == 0 {
					t.Errorf("%s: the reader does not find %q of %q", face.Name, word, name)
				}
			}
		}
	}
}
