package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

func imposed(t *testing.T, o Options) []Sheet {
	t.Helper()
	sheets, err := impose(A4, Card132, dummies(Card132, 5), o)
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

func TestSameBytesTwice(t *testing.T) {
	m := pdf.Meta{Title: "Lakeside", Author: "shop", Subject: "cards", Language: "en", Date: time.Date(2026, 12, 4, 0, 0, 0, 0, time.UTC)}
	a := mustWrite(t, m, imposed(t, Options{Title: "Lakeside"}))
	for range 5 {
		if b := mustWrite(t, m, imposed(t, Options{Title: "Lakeside"})); !bytes.Equal(a, b) {
			t.Fatal("two runs gave different bytes")
		}
	}
	if bytes.Count(a, []byte("(D:20261204000000)")) != 2 || !bytes.Contains(a, []byte("/Lang (en)")) {
		t.Error("date or language is not in the document")
	}
	if z := mustWrite(t, pdf.Meta{}, imposed(t, Options{})); !bytes.Contains(z, []byte("D:20000101000000")) {
		t.Error("without a date the fixed one is not taken")
	}
}

// Documents that are written at once do not touch each other, nor the fonts of the run. Run
// with -race.
func TestManyAtOnce(t *testing.T) {
	sum := func() [2][32]byte {
		return [2][32]byte{sha256.Sum256(canvas.TTF(canvas.Regular)), sha256.Sum256(canvas.TTF(canvas.Bold))}
	}
	before := sum()
	sheets := imposed(t, Options{})
	want := mustWrite(t, pdf.Meta{Title: "x"}, sheets)
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for range 3 {
				var out bytes.Buffer
				if err := Write(&out, pdf.Meta{Title: "x"}, sheets); err != nil || !bytes.Equal(out.Bytes(), want) {
					t.Errorf("written beside others: error %v, same bytes %v", err, bytes.Equal(out.Bytes(), want))
				}
			}
		})
	}
	wg.Wait()
	if sum() != before {
		t.Error("the font bytes of the run were changed")
	}
}

// Write refuses what Check refuses, names face and box, and writes nothing.
func TestWriteRefuses(t *testing.T) {
	ok := Text("fact", 5, 15, 50, 0, "x", small, canvas.Black, Left)
	with := func(change func(*Box)) []Sheet {
		b := ok
		change(&b)
		return Pages(Face{Name: "2417 front", W: 132, H: 96, Boxes: []Box{b}})
	}
	for _, c := range []struct {
		name   string
		sheets []Sheet
		meta   pdf.Meta
		want   string
	}{
		{"missing glyph", with(func(b *Box) { b.Text = "漢" }), pdf.Meta{}, `face "2417 front": box "fact"`},
		{"above U+FFFF", with(func(b *Box) { b.Text = "😀" }), pdf.Meta{}, "U+1F600"},
		{"exactly U+10000", with(func(b *Box) { b.Text = "\U00010000" }), pdf.Meta{}, "U+10000"},
		{"NUL", with(func(b *Box) { b.Text = "a\x00" }), pdf.Meta{}, "U+0000"},
		{"newline", with(func(b *Box) { b.Text = "a\nb" }), pdf.Meta{}, "U+000A"},
		{"invalid UTF-8", with(func(b *Box) { b.Text = "a\xff" }), pdf.Meta{}, "not valid UTF-8"},
		{"NaN", with(func(b *Box) { b.X = math.NaN() }), pdf.Meta{}, "NaN"},
		{"infinite", with(func(b *Box) { b.Y = math.Inf(-1) }), pdf.Meta{}, "-Inf"},
		{"absurd", with(func(b *Box) { b.Y = 1e300 }), pdf.Meta{}, "1e+300"},
		{"size", with(func(b *Box) { b.Font.SizePT = math.NaN() }), pdf.Meta{}, "type size is NaN"},
		{"title", Pages(dummy(Card132, "x")), pdf.Meta{Title: "😀"}, "U+1F600"},
		{"language", Pages(dummy(Card132, "x")), pdf.Meta{Language: "en) /X ("}, "language tag"},
		{"no page", nil, pdf.Meta{Title: "empty"}, "no page"},
		{"page size", []Sheet{{W: math.NaN(), H: 10}}, pdf.Meta{}, "NaN"},
		{"mark", []Sheet{{W: 99, H: 99, Marks: []Mark{{X1: math.NaN()}}}}, pdf.Meta{}, "crop mark is NaN"},
		{"note", []Sheet{{W: 99, H: 99, Notes: []Box{{Name: "head note", Text: "漢", Font: small}}}}, pdf.Meta{}, "head note"},
		{"place", []Sheet{{W: 99, H: 99, Cards: []Placed{{Trim: Rect{X: math.Inf(1)}}}}}, pdf.Meta{}, "place is +Inf"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			err := Write(&out, c.meta, c.sheets)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q", err, c.want)
			}
			if out.Len() > 0 {
				t.Errorf("%d bytes were written", out.Len())
			}
		})
	}
}

