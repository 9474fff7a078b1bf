package flow

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// Cell is one place of a table: text, with rows where it has newlines, or a small figure.
type Cell struct {
	Text   string
	Strong bool
	Lead   bool // the first row alone is strong
	Dark   bool // white on black
	Figure Figure
	W, H   float64 // of the figure, mm
	PT     float64 // of the type; 0: SmallPT
}

// Figure is what draws itself into a cell.
type Figure interface {
	Draw(canvas.Canvas, figure.Rect) error
}

// Patch is a cell with a color.
func Patch(s figure.Swatch) Cell { return Cell{Figure: s, W: patchMM, H: patchMM} }

// Table is a table that goes over pages; its header stands on each.
type Table struct {
	Name   string
	Header []string
	Rows   [][]Cell
	Shares []float64 // of the width, a column each, for boxes to fill in by hand with lines between them; nil: by the texts
	RowMM  float64   // least height of a row
	Below  float64   // mm below the last row, for what is said of the table on the same page
	Tick   bool      // a box to tick stands before each row, whose text is in the middle of its height
}

const (
	padMM    = 0.9  // beside the text of a cell
	riseMM   = 0.7  // above and below it
	patchMM  = 4.0  // side of a color patch
	mostMM   = 62.0 // a name wider than this does not ask for more
	hardMM   = 6.0  // what the narrowest column of text has
	tickMM   = 5.5  // side of a box to tick
	besideMM = 3.0  // behind it
	behindMM = 0.8  // below a table
)

// Plain are cells of text.
func Plain(texts ...string) []Cell {
	var out []Cell
	for _, s := range texts {
		out = append(out, Cell{Text: s})
	}
	return out
}

// Row adds a row.
func (t *Table) Row(cells ...Cell) { t.Rows = append(t.Rows, cells) }

// font is that of a cell.
func (c Cell) font() canvas.Font {
	return canvas.Font{Face: canvas.Face(c.Strong || c.Lead), SizePT: cmp.Or(c.PT, SmallPT)}
}

// cellKey is what the lines of a Cell depend on.
type cellKey struct {
	text         string
	strong, lead bool
	pt, w        float64
}

// line is a line of a cell.
type line struct {
	text string
	font canvas.Font
}

// lines of a cell in a column w wide. They are asked for several times while the rows find their
// page.
func (f *Flow) lines(c Cell, w float64) []line {
	key := cellKey{c.Text, c.Strong, c.Lead, c.PT, w}
	out, known := f.known[key]
	if known {
		return out
	}
	for _, run := range strings.Split(c.Text, "\n") {
		if run = strings.TrimSpace(run); run != "" {
			for _, text := range canvas.Wrap(parted(run, c.font(), w-2*padMM), c.font(), w-2*padMM) {
				out = append(out, line{text, c.font()})
			}
		}
		c.Lead = false
	}
	if f.known == nil {
		f.known = map[cellKey][]line{}
	}
	f.known[key] = out
	return out
}

// parted opens the no-break spaces of what is wider than w, first those behind commas: words rather part than break.
func parted(run string, font canvas.Font, w float64) string {
	for _, tie := range []string{",\u00a0", "\u00a0"} {
		words := strings.Split(run, " ")
		for i, word := range words {
			if canvas.Width(word, font) > w {
				words[i] = strings.ReplaceAll(word, tie, strings.TrimSuffix(tie, "\u00a0")+" ")
			}
		}
		run = strings.Join(words, " ")
	}
	return run
}

// filled leaves out the columns that have a header and nothing below it.
func (t Table) filled() Table {
	if t.Shares != nil {
		return t
	}
	header, rows := t.Header, t.Rows
	t.Header, t.Rows = nil, make([][]Cell, len(rows))
	for i, h := range header {
		if h != "" && !slices.ContainsFunc(rows, func(r []Cell) bool { return r[i].Text != "" || r[i].Figure != nil }) {
			continue
		}
		t.Header = append(t.Header, h)
		for k, r := range rows {
			t.Rows[k] = append(t.Rows[k], r[i])
		}
	}
	return t
}

// Table sets a table, page after page.
func (f *Flow) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.filled()
	widths := t.widths(f.Width())
	headH := f.headHeight(t, widths)
	last, below := len(t.Rows)-1, t.Below
	if below > 0 {
		below += behindMM
	}
	need := func(i int) float64 {
		h := f.rowHeight(t, i, widths)
		switch {
		case i == last:
			h += below
		case i > 0 && i == last-1: // the last row is not left alone
			h += f.rowHeight(t, last, widths) + below
		}
		return h
	}
	f.Ensure(headH + need(0))
	f.tableHead(t, widths, headH)
	for i := range t.Rows {
		if need(i) > f.Room() {
			f.Next()
			f.tableHead(t, widths, headH)
		}
		f.tableRow(t, i, widths)
	}
	f.Add(page.Rule(t.Name+" end", f.Left(), f.Y, f.Width(), 0, Hair(0.25)))
	f.Y += behindMM
}

