package page

import (
	"math"
	"strings"

	"bladecard/render/canvas"
)

// Row sets the first of some texts that fits r on one line, at the largest of the sizes at which it does; the
// last one is cut behind a word at the last size. In a row that is lower than a line the text stands on its
// descenders, or in the middle where it would stick out. An empty text gives no box.
func Row(name string, r Rect, st Style, sizesPT []float64, texts ...string) []Box {
	f := canvas.Font{Face: st.Font.Face}
	text, fits := "", false
fit:
	for _, text = range texts {
		for _, f.SizePT = range sizesPT {
			if fits = canvas.Width(text, f) <= r.W; fits {
				break fit
			}
		}
	}
	if !fits {
		text, _ = canvas.Cut(text, f, r.W)
		if n := strings.LastIndexByte(text, ' '); n > 0 {
			text = strings.TrimRight(text[:n], " ,·") + "…"
		}
	}
	if text == "" {
		return nil
	}
	b := Text(name, r.X, r.Y, r.W, r.H, canvas.NFC(text), f, st.Color, st.Align)
	b.BaselineMM = r.H - canvas.Descent*f.SizePT*canvas.MMPerPT - math.Max(0, r.H-canvas.LineHeight(f))/2
	if above, below := canvas.Ink(b.Text, f); above > b.BaselineMM {
		b.BaselineMM = (r.H + above - below) / 2
	}
	return []Box{b}
}

// Aside parts a place w wide from the right end of r, with a gap between the two.
func (r Rect) Aside(w, gap float64) (left, right Rect) {
	left, right = r, r
	left.W -= w + gap
	right.X, right.W = r.Right()-w, w
	return left, right
}