// The page is told of font, colors and widths only when they change.
func TestStateOnChangeOnly(t *testing.T) {
	f := Face{Name: "state", W: 132, H: 96}
	var boxes []Box
	for i := range 20 {
		boxes = append(boxes, Text("row", 5, 5+4*float64(i), 60, 0, fmt.Sprint("row ", i), small, canvas.Black, Left),
			Rule("rule", 70, 5+4*float64(i), 50, 0, canvas.Pen{WidthMM: 0.3, DashMM: []float64{1, 1}}))
	}
	boxes[10].Font = large
	f.Boxes = boxes
	page := streams(t, mustWrite(t, pdf.Meta{}, Pages(f)))[0]
	for _, c := range []struct {
		what string
		op   *regexp.Regexp
		most int
	}{
		{"font", regexp.MustCompile(` Tf ET\n`), 3},
		{"line width", regexp.MustCompile(`(?m) w$`), 2},
		{"dash", regexp.MustCompile(`(?m) d$`), 1},
		{"stroke color", regexp.MustCompile(`(?m) (RG|G)$`), 2},
	} {
		if n := len(c.op.FindAllString(page, -1)); n > c.most || n == 0 {
			t.Errorf("%s is set %d times, %d are enough", c.what, n, c.most)
		}
	}
}

// A font first met inside a turned text is still right after it: what is set between q and Q is
// forgotten, so it must be set before.
func TestFontAfterTurnedText(t *testing.T) {
	f := Face{Name: "turned", W: 132, H: 96, Boxes: []Box{Drawing("d", 5, 15, 60, 60, func(c canvas.Canvas) {
		c.Text(30, 50, "turned", large, canvas.Black, 90)
		c.Text(30, 55, "level", large, canvas.Black, 0)
	})}}
	page := streams(t, mustWrite(t, pdf.Meta{}, Pages(f)))[0]
	depth, fontAt := 0, -1
	for line := range strings.Lines(page) {
		switch {
		case strings.TrimSpace(line) == "q":
			depth++
		case strings.TrimSpace(line) == "Q":
			depth--
		case strings.Contains(line, " 20.00 Tf"):
			fontAt = depth
		}
	}
	if fontAt != 0 || depth != 0 {
		t.Errorf("the font was set at depth %d, the page ends at depth %d\n%s", fontAt, depth, page)
	}
}

// A turned page holds the same content inside one half turn about the sheet's middle.
func TestTurnedPage(t *testing.T) {
	turned := streams(t, mustWrite(t, pdf.Meta{}, imposed(t, Options{Flip: LongEdge})))[1]
	upright := streams(t, mustWrite(t, pdf.Meta{}, imposed(t, Options{Flip: ShortEdge})))[1]
	want := "q\n-1.00000 0.00000 -0.00000 -1.00000 841.89000 595.28000 cm\n"
	if !strings.Contains(turned, want) {
		t.Errorf("no %q in the page", want)
	}
	first := func(page string) string {
		return regexp.MustCompile(`BT [0-9.]+ [0-9.]+ Td`).FindString(page)
	}
	if a, b := first(turned), first(upright); a != b || a == "" {
		t.Errorf("inside the turn the first text is at %q, upright at %q", a, b)
	}
	if strings.Contains(upright, want) {
		t.Error("the upright page is turned")
	}
}
