package page

import (
	"math"
	"strings"

	"bladecard/render/canvas"
)

// Style is how text looks.
type Style struct {
	Font  canvas.Font
	Color canvas.Color
	Align Align
}

// Fitted is the outcome of a fit: the boxes, a line each, and what it took.
type Fitted struct {
	Boxes  []Box
	SizePT float64
	Bottom float64 // lower edge of the last line, mm
	Cut    bool    // text was left out, an ellipsis stands for it
}

// Fit sets s into r: on one line, shrunk as far as smallestPT; else on two lines, as large as
// r allows; else cut with an ellipsis, which Cut reports. The lines stand in the middle of r's
// height.
func Fit(name string, r Rect, s string, st Style, smallestPT float64) Fitted {
	smallestPT = max(smallestPT, 1)
	if s = canvas.Squash(s); s == "" {
		return Fitted{SizePT: st.Font.SizePT, Bottom: r.Y}
	}
	one := sizeFor(st.Font, r.H, 1, r.W, s)
	if one >= smallestPT {
		return stack(name, r, []string{s}, st, one, false)
	}
	a, b := halve(s, st.Font)
	if b != "" {
		if two := min(sizeFor(st.Font, r.H, 2, r.W, a), sizeFor(st.Font, r.H, 2, r.W, b)); two >= smallestPT {
			return stack(name, r, []string{a, b}, st, two, false)
		}
	}
	f := canvas.Font{Face: st.Font.Face, SizePT: smallestPT}
	rows := max(1, min(2, int((r.H+0.001)/canvas.LineHeight(f))))
	lines := canvas.Wrap(s, f, r.W)
	cut := len(lines) > rows
	if cut {
		lines = canvas.CutRows(lines, rows, f, r.W)
	}
	return stack(name, r, lines, st, smallestPT, cut)
}

// FitSizes sets s into r at the first of the sizes, largest first, at which its whole words fill
// no more rows than r is high; at the last size words are broken and the text is cut with an
// ellipsis if they must. So a page keeps to its few sizes of type. The lines stand in the middle
// of r's height.
func FitSizes(name string, r Rect, s string, st Style, sizesPT ...float64) Fitted {
	if s = canvas.Squash(s); s == "" || len(sizesPT) == 0 {
		return Fitted{SizePT: st.Font.SizePT, Bottom: r.Y}
	}
	var (
		f     canvas.Font
		rows  int
		lines []string
	)
	for _, size := range sizesPT {
		f = canvas.Font{Face: st.Font.Face, SizePT: size}
		rows = max(1, int((r.H+0.001)/canvas.LineHeight(f)))
		if lines = canvas.Wrap(s, f, r.W); len(lines) > rows || !wholeWords(s, f, r.W) {
			continue
		}
		if len(lines) == 2 { // as even as they come
			if a, b := halve(s, f); canvas.Width(a, f) <= r.W && canvas.Width(b, f) <= r.W {
				lines = []string{a, b}
			}
		}
		return stack(name, r, lines, st, size, false)
	}
	cut := len(lines) > rows
	if cut {
		lines = canvas.CutRows(lines, rows, f, r.W)
	}
	return stack(name, r, lines, st, f.SizePT, cut)
}

// wholeWords tells whether no word of s is wider than w.
func wholeWords(s string, f canvas.Font, w float64) bool {
	for _, word := range canvas.Words(s) {
		if canvas.Width(word, f) > w {
			return false
		}
	}
	return true
}

// Paragraph wraps s at st's size into rows from x, y downward, w wide. At most maxRows are
// set (0: all); the last then ends in an ellipsis and Cut is true. A newline starts a new row.
func Paragraph(name string, x, y, w float64, s string, st Style, maxRows int) Fitted {
	var lines []string
	for run := range strings.SplitSeq(s, "\n") {
		lines = append(lines, canvas.Wrap(run, st.Font, w)...)
	}
	cut := maxRows > 0 && len(lines) > maxRows
	if cut {
		lines = canvas.CutRows(lines, maxRows, st.Font, w)
	}
	h := float64(len(lines)) * canvas.LineHeight(st.Font)
	return stack(name, Rect{x, y, w, h}, lines, st, st.Font.SizePT, cut)
}

// halve breaks s at the space that leaves the shortest longer line; b is empty if there is none.
func halve(s string, f canvas.Font) (a, b string) {
	best := math.Inf(1)
	for i, r := range s {
		if r != ' ' {
			continue
		}
		if w := max(canvas.Width(s[:i], f), canvas.Width(s[i+1:], f)); w < best {
			best, a, b = w, s[:i], s[i+1:]
		}
	}
	return a, b
}

// sizeFor is the largest size up to f's at which s is no wider than w and rows of it no higher
// than h, in steps of 0.1 pt.
func sizeFor(f canvas.Font, h float64, rows int, w float64, s string) float64 {
	size := min(f.SizePT, h/float64(rows)/(canvas.Ascent+canvas.Descent)/canvas.MMPerPT)
	if at := canvas.Width(s, f); at > 0 {
		size = min(size, f.SizePT*w/at)
	}
	return math.Floor(size*10+1e-9) / 10
}

// stack places lines under each other in the middle of r's height, a box a line.
func stack(name string, r Rect, lines []string, st Style, sizePT float64, cut bool) Fitted {
	f := canvas.Font{Face: st.Font.Face, SizePT: sizePT}
	h := canvas.LineHeight(f)
	y := r.Y + (r.H-float64(len(lines))*h)/2
	out := Fitted{SizePT: sizePT, Bottom: y + float64(len(lines))*h, Cut: cut, Boxes: make([]Box, 0, len(lines))}
	for _, s := range lines {
		out.Boxes = append(out.Boxes, Text(name, r.X, y, r.W, h, s, f, st.Color, st.Align))
		y += h
	}
	return out
}
