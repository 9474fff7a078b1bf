package words

import "strings"

// Nearest returns the word that is closest to text in edits, "" when none is close. A word
// that differs in the case of letters only is always the closest.
func Nearest(text string, words []string) string {
	for _, w := range words {
		if strings.EqualFold(w, text) {
			return w
		}
	}
	if len(text) > 64 {
		return ""
	}
	best, least := "", max(1, len(text)/3)+1
	for _, w := range words {
		if d := edits(strings.ToLower(text), strings.ToLower(w)); d < least && 2*d < len(w) {
			best, least = w, d
		}
	}
	return best
}

// edits counts the letters to insert, remove, replace or swap with their neighbor to turn a
// into b (optimal string alignment distance).
func edits(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last, now := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		now[0] = i + 1
		for j := range y {
			cost := 1
			if x[i] == y[j] {
				cost = 0
			}
			now[j+1] = min(last[j+1]+1, now[j]+1, last[j]+cost)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				now[j+1] = min(now[j+1], before[j-1]+1)
			}
		}
		before, last, now = last, now, before
	}
	return last[len(y)]
}

// DidYouMean is "did you mean X? " where there is a near word.
func DidYouMean(text string, words []string) string {
	if w := Nearest(text, words); w != "" {
		return "did you mean " + Quote(w) + "? "
	}
	return ""
}
