package job

import (
	"math"
	"strconv"
	"strings"
)

// shorten cuts a text to a number of characters.
func shorten(text string, most int) string {
	n := 0
	for i := range text {
		if n++; n > most {
			return text[:i] + "..."
		}
	}
	return text
}

// quote writes a text of the file in quotes, shortened.
func quote(text string) string { return strconv.Quote(shorten(text, 40)) }

// list is "a, b or c".
func list(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}

// quoted puts each word in quotes.
func quoted(words []string) []string {
	q := make([]string, len(words))
	for i, w := range words {
		q[i] = quote(w)
	}
	return q
}

// number prints a figure without needless digits.
func number(v float64) string {
	text := strconv.FormatFloat(v, 'g', 6, 64)
	if v == math.Trunc(v) && math.Abs(v) < 1e15 { // large whole figures without an exponent
		text = strconv.FormatFloat(v, 'f', 0, 64)
	}
	return text
}

// parserSays is a parser's message on one line: it may quote the file as it stands.
func parserSays(message string) string {
	return shorten(strings.Join(strings.FieldsFunc(message, func(r rune) bool { return r < ' ' || r == 0x7f }), " "), 120)
}
