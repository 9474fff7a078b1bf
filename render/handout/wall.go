package handout

import (
	"slices"
	"strings"

	"bladecard/calc/lesson"
	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/page"
)

// The type of the wall chart, which is read at 2 m, in points.
const (
	WallPT     = 14.0
	WallHeadPT = 26.0
	wallNamePT = 17.0
)

// The wall chart in mm: a row is high enough for two lines of a name and low enough to be one with its figures.
const (
	wallEdgeMM = 10.0
	wallGapMM  = 3.0
	wallRowMM  = 17.0
)

// wall is one page across, to hang up: what is printed, and for it the blade of this rack, its angle, the strokes
// and what to look for.
func (m *maker) wall() ([]page.Face, error) {
	face := page.Face{Name: "wall chart", W: m.paper.H, H: m.paper.W}
	face.Safe = page.Rect{W: face.W, H: face.H}.Inset(wallEdgeMM)
	r := face.Safe
	text := func(at page.Rect, s string, face canvas.Face, align page.Align, sizes ...float64) {
		st := page.Style{Font: canvas.Font{Face: face, SizePT: sizes[0]}, Color: canvas.Black, Align: align}
		m.boxes = append(m.boxes, page.FitSizes(m.name("text"), at, s, st, sizes...).Boxes...)
	}
	line := func(y, widthMM float64, color canvas.Color) {
		m.boxes = append(m.boxes, page.Rule(m.name("rule"), r.X, y, r.W, 0, canvas.Pen{Color: color, WidthMM: widthMM}))
	}
	const titleMM, headMM, footMM = 13.5, 8.0, 13.5
	text(page.Rect{X: r.X, Y: r.Y, W: 0.68 * r.W, H: titleMM}, m.t("wall.title"), canvas.Bold, page.Left, 32, WallHeadPT)
	text(page.Rect{X: r.X + 0.7*r.W, Y: r.Y, W: 0.3 * r.W, H: titleMM}, m.shop, canvas.Regular, page.Right, WallPT)
	widths := []float64{0.25, 0.15, 0.195, 0.1, 0.305}
	columns := func(y, h float64) []page.Rect {
		var out []page.Rect
		x := r.X
		for _, share := range widths {
			out = append(out, page.Rect{X: x, Y: y, W: share*r.W - wallGapMM, H: h})
			x += share * r.W
		}
		return out
	}
	y := r.Y + titleMM
	for i, at := range columns(y, headMM) {
		text(at, m.say.T("handout.wall."+[]string{"print", "blade", "angle", "pulls", "look"}[i]), canvas.Bold, page.Left, WallPT)
	}
	y += headMM
	high := min(wallRowMM, (r.Bottom()-footMM-y)/float64(len(m.lesson.Prints)))
	var names, looks []string
	for _, c := range m.lesson.Prints {
		names = append(names, m.work(c))
		looks = append(looks, strings.Split(m.look(c), "\n")...)
	}
	rowH := high - 0.6
	cells := columns(0, rowH)
	namePT := oneSize(names, canvas.Bold, cells[0].W, 0.54*rowH, 20, 18, wallNamePT, 16, 15)
	meshPT := oneSize(nil, canvas.Regular, 0, 0.46*rowH, 15)
	lookPT := oneSize(looks, canvas.Regular, cells[4].W, rowH/2, 18, 17, 16, 15)
	for i, c := range m.lesson.Prints {
		line(y, 0.3, canvas.Gray(120))
		at := columns(y+0.3, rowH)
		name := at[0]
		name.H *= 0.54
		text(name, names[i], canvas.Bold, page.Left, namePT, WallPT)
		if s := c.Setup; s != nil {
			name.Y, name.H = name.Bottom(), at[0].H-name.H
			text(name, m.t("wall.mesh", "mesh", s.Mesh.Name), canvas.Regular, page.Left, meshPT)
			m.unusual(*s, at[1:4])
			text(at[1], m.short(s.Blade), canvas.Bold, page.Left, 28, WallHeadPT, 22, 18, WallPT)
			set, hold := at[2], at[2]
			set.W = 0.47 * at[2].W
			hold.X, hold.W = set.Right()+1, at[2].W-set.W-1
			text(set, m.say.Angle(s.AngleDeg.Set), canvas.Bold, page.Left, 28, WallHeadPT, 22, 18)
			how := m.t("wall.exact")
			if s.AngleDeg.Low < s.AngleDeg.High {
				how = m.say.AngleRange(s.AngleDeg.Low, s.AngleDeg.High)
			}
			text(hold, how, canvas.Regular, page.Left, 18, 16, WallPT)
			word, count := m.say.Strokes(*s)
			set, hold = at[3], at[3]
			if s.Hits > 1 && s.Strokes == 1 { // not the strokes of the column's head
				set.W = 8
				hold.X, hold.W = set.Right(), at[3].W-set.W
				text(hold, word, canvas.Regular, page.Left, 16, WallPT)
			}
			text(set, count, canvas.Bold, page.Left, 28, WallHeadPT)
		}
		m.sentences(at[4], m.look(c), lookPT)
		y += high
	}
	line(y+0.2, 0.8, m.accent)
	text(page.Rect{X: r.X, Y: r.Bottom() - footMM + 1, W: r.W, H: footMM - 1}, m.t("wall.foot"), canvas.Regular, page.Left, WallPT)
	face.Boxes = m.boxes
	return []page.Face{face}, m.err
}

