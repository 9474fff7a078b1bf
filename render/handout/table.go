package handout

import (
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// column is a column of a table: its head, its share of the width, and whether it holds figures.
type column struct {
	head   string
	share  float64
	figure bool
}

// table is a table before it is placed.
type table struct {
	columns []column
	rows    [][]string
	strong  int // row to set in bold, from 1; 0: none
}

const (
	cellGapMM = 2.5
	rowPadMM  = 0.55
)

// How many lines a cell of a row, and one of the head, may take; a longer name ends in an
// ellipsis.
const (
	mostLines = 2
	headLines = 4
)

// lines wraps a cell to at most so many lines.
func lines(s string, f canvas.Font, w float64, most int) []string {
	all := page.Wrap(s, f, w)
	if len(all) <= most {
		return all
	}
	last, _ := page.Cut(strings.Join(all[most-1:], " "), f, w)
	return append(all[:most-1], last)
}

// row sets one row of cells; each cell wraps to at most so many lines.
func (f *flow) row(t table, x, w float64, cells []string, face canvas.Face, pen canvas.Pen, most int) block {
	font := canvas.Font{Face: face, SizePT: TablePT}
	line := page.LineHeight(font)
	var total float64
	for _, c := range t.columns {
		total += c.share
	}
	name := f.name("row")
	var out block
	at := x
	for i, c := range t.columns {
		cw := (w - cellGapMM*float64(len(t.columns)-1)) * c.share / total
		align := page.Left
		if c.figure {
			align = page.Right
		}
		y := rowPadMM
		if cells[i] != "" {
			for _, s := range lines(cells[i], font, cw, most) {
				out.boxes = append(out.boxes, page.Text(name, at, y, cw, line, s, font, canvas.Black, align))
				y += line
			}
		}
		out.h = max(out.h, y+rowPadMM)
		at += cw + cellGapMM
	}
	out.boxes = append(out.boxes, page.Rule(f.name("rule"), x, out.h, w, 0, pen))
	return out
}

func (f *flow) tableHead(t table, x, w float64) block {
	var heads []string
	for _, c := range t.columns {
		heads = append(heads, c.head)
	}
	return f.row(t, x, w, heads, canvas.Bold, canvas.Pen{Color: canvas.Black, WidthMM: 0.25}, headLines)
}

func (f *flow) tableRows(t table, x, w float64) []block {
	var out []block
	for i, r := range t.rows {
		face := canvas.Regular
		if i+1 == t.strong {
			face = canvas.Bold
		}
		out = append(out, f.row(t, x, w, r, face, canvas.Pen{Color: canvas.Gray(170), WidthMM: 0.12}, mostLines))
	}
	return out
}

// table sets a whole table as one block.
func (f *flow) table(t table, x, w float64) block {
	b := stack(append([]block{f.tableHead(t, x, w)}, f.tableRows(t, x, w)...)...)
	b.after = blockMM
	return b
}

// long places a table over the full width under its caption, over pages where it must be, with
// the head again on each.
func (f *flow) long(caption string, t table) {
	x, w := f.left(), f.width()
	whole := stack(f.caption(x, w, caption), f.table(t, x, w))
	var held float64
	for _, h := range f.held {
		held += h.h + h.after
	}
	page := f.bottom() - f.top()
	const few = 0.35 // of a page: less room than that is not worth splitting for
	if need := held + whole.h; need <= f.room() || need <= page && f.room() < few*page {
		f.add(whole)
		return
	}
	rows := f.tableRows(t, x, w)
	first := true
	for len(rows) > 0 {
		head := f.tableHead(t, x, w)
		if first {
			head = stack(f.caption(x, w, caption), head)
		}
		room := f.room() - head.h
		if first {
			room -= held
		}
		n, used := 0, 0.0
		for n < len(rows) && used+rows[n].h <= room {
			used += rows[n].h
			n++
		}
		if n < min(3, len(rows)) {
			if f.y <= f.top() && len(f.pages) > 0 {
				n = max(n, 1) // a page of its own is not enough: add tells
			} else {
				f.turn()
				continue
			}
		}
		b := stack(append([]block{head}, rows[:n]...)...)
		b.after = blockMM
		f.add(b)
		rows, first = rows[n:], false
	}
}
