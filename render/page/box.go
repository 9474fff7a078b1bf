package page

import (
	"math"

	"bladecard/render/canvas"
)

// Rect is a rectangle in mm from the top left corner, y downward.
type Rect struct{ X, Y, W, H float64 }

// Inset returns r made smaller by d on every side.
func (r Rect) Inset(d float64) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// Right and Bottom are the far edges.
func (r Rect) Right() float64  { return r.X + r.W }
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Kind is what a box holds.
type Kind int

// The kinds of box.
const (
	KindText    Kind = iota // one line of text
	KindDrawing             // a recorded drawing
	KindRule                // a straight line from the top left to the bottom right corner of the box
	KindFill                // a filled or outlined rectangle
	KindImage               // a picture, such as the shop's logo
)

// Align is where a line of text stands in its box.
type Align int

// The alignments.
const (
	Left Align = iota
	Center
	Right
)

// Box is one placed thing on a face.
type Box struct {
	Name string // for error texts and tests: "title", "angle dial"
	Kind Kind
	Rect // place on the face
	// Under marks a ground that other boxes may lie on: a panel, a frame, a swatch.
	Under bool

	Text       string // KindText: one line
	Font       canvas.Font
	Align      Align
	BaselineMM float64 // KindText: baseline below the box's top; 0: ascent of the type

	Color canvas.Color  // KindText: of the type
	Fill  *canvas.Color // KindFill: nil is no fill
	Pen   canvas.Pen    // KindRule: the line; KindFill: the outline, width 0 is none
	Art   canvas.Art    // KindDrawing

	Picture *canvas.Picture // KindImage
}

// Face is one side of a card, or one page.
type Face struct {
	Name  string // for error texts: "2417, full front, screen 2, back"
	W, H  float64
	Safe  Rect // texts and drawings stay inside
	Boxes []Box
}

// Text is a box that holds one line of text; its height is that of the type if h is 0.
func Text(name string, x, y, w, h float64, s string, f canvas.Font, c canvas.Color, a Align) Box {
	if h == 0 {
		h = canvas.LineHeight(f)
	}
	return Box{Name: name, Kind: KindText, Rect: Rect{x, y, w, h}, Text: s, Font: f, Color: c, Align: a}
}

// Rule is a straight line.
func Rule(name string, x, y, w, h float64, pen canvas.Pen) Box {
	return Box{Name: name, Kind: KindRule, Rect: Rect{x, y, w, h}, Pen: pen}
}

// Fill is a rectangle that other boxes may lie on. A nil fill with a pen is a frame.
func Fill(name string, x, y, w, h float64, fill *canvas.Color, outline canvas.Pen) Box {
	return Box{Name: name, Kind: KindFill, Rect: Rect{x, y, w, h}, Fill: fill, Pen: outline, Under: true}
}

// Drawing records what draw draws, with 0, 0 at the box's top left corner.
func Drawing(name string, x, y, w, h float64, draw func(canvas.Canvas)) Box {
	return Box{Name: name, Kind: KindDrawing, Rect: Rect{x, y, w, h}, Art: canvas.Record(draw)}
}

// Image is a box with a picture, as large as r takes it without a change of its proportions, at
// r's top right corner.
func Image(name string, r Rect, p *canvas.Picture) Box {
	scale := math.Min(r.W/float64(p.Wide), r.H/float64(p.High))
	w, h := float64(p.Wide)*scale, float64(p.High)*scale
	return Box{Name: name, Kind: KindImage, Rect: Rect{X: r.Right() - w, Y: r.Y, W: w, H: h}, Picture: p}
}

// Baseline is the place of the first letter's left end on the face, in mm.
func (b Box) Baseline() canvas.Point {
	x := b.X
	switch free := b.W - canvas.Width(b.Text, b.Font); b.Align {
	case Center:
		x += free / 2
	case Right:
		x += free
	}
	drop := b.BaselineMM
	if drop == 0 {
		drop = canvas.Ascent * b.Font.SizePT * canvas.MMPerPT
	}
	return canvas.Point{X: x, Y: b.Y + drop}
}

// draw draws the box on a canvas that has the face's corner at 0, 0.
func (b Box) draw(c canvas.Canvas) {
	switch b.Kind {
	case KindText:
		p := b.Baseline()
		c.Text(p.X, p.Y, b.Text, b.Font, b.Color, 0)
	case KindRule:
		var p canvas.Path
		p.Move(b.X, b.Y)
		p.Line(b.Right(), b.Bottom())
		c.Draw(p, nil, b.Pen)
	case KindFill:
		c.Draw(rectPath(b.Rect), b.Fill, b.Pen)
	case KindDrawing:
		b.Art.Play(canvas.At(c, b.X, b.Y))
	case KindImage:
		if on, ok := c.(canvas.Pictures); ok {
			on.Picture(b.X, b.Y, b.W, b.H, b.Picture)
		}
	}
}

func rectPath(r Rect) canvas.Path {
	var p canvas.Path
	p.Move(r.X, r.Y)
	p.Line(r.Right(), r.Y)
	p.Line(r.Right(), r.Bottom())
	p.Line(r.X, r.Bottom())
	p.Close()
	return p
}