// oneSize is the first of the sizes at which every text takes one line of a width and a height: all rows look alike. The
// wall's own size where none does.
func oneSize(texts []string, face canvas.Face, w, h float64, sizes ...float64) float64 {
	for _, pt := range sizes {
		f := canvas.Font{Face: face, SizePT: pt}
		if canvas.LineHeight(f) <= h && !slices.ContainsFunc(texts, func(s string) bool { return canvas.Width(s, f) > w }) {
			return pt
		}
	}
	return WallPT
}

// sentences sets the lines of a text in the middle of a place, each whole; where that is too wide, wrapped as it goes.
func (m *maker) sentences(at page.Rect, s string, pt float64) {
	f := canvas.Font{SizePT: pt}
	var rows []string
	for _, run := range strings.Split(s, "\n") {
		rows = append(rows, canvas.Wrap(run, f, at.W)...)
	}
	h := canvas.LineHeight(f)
	if float64(len(rows))*h > at.H {
		st := page.Style{Font: f, Color: canvas.Black}
		m.boxes = append(m.boxes, page.FitSizes(m.name("text"), at, strings.ReplaceAll(s, "\n", " "), st, pt).Boxes...)
		return
	}
	y := at.Y + (at.H-float64(len(rows))*h)/2
	for _, row := range rows {
		m.boxes = append(m.boxes, page.Text(m.name("text"), at.X, y, at.W, h, row, f, canvas.Black, page.Left))
		y += h
	}
}

// unusual gives a gray ground to what departs from the usual setup: the blade, the angle, the strokes.
func (m *maker) unusual(s plan.Screen, at []page.Rect) {
	usual, gray := m.lesson.Bench, canvas.Gray(218)
	for i, is := range []bool{s.Blade.Name != usual.Blade.Name, s.AngleDeg.Set != usual.AngleDeg.Set, s.Strokes*s.Hits != 1} {
		if is {
			m.boxes = append(m.boxes, page.Fill(m.name("unusual"), at[i].X-1.5, at[i].Y, at[i].W+2.5, at[i].H, &gray, canvas.Pen{}))
		}
	}
}

// look is what to look for on a print, a sentence a line, or what the setup does not meet. A comb reads what one stroke
// laid and no heat has touched.
func (m *maker) look(c lesson.Choice) string {
	switch {
	case c.Setup == nil:
		return m.t("choice.no-setup")
	case len(c.Misses) > 0:
		return "! " + m.misses(c)
	}
	s, comb := c.Setup, m.t("look.hits")
	if s.Hits <= 1 {
		comb = m.t("look.comb", "wet", m.say.FilmRangeBoth(s.WetUM.Low, s.WetUM.High))
	}
	return strings.ReplaceAll(m.t("look."+c.Print, "comb", comb, "from", m.say.Percent(c.DotsFrom)), ". ", ".\n")
}
