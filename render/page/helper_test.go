package page

import (
	"bytes"
	"compress/zlib"
	"io"
	"strconv"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

var (
	small = canvas.Font{SizePT: 9}
	large = canvas.Font{Face: canvas.Bold, SizePT: 20}
)

// dummy is a sound side of a card: a title, a frame, a paragraph, a drawing with turned text.
func dummy(size Size, name string) Face {
	f := Face{Name: name, W: size.W, H: size.H, Safe: Rect{5, 13, size.W - 10, size.H - 18}}
	gray := canvas.Gray(225)
	f.Boxes = append(f.Boxes,
		Fill("panel", 5, 14, size.W-10, 14, &gray, canvas.Pen{Color: canvas.Black, WidthMM: 0.3}))
	f.Boxes = append(f.Boxes, Fit("title", Rect{7, 15, size.W - 14, 12}, name, Style{Font: large}, 14).Boxes...)
	f.Boxes = append(f.Boxes, Rule("rule", 5, 31, size.W-10, 0, canvas.Pen{Color: canvas.Black, WidthMM: 0.4}))
	f.Boxes = append(f.Boxes, Paragraph("words", 5, 33, 50, "Ścisła próba: the film stays 45 µm ±9, wipe once and look. Ứng dụng.", Style{Font: small}, 0).Boxes...)
	f.Boxes = append(f.Boxes, Drawing("dial", 62, 33, 40, 40, func(c canvas.Canvas) {
		var p canvas.Path
		p.Move(1, 20)
		p.Curve(1, 5, 39, 5, 39, 20)
		p.Line(20, 39)
		p.Close()
		fill := canvas.Gray(200)
		c.Draw(p, &fill, canvas.Pen{Color: canvas.Color{R: 180}, WidthMM: 0.5, DashMM: []float64{2, 1}})
		c.Text(10, 30, "turned", small, canvas.Color{B: 200}, 90)
		c.Text(18, 25, "level", small, canvas.Black, 0)
	}))
	return f
}

func dummies(size Size, n int) []Card {
	var cards []Card
	for i := range n {
		id := strconv.Itoa(i + 1)
		cards = append(cards, Card{dummy(size, "front "+id), dummy(size, "back "+id)})
	}
	return cards
}

func mustWrite(t *testing.T, m pdf.Meta, sheets []Sheet) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, m, sheets); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// streams unpacks the deflated streams of a PDF; pages come before fonts.
func streams(t *testing.T, pdf []byte) []string {
	t.Helper()
	var out []string
	for {
		_, rest, found := bytes.Cut(pdf, []byte("\nstream\n"))
		if !found {
			return out
		}
		raw, after, found := bytes.Cut(rest, []byte("\nendstream"))
		if !found {
			t.Fatal("a stream has no end")
		}
		if z, err := zlib.NewReader(bytes.NewReader(raw)); err == nil {
			text, err := io.ReadAll(z)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, string(text))
		}
		pdf = after
	}
}

// impose is Impose of cards that are laid out.
func impose(paper Paper, size Size, cards []Card, o Options) ([]Sheet, error) {
	sheets, err := Impose(paper, size, len(cards), func(yield func(Card, error) bool) {
		for _, c := range cards {
			if !yield(c, nil) {
				return
			}
		}
	}, o)
	if err != nil {
		return nil, err
	}
	var out []Sheet
	for s, err := range sheets {
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// overlap is by how much two rectangles overlap, 0 or less where they are apart.
func overlap(a, b Rect) float64 {
	return min(a.Right()-b.X, b.Right()-a.X, a.Bottom()-b.Y, b.Bottom()-a.Y)
}

// beyond is how far r reaches out of outer, 0 or less where it does not.
func beyond(r, outer Rect) float64 {
	return max(outer.X-r.X, outer.Y-r.Y, r.Right()-outer.Right(), r.Bottom()-outer.Bottom())
}
