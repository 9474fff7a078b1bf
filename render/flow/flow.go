package flow

import (
	"fmt"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// The measures of a page, in mm and points.
const (
	MarginMM = 10.0
	footMM   = 4.5 // the line with the page number
	againMM  = 6.5 // the head line of later pages
	SmallPT  = 7.5 // smallest type
	BodyPT   = 8.0
	headPT   = 10.0
	GapMM    = 3.0
)

// Flow fills page after page from the top.
type Flow struct {
	Pages []page.Face
	Y     float64 // where the next piece stands
	Open  float64 // share of the usual room between rows and parts
	Side  float64 // width at the right that is taken, by a drawing
	Err   error   // of a drawing

	paper page.Paper
	what  string // what the pages are, for error texts
	again string // head line of the second page and on
	known map[cellKey][]line
}

// New starts the first page. what names the pages in error texts, again is the head line of the later ones.
func New(paper page.Paper, what, again string, open float64) *Flow {
	f := &Flow{paper: paper, what: what, again: again, Open: open}
	f.Next()
	return f
}

// Left and Bottom are the edges that text keeps to, Width what lies between left and right, and Room what is
// left of the page.
func (f *Flow) Left() float64   { return MarginMM }
func (f *Flow) Width() float64  { return f.paper.W - 2*MarginMM }
func (f *Flow) Bottom() float64 { return f.paper.H - MarginMM - footMM }
func (f *Flow) Room() float64   { return f.Bottom() - f.Y }

// fresh tells whether nothing but the head line stands on the page.
func (f *Flow) fresh() bool { return f.Y <= f.top() }

// top is where the first piece of the page stands.
func (f *Flow) top() float64 {
	if len(f.Pages) == 1 {
		return MarginMM
	}
	return MarginMM + againMM
}

// Next starts a page.
func (f *Flow) Next() {
	f.Pages = append(f.Pages, page.Face{
		Name: fmt.Sprintf("%s, page %d", f.what, len(f.Pages)+1),
		W:    f.paper.W, H: f.paper.H,
		Safe: page.Rect{X: MarginMM, Y: MarginMM, W: f.Width(), H: f.paper.H - 2*MarginMM},
	})
	f.Y = f.top()
	if len(f.Pages) > 1 {
		font := Bold(BodyPT)
		s, _ := canvas.Cut(f.again, font, f.Width())
		f.Add(page.Text("head line", f.Left(), MarginMM, f.Width(), 0, s, font, canvas.Black, page.Left),
			page.Rule("under the head line", f.Left(), MarginMM+4.8, f.Width(), 0, Hair(0.25)))
	}
}

// Add puts boxes on the page.
func (f *Flow) Add(boxes ...page.Box) {
	p := &f.Pages[len(f.Pages)-1]
	p.Boxes = append(p.Boxes, boxes...)
}

// Ensure starts a page if less than h is left of this one.
func (f *Flow) Ensure(h float64) {
	if f.Room() < h && !f.fresh() {
		f.Next()
	}
}

// Paragraph sets s line by line, over pages where it must.
func (f *Flow) Paragraph(name, s string, font canvas.Font) {
	for _, run := range strings.Split(s, "\n") {
		for i, line := range canvas.Wrap(run, font, f.Width()-f.Side) {
			f.Ensure(canvas.LineHeight(font))
			f.Add(page.Text(fmt.Sprintf("%s %d", name, i+1), f.Left(), f.Y, f.Width()-f.Side, 0, line, font, canvas.Black, page.Left))
			f.Y += canvas.LineHeight(font)
		}
	}
}

// Heading sets the heading of a part and keeps it with the next keep mm.
func (f *Flow) Heading(name, s string, keep float64) {
	f.Space(GapMM)
	font := Bold(headPT)
	const under = 0.8
	f.Ensure(canvas.LineHeight(font) + under + keep)
	f.Paragraph(name, s, font)
	f.Y += under
}

// Space leaves h free, but not at the top of a page.
func (f *Flow) Space(h float64) {
	if !f.fresh() {
		f.Y += h * f.Open
	}
}

// Number writes the page numbers, when all pages are there.
func (f *Flow) Number(text func(n, of int) string) {
	font := Regular(BodyPT)
	for i := range f.Pages {
		p := &f.Pages[i]
		p.Boxes = append(p.Boxes, page.Text("page number", f.Left(), f.paper.H-MarginMM-canvas.LineHeight(font), f.Width(), 0,
			text(i+1, len(f.Pages)), font, canvas.Black, page.Right))
	}
}

// Hair is a black pen, Regular and Bold are the faces at a size.
func Hair(w float64) canvas.Pen { return canvas.Pen{Color: canvas.Black, WidthMM: w} }

func Regular(pt float64) canvas.Font { return canvas.Font{SizePT: pt} }
func Bold(pt float64) canvas.Font    { return canvas.Font{Face: canvas.Bold, SizePT: pt} }
