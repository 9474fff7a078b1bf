package words

import (
	"math"
	"strconv"
	"strings"
)

// Shorten cuts a text to a number of characters.
func Shorten(text string, most int) string {
	n := 0
	for i := range text {
		if n++; n > most {
			return text[:i] + "..."
		}
	}
	return text
}

// Quote writes a text of the file in quotes, shortened.
func Quote(text string) string { return strconv.Quote(Shorten(text, 40)) }

// List is "a, b or c".
func List(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
	return strings.Join(words, "")
}

// Quoted puts each word in quotes.
func Quoted(words []string) []string {
	q := make([]string, len(words))
	for i, w := range words {
		q[i] = Quote(w)
	}
	return q
}

// Number prints a figure without needless digits.
func Number(v float64) string {
	text := strconv.FormatFloat(v, 'g', 6, 64)
	if v == math.Trunc(v) && math.Abs(v) < 1e15 { // large whole figures without an exponent
		text = strconv.FormatFloat(v, 'f', 0, 64)
	}
	return text
}

// ParserSays is a parser's message on one line: it may quote the file as it stands.
func ParserSays(message string) string {
	return Shorten(strings.Join(strings.FieldsFunc(message, func(r rune) bool { return r < ' ' || r == 0x7f }), " "), 120)
}
