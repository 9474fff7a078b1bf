package page

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// A document holds only the faces that it uses, and of them all of plain English and what else it
// uses.
func TestEmbed(t *testing.T) {
	one := func(s string, f canvas.Font) []byte {
		face := Face{Name: "f", W: 132, H: 96, Boxes: []Box{Text("t", 5, 5, 100, 0, s, f, canvas.Black, Left)}}
		return mustWrite(t, Meta{}, Pages(face))
	}
	regular := one("abc", canvas.Font{SizePT: 10})
	if n := bytes.Count(regular, []byte("/FontFile2")); n != 1 {
		t.Errorf("%d faces are in a document that uses one", n)
	}
	if same := one("xyz", canvas.Font{SizePT: 10}); len(same) != len(regular) {
		t.Errorf("two texts of plain English give %d and %d bytes", len(regular), len(same))
	}
	more := one("aę→", canvas.Font{SizePT: 10})
	for _, want := range []string{"281 [", "8594 ["} {
		if !bytes.Contains(more, []byte(want)) || bytes.Contains(regular, []byte(want)) {
			t.Errorf("the widths %q stand in the wrong document", want)
		}
	}
}

// What is kept of a face gives the same document as what is made anew.
func TestEmbedKept(t *testing.T) {
	sheets := imposed(t, Options{})
	kept.Lock()
	clear(kept.faces)
	kept.Unlock()
	anew := mustWrite(t, Meta{}, sheets)
	if len(kept.faces) == 0 {
		t.Fatal("nothing is kept")
	}
	if again := mustWrite(t, Meta{}, sheets); !bytes.Equal(anew, again) {
		t.Error("the second document differs")
	}
}

// The glyphs of a face in a document are those of the font for the same runes: the same outline.
func TestEmbedGlyphs(t *testing.T) {
	for _, f := range faceOrder {
		runes := []rune("AÄgµ1½→✓")
		e, err := newEmbedded(f, runes)
		if err != nil {
			t.Fatal(err)
		}
		set := fonts()
		cut := fpdf.UTF8CutFont(bytes.Clone(set.ttf[faceIndex(f)]), string(runes))
		mine, err := readMetrics(cut, func(rune) bool { return true })
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range runes {
			if want, _ := set.glyph(f, r); mine[r] != want {
				t.Errorf("%s %q: %+v, in the whole font %+v", faceName(f), r, mine[r], want)
			}
		}
		if !strings.HasSuffix(e.name, "+"+faceName(f)) || e.programSize != len(cut) {
			t.Errorf("%s has a program of %d bytes; %d are wanted", e.name, e.programSize, len(cut))
		}
	}
}

// pack refuses what is not a document of the library as it is known.
func TestPackRefuses(t *testing.T) {
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.SetCompression(false)
	pdf.AddPage()
	var raw bytes.Buffer
	if err := pdf.Output(&raw); err != nil {
		t.Fatal(err)
	}
	if err := pack(io.Discard, raw.Bytes(), nil); err != nil {
		t.Fatal(err)
	}
	for what, change := range map[string]func([]byte) []byte{
		"nothing":   func([]byte) []byte { return nil },
		"its half":  func(b []byte) []byte { return b[:len(b)/2] },
		"its end":   func(b []byte) []byte { return b[len(b)/2:] },
		"no fonts":  func(b []byte) []byte { return bytes.Replace(b, []byte("/Font <<"), []byte("/Fond <<"), 1) },
		"no place":  func(b []byte) []byte { return bytes.Replace(b, []byte("startxref\n"), []byte("startxref\nx"), 1) },
		"far place": func(b []byte) []byte { return bytes.Replace(b, []byte("startxref\n"), []byte("startxref\n9"), 1) },
		"no trailer": func(b []byte) []byte {
			return bytes.Replace(b, []byte("trailer\n"), []byte("trail er"), 1)
		},
	} {
		if err := pack(io.Discard, change(bytes.Clone(raw.Bytes())), nil); err == nil {
			t.Errorf("%s is packed", what)
		}
	}
}
