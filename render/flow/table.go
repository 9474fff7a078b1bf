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
	Group  []bool    // row starts a group: a rule stands above it; nil: every row
	Shares []float64 // of the width, a column each, for boxes to fill in by hand with lines between them; nil: by the texts
	RowMM  float64   // least height of a row
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
			if widest(run, " ", c.font()) > w-2*padMM { // words rather part than break
				run = strings.ReplaceAll(run, "\u00a0", " ")
			}
			for _, text := range canvas.Wrap(run, c.font(), w-2*padMM) {
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

// widths shares the width: a column gets what its widest line wants, as far as that goes;
// columns that want more share what is left. None is narrower than its header on two lines, unless it takes that for
// each to hold its widest word.
func (t *Table) widths(whole float64) []float64 {
	whole -= t.lead()
	if t.Shares != nil {
		return share(whole, t.Shares, t.Shares, t.Shares, t.Shares)
	}
	n := len(t.Header)
	want, least, words, hard := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i, h := range t.Header {
		least[i] = twoLines(h) + 2*padMM
		want[i], hard[i], words[i] = least[i], min(least[i], hardMM), widest(h, anySpace, Bold(SmallPT))+2*padMM
		for _, r := range t.Rows {
			c := r[i]
			if c.Figure != nil {
				hard[i] = max(hard[i], c.W+2*padMM)
				least[i] = max(least[i], hard[i])
			}
			for _, run := range strings.Split(c.Text, "\n") {
				want[i] = max(want[i], min(canvas.Width(run, c.font())+2*padMM, mostMM))
				for _, w := range strings.Split(run, " ") {
					if ww := canvas.Width(w, c.font()) + 2*padMM; ww <= 24 {
						least[i] = max(least[i], ww)
					}
				}
				words[i] = max(words[i], min(widest(run, anySpace, c.font())+2*padMM, 24))
			}
		}
		words[i] = max(min(words[i], least[i])+0.05, hard[i])
		want[i], least[i] = max(want[i], least[i])+0.1, max(words[i], least[i])
	}
	return share(whole, want, least, words, hard)
}

const anySpace = " \u00a0"

// widest is the width of the widest word of s; the runes of spaces part words.
func widest(s, spaces string, font canvas.Font) (w float64) {
	for _, word := range strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(spaces, r) }) {
		w = max(w, canvas.Width(word, font))
	}
	return w
}

// lead is what the boxes to tick take at the left.
func (t *Table) lead() float64 {
	if t.Tick {
		return tickMM + besideMM
	}
	return 0
}

// twoLines is the least width in which a header takes two lines, or one if it is one word.
func twoLines(s string) float64 {
	words := strings.Fields(s)
	least := canvas.Width(s, Bold(SmallPT))
	for i := 1; i < len(words); i++ {
		a, b := strings.Join(words[:i], " "), strings.Join(words[i:], " ")
		least = min(least, max(canvas.Width(a, Bold(SmallPT)), canvas.Width(b, Bold(SmallPT))))
	}
	return least
}

// share gives each its want where all goes in, and what is over in equal parts; else each its
// least and, of what is left, in proportion to what it wants above. Where even that is too much, each has its widest
// word and a share of the rest, and at last its hard width, at which words break.
func share(whole float64, want, least, words, hard []float64) []float64 {
	if sum := total(want); sum <= whole {
		out := make([]float64, len(want))
		for i := range want {
			out[i] = want[i] * whole / sum
		}
		return out
	}
	for _, x := range [][2][]float64{{want, least}, {least, words}} {
		if total(x[1]) < whole {
			return between(whole, x[1], x[0])
		}
	}
	return between(whole, hard, words)
}

// between gives each column its low width and a share of what is left, by how far its high one lies above.
func between(whole float64, low, high []float64) []float64 {
	left, above := whole-total(low), total(high)-total(low)
	out := slices.Clone(low)
	for i := range out {
		if above > 0 {
			out[i] += left * (high[i] - low[i]) / above
		}
	}
	return out
}

func total(widths []float64) (sum float64) {
	for _, w := range widths {
		sum += w
	}
	return sum
}

