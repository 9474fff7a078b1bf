package canvas

import (
	"slices"
	"strings"
	"testing"

	"bladecard/calc/file"
)

func TestMissing(t *testing.T) {
	for _, c := range []struct {
		in   string
		want []rune
	}{
		{"", nil},
		{"65/90/65 · 20 µm · 20 μm · 30° · 1½ · m² · → ✓ ≥ ±", nil},
		{"Łódź Żółć Ñandú Thuyền Ứng dụng", nil},
		{"e\u0301 composed", nil}, // NFC makes it é
		{"Привет Ωμέγα", nil},     // scripts that need no shaping
		{"漢字", []rune{'漢', '字'}},  // no glyph
		{"شعار", []rune("شعار")},  // needs shaping
		{"😀 x 😀", []rune{'😀'}},    // above U+FFFF, named once
		{"a\nb\tc\x00", []rune{'\n', '\t', 0}},
		{"q\u0307", []rune{0x307}}, // no composed form
		{"а\u0483", []rune{0x483}},
		{"\u200bx\u00ad", []rune{0x200B, 0xAD}},
		{"\uffff\ufffe", []rune{0xFFFF, 0xFFFE}},
		{"a\xffb", []rune{0xFFFD}},
	} {
		if got := Missing(c.in); !slices.Equal(got, c.want) {
			t.Errorf("Missing(%q) = %U, want %U", c.in, got, c.want)
		}
		clean, err := Clean(c.in)
		if (err == nil) != (len(c.want) == 0) {
			t.Errorf("Clean(%q) = %q, %v", c.in, clean, err)
		}
	}
	if got, err := Clean("e\u0301"); got != "é" || err != nil {
		t.Errorf("Clean does not compose: %q, %v", got, err)
	}
	if _, err := Clean("a 漢"); err == nil || !strings.Contains(err.Error(), "U+6F22") {
		t.Errorf("the error does not name the rune: %v", err)
	}
}

// The rows of type must hold accents on capitals: Ascent and Descent are promises about the font.
func TestInkStaysInTheRow(t *testing.T) {
	for _, face := range []Face{Regular, Bold} {
		f := Font{Face: face, SizePT: 100}
		above, below := Ink("ÁÂÑŻÖÅÇĘgjpqyQ|", f)
		em := f.SizePT * MMPerPT
		if above > Ascent*em || below > Descent*em {
			t.Errorf("face %v: ink %.3f above, %.3f below, of an em", face, above/em, below/em)
		}
		if above < 0.85*em || below < 0.2*em {
			t.Errorf("face %v: ink %.3f above, %.3f below, of an em: too small to be true", face, above/em, below/em)
		}
	}
}

// TestOutline: the shape of a text stays within its width and height, and a bold one differs.
func TestOutline(t *testing.T) {
	f := Font{SizePT: 12}
	p, err := Outline("Äg 50 µm", f)
	if err != nil {
		t.Fatal(err)
	}
	low, high, right := 0.0, 0.0, 0.0
	for _, q := range p.Pieces {
		if q.Op != 'Z' {
			low, high, right = max(low, q.P.Y), min(high, q.P.Y), max(right, q.P.X)
		}
	}
	size := f.SizePT * MMPerPT
	if !(right > 0.9*Width("Äg 50 µm", f) && right <= Width("Äg 50 µm", f)) {
		t.Errorf("outline to %g mm, width %g mm", right, Width("Äg 50 µm", f))
	}
	if !(low > 0.1*size && low <= Descent*size && -high > 0.7*size && -high <= Ascent*size) {
		t.Errorf("outline from %g to %g mm at %g mm", high, low, size)
	}
	if _, err := Outline("\n", f); err == nil {
		t.Error("a line end is taken")
	}
}

// Whatever a text of a file may hold has a glyph in both faces, and the other way round.
func TestPrintableIsTheFont(t *testing.T) {
	for r := range rune(0x3000) {
		_, regular := typefaceOf(Regular).glyph(r)
		_, bold := typefaceOf(Bold).glyph(r)
		if want := file.Printable(r); regular != want || bold != want {
			t.Errorf("%U: printable %v, a glyph in the regular face %v, in the bold one %v", r, want, regular, bold)
		}
	}
}
