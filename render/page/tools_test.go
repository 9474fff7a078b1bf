package page

import (
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

// outside runs a program of another maker on a file and returns what it says. Where the machine
// lacks the program, the test is skipped.
func outside(t *testing.T, name string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not on this machine", name)
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	if err != nil {
		t.Errorf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// Other programs read the documents without a complaint, and find the texts where they belong.
func TestOtherProgramsAgree(t *testing.T) {
	for flip, edge := range map[Flip]string{LongEdge: "long edge", ShortEdge: "short edge"} {
		sheets := imposed(t, Options{Flip: flip, Title: "Lakeside (crew) Ż", FlipNote: "flip", FrontNote: "front", BackNote: "back"})
		file := filepath.Join(t.TempDir(), "cards.pdf")
		data := mustWrite(t, pdf.Meta{Title: "Lakeside (crew) Ż\\", Author: "shop", Subject: "cards", Language: "en-GB"}, sheets)
		if err := os.WriteFile(file, data, 0o600); err != nil {
			t.Fatal(err)
		}
		t.Run(edge+" qpdf", func(t *testing.T) { outside(t, "qpdf", "--check", file) })
		t.Run(edge+" mutool", func(t *testing.T) {
			if out := outside(t, "mutool", "draw", "-o", os.DevNull, "-F", "txt", file); strings.Contains(out, "error") {
				t.Error(out)
			}
		})
		t.Run(edge+" pdffonts", func(t *testing.T) {
			rows := strings.Split(strings.TrimSpace(outside(t, "pdffonts", file)), "\n")[2:]
			if len(rows) != 3 { // both faces for common texts, and one whole for the Vietnamese
				t.Errorf("fonts: %s", rows)
			}
			for _, row := range rows {
				if f := strings.Fields(row); len(f) < 8 || f[len(f)-5] != "yes" {
					t.Errorf("a font is not embedded: %s", row)
				}
			}
		})
		t.Run(edge+" pdfinfo", func(t *testing.T) {
			if out := outside(t, "pdfinfo", file); !strings.Contains(out, "Lakeside (crew) Ż\\") {
				t.Error(out)
			}
		})
		t.Run(edge+" pdftotext", func(t *testing.T) { checkWords(t, outside(t, "pdftotext", "-bbox", file, "-"), sheets) })
	}
}

// checkWords tells of words that stand in no card's safe area and are no note.
func checkWords(t *testing.T, bbox string, sheets []Sheet) {
	var doc struct {
		Pages []struct {
			Words []struct {
				XMin float64 `xml:"xMin,attr"`
				XMax float64 `xml:"xMax,attr"`
				YMin float64 `xml:"yMin,attr"`
				YMax float64 `xml:"yMax,attr"`
				Text string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(bbox), &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Pages) != len(sheets) {
		t.Fatalf("%d pages, want %d", len(doc.Pages), len(sheets))
	}
	for i, p := range doc.Pages {
		s := sheets[i]
		var places []Rect
		for _, c := range s.Cards {
			safe := c.Face.Safe
			if s.Turned {
				safe.X, safe.Y = c.Trim.W-safe.Right(), c.Trim.H-safe.Bottom()
			}
			places = append(places, Rect{c.Trim.X + safe.X, c.Trim.Y + safe.Y, safe.W, safe.H})
		}
		for _, n := range s.Notes {
			r := n.Rect
			if s.Turned {
				r.X, r.Y = s.W-r.Right(), s.H-r.Bottom()
			}
			places = append(places, r)
		}
		if len(p.Words) < 20 {
			t.Errorf("page %d has %d words", i+1, len(p.Words))
		}
		for _, w := range p.Words {
			const mm = canvas.MMPerPT
			r := Rect{w.XMin * mm, w.YMin * mm, (w.XMax - w.XMin) * mm, (w.YMax - w.YMin) * mm}
			inside := false
			for _, place := range places {
				inside = inside || beyond(r, place) < 0.5 // the tool's boxes carry its own line gap
			}
			if !inside {
				t.Errorf("page %d: word %q at %+v is in no safe area", i+1, w.Text, r)
			}
		}
	}
}
