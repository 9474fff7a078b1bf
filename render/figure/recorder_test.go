package figure

import (
	"fmt"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/pagecheck"
)

// recorder is a canvas that keeps what it is given.
type recorder struct {
	paths []stroked
	texts []written
}

type stroked struct {
	path canvas.Path
	fill *canvas.Color
	pen  canvas.Pen
}

type written struct {
	x, y  float64
	s     string
	font  canvas.Font
	color canvas.Color
	angle float64
	w     float64
}

func (r *recorder) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	r.paths = append(r.paths, stroked{p, fill, pen})
}

func (r *recorder) Text(x, y float64, s string, f canvas.Font, c canvas.Color, angle float64) {
	r.texts = append(r.texts, written{x, y, s, f, c, angle, r.TextWidth(s, f)})
}

func (r *recorder) TextWidth(s string, f canvas.Font) float64 { return canvas.Width(s, f) }

// box of a level text, accents and descenders included.
func (w written) box() Rect {
	return Rect{w.x, w.y - canvas.Ascent*em(w.font), w.w, lineEM * em(w.font)}
}

// box of a path with its pen.
func (s stroked) box() Rect {
	r, _ := pagecheck.PathBounds(s.path, s.pen)
	return Rect(r)
}

// faults are what a drawing in r must not have.
func (r *recorder) faults(in Rect, leastPT float64) []string {
	var out []string
	bad := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	const near = 0.03 // mm; the upright and level ends of a slanted pen are rounded down
	within := func(b Rect) bool {
		return b.X >= in.X-near && b.Y >= in.Y-near && b.Right() <= in.Right()+near && b.Bottom() <= in.Bottom()+near
	}
	for _, p := range r.paths {
		for _, q := range p.path.Pieces {
			if !finite(q.P.X, q.P.Y, q.A.X, q.A.Y, q.B.X, q.B.Y) {
				bad("path with a point at %v, %v", q.P.X, q.P.Y)
			}
		}
		if b := p.box(); !within(b) {
			bad("path outside: %.3f, %.3f to %.3f, %.3f: %s", b.X, b.Y, b.Right(), b.Bottom(), p)
		}
		if p.fill == nil && p.pen.WidthMM == 0 {
			bad("path that draws nothing: %s", p)
		}
	}
	for i, t := range r.texts {
		if !finite(t.x, t.y, t.angle) || strings.Contains(t.s, "NaN") || strings.Contains(t.s, "Inf") {
			bad("text %q at %v, %v", t.s, t.x, t.y)
		}
		if t.angle != 0 {
			bad("text %q is turned by %v", t.s, t.angle)
		}
		if t.font.SizePT < leastPT {
			bad("text %q of %v pt", t.s, t.font.SizePT)
		}
		b := t.box()
		if !within(b) {
			bad("text %q outside: %.3f, %.3f to %.3f, %.3f", t.s, b.X, b.Y, b.Right(), b.Bottom())
		}
		for _, u := range r.texts[:i] {
			o := u.box()
			if b.X < o.Right()-near && o.X < b.Right()-near && b.Y < o.Bottom()-near && o.Y < b.Bottom()-near {
				bad("texts %q and %q overlap", u.s, t.s)
			}
		}
	}
	return out
}

// clean fails the test for each fault.
func (r *recorder) clean(t testing.TB, in Rect, leastPT float64) {
	t.Helper()
	for _, f := range r.faults(in, leastPT) {
		t.Error(f)
	}
	if len(r.paths) == 0 {
		t.Error("nothing drawn")
	}
}

// words are the texts in the order drawn.
func (r *recorder) words() []string {
	out := make([]string, len(r.texts))
	for i, t := range r.texts {
		out[i] = t.s
	}
	return out
}

// find is the one text s.
func (r *recorder) find(t testing.TB, s string) written {
	t.Helper()
	var out []written
	for _, w := range r.texts {
		if w.s == s {
			out = append(out, w)
		}
	}
	if len(out) != 1 {
		t.Fatalf("text %q stands %d times in %q, want once", s, len(out), r.words())
	}
	return out[0]
}

// String is the geometry as a line of text, to the tenth of a millimeter: M10,20 L30,20 Z,
// then fill and pen.
func (s stroked) String() string {
	var b strings.Builder
	for _, q := range s.path.Pieces {
		switch q.Op {
		case 'Z':
			b.WriteString("Z ")
		case 'C':
			fmt.Fprintf(&b, "C%.1f,%.1f,%.1f,%.1f,%.1f,%.1f ", q.A.X, q.A.Y, q.B.X, q.B.Y, q.P.X, q.P.Y)
		default:
			fmt.Fprintf(&b, "%c%.1f,%.1f ", q.Op, q.P.X, q.P.Y)
		}
	}
	if s.fill != nil {
		fmt.Fprintf(&b, "fill#%02x%02x%02x ", s.fill.R, s.fill.G, s.fill.B)
	}
	if s.pen.WidthMM > 0 {
		fmt.Fprintf(&b, "pen%.2f%.2f", s.pen.WidthMM, s.pen.DashMM)
	}
	return strings.TrimSpace(b.String())
}
