package card

import (
	"fmt"
	"math"

	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/page"
)

// front lays out the side that the operator reads: which screen, then blade, angle and strokes
// side by side, then mesh and stencil.
func (m *maker) front(r page.Rect) {
	const (
		headMM = 12.0 // colour and screen number
		lineMM = 6.0  // a row of the smallest type
		gapMM  = 1.5
	)
	y := r.Y
	m.head(page.Rect{X: r.X, Y: y, W: r.W, H: headMM})
	y += headMM + gapMM
	m.fit("job", page.Rect{X: r.X, Y: y, W: r.W, H: lineMM}, m.jobLine(), FrontPT, FrontPT, canvas.Regular, page.Left)
	y += lineMM + gapMM/2
	m.rule("under the head", r.X, y, r.W, 0)
	y += gapMM / 2
	foot := 2*lineMM + gapMM
	m.facts(page.Rect{X: r.X, Y: y, W: r.W, H: r.Bottom() - foot - y})
	y = r.Bottom() - foot
	m.rule("above the foot", r.X, y+gapMM/2, r.W, 0)
	y += gapMM
	m.fit("mesh", page.Rect{X: r.X, Y: y, W: r.W, H: lineMM}, m.meshLine(), FrontPT, FrontPT, canvas.Bold, page.Left)
	y += lineMM
	m.fit("stencil", page.Rect{X: r.X, Y: y, W: r.W, H: lineMM}, m.stencilLine(), FrontPT, FrontPT, canvas.Regular, page.Left)
}

// head shows the colour and which screen this is.
func (m *maker) head(r page.Rect) {
	const numberMM = 40.0
	m.draw("swatch", page.Rect{X: r.X, Y: r.Y, W: r.H, H: r.H}, func(c canvas.Canvas) error {
		return m.swatch().Draw(c, figure.Rect{W: r.H, H: r.H})
	})
	x := r.X + r.H + 3
	m.fit("colour", page.Rect{X: x, Y: r.Y, W: r.Right() - numberMM - 2 - x, H: r.H}, m.color(), 28, FrontPT, canvas.Bold, page.Left)
	m.fit("screen number", page.Rect{X: r.Right() - numberMM, Y: r.Y, W: numberMM, H: r.H},
		m.say.T("card.of", "n", fmt.Sprint(m.screen.Number), "of", fmt.Sprint(m.screen.Of)), 28, FrontPT, canvas.Bold, page.Right)
}

// color is the colour of the ink in words, or its class where the job names no colour.
func (m *maker) color() string {
	if m.screen.Color != "" {
		return m.screen.Color
	}
	return m.screen.Ink
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

// facts shows blade, angle and strokes in three columns, each a big figure over its drawing.
func (m *maker) facts(r page.Rect) {
	const gap = 3.0
	bladeW, strokeW := 0.29*(r.W-2*gap), 0.25*(r.W-2*gap)
	angleW := r.W - 2*gap - bladeW - strokeW
	blade := page.Rect{X: r.X, Y: r.Y, W: bladeW, H: r.H}
	angle := page.Rect{X: blade.Right() + gap, Y: r.Y, W: angleW, H: r.H}
	strokes := page.Rect{X: angle.Right() + gap, Y: r.Y, W: strokeW, H: r.H}
	m.rule("between blade and angle", blade.Right()+gap/2, r.Y+1, 0, r.H-2)
	m.rule("between angle and strokes", angle.Right()+gap/2, r.Y+1, 0, r.H-2)
	m.blade(blade)
	m.angle(angle)
	m.strokes(strokes)
}

// The rows of a column: the big figure, then a row of the smallest type, then the drawing.
const (
	bigMM  = 12.0
	factMM = 6.0
)

// rows splits a column into the big figure, the fact under it, and the drawing.
func rows(r page.Rect) (big, fact, drawing page.Rect) {
	big = page.Rect{X: r.X, Y: r.Y, W: r.W, H: bigMM}
	fact = page.Rect{X: r.X, Y: big.Bottom(), W: r.W, H: factMM}
	drawing = page.Rect{X: r.X, Y: fact.Bottom() + 1, W: r.W, H: r.Bottom() - fact.Bottom() - 1}
	return big, fact, drawing
}

func (m *maker) blade(r page.Rect) {
	big, fact, at := rows(r)
	m.fit("blade", big, m.screen.Blade.Layup, 36, FrontPT, canvas.Bold, page.Center)
	m.fit("blade length", fact, m.bladeWord(), FrontPT, FrontPT, canvas.Regular, page.Center)
	m.draw("blade section", at, func(c canvas.Canvas) error {
		s := m.section()
		s.HardnessPT = FrontPT
		return s.Fit(c, figure.Rect{W: at.W, H: at.H}).Draw(c, figure.Rect{W: at.W, H: at.H})
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

func (m *maker) angle(r page.Rect) {
	a := m.screen.AngleDeg
	big, fact, at := rows(r)
	left, right := big, big
	left.W = 0.48 * big.W
	right.X, right.W = left.Right()+2.5, big.W-left.W-2.5
	m.fit("angle", left, m.say.Angle(a.Set), 36, FrontPT, canvas.Bold, page.Center)
	m.fit("angle to the screen", right, m.say.T("card.to-screen", "angle", m.say.Angle(a.ToScreen)), FrontPT, FrontPT, canvas.Regular, page.Left)
	m.fit("angle range", fact, m.say.T("card.hold", "range", m.say.AngleRange(a.Low, a.High)), FrontPT, FrontPT, canvas.Bold, page.Center)
	m.draw("angle dial", at, func(c canvas.Canvas) error {
		return figure.Dial{LowDeg: a.Low, SetDeg: a.Set, HighDeg: a.High, SizePT: FrontPT, Scale: m.say.Angle}.Draw(c, figure.Rect{W: at.W, H: at.H})
	})
}

func (m *maker) strokes(r page.Rect) {
	n := m.screen.Strokes
	word := m.say.Many("card.strokes", n)
	digitMM := r.H - 3*factMM
	m.fit("strokes", page.Rect{X: r.X, Y: r.Y, W: r.W, H: digitMM}, fmt.Sprint(n), 60, FrontPT, canvas.Bold, page.Center)
	y := r.Y + digitMM
	m.fit("strokes word", page.Rect{X: r.X, Y: y, W: r.W, H: factMM}, word, FrontPT, FrontPT, canvas.Bold, page.Center)
	flood := m.say.T("card.no-flood")
	if m.screen.Flood {
		flood = m.say.T("card.flood")
	}
	m.fit("flood", page.Rect{X: r.X, Y: y + factMM, W: r.W, H: factMM}, flood, FrontPT, FrontPT, canvas.Regular, page.Center)
	face, word := canvas.Regular, m.say.T("card.no-flash")
	if f := m.screen.Flash; f.Needed {
		face, word = canvas.Bold, m.say.T("card.flash")
	}
	m.fit("flash", page.Rect{X: r.X, Y: y + 2*factMM, W: r.W, H: factMM}, word, FrontPT, FrontPT, face, page.Center)
}
