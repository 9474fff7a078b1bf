package handout

import (
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/page"
	"bladecard/render/say"
)

// The type of the paper, in points.
const (
	TitlePT = 22.0
	HeadPT  = 15.0
	BodyPT  = 10.0
	TablePT = 9.0
	FootPT  = 8.0
)

// The page in mm.
const (
	marginMM = 18.0
	topMM    = 12.0 // above the running head
	headMM   = 7.0  // the running head with the gap under it
	footMM   = 6.0  // the page number with the gap above it
	paraMM   = 1.8  // after a paragraph
	blockMM  = 3.5  // after a table or a drawing
	gutterMM = 7.0  // between columns
	indentMM = 7.5  // of a list
)

// block is a piece of the flow that stays on one page. Its boxes start at y = 0.
type block struct {
	boxes []page.Box
	h     float64
	after float64 // gap that follows on the same page
	keep  bool    // stays with the next block
	lead  float64 // how much more room a page that has it to spare gives above
	more  float64 // how much higher grown draws it at most
	grown func(mm float64) block
}

// leaf is a page with its blocks from the top.
type leaf struct {
	blocks []block
	ends   bool // a part of the paper: what is over stays over
}

// flow fills pages with blocks.
type flow struct {
	say   *say.Voice
	paper page.Paper
	pages []leaf
	y     float64
	held  []block // kept for the next block
	err   error
	count int // of boxes, for their names

	accent canvas.Color // of the rules under the headings
}

func (f *flow) left() float64   { return marginMM }
func (f *flow) width() float64  { return f.paper.W - 2*marginMM }
func (f *flow) top() float64    { return f.topOf(len(f.pages) - 1) }
func (f *flow) bottom() float64 { return f.paper.H - topMM - footMM }

// topOf is where page i begins, from 0. The first has its title in the place of a running head.
func (f *flow) topOf(i int) float64 {
	if i == 0 {
		return topMM
	}
	return topMM + headMM
}

// name makes a box's name that says where it stands.
func (f *flow) name(what string) string {
	f.count++
	return fmt.Sprintf("%s %d", what, f.count)
}

// add places blocks, each on the page where it fits.
func (f *flow) add(list ...block) {
	for _, b := range list {
		if b.keep {
			f.held = append(f.held, b)
			continue
		}
		f.held = append(f.held, b)
		var need float64
		for i, h := range f.held {
			need += h.h
			if i < len(f.held)-1 {
				need += h.after
			}
		}
		if len(f.pages) == 0 || f.y+need > f.bottom() && f.y > f.top() {
			f.turn()
		}
		if f.y+need > f.bottom()+0.01 {
			f.fail(fmt.Errorf("a block of %.0f mm does not fit on a page", need))
		}
		for _, h := range f.held {
			f.put(h)
		}
		f.held = nil
	}
}

// turn begins a new page.
func (f *flow) turn() {
	f.pages = append(f.pages, leaf{})
	f.y = f.top()
}

// end begins a new page with a new part of the paper.
func (f *flow) end() {
	if len(f.pages) > 0 {
		f.pages[len(f.pages)-1].ends = true
	}
	f.turn()
}

func (f *flow) put(b block) {
	last := &f.pages[len(f.pages)-1]
	last.blocks = append(last.blocks, b)
	f.y += b.h + b.after
}

// place gives the blocks of a page their places. What the next block left free, since it did not fit, goes to drawings
// that may be larger, above headings and between blocks.
func (f *flow) place(i int) (out []page.Box) {
	p, top, want := f.pages[i], f.topOf(i), 0.0
	y := top
	for i, b := range p.blocks {
		y += b.h
		want += b.more
		if i > 0 {
			y += p.blocks[i-1].after
			want += above(p.blocks[i-1], b)
		}
	}
	share := 0.0
	if spare := f.bottom() - y; want > 0 && spare > 0 && !p.ends {
		share = min(1, spare/want)
	}
	y = top
	for i, b := range p.blocks {
		if i > 0 {
			y += p.blocks[i-1].after + share*above(p.blocks[i-1], b)
		}
		if b.grown != nil && share > 0 {
			b = b.grown(share * b.more)
		}
		for _, x := range b.boxes {
			x.Y += y
			out = append(out, x)
		}
		y += b.h
	}
	return out
}

// above is how much more room may be between two blocks. A caption keeps close to what is below it.
func above(a, b block) float64 {
	if a.keep {
		return b.lead
	}
	return a.after + b.lead
}

func (f *flow) room() float64 {
	if len(f.pages) == 0 {
		return f.bottom() - f.top()
	}
	return f.bottom() - f.y
}

// holds is the height of what is kept for the next block.
func (f *flow) holds() (high float64) {
	for _, b := range f.held {
		high += b.h + b.after
	}
	return high
}

