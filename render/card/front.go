package card

import (
	"fmt"
	"math"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// front lays out the side that the operator reads: which screen, then blade, angle, strokes and
// flash side by side, then mesh and stencil.
func (m *maker) front(r page.Rect) {
	g := m.grid
	head, row, gap := g.mm(12), g.mm(6), g.mm(1.5)
	y := r.Y
	m.head(page.Rect{X: r.X, Y: y, W: r.W, H: head})
	y += head + gap
	m.line("job", page.Rect{X: r.X, Y: y, W: r.W, H: row}, m.jobLine(), canvas.Regular, page.Left)
	y += row + gap/2
	m.rule("under the head", r.X, y, r.W, 0)
	y += gap / 2
	foot := 2*row + gap
	m.facts(page.Rect{X: r.X, Y: y, W: r.W, H: r.Bottom() - foot - y})
	y = r.Bottom() - foot
	m.rule("above the foot", r.X, y+gap/2, r.W, 0)
	y += gap
	m.line("mesh", page.Rect{X: r.X, Y: y, W: r.W, H: row}, m.meshLine(), canvas.Bold, page.Left)
	y += row
	m.line("stencil", page.Rect{X: r.X, Y: y, W: r.W, H: row}, m.stencilLine(), canvas.Regular, page.Left)
}

// head shows the colour and which screen this is.
func (m *maker) head(r page.Rect) {
	which, gap := m.say.T("card.of", "n", fmt.Sprint(m.screen.Number), "of", fmt.Sprint(m.screen.Of)), m.grid.mm(3)
	number := canvas.Width(which, canvas.Font{Face: canvas.Bold, SizePT: m.grid.factPT}) + 0.1
	m.draw("swatch", page.Rect{X: r.X, Y: r.Y, W: r.H, H: r.H}, func(c canvas.Canvas) error {
		return m.swatch().Draw(c, figure.Rect{W: r.H, H: r.H})
	})
	x := r.X + r.H + gap
	m.fact("colour", page.Rect{X: x, Y: r.Y, W: r.Right() - number - gap - x, H: r.H}, m.color(), page.Left)
	m.fact("screen number", page.Rect{X: r.Right() - number, Y: r.Y, W: number, H: r.H}, which, page.Right)
}

// color is the colour of the ink in words, or its class where the job names no colour.
func (m *maker) color() string {
	if m.screen.Color != "" {
		return m.screen.Color
	}
	return m.say.InkName(m.screen.Ink)
}

func (m *maker) swatch() figure.Swatch {
	if c, err := figure.ParseColor(m.screen.Swatch); err == nil {
		return figure.Swatch{Color: &c}
	}
	return figure.Swatch{}
}

func (m *maker) jobLine() string {
	s := m.loc.Name
	if m.plan.Job != "" {
		s += " · " + m.plan.Job
	}
	return s + " · " + m.plan.Title
}

func (m *maker) meshLine() string {
	return m.say.T("card.mesh", "mesh", m.screen.Mesh.Name, "count", m.say.Count(m.screen.Mesh.CountPerInch, m.screen.Mesh.CountPerCM))
}

func (m *maker) stencilLine() string {
	o := m.screen.OffContact
	return m.say.T("card.stencil", "eom", m.say.Fine(m.screen.Stencil.EOMUM), "share", m.say.Percent(m.screen.Stencil.ShareOfCloth),
		"gap", m.say.Gap(o.Low, o.High))
}

// facts shows blade, angle, and strokes with flash in three columns, each a big figure over its
// drawing.
func (m *maker) facts(r page.Rect) {
	const bladeMM, angleMM, gapMM = 41.5, 50.5, 2.0 // of the smallest card
	gap := m.grid.mm(gapMM)
	share := r.W / (safeArea(page.Card132).W)
	blade := page.Rect{X: r.X, Y: r.Y, W: share * bladeMM, H: r.H}
	angle := page.Rect{X: blade.Right() + gap, Y: r.Y, W: share * angleMM, H: r.H}
	strokes := page.Rect{X: angle.Right() + gap, Y: r.Y, W: r.Right() - angle.Right() - gap, H: r.H}
	m.rule("between blade and angle", blade.Right()+gap/2, r.Y+1, 0, r.H-2)
	m.rule("between angle and strokes", angle.Right()+gap/2, r.Y+1, 0, r.H-2)
	m.blade(blade)
	m.angle(angle)
	m.strokes(strokes)
}

// rows splits a column into the big figure, the fact under it, and the drawing.
func (g grid) rows(r page.Rect) (big, fact, drawing page.Rect) {
	big = page.Rect{X: r.X, Y: r.Y, W: r.W, H: g.mm(12)}
	fact = page.Rect{X: r.X, Y: big.Bottom(), W: r.W, H: g.mm(6)}
	drawing = page.Rect{X: r.X, Y: fact.Bottom() + g.mm(1), W: r.W, H: r.Bottom() - fact.Bottom() - g.mm(1)}
	return big, fact, drawing
}

func (m *maker) blade(r page.Rect) {
	big, fact, at := m.grid.rows(r)
	m.fact("blade", big, m.screen.Blade.Layup, page.Center)
	m.line("blade length", fact, m.bladeWord(), canvas.Regular, page.Center)
	m.draw("blade section", at, func(c canvas.Canvas) error {
		s := m.section()
		s.SizePT = m.grid.linePT
		return s.Draw(c, figure.Rect{W: at.W, H: at.H})
	})
}

// bladeWord is the length of the blade, or the state of its edge where the rack states none.
func (m *maker) bladeWord() string {
	if mm := m.screen.Blade.LengthMM; mm > 0 {
		return m.say.T("card.long", "length", m.say.Length(mm))
	}
	return m.say.T("edge." + m.screen.Blade.Edge)
}

func (m *maker) section() figure.Section {
	b := m.screen.Blade
	s := figure.Section{Aspect: b.FreeHeightMM / b.ThicknessMM, EdgeRadius: edgeDrawn[b.Edge]}
	for _, l := range b.Layers {
		s.Layers = append(s.Layers, figure.Layer{
			Share: l.ThicknessMM / b.ThicknessMM, Hardness: m.say.Number(l.Hardness, 0), Hatch: hatch(l.Hardness),
		})
	}
	return s
}

// hatch is how close a layer is hatched, for a hardness from 50 to 95 Shore A.
func hatch(shoreA float64) float64 { return math.Max(0, math.Min(1, (shoreA-50)/45)) }

// edgeDrawn is how round an edge is drawn, as a share of the thickness: larger than life, so
// that it shows.
var edgeDrawn = map[string]float64{"new": 0, "used": 0.12, "worn": 0.3}

// angle shows the set angle with the angle to the screen beside it; the range to hold below.
func (m *maker) angle(r page.Rect) {
	a := m.screen.AngleDeg
	big, fact, at := m.grid.rows(r)
	set := m.say.Angle(a.Set)
	left, right := big, big
	left.X += m.grid.mm(1)
	left.W = canvas.Width(set, canvas.Font{Face: canvas.Bold, SizePT: m.grid.factPT}) + 0.1
	right.X = left.Right() + m.grid.mm(1.2)
	right.W = big.Right() - right.X
	m.fact("angle", left, set, page.Left)
	m.line("angle to the screen", right, m.say.T("card.to-screen", "angle", m.say.Angle(a.ToScreen)), canvas.Regular, page.Left)
	m.line("angle range", fact, m.say.T("card.hold", "range", m.say.AngleRange(a.Low, a.High)), canvas.Bold, page.Center)
	m.draw("angle dial", at, func(c canvas.Canvas) error {
		return figure.Dial{LowDeg: a.Low, SetDeg: a.Set, HighDeg: a.High, SizePT: m.grid.linePT, Scale: m.say.Angle}.Draw(c, figure.Rect{W: at.W, H: at.H})
	})
}

// strokes shows how often to pull, or how many hits, with or without a flood, and whether and how long a flash
// follows.
func (m *maker) strokes(r page.Rect) {
	n, hits := m.screen.Strokes, max(1, m.screen.Hits)
	shown, say := n, m.say.Many("card.strokes", n)
	if hits > 1 {
		shown, say = hits, m.say.Many("card.hits", n)
	}
	big, word, rest := m.grid.rows(r)
	digit, arrows := big, big
	digit.W = 0.4 * big.W
	arrows.X, arrows.W = digit.Right(), big.Right()-digit.Right()
	m.fact("strokes", digit, fmt.Sprint(shown), page.Center)
	m.draw("pulls", arrows, func(c canvas.Canvas) error {
		return figure.Pulls{Strokes: n, Flood: m.screen.Flood}.Draw(c, figure.Rect{W: arrows.W, H: arrows.H})
	})
	m.line("strokes word", word, say, canvas.Bold, page.Center)
	flood := m.say.T("card.no-flood")
	if m.screen.Flood {
		flood = m.say.T("card.flood")
	}
	m.line("flood", page.Rect{X: r.X, Y: word.Bottom(), W: r.W, H: word.H}, flood, canvas.Regular, page.Center)
	at := page.Rect{X: r.X, Y: word.Bottom() + word.H + m.grid.mm(1), W: r.W}
	at.H = rest.Bottom() - at.Y
	m.draw("flash", at, func(c canvas.Canvas) error {
		f := figure.Flash{Needed: m.screen.Flash.Needed, Word: m.say.T("card.no-flash"), SizePT: m.grid.linePT}
		if f.Needed {
			f.Word = m.say.T("card.flash")
			if at := m.screen.Flash.StartS; at != nil {
				f.Word = m.say.T("card.flash-start", "start", m.say.Seconds(*at))
			}
		}
		return f.Draw(c, figure.Rect{W: at.W, H: at.H})
	})
}
