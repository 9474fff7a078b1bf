package sheet

import (
	"fmt"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// The measures of a page, in mm and points.
const (
	marginMM = 13.0
	footMM   = 6.0 // the line with the page number
	againMM  = 6.5 // the head line of later pages
	SmallPT  = 7.5 // smallest type
	bodyPT   = 8.0
	headPT   = 10.0
	gapMM    = 3.0
)

// Rules are what page.Check asks of a page.
var Rules = page.Rules{SmallestPT: SmallPT, SmallestDrawingPT: SmallPT}

// flow fills page after page from the top.
type flow struct {
	paper page.Paper
	again string // head line of the second page and on
	pages []page.Face
	y     float64
	open  float64 // share of the usual room between rows and parts
	side  float64 // width at the right that is taken, by the logo
	known map[cellKey][]string
	err   error
}

func (f *flow) left() float64   { return marginMM }
func (f *flow) width() float64  { return f.paper.W - 2*marginMM }
func (f *flow) bottom() float64 { return f.paper.H - marginMM - footMM }
func (f *flow) room() float64   { return f.bottom() - f.y }

// fresh tells whether nothing but the head line stands on the page.
func (f *flow) fresh() bool { return f.y <= f.top() }

func (f *flow) top() float64 {
	if len(f.pages) == 1 {
		return marginMM
	}
	return marginMM + againMM
}

// next starts a page.
func (f *flow) next() {
	f.pages = append(f.pages, page.Face{
		Name: fmt.Sprintf("setup sheet, page %d", len(f.pages)+1),
		W:    f.paper.W, H: f.paper.H,
		Safe: page.Rect{X: marginMM, Y: marginMM, W: f.width(), H: f.paper.H - 2*marginMM},
	})
	f.y = f.top()
	if len(f.pages) > 1 {
		font := canvas.Font{Face: canvas.Bold, SizePT: bodyPT}
		s, _ := page.Cut(f.again, font, f.width())
		f.add(page.Text("head line", f.left(), marginMM, f.width(), 0, s, font, canvas.Black, page.Left),
			page.Rule("under the head line", f.left(), marginMM+4.8, f.width(), 0, hair(0.25)))
	}
}

func (f *flow) add(boxes ...page.Box) {
	p := &f.pages[len(f.pages)-1]
	p.Boxes = append(p.Boxes, boxes...)
}

// ensure starts a page if less than h is left of this one.
func (f *flow) ensure(h float64) {
	if f.room() < h && !f.fresh() {
		f.next()
	}
}

// paragraph sets s line by line, over pages where it must.
func (f *flow) paragraph(name, s string, font canvas.Font) {
	for _, run := range strings.Split(s, "\n") {
		for i, line := range page.Wrap(run, font, f.width()-f.side) {
			f.ensure(canvas.LineHeight(font))
			f.add(page.Text(fmt.Sprintf("%s %d", name, i+1), f.left(), f.y, f.width()-f.side, 0, line, font, canvas.Black, page.Left))
			f.y += canvas.LineHeight(font)
		}
	}
}

// heading sets the heading of a part and keeps it with the next keep mm.
func (f *flow) heading(name, s string, keep float64) {
	f.space(gapMM)
	font := canvas.Font{Face: canvas.Bold, SizePT: headPT}
	f.ensure(canvas.LineHeight(font) + keep)
	f.paragraph(name, s, font)
	f.y += 0.8
}

// space leaves h free, but not at the top of a page.
func (f *flow) space(h float64) {
	if !f.fresh() {
		f.y += h * f.open
	}
}

// number writes the page numbers, when all pages are there.
func (f *flow) number(text func(n, of int) string) {
	font := canvas.Font{SizePT: bodyPT}
	for i := range f.pages {
		p := &f.pages[i]
		p.Boxes = append(p.Boxes, page.Text("page number", f.left(), f.paper.H-marginMM-canvas.LineHeight(font), f.width(), 0,
			text(i+1, len(f.pages)), font, canvas.Black, page.Right))
	}
}

func hair(w float64) canvas.Pen { return canvas.Pen{Color: canvas.Black, WidthMM: w} }

func regular(pt float64) canvas.Font { return canvas.Font{SizePT: pt} }
func bold(pt float64) canvas.Font    { return canvas.Font{Face: canvas.Bold, SizePT: pt} }
