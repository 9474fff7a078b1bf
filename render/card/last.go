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
	lastWhole         // all of it, where that takes two lines or three
)

// mostLastLines is where all of it is too much: a longer text is cut to a line.
const mostLastLines = 3

// last is what the screen ran with last, what came of it and what is different now.
func (m *maker) last(w float64, a lastRun) block {
	row := m.noteMM()
	if whole := m.paragraph("last run", w, m.say.Last(m.screen), canvas.Regular); a == lastWhole && whole.h < (mostLastLines+0.5)*row {
		return whole
	}
	return block{h: row, draw: func(r page.Rect) {
		m.note("last run", page.Rect{X: r.X, Y: r.Y, W: w, H: row}, plain, m.say.Last(m.screen), m.say.LastShort(m.screen))
	}}
}
