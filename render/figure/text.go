package figure

import (
	"math"
	"strings"
	"unicode/utf8"

	"bladecard/render/canvas"
)

// SmallestPT is the smallest type on a drawing when none is stated, and the least accepted.
const SmallestPT = 7.5

// lineEM is the pitch of text lines, in em: accents on capitals clear the line above.
const lineEM = canvas.Ascent + canvas.Descent

// capEM is the height of capitals and figures, in em (from memory: 0.729 for the DejaVu faces).
const capEM = 0.73

// typeSize is the type size to use for a stated one.
func typeSize(pt float64) float64 {
	if !(pt >= SmallestPT && pt <= 200) {
		return SmallestPT
	}
	return pt
}

// em is the type size of f in mm.
func em(f canvas.Font) float64 { return f.SizePT * canvas.MMPerPT }

// block is some lines of one text, set as one.
type block struct {
	lines []string
	font  canvas.Font
	w, h  float64 // mm
}

// newBlock breaks s at spaces, at slashes and hyphens if it must, within a word only at the
// last, so that no line is wider than max unless a single letter is.
func newBlock(c canvas.Canvas, s string, f canvas.Font, max float64) block {
	b := block{font: f}
	for _, word := range strings.Fields(s) {
		if n := len(b.lines); n > 0 && c.TextWidth(b.lines[n-1]+" "+word, f) <= max {
			b.lines[n-1] += " " + word
			continue
		}
		for c.TextWidth(word, f) > max {
			n := cut(c, word, f, max)
			if n >= len(word) {
				break
			}
			b.lines = append(b.lines, word[:n])
			word = word[n:]
		}
		b.lines = append(b.lines, word)
	}
	for _, l := range b.lines {
		b.w = math.Max(b.w, c.TextWidth(l, f))
	}
	b.h = float64(len(b.lines)) * lineEM * em(f)
	return b
}

// shortened is s, or as much of its start as rows lines no wider than max hold with an ellipsis.
func shortened(c canvas.Canvas, s string, f canvas.Font, max float64, rows int) string {
	b := newBlock(c, s, f, max)
	if len(b.lines) <= rows {
		return s
	}
	start := []rune(strings.Join(strings.Fields(s), " "))
	most := rows
	for _, l := range b.lines[:rows] {
		most += utf8.RuneCountInString(l)
	}
	for n := min(most, len(start)); n > 0; n-- {
		try := strings.TrimRight(string(start[:n]), " ") + "…"
		if b = newBlock(c, try, f, max); len(b.lines) <= rows {
			return try
		}
	}
	return "…"
}

// cut is the number of bytes of the word's longest start that fits, cut behind a slash or a
// hyphen if one is in it; at least one letter.
func cut(c canvas.Canvas, word string, f canvas.Font, max float64) int {
	first, fits, mark := 0, 0, 0
	for i, r := range word {
		end := i + len(string(r))
		if i == 0 {
			first = end
		}
		if c.TextWidth(word[:end], f) > max {
			break
		}
		fits = end
		if r == '/' || r == '-' || r == '–' {
			mark = end
		}
	}
	switch {
	case mark > 0 && mark < len(word):
		return mark
	case fits > 0:
		return fits
	}
	return first
}

// draw sets the block with its top left corner at x, y. align is 0 left, 0.5 center, 1 right,
// within the width w.
func (b block) draw(c canvas.Canvas, x, y, w, align float64) {
	b.drawIn(c, x, y, w, align, canvas.Black)
}

// drawIn is draw in a color.
func (b block) drawIn(c canvas.Canvas, x, y, w, align float64, color canvas.Color) {
	for i, l := range b.lines {
		lw := c.TextWidth(l, b.font)
		base := y + (float64(i)*lineEM+canvas.Ascent)*em(b.font)
		c.Text(x+(w-lw)*align, base, l, b.font, color, 0)
	}
}
