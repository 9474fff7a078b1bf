package card

import (
	"bladecard/render/canvas"
	"bladecard/render/page"
)

// lastRun is how much is said of what the screen ran with last.
type lastRun int

const (
	lastNone  lastRun = iota
	lastLine          // as much as one line holds
	lastWhole         // all of it, or without setup and sign-off, whichever takes few lines
)

// mostLastLines is how many lines it may take: a longer text is cut to one.
const mostLastLines = 3

// last is what the screen ran with last, what is different now and what came of it.
func (m *maker) last(w float64, a lastRun) block {
	row, texts := m.noteMM(), []string{m.say.Last(m.screen), m.say.LastShort(m.screen)}
	for _, text := range texts {
		if p := m.paragraph("last run", w, text, canvas.Regular); a == lastWhole && p.h < (mostLastLines+0.5)*row {
			return p
		}
	}
	return block{h: row, draw: func(r page.Rect) {
		m.note("last run", page.Rect{X: r.X, Y: r.Y, W: w, H: row}, plain, texts...)
	}}
}
