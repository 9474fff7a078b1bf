package figure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"bladecard/render/canvas"
)

func TestSwatch(t *testing.T) {
	white := canvas.White
	r := Rect{10, 10, 20, 8}
	rec := &recorder{}
	if err := (Swatch{Color: &white}).Draw(rec, r); err != nil {
		t.Fatal(err)
	}
	rec.clean(t, r, SmallestPT)
	if got, want := rec.paths[len(rec.paths)-1].String(), "M10.2,10.2 L29.8,10.2 L29.8,17.8 L10.2,17.8 Z fill#ffffff pen0.35[]"; got != want {
		t.Errorf("white: %s, want %s", got, want)
	}
	rec = &recorder{}
	if err := (Swatch{}).Draw(rec, r); err != nil {
		t.Fatal(err)
	}
	rec.clean(t, r, SmallestPT)
	lines := 0
	for _, p := range rec.paths {
		if p.fill == nil && len(p.path.Pieces) > 8 {
			lines += len(p.path.Pieces) / 2
		}
	}
	if last := rec.paths[len(rec.paths)-1]; lines < 8 || last.fill != nil || last.pen.WidthMM == 0 {
		t.Errorf("without a color: %d hatch lines, outline %s", lines, last)
	}
}

func TestSwatchRefuses(t *testing.T) {
	if err := (Swatch{}).Draw(&recorder{}, Rect{0, 0, 0.5, 0.5}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("error %v", err)
	}
	if err := (Swatch{}).Draw(&recorder{}, Rect{0, math.NaN(), 5, 5}); err == nil {
		t.Error("no error at NaN")
	}
}

func TestParseColor(t *testing.T) {
	for s, want := range map[string]canvas.Color{"#f7f7f2": {R: 0xf7, G: 0xf7, B: 0xf2}, "#000000": {}, "#ABCDEF": {R: 0xab, G: 0xcd, B: 0xef}} {
		if got, err := ParseColor(s); err != nil || got != want {
			t.Errorf("%s: %v, %v", s, got, err)
		}
	}
	for _, s := range []string{"", "#fff", "f7f7f2", "#f7f7fg", "#+7f7f2", "#f7f7f2 ", "##7f7f2"} {
		if c, err := ParseColor(s); err == nil {
			t.Errorf("%q is taken as %v", s, c)
		}
	}
}

// FuzzParseColor: a color that is taken is written back as the same text, in lower case.
func FuzzParseColor(f *testing.F) {
	for _, s := range []string{"#f7f7f2", "#F7F7F2", "#+12345", "#12345", "f7f7f2#", "#１２３４５６", "#0x1234", "#1_2345", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := ParseColor(s)
		if err != nil {
			return
		}
		if back := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B); back != strings.ToLower(s) {
			t.Errorf("%q is read as %s", s, back)
		}
	})
}
