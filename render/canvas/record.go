package canvas

import (
	"slices"
)

// Art is a recorded drawing: its pieces in the order in which they were drawn.
type Art []Op

// Op is one piece of a drawing: a path, or a text if Text is not nil.
type Op struct {
	Path Path
	Fill *Color
	Pen  Pen
	Text *PlacedText
}

// PlacedText is a text inside a drawing, its baseline's left end at At, turned
// counterclockwise by AngleDeg.
type PlacedText struct {
	At       Point
	Text     string
	Font     Font
	Color    Color
	AngleDeg float64
}

// Record runs draw once and keeps what it drew.
func Record(draw func(Canvas)) Art {
	if draw == nil {
		return nil
	}
	var r recorder
	draw(&r)
	return r.art
}

// Play draws the recorded pieces on c.
func (a Art) Play(c Canvas) {
	for _, op := range a {
		if t := op.Text; t != nil {
			c.Text(t.At.X, t.At.Y, t.Text, t.Font, t.Color, t.AngleDeg)
		} else {
			c.Draw(op.Path, op.Fill, op.Pen)
		}
	}
}

// Texts lists the texts of the drawing.
func (a Art) Texts() []PlacedText {
	var out []PlacedText
	for _, op := range a {
		if op.Text != nil {
			out = append(out, *op.Text)
		}
	}
	return out
}

type recorder struct{ art Art }

func (r *recorder) Draw(p Path, fill *Color, pen Pen) {
	op := Op{Path: Path{Pieces: slices.Clone(p.Pieces)}, Pen: pen}
	op.Pen.DashMM = slices.Clone(pen.DashMM)
	if fill != nil {
		c := *fill
		op.Fill = &c
	}
	r.art = append(r.art, op)
}

func (r *recorder) Text(x, y float64, s string, f Font, c Color, angleDeg float64) {
	r.art = append(r.art, Op{Text: &PlacedText{Point{X: x, Y: y}, NFC(s), f, c, angleDeg}})
}

func (r *recorder) TextWidth(s string, f Font) float64 { return Width(s, f) }

// At returns a canvas that draws on c with its corner at x, y.
func At(c Canvas, x, y float64) Canvas {
	if s, ok := c.(shifted); ok {
		return shifted{s.on, s.x + x, s.y + y}
	}
	return shifted{c, x, y}
}

type shifted struct {
	on   Canvas
	x, y float64
}

func (s shifted) Draw(p Path, fill *Color, pen Pen) {
	moved := Path{Pieces: make([]Piece, len(p.Pieces))}
	for i, q := range p.Pieces {
		moved.Pieces[i] = Piece{Op: q.Op, A: s.move(q.A), B: s.move(q.B), P: s.move(q.P)}
	}
	s.on.Draw(moved, fill, pen)
}

func (s shifted) Text(x, y float64, t string, f Font, c Color, angleDeg float64) {
	s.on.Text(x+s.x, y+s.y, t, f, c, angleDeg)
}

func (s shifted) TextWidth(t string, f Font) float64 { return s.on.TextWidth(t, f) }

func (s shifted) Picture(x, y, w, h float64, p *Picture) {
	if on, ok := s.on.(Pictures); ok {
		on.Picture(x+s.x, y+s.y, w, h, p)
	}
}

func (s shifted) move(p Point) Point { return Point{X: p.X + s.x, Y: p.Y + s.y} }
