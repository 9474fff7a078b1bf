package handout

import (
	"slices"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// column is a column of a table: its head, and whether it holds figures.
type column struct {
	head   string
	figure bool
}

// table is a table before it is placed.
type table struct {
	columns []column
	rows    [][]string
	strong  int       // row to set in bold, from 1; 0: none
	even    bool      // the columns of figures are as wide as each other
	tall    bool      // rows to write in, parted by lines
	widths  []float64 // of the columns; nil: from what they hold
}

const (
	cellGapMM = 2.5
	tallMM    = 8.5  // a row to write in
	writeMM   = 14.5 // a column to write in
	rowPadMM  = 0.5
	wordMM    = 32.0 // a word wider than this is broken
	cellMM    = 62.0 // a cell wider than this does not ask for more
)

// How many lines a cell of a row, and one of the head, may take; a longer name ends in an
// ellipsis.
const (
	mostLines = 2
	headLines = 4
)

// The fonts of a table.
var (
	plainFont = canvas.Font{Face: canvas.Regular, SizePT: TablePT}
	boldFont  = canvas.Font{Face: canvas.Bold, SizePT: TablePT}
)

// fit shares the width w among the columns: each gets what its widest cell takes on one line and
// an equal part of what is over. Where that is too much they give way, down to their widest word.
func (t *table) fit(w float64) {
	n := len(t.columns)
	want, least := make([]float64, n), make([]float64, n)
	for i, c := range t.columns {
		least[i] = widestWord(c.head, boldFont)
		want[i] = max(least[i], twoLines(c.head))
		for k, r := range t.rows {
			font := plainFont
			if k+1 == t.strong {
				font = boldFont
			}
			least[i] = max(least[i], widestWord(r[i], font))
			want[i] = max(want[i], min(canvas.Width(r[i], font)+0.05, cellMM))
		}
		want[i] = max(want[i], least[i])
		if t.tall {
			want[i] = max(want[i], writeMM)
		}
	}
	if t.even {
		wide := 0.0
		for i, c := range t.columns {
			if c.figure {
				wide = max(wide, want[i])
			}
		}
		for i, c := range t.columns {
			if c.figure {
				want[i] = wide
			}
		}
	}
	room := w - cellGapMM*float64(n-1)
	var wants, leasts float64
	for i := range want {
		wants += want[i]
		leasts += least[i]
	}
	t.widths = make([]float64, n)
	for i := range want {
		switch {
		case wants <= room && t.tall: // the last column is written in
			t.widths[i] = want[i]
			if i == n-1 {
				t.widths[i] += room - wants
			}
		case wants <= room:
			t.widths[i] = want[i] + (room-wants)/float64(n)
		case leasts >= room:
			t.widths[i] = least[i] * room / leasts
		default:
			t.widths[i] = least[i] + (room-leasts)*(want[i]-least[i])/(wants-leasts)
		}
	}
}

func widestWord(s string, f canvas.Font) float64 {
	w := 0.0
	for _, word := range strings.Split(s, " ") {
		w = max(w, min(canvas.Width(word, f)+0.05, wordMM))
	}
	return w
}

// twoLines is the width in which a head takes two lines at most.
func twoLines(s string) float64 {
	parts := strings.Split(s, " ")
	least := canvas.Width(s, boldFont)
	for i := 1; i < len(parts); i++ {
		a, b := strings.Join(parts[:i], " "), strings.Join(parts[i:], " ")
		least = min(least, max(canvas.Width(a, boldFont), canvas.Width(b, boldFont)))
	}
	return least + 0.05
}

// lines wraps a cell to at most so many lines.
func lines(s string, f canvas.Font, w float64, most int) []string {
	all := canvas.Wrap(s, f, w)
	if len(all) <= most {
		return all
	}
	last, _ := canvas.Cut(strings.Join(all[most-1:], " "), f, w)
	return append(all[:most-1], last)
}

// row sets one row of cells; each cell wraps to at most so many lines.
func (f *flow) row(t table, x, w float64, cells []string, font canvas.Font, pen canvas.Pen, most int) block {
	line := canvas.LineHeight(font)
	name := f.name("row")
	var out block
	at := x
	for i, c := range t.columns {
		align := page.Left
		if c.figure {
			align = page.Right
		}
		y := rowPadMM
		if t.tall && font == plainFont {
			y = tallMM - line - rowPadMM // on the line, as what is written
		}
		if cells[i] != "" {
			for _, s := range lines(cells[i], font, t.widths[i], most) {
				out.boxes = append(out.boxes, page.Text(name, at, y, t.widths[i], line, s, font, canvas.Black, align))
				y += line
			}
		}
		out.h = max(out.h, y+rowPadMM)
		at += t.widths[i] + cellGapMM
	}
	if !t.tall {
		out.boxes = append(out.boxes, page.Rule(f.name("rule"), x, out.h, w, 0, pen))
		return out
	}
	out.h = max(out.h, tallMM)
	for _, w := range t.widths {
		out.boxes = append(out.boxes, page.Rule(f.name("rule"), x, out.h, w, 0, pen))
		x += w + cellGapMM
	}
	return out
}

func (f *flow) tableHead(t table, x, w float64) block {
	var heads []string
	for _, c := range t.columns {
		heads = append(heads, c.head)
	}
	return f.row(t, x, w, heads, boldFont, canvas.Pen{Color: canvas.Black, WidthMM: 0.25}, headLines)
}

// tableRows sets the rows of a table.
func (f *flow) tableRows(t table, x, w float64) []block {
	var out []block
	for i, r := range t.rows {
		font, pen := plainFont, canvas.Pen{Color: canvas.Gray(170), WidthMM: 0.12}
		if i+1 == t.strong {
			font = boldFont
		}
		out = append(out, f.row(t, x, w, r, font, pen, mostLines))
	}
	return out
}

// table sets a whole table as one block.
func (f *flow) table(t table, x, w float64) block {
	if t.widths == nil {
		t.fit(w)
	}
	b := stack(append([]block{f.tableHead(t, x, w)}, f.tableRows(t, x, w)...)...)
	b.after = blockMM
	return b
}

// without is the table less a column.
func (t table) without(n int) table {
	t.columns = slices.Delete(slices.Clone(t.columns), n, n+1)
	for i, r := range t.rows {
		t.rows[i] = slices.Delete(slices.Clone(r), n, n+1)
	}
	return t
}

// after is the table from row n on.
func (t table) after(n int) table {
	t.rows = t.rows[n:]
	t.strong = max(0, t.strong-n)
	return t
}

// A table of fewer rows than manyRows is not split; of one that is, fewRows stand on each page.
const (
	manyRows = 15
	fewRows  = 5
)

// long places a table over the full width under its caption, over pages where it must be, with
// the head again on each.
func (f *flow) long(caption string, t table) {
	x, w := f.left(), f.width()
	t.fit(w)
	whole := stack(f.caption(x, w, caption), f.table(t, x, w))
	held := f.holds()
	full := f.bottom() - f.topOf(1)
	if need := held + whole.h; need <= f.room() || need <= full && len(t.rows) < manyRows {
		f.add(whole)
		return
	}
	first := true
	for len(t.rows) > 0 {
		rows := f.tableRows(t, x, w)
		head := f.tableHead(t, x, w)
		room := f.room() - head.h
		if first {
			head = stack(f.caption(x, w, caption), head)
			room = f.room() - head.h - held
		}
		n, used := 0, 0.0
		for n < len(rows) && used+rows[n].h <= room {
			used += rows[n].h
			n++
		}
		if left := len(rows) - n; left > 0 && left < fewRows && n > 2*fewRows {
			n = len(rows) - fewRows
		}
		if n < min(fewRows, len(rows)) {
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
		t, first = t.after(n), false
	}
}