// Part is a heading, a note and a table. They go to the next page together where they do not fit
// on this one and take no more than half a page; else with the first row of the table.
func (f *Flow) Part(name, title, note string, t Table) {
	filled := t.filled()
	widths := filled.widths(f.Width())
	start := f.headHeight(filled, widths) + 2
	if note != "" {
		start += float64(len(canvas.Wrap(note, Regular(BodyPT), f.Width())))*canvas.LineHeight(Regular(BodyPT)) + 0.8
	}
	whole := start
	for i := range filled.Rows {
		whole += f.rowHeight(filled, i, widths)
	}
	half := (f.Bottom() - MarginMM) / 2
	switch first := start + f.rowHeight(filled, 0, widths); {
	case whole <= half:
		f.Heading(name+" heading", title, whole)
	case first <= half:
		f.Heading(name+" heading", title, first)
	default:
		f.Heading(name+" heading", title, 24)
	}
	if note != "" {
		f.Paragraph(name+" note", note, Regular(BodyPT))
		f.Y += 0.8
	}
	f.Table(t)
}

func (f *Flow) headHeight(t Table, widths []float64) float64 {
	n := 1
	for i, h := range t.Header {
		n = max(n, len(f.lines(Cell{Text: h, Strong: true}, widths[i])))
	}
	return float64(n)*canvas.LineHeight(Bold(SmallPT)) + 2*riseMM
}

func (f *Flow) rowHeight(t Table, i int, widths []float64) float64 {
	return max(f.tallest(t, i, widths)+2*riseMM*f.Open, t.RowMM)
}

// tallest is the height of the highest cell of row i.
func (f *Flow) tallest(t Table, i int, widths []float64) float64 {
	h := 0.0
	for k, c := range t.Rows[i] {
		h = max(h, c.H, float64(len(f.lines(c, widths[k])))*canvas.LineHeight(c.font()))
	}
	return h
}

// Tick is a box to tick at the left edge, in the middle of a row h high.
func (f *Flow) Tick(name string, side, h float64) {
	f.Add(page.Fill(name, f.Left()+0.3, f.Y+(h-side)/2, side, side, nil, Hair(0.35)))
}

func (f *Flow) tableHead(t Table, widths []float64, h float64) {
	gray := canvas.Gray(225)
	f.Add(page.Fill(t.Name+" head", f.Left(), f.Y, f.Width(), h, &gray, canvas.Pen{}))
	f.cells(t.Name+" head", Plain(t.Header...), f.Left()+t.lead(), widths, h, riseMM, true)
	if t.Shares != nil {
		f.frames(t.Name+" head", widths, h)
	}
	f.Y += h
}

// frames are the boxes of a row to fill in, h high.
func (f *Flow) frames(name string, widths []float64, h float64) {
	x := f.Left()
	for i, w := range widths {
		f.Add(page.Fill(fmt.Sprintf("%s box %d", name, i+1), x, f.Y, w, h, nil, Hair(0.15)))
		x += w
	}
}

func (f *Flow) tableRow(t Table, i int, widths []float64) {
	if i > 0 {
		f.Add(page.Rule(fmt.Sprintf("%s rule %d", t.Name, i), f.Left(), f.Y, f.Width(), 0, canvas.Pen{Color: canvas.Gray(130), WidthMM: 0.15}))
	}
	name, h, rise := fmt.Sprintf("%s row %d", t.Name, i+1), f.rowHeight(t, i, widths), riseMM*f.Open
	if t.Tick {
		f.Tick(name+" tick", tickMM, h)
		rise = (h - f.tallest(t, i, widths)) / 2
	}
	f.cells(name, t.Rows[i], f.Left()+t.lead(), widths, h, rise, false)
	if t.Shares != nil {
		f.frames(name, widths, h)
	}
	f.Y += h
}

func (f *Flow) cells(name string, r []Cell, x float64, widths []float64, h, rise float64, strong bool) {
	for i, c := range r {
		c.Strong = c.Strong || strong
		where := fmt.Sprintf("%s column %d", name, i+1)
		y, color := f.Y+rise, canvas.Black
		if c.Dark {
			high := float64(len(f.lines(c, widths[i])))*canvas.LineHeight(c.font()) + 2*rise
			f.Add(page.Fill(where+" ground", x, f.Y+0.3, widths[i]-0.4, high-0.6, &canvas.Black, canvas.Pen{}))
			color = canvas.White
		}
		if c.Figure != nil {
			f.Draw(where, page.Rect{X: x + padMM, Y: y, W: c.W, H: c.H}, func(cv canvas.Canvas) error {
				return c.Figure.Draw(cv, figure.Rect{W: c.W, H: c.H})
			})
		}
		for _, l := range f.lines(c, widths[i]) {
			f.Add(page.Text(where, x+padMM, y, widths[i]-2*padMM, 0, l.text, l.font, color, page.Left))
			y += canvas.LineHeight(l.font)
		}
		x += widths[i]
	}
}

// Draw places a drawing and keeps its error.
func (f *Flow) Draw(name string, r page.Rect, draw func(canvas.Canvas) error) {
	f.Add(page.Drawing(name, r.X, r.Y, r.W, r.H, func(c canvas.Canvas) {
		if err := draw(c); err != nil && f.Err == nil {
			f.Err = fmt.Errorf("%s: %w", name, err)
		}
	}))
}
