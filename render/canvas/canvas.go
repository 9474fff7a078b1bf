package canvas

// Color is a color on paper, 0 to 255 a channel.
type Color struct{ R, G, B uint8 }

// Gray returns the gray of the given level, 0 black to 255 white.
func Gray(level uint8) Color { return Color{level, level, level} }

// Black and White are the two colors that every printer has.
var (
	Black = Color{0, 0, 0}
	White = Color{255, 255, 255}
)

// Face is one of the two faces of the document's font.
type Face bool

// The document's faces.
const (
	Regular Face = false
	Bold    Face = true
)

// Font is a face at a size.
type Font struct {
	Face   Face
	SizePT float64
}

// Pen is how a line is drawn; a zero WidthMM draws no line.
type Pen struct {
	Color   Color
	WidthMM float64
	DashMM  []float64 // on, off, on, off ...; nil is a whole line
}

// Point is a place on the canvas, in mm.
type Point struct{ X, Y float64 }

// Path is a list of straight and curved pieces; build it with its methods.
type Path struct{ Pieces []Piece }

// Piece is one piece of a path: 'M' move, 'L' line, 'C' cubic Bézier (A, B controls), 'Z' close.
type Piece struct {
	Op      byte
	A, B, P Point
}

// Move starts a new run at p.
func (p *Path) Move(x, y float64) { p.Pieces = append(p.Pieces, Piece{Op: 'M', P: Point{x, y}}) }

// Line draws on to x, y.
func (p *Path) Line(x, y float64) { p.Pieces = append(p.Pieces, Piece{Op: 'L', P: Point{x, y}}) }

// Curve draws a cubic Bézier to x, y with the controls a and b.
func (p *Path) Curve(ax, ay, bx, by, x, y float64) {
	p.Pieces = append(p.Pieces, Piece{Op: 'C', A: Point{ax, ay}, B: Point{bx, by}, P: Point{x, y}})
}

// Close closes the run.
func (p *Path) Close() { p.Pieces = append(p.Pieces, Piece{Op: 'Z'}) }

// Canvas takes the drawing.
type Canvas interface {
	// Draw fills the path with fill (nil: no fill), then strokes it with pen.
	Draw(p Path, fill *Color, pen Pen)
	// Text writes s with its baseline's left end at x, y. An angle turns it
	// counterclockwise about that point, in degrees.
	Text(x, y float64, s string, f Font, c Color, angleDeg float64)
	// TextWidth is the width of s in mm.
	TextWidth(s string, f Font) float64
}

// Ascent and Descent are the share of the type size that a line needs above and below its
// baseline, accents on capitals included (measured on the document's font).
const (
	Ascent  = 0.93
	Descent = 0.24
)

// MMPerPT is the length of a typographic point in mm.
const MMPerPT = 25.4 / 72
