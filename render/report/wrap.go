package report

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks a text between words into lines of at most so many letters, the first one so many
// letters in and the others further in by hang. A word that is longer has a line of its own, and a
// figure stays with its unit.
func Wrap(text string, indent, hang, wide int) []string {
	var lines []string
	line, empty := strings.Repeat(" ", indent), true
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' }) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > wide {
			lines = append(lines, line)
			line, empty = strings.Repeat(" ", indent+hang), true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	return append(lines, line)
}

// tabled sets columns side by side, two letters apart and so many letters in. Columns that do not
// fit in the width come below in a further table, which begins with the first so many columns again.
func tabled(columns [][]string, first, indent, wide int) []string {
	var lines []string
	for rest := columns[first:]; len(rest) > 0; {
		if lines != nil {
			lines = append(lines, "")
		}
		take := append([][]string{}, columns[:first]...)
		used := indent + widthOf(take)
		for len(rest) > 0 && (len(take) == first || used+2+widthOf(rest[:1]) <= wide) {
			used += 2 + widthOf(rest[:1])
			take, rest = append(take, rest[0]), rest[1:]
		}
		for row := range columns[0] {
			line := strings.Repeat(" ", indent)
			for _, c := range take {
				line += c[row] + strings.Repeat(" ", widthOf([][]string{c})-utf8.RuneCountInString(c[row])+2)
			}
			lines = append(lines, strings.TrimRight(line, " "))
		}
	}
	return lines
}

// cut is a text of at most so many letters, with an ellipsis where some are left out.
func cut(text string, most int) string {
	if r := []rune(text); len(r) > most {
		return strings.TrimRight(string(r[:most-1]), " ") + "…"
	}
	return text
}

// widthOf is how many letters columns take side by side.
func widthOf(columns [][]string) int {
	all := 0
	for _, c := range columns {
		widest := 0
		for _, cell := range c {
			widest = max(widest, utf8.RuneCountInString(cell))
		}
		all += widest + 2
	}
	return max(0, all-2)
}
