package sheet

import (
	"fmt"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// cell is one place of a table: text, with rows where it has newlines, or a colour patch.
type cell struct {
	text   string
	strong bool
	patch  *figure.Swatch
}

// table is a table that goes over pages; its header stands on each.
type table struct {
	name   string
	header []string
	rows   [][]cell
	group  []bool // row starts a group: a rule stands above it; nil: every row
}

const (
	padMM   = 0.9  // beside the text of a cell
	riseMM  = 0.7  // above and below it
	patchMM = 4.0  // side of a colour patch
	mostMM  = 62.0 // a name wider than this does not ask for more
)

func plain(texts ...string) []cell {
	var out []cell
	for _, s := range texts {
		out = append(out, cell{text: s})
	}
	return out
}

func (t *table) row(cells ...cell) { t.rows = append(t.rows, cells) }

// font is that of a cell.
func (c cell) font() canvas.Font { return canvas.Font{Face: canvas.Face(c.strong), SizePT: SmallPT} }

// cellKey is what the lines of a cell depend on.
type cellKey struct {
	text   string
	strong bool
	w      float64
}

// lines of a cell in a column w wide. They are asked for several times while the rows find their
// page.
func (f *flow) lines(c cell, w float64) []string {
	key := cellKey{c.text, c.strong, w}
	out, known := f.known[key]
	if known {
		return out
	}
	for _, run := range strings.Split(c.text, "\n") {
		if run = strings.TrimSpace(run); run != "" {
			out = append(out, page.Wrap(run, c.font(), w-2*padMM)...)
		}
	}
	if f.known == nil {
		f.known = map[cellKey][]string{}
	}
	f.known[key] = out
	return out
}

// widths shares the width: a column gets what its widest line wants, as far as that goes;
// columns that want more share what is left. None is narrower than its header on two lines.
func (t *table) widths(whole float64) []float64 {
	n := len(t.header)
	want, least := make([]float64, n), make([]float64, n)
	for i, h := range t.header {
		least[i] = twoLines(h) + 2*padMM
		want[i] = least[i]
		for _, r := range t.rows {
			c := r[i]
			if c.patch != nil {
				least[i] = max(least[i], patchMM+2*padMM)
			}
			for _, run := range strings.Split(c.text, "\n") {
				want[i] = max(want[i], min(canvas.Width(run, c.font())+2*padMM, mostMM))
				for _, w := range strings.Split(run, " ") {
					if ww := canvas.Width(w, c.font()) + 2*padMM; ww <= 24 {
						least[i] = max(least[i], ww)
					}
				}
			}
		}
		want[i] = max(want[i], least[i]) + 0.1
	}
	return share(whole, want, least)
}

// twoLines is the least width in which a header takes two lines, or one if it is one word.
func twoLines(s string) float64 {
	words := strings.Fields(s)
	least := canvas.Width(s, bold(SmallPT))
	for i := 1; i < len(words); i++ {
		a, b := strings.Join(words[:i], " "), strings.Join(words[i:], " ")
		least = min(least, max(canvas.Width(a, bold(SmallPT)), canvas.Width(b, bold(SmallPT))))
	}
	return least
}

// share gives each its want where all goes in, and what is over in equal parts; else each its
// least and, of what is left, in proportion to what it wants above.
func share(whole float64, want, least []float64) []float64 {
	var sumWant, sumLeast float64
	for i := range want {
		sumWant += want[i]
		sumLeast += least[i]
	}
	out := make([]float64, len(want))
	for i := range want {
		switch {
		case sumWant <= whole:
			out[i] = want[i] + (whole-sumWant)*want[i]/sumWant
		case sumLeast >= whole:
			out[i] = least[i] * whole / sumLeast
		default:
			out[i] = least[i] + (whole-sumLeast)*(want[i]-least[i])/(sumWant-sumLeast)
		}
	}
	return out
}

// filled leaves out the columns that have a header and nothing below it.
func (t table) filled() table {
	out := t
	out.header, out.rows = nil, make([][]cell, len(t.rows))
	for i, h := range t.header {
		some := h == ""
		for _, r := range t.rows {
			some = some || r[i].text != ""
		}
		if !some {
			continue
		}
		out.header = append(out.header, h)
		for k, r := range t.rows {
			out.rows[k] = append(out.rows[k], r[i])
		}
	}
	return out
}

// table sets a table, page after page. A group goes to the next page whole where that takes
// it; where one is parted, its number and patch stand again on the next page.
func (f *flow) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	t = t.filled()
	widths := t.widths(f.width())
	headH := f.headHeight(t, widths)
	f.ensure(headH + f.rowHeight(t, 0, widths))
	f.tableHead(t, widths, headH)
	whole := f.bottom() - (marginMM + againMM) - headH
	for i := range t.rows {
		together := f.groupHeight(t, i, widths)
		if f.rowHeight(t, i, widths) > f.room() || i > 0 && t.group != nil && t.group[i] && together > f.room() && together <= whole/2 {
			f.next()
			f.tableHead(t, widths, headH)
			for k := i; t.group != nil && !t.group[i] && k >= 0; k-- {
				if t.group[k] {
					t.rows[i][0], t.rows[i][1] = t.rows[k][0], t.rows[k][1]
					break
				}
			}
		}
		f.tableRow(t, i, widths)
	}
	f.add(page.Rule(t.name+" end", f.left(), f.y, f.width(), 0, hair(0.25)))
	f.y += 0.8
}

