package page

import (
	"fmt"
	"iter"

	"bladecard/render/canvas/pdf"
)

// Paper is a sheet in the office printer, upright.
type Paper struct {
	Name string
	W, H float64 // mm
}

// The papers.
var (
	A4     = Paper{"a4", 210, 297}
	Letter = Paper{"letter", 215.9, 279.4}
)

// Size is a card size and how it lies on a sheet.
type Size struct {
	Name       string
	W, H       float64 // trim, mm
	Cols, Rows int     // on a sheet
	Landscape  bool    // the sheet lies on its long edge
}

// The card sizes. All go on A4 and on Letter.
var (
	Card132 = Size{"132x96", 132, 96, 2, 2, true}
	Card148 = Size{"148x105", 148, 105, 1, 2, false}
	Card6x4 = Size{"6x4", 152.4, 101.6, 1, 2, false}
	CardA5  = Size{"a5", 210, 148, 1, 1, true}
)

// Sizes are the card sizes offered.
var Sizes = []Size{Card132, Card148, Card6x4, CardA5}

// Card is the two sides of a card. A back without boxes stays blank.
type Card struct{ Front, Back Face }

// Flip is the edge of the sheet about which the printer turns it.
type Flip int

// The flip edges.
const (
	LongEdge Flip = iota
	ShortEdge
)

// Duplex is what a document says of the flip to the printer.
func (f Flip) Duplex() pdf.Duplex {
	if f == ShortEdge {
		return pdf.FlipShortEdge
	}
	return pdf.FlipLongEdge
}

// EdgeMM is the strip along the sheet's edges that office printers leave white (common
// practice: 4.2 mm, with some to spare).
const EdgeMM = 5.0

// MaxOffsetMM bounds the shift of the back: a duplexer that is further off needs a mechanic.
const MaxOffsetMM = 5.0

// Options are what Impose needs besides the cards.
type Options struct {
	Single bool // one card a page of the card's size, front then back, no marks, no notes
	Flip   Flip
	// BackDX and BackDY shift what is on the back page right and down, as one looks at the
	// printed page, in mm.
	BackDX, BackDY float64
	// Words for the sheet margin, small: what is printed, which edge to flip about, and whose shop
	// it is set up for.
	// A word that is too long for the margin is cut.
	Title, FlipNote, FrontNote, BackNote, ShopNote string
}

// Sheet is one printed page: its cards, marks and notes, all in mm of that page.
type Sheet struct {
	W, H   float64
	Back   bool
	Number int  // sheet of paper, from 1
	Turned bool // the page's content is turned by half a turn
	Cards  []Placed
	Marks  []Mark
	Notes  []Box // in the page before it is turned
}

// Placed is one side of a card on a sheet.
type Placed struct {
	Index int  // of the card in the list that was handed in
	Trim  Rect // where it is cut, on the printed page
	Face  Face
}

// Mark is a crop mark: a line from X1, Y1 to X2, Y2 on the printed page.
type Mark struct{ X1, Y1, X2, Y2 float64 }

// Pages makes every face a page of its own size.
func Pages(faces ...Face) []Sheet {
	var out []Sheet
	for i, f := range faces {
		out = append(out, Sheet{W: f.W, H: f.H, Number: i + 1,
			Cards: []Placed{{Index: i, Trim: Rect{0, 0, f.W, f.H}, Face: f}}})
	}
	return out
}

// Cards are cards that are laid out one after the other, and Sheets the sheets that they are placed
// on, so that of a large job no more are held at once than are being drawn. An error is the last of
// either.
type (
	Cards  = iter.Seq2[Card, error]
	Sheets = iter.Seq2[Sheet, error]
)

// Impose places count cards on sheets: front page, back page, front page, ... A card is taken only when its
// sheet is. It is an error if the size does not go on the paper or the offset is too large; a card of another
// size is an error of the sheets.
func Impose(paper Paper, size Size, count int, cards Cards, o Options) (Sheets, error) {
	for _, d := range []float64{o.BackDX, o.BackDY} {
		if !(d >= -MaxOffsetMM && d <= MaxOffsetMM) {
			return nil, fmt.Errorf("back offset is %v mm; %g to %g mm is accepted", d, -MaxOffsetMM, MaxOffsetMM)
		}
	}
	g, err := newGrid(paper, size)
	if err != nil && !o.Single {
		return nil, err
	}
	per := 1
	if !o.Single {
		per = size.Cols * size.Rows
	}
	of := (count + per - 1) / per
	return func(yield func(Sheet, error) bool) {
		n, here := 0, make([]Card, 0, per)
		place := func() bool {
			from := n * per
			n++
			front, back := single(n, from, here[0])
			if !o.Single {
				front, back = g.pair(n, of, from, here, o)
			}
			here = here[:0]
			return yield(front, nil) && yield(back, nil)
		}
		for c, err := range cards {
			if err == nil {
				err = c.fits(size, n*per+len(here))
			}
			if err != nil {
				yield(Sheet{}, err)
				return
			}
			if here = append(here, c); len(here) == per && !place() {
				return
			}
		}
		if len(here) > 0 {
			place()
		}
	}, nil
}

// fits is the error of the i-th card where a side of it has another size.
func (c Card) fits(size Size, i int) error {
	for _, f := range []Face{c.Front, c.Back} {
		if !near(f.W, size.W) || !near(f.H, size.H) {
			return fmt.Errorf("card %d, face %q: size is %g x %g mm; %g x %g mm is accepted", i+1, f.Name, f.W, f.H, size.W, size.H)
		}
	}
	return nil
}

// single makes a page of each side of a card. Turn and offset belong to sheets: a single page has neither.
func single(number, index int, c Card) (front, back Sheet) {
	trim := Rect{0, 0, c.Front.W, c.Front.H}
	return Sheet{W: trim.W, H: trim.H, Number: number, Cards: []Placed{{index, trim, c.Front}}},
		Sheet{W: trim.W, H: trim.H, Number: number, Back: true, Cards: []Placed{{index, trim, c.Back}}}
}

func near(a, b float64) bool { return a-b < 0.01 && b-a < 0.01 }
