package words

import "strings"

// Has tells whether a word is among the words.
func Has(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}

// Names collects the texts of a list, without doubles, in order.
func Names[T any](list []T, name func(*T) string) []string {
	var out []string
	for i := range list {
		if n := name(&list[i]); n != "" && !Has(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// InList is "a, b, c is accepted" with the near one first.
func InList(text string, words []string, what string) string {
	return DidYouMean(text, words) + what + ": " + strings.Join(Quoted(words), ", ")
}