// part is a heading, a note and a table. They go to the next page together where they do not fit
// on this one and take no more than half a page; else with the first group of the table.
func (f *flow) part(name, title, note string, t table) {
	filled := t.filled()
	widths := filled.widths(f.width())
	start := f.headHeight(filled, widths) + 2
	if note != "" {
		start += float64(len(page.Wrap(note, regular(bodyPT), f.width())))*canvas.LineHeight(regular(bodyPT)) + 0.8
	}
	whole := start
	for i := range filled.rows {
		whole += f.rowHeight(filled, i, widths)
	}
	half := (f.bottom() - marginMM) / 2
	switch first := start + f.groupHeight(filled, 0, widths); {
	case whole <= half:
		f.heading(name+" heading", title, whole)
	case first <= half:
		f.heading(name+" heading", title, first)
	default:
		f.heading(name+" heading", title, 24)
	}
	if note != "" {
		f.paragraph(name+" note", note, regular(bodyPT))
		f.y += 0.8
	}
	f.table(t)
}

// groupHeight is the height of row i and the rows of its group that follow.
func (f *flow) groupHeight(t table, i int, widths []float64) float64 {
	h := f.rowHeight(t, i, widths)
	for k := i + 1; t.group != nil && k < len(t.rows) && !t.group[k]; k++ {
		h += f.rowHeight(t, k, widths)
	}
	return h
}

func (f *flow) headHeight(t table, widths []float64) float64 {
	n := 1
	for i, h := range t.header {
		n = max(n, len(f.lines(cell{text: h, strong: true}, widths[i])))
	}
	return float64(n)*canvas.LineHeight(bold(SmallPT)) + 2*riseMM
}

func (f *flow) rowHeight(t table, i int, widths []float64) float64 {
	h := 0.0
	for k, c := range t.rows[i] {
		if c.patch != nil {
			h = max(h, patchMM)
		}
		h = max(h, float64(len(f.lines(c, widths[k])))*canvas.LineHeight(c.font()))
	}
	return h + 2*f.rise(t, i)
}

// rise is above and below the text of row i; the rows of a group stand close.
func (f *flow) rise(t table, i int) float64 {
	if t.group != nil && !t.group[i] && t.rows[i][1].patch == nil {
		return riseMM / 2 * f.open
	}
	return riseMM * f.open
}

func (f *flow) tableHead(t table, widths []float64, h float64) {
	grey := canvas.Gray(225)
	f.add(page.Fill(t.name+" head", f.left(), f.y, f.width(), h, &grey, canvas.Pen{}))
	f.cells(t.name+" head", plain(t.header...), widths, riseMM, true)
	f.y += h
}

func (f *flow) tableRow(t table, i int, widths []float64) {
	if i > 0 && (t.group == nil || t.group[i]) {
		f.add(page.Rule(fmt.Sprintf("%s rule %d", t.name, i), f.left(), f.y, f.width(), 0, canvas.Pen{Color: canvas.Gray(130), WidthMM: 0.15}))
	}
	f.cells(fmt.Sprintf("%s row %d", t.name, i+1), t.rows[i], widths, f.rise(t, i), false)
	f.y += f.rowHeight(t, i, widths)
}

func (f *flow) cells(name string, r []cell, widths []float64, rise float64, strong bool) {
	x := f.left()
	for i, c := range r {
		c.strong = c.strong || strong
		where := fmt.Sprintf("%s column %d", name, i+1)
		y := f.y + rise
		if c.patch != nil {
			f.draw(where, page.Rect{X: x + padMM, Y: y, W: patchMM, H: patchMM}, func(cv canvas.Canvas) error {
				return c.patch.Draw(cv, figure.Rect{W: patchMM, H: patchMM})
			})
		}
		for _, line := range f.lines(c, widths[i]) {
			f.add(page.Text(where, x+padMM, y, widths[i]-2*padMM, 0, line, c.font(), canvas.Black, page.Left))
			y += canvas.LineHeight(c.font())
		}
		x += widths[i]
	}
}

// draw places a drawing and keeps its error.
func (f *flow) draw(name string, r page.Rect, draw func(canvas.Canvas) error) {
	f.add(page.Drawing(name, r.X, r.Y, r.W, r.H, func(c canvas.Canvas) {
		if err := draw(c); err != nil && f.err == nil {
			f.err = fmt.Errorf("%s: %w", name, err)
		}
	}))
}
