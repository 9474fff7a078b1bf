package flow

import (
	"slices"
	"strings"

	"bladecard/render/canvas"
)

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
