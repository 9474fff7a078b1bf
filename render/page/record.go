package page

import (
	"slices"
	"sync"

	"bladecard/render/canvas"
)

// Art is a recorded drawing: its pieces in the order in which they were drawn.
type Art []Op

// Op is one piece of a drawing: a path, or a text if Text is not nil.
type Op struct {
	Path canvas.Path
	Fill *canvas.Color
	Pen  canvas.Pen
	Text *PlacedText
}

// PlacedText is a text inside a drawing, its baseline's left end at At, turned
// counterclockwise by AngleDeg.
type PlacedText struct {
	At       canvas.Point
	Text     string
	Font     canvas.Font
	Color    canvas.Color
	AngleDeg float64
}

// Record runs draw once and keeps what it drew.
func Record(draw func(canvas.Canvas)) Art {
	if draw == nil {
		return nil
	}
	r := recorders.Get().(*recorder)
	draw(r)
	art := r.keep()
	recorders.Put(r)
	return art
}

// recorders are kept for the room that they have.
var recorders = sync.Pool{New: func() any { return new(recorder) }}

// Play draws the recorded pieces on c.
func (a Art) Play(c canvas.Canvas) {
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

type recorder struct {
	art    Art
	pieces []canvas.Piece // of all paths, one after the other
	ends   []int          // of the pieces of each op
}

func (r *recorder) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	r.pieces = append(r.pieces, p.Pieces...)
	op := Op{Pen: pen}
	op.Pen.DashMM = slices.Clone(pen.DashMM)
	if fill != nil {
		c := *fill
		op.Fill = &c
	}
	r.add(op)
}

func (r *recorder) add(op Op) {
	r.art = append(r.art, op)
	r.ends = append(r.ends, len(r.pieces))
}

// keep is what was drawn, in no more room than it needs; the recorder is empty then.
func (r *recorder) keep() Art {
	art, pieces := slices.Clone(r.art), slices.Clone(r.pieces)
	start := 0
	for i, end := range r.ends {
		if art[i].Text == nil {
			art[i].Path.Pieces = pieces[start:end:end]
		}
		start = end
	}
	clear(r.art)
	r.art, r.pieces, r.ends = r.art[:0], r.pieces[:0], r.ends[:0]
	return art
}

func (r *recorder) Text(x, y float64, s string, f canvas.Font, c canvas.Color, angleDeg float64) {
	r.add(Op{Text: &PlacedText{canvas.Point{X: x, Y: y}, nfc(s), f, c, angleDeg}})
}

func (r *recorder) TextWidth(s string, f canvas.Font) float64 { return Width(s, f) }

// At returns a canvas that draws on c with its corner at x, y.
func At(c canvas.Canvas, x, y float64) canvas.Canvas {
	if s, ok := c.(shifted); ok {
		return shifted{s.on, s.x + x, s.y + y}
	}
	return shifted{c, x, y}
}

type shifted struct {
	on   canvas.Canvas
	x, y float64
}

// mover is a canvas that moves a path itself while it draws it.
type mover interface {
	drawAt(p canvas.Path, fill *canvas.Color, pen canvas.Pen, dx, dy float64)
}

func (s shifted) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	if m, ok := s.on.(mover); ok {
		m.drawAt(p, fill, pen, s.x, s.y)
		return
	}
	moved := canvas.Path{Pieces: make([]canvas.Piece, len(p.Pieces))}
	for i, q := range p.Pieces {
		moved.Pieces[i] = canvas.Piece{Op: q.Op, A: s.move(q.A), B: s.move(q.B), P: s.move(q.P)}
	}
	s.on.Draw(moved, fill, pen)
}

func (s shifted) Text(x, y float64, t string, f canvas.Font, c canvas.Color, angleDeg float64) {
	s.on.Text(x+s.x, y+s.y, t, f, c, angleDeg)
}

func (s shifted) TextWidth(t string, f canvas.Font) float64 { return s.on.TextWidth(t, f) }

func (s shifted) image(x, y, w, h float64, p *Picture) {
	if i, ok := s.on.(imager); ok {
		i.image(x+s.x, y+s.y, w, h, p)
	}
}

func (s shifted) move(p canvas.Point) canvas.Point { return canvas.Point{X: p.X + s.x, Y: p.Y + s.y} }
