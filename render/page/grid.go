package page

import (
	"fmt"
	"strings"
)

// grid is the block of cards, centered on the sheet.
type grid struct {
	w, h float64 // sheet
	size Size
	x, y float64 // block's corner
}

func newGrid(paper Paper, size Size) (grid, error) {
	if size.Cols < 1 || size.Rows < 1 || !(size.W > 0 && size.H > 0) {
		return grid{}, fmt.Errorf("card size %q is %g x %g mm, %d x %d a sheet; accepted are %s", size.Name, size.W, size.H, size.Cols, size.Rows, sizeNames())
	}
	g := grid{w: paper.W, h: paper.H, size: size}
	if size.Landscape {
		g.w, g.h = g.h, g.w
	}
	g.x = (g.w - float64(size.Cols)*size.W) / 2
	g.y = (g.h - float64(size.Rows)*size.H) / 2
	if !(g.x >= EdgeMM+markGapMM+markLeastMM && g.y >= EdgeMM+markGapMM+markLeastMM) {
		return grid{}, fmt.Errorf("paper %q leaves %.1f and %.1f mm around %d x %d cards of %s; %.1f mm is the least for crop marks",
			paper.Name, g.x, g.y, size.Cols, size.Rows, size.Name, EdgeMM+markGapMM+markLeastMM)
	}
	return g, nil
}

func sizeNames() string {
	var names []string
	for _, s := range Sizes {
		names = append(names, s.Name)
	}
	return strings.Join(names, ", ")
}

// turned tells whether the flip turns the sheet about its horizontal axis.
func (g grid) turned(f Flip) bool { return (g.w > g.h) == (f == LongEdge) }

func (g grid) front(i int) Rect {
	col, row := i%g.size.Cols, i/g.size.Cols
	return Rect{g.x + float64(col)*g.size.W, g.y + float64(row)*g.size.H, g.size.W, g.size.H}
}

// back is the trim behind card i on the printed back page.
func (g grid) back(i int, o Options) Rect {
	r := g.front(i)
	r.X = g.w - r.Right() // columns reversed, same row
	if g.turned(o.Flip) {
		r = g.turn(r)
	}
	r.X += o.BackDX
	r.Y += o.BackDY
	return r
}

// turn gives where a rectangle lies after half a turn of the page.
func (g grid) turn(r Rect) Rect {
	r.X, r.Y = g.w-r.Right(), g.h-r.Bottom()
	return r
}

func (g grid) sheet(back bool, number, of int, o Options) Sheet {
	s := Sheet{W: g.w, H: g.h, Back: back, Number: number, Turned: back && g.turned(o.Flip)}
	dx, dy := 0.0, 0.0
	if back {
		dx, dy = o.BackDX, o.BackDY
	}
	block := g.block(dx, dy)
	s.Marks = marks(block, g)
	if s.Turned { // notes are in the page before it is turned
		block = g.turn(block)
	}
	s.Notes = g.notes(block, o, back, number, of)
	return s
}

// pair is a sheet's front page and its back page.
func (g grid) pair(number, of, from int, cards []Card, o Options) (front, back Sheet) {
	front, back = g.sheet(false, number, of, o), g.sheet(true, number, of, o)
	for i, c := range cards {
		front.Cards = append(front.Cards, Placed{from + i, g.front(i), c.Front})
		back.Cards = append(back.Cards, Placed{from + i, g.back(i, o), c.Back})
	}
	return front, back
}

// block is the block of cards, shifted.
func (g grid) block(dx, dy float64) Rect {
	return Rect{g.x + dx, g.y + dy, float64(g.size.Cols) * g.size.W, float64(g.size.Rows) * g.size.H}
}