// filled leaves out the columns that have a header and nothing below it.
func (t Table) filled() Table {
	out := t
	if t.Shares != nil {
		return t
	}
	out.Header, out.Rows = nil, make([][]Cell, len(t.Rows))
	for i, h := range t.Header {
		some := h == ""
		for _, r := range t.Rows {
			some = some || r[i].Text != "" || r[i].Figure != nil
		}
		if !some {
			continue
		}
		out.Header = append(out.Header, h)
		for k, r := range t.Rows {
			out.Rows[k] = append(out.Rows[k], r[i])
		}
	}
	return out
}

// Table sets a table, page after page. A group goes to the next page whole where that takes
// it; where one is parted, its number and patch stand again on the next page.
func (f *Flow) Table(t Table) {
	if len(t.Rows) == 0 {
		return
	}
	t = t.filled()
	widths := t.widths(f.Width())
	headH := f.headHeight(t, widths)
	f.Ensure(headH + f.rowHeight(t, 0, widths))
	f.tableHead(t, widths, headH)
	whole := f.Bottom() - (MarginMM + againMM) - headH
	for i := range t.Rows {
		together, need := f.groupHeight(t, i, widths), f.rowHeight(t, i, widths)
		if t.Group == nil && i > 0 && i == len(t.Rows)-2 { // the last row is not left alone
			need += f.rowHeight(t, i+1, widths)
		}
		if need > f.Room() || i > 0 && t.Group != nil && t.Group[i] && together > f.Room() && together <= whole/2 {
			f.Next()
			f.tableHead(t, widths, headH)
			for k := i; t.Group != nil && !t.Group[i] && k >= 0; k-- {
				if t.Group[k] {
					t.Rows[i][0], t.Rows[i][1] = t.Rows[k][0], t.Rows[k][1]
					break
				}
			}
		}
		f.tableRow(t, i, widths)
	}
	f.Add(page.Rule(t.Name+" end", f.Left(), f.Y, f.Width(), 0, Hair(0.25)))
	f.Y += 0.8
}

// Part is a heading, a note and a table. They go to the next page together where they do not fit
// on this one and take no more than half a page; else with the first group of the table.
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
	switch first := start + f.groupHeight(filled, 0, widths); {
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

// groupHeight is the height of row i and the rows of its group that follow.
func (f *Flow) groupHeight(t Table, i int, widths []float64) float64 {
	h := f.rowHeight(t, i, widths)
	for k := i + 1; t.Group != nil && k < len(t.Rows) && !t.Group[k]; k++ {
		h += f.rowHeight(t, k, widths)
	}
	return h
}

func (f *Flow) headHeight(t Table, widths []float64) float64 {
	n := 1
	for i, h := range t.Header {
		n = max(n, len(f.lines(Cell{Text: h, Strong: true}, widths[i])))
	}
	return float64(n)*canvas.LineHeight(Bold(SmallPT)) + 2*riseMM
}

func (f *Flow) rowHeight(t Table, i int, widths []float64) float64 {
	return max(f.tallest(t, i, widths)+2*f.rise(t, i), t.RowMM)
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

// rise is above and below the text of row i; the rows of a group stand close.
func (f *Flow) rise(t Table, i int) float64 {
	if t.Group != nil && !t.Group[i] && t.Rows[i][1].Figure == nil {
		return riseMM / 2 * f.Open
	}
	return riseMM * f.Open
}

func (f *Flow) tableHead(t Table, widths []float64, h float64) {
	grey := canvas.Gray(225)
	f.Add(page.Fill(t.Name+" head", f.Left(), f.Y, f.Width(), h, &grey, canvas.Pen{}))
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
	if i > 0 && (t.Group == nil || t.Group[i]) {
		f.Add(page.Rule(fmt.Sprintf("%s rule %d", t.Name, i), f.Left(), f.Y, f.Width(), 0, canvas.Pen{Color: canvas.Gray(130), WidthMM: 0.15}))
	}
	name, h := fmt.Sprintf("%s row %d", t.Name, i+1), f.rowHeight(t, i, widths)
	rise := f.rise(t, i)
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