func (f *flow) fail(err error) {
	if f.err == nil {
		f.err = err
	}
}

func style(pt float64, face canvas.Face) page.Style {
	return page.Style{Font: canvas.Font{Face: face, SizePT: pt}, Color: canvas.Black}
}

// text sets a paragraph.
func (f *flow) text(x, w float64, s string, pt float64, face canvas.Face) block {
	p := page.Paragraph(f.name("text"), x, 0, w, s, style(pt, face), 0)
	return block{boxes: p.Boxes, h: p.Bottom, after: paraMM}
}

// body is a paragraph at the size of the body.
func (f *flow) body(x, w float64, s string) block { return f.text(x, w, s, BodyPT, canvas.Regular) }

// head is a section's heading over a rule.
func (f *flow) head(s string) block {
	b := f.text(f.left(), f.width(), s, HeadPT, canvas.Bold)
	b.boxes = append(b.boxes, page.Rule(f.name("rule"), f.left(), b.h+0.6, f.width(), 0, canvas.Pen{Color: f.accent, WidthMM: 0.4}))
	b.h += 1
	b.after, b.keep, b.lead = 1.8, true, 6
	return space(b, 2.5)
}

// caption stands over a table or a drawing.
func (f *flow) caption(x, w float64, s string) block {
	b := f.text(x, w, s, BodyPT, canvas.Bold)
	b.after, b.keep = 1, true
	return b
}

// bullet is a paragraph with a mark before it.
func (f *flow) bullet(x, w float64, mark, s string) block {
	b := f.body(x+indentMM, w-indentMM, s)
	m := page.Text(f.name("mark"), x, 0, indentMM-0.5, 0, mark, canvas.Font{Face: canvas.Bold, SizePT: BodyPT}, canvas.Black, page.Left)
	b.boxes = append(b.boxes, m)
	return b
}

// space moves a block down by mm.
func space(b block, mm float64) block {
	for i := range b.boxes {
		b.boxes[i].Y += mm
	}
	b.h += mm
	return b
}

// stack joins blocks to one that stays together.
func stack(list ...block) block {
	var out block
	for i, b := range list {
		for _, x := range b.boxes {
			x.Y += out.h
			out.boxes = append(out.boxes, x)
		}
		out.h += b.h
		if i < len(list)-1 {
			out.h += b.after
		}
		out.after = b.after
	}
	return out
}

// beside sets two blocks side by side.
func beside(a, b block) block {
	return block{boxes: append(append([]page.Box(nil), a.boxes...), b.boxes...), h: max(a.h, b.h), after: max(a.after, b.after)}
}

// draw is a drawing w wide and h high.
func (f *flow) draw(what string, x, w, h float64, draw func(canvas.Canvas) error) block {
	box := page.Drawing(f.name(what), x, 0, w, h, func(c canvas.Canvas) {
		if err := draw(c); err != nil {
			f.fail(fmt.Errorf("%s: %w", what, err))
		}
	})
	return block{boxes: []page.Box{box}, h: h, after: blockMM}
}

// growing is a drawing that may be up to more higher.
func (f *flow) growing(what string, x, w, h, more float64, draw func(c canvas.Canvas, h float64) error) block {
	at := func(h float64) block {
		return f.draw(what, x, w, h, func(c canvas.Canvas) error { return draw(c, h) })
	}
	b := at(h)
	b.more, b.grown = more, func(mm float64) block { return at(h + mm) }
	return b
}

// faces are the pages with running head and number.
func (f *flow) faces(title, shop string) []page.Face {
	var out []page.Face
	for i := range f.pages {
		n := fmt.Sprint(i + 1)
		face := page.Face{
			Name: "page " + n, W: f.paper.W, H: f.paper.H,
			Safe: page.Rect{X: marginMM, Y: topMM, W: f.width(), H: f.paper.H - 2*topMM},
		}
		small := canvas.Font{SizePT: FootPT}
		line := canvas.LineHeight(small)
		right, _ := canvas.Cut(shop, small, f.width()/2-2)
		left, _ := canvas.Cut(title, small, f.width()/2-2)
		foot := f.say.T("handout.page", "n", n, "of", fmt.Sprint(len(f.pages)))
		if i > 0 {
			face.Boxes = append(face.Boxes,
				page.Text("running title", f.left(), topMM, f.width()/2-1, line, left, small, canvas.Black, page.Left),
				page.Text("running shop", f.left()+f.width()/2+1, topMM, f.width()/2-1, line, right, small, canvas.Black, page.Right))
		}
		face.Boxes = append(append(face.Boxes, f.place(i)...),
			page.Text("page number", f.left(), f.paper.H-topMM-line, f.width(), line, foot, small, canvas.Black, page.Center))
		out = append(out, face)
	}
	return out
}
