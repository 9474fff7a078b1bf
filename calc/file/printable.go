package file

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"bladecard/calc/internal/words"
)

// printed are the runes that a text may hold, from the first to the last of each range: those of
// scripts that read from left to right and need no shaping (Latin with Vietnamese, Greek, Cyrillic)
// and of the signs that a card uses, for which the document's font has a glyph in both faces. No
// control, format or combining characters. A test of the paper holds the list against the font.
var printed = [][2]rune{
	{0x0020, 0x007e}, {0x00a0, 0x00ac}, {0x00ae, 0x02e9}, {0x02ec, 0x02ee}, {0x02f3, 0x02f3}, {0x02f7, 0x02f7},
	{0x0370, 0x0377}, {0x037a, 0x037f}, {0x0384, 0x038a}, {0x038c, 0x038c}, {0x038e, 0x03a1}, {0x03a3, 0x0482},
	{0x048a, 0x0525}, {0x1e00, 0x1efb}, {0x2000, 0x200a}, {0x2010, 0x2027}, {0x202f, 0x205f}, {0x2070, 0x2071},
	{0x2074, 0x208e}, {0x2090, 0x209c}, {0x20a0, 0x20b5}, {0x20b8, 0x20ba}, {0x20bd, 0x20bd}, {0x2100, 0x2109},
	{0x210b, 0x2149}, {0x214b, 0x214b}, {0x214e, 0x214e}, {0x2150, 0x2185}, {0x2189, 0x2189}, {0x2190, 0x2311},
	{0x2318, 0x2319}, {0x231c, 0x2321}, {0x2324, 0x2328}, {0x232b, 0x232c}, {0x2373, 0x2375}, {0x237a, 0x237a},
	{0x237d, 0x237d}, {0x2387, 0x2387}, {0x2394, 0x2394}, {0x239b, 0x23ae}, {0x23ce, 0x23cf}, {0x23e3, 0x23e3},
	{0x23e5, 0x23e5}, {0x23e8, 0x23e8}, {0x2500, 0x269c}, {0x269e, 0x26b8}, {0x26c0, 0x26c3}, {0x26e2, 0x26e2},
	{0x2701, 0x2704}, {0x2706, 0x2709}, {0x270c, 0x2727}, {0x2729, 0x274b}, {0x274d, 0x274d}, {0x274f, 0x2752},
	{0x2756, 0x2756}, {0x2758, 0x275e}, {0x2761, 0x2794}, {0x2798, 0x27af}, {0x27b1, 0x27be},
}

// Printable tells whether a text of a file may hold the rune: see printed.
func Printable(r rune) bool {
	for _, p := range printed {
		if r <= p[1] {
			return r >= p[0]
		}
	}
	return false
}

// printable composes a text (NFC) and says what of it cannot be printed.
func printable(text string) (composed, wrong string) {
	composed = norm.NFC.String(text)
	var bad []string
	for _, r := range composed {
		if Printable(r) && r != utf8.RuneError {
			continue
		}
		name := fmt.Sprintf("%U", r)
		if !words.Has(bad, name) {
			bad = append(bad, name)
		}
		if len(bad) == 4 {
			break
		}
	}
	if bad == nil {
		return composed, ""
	}
	return composed, "holds what cannot be printed: " + strings.Join(bad, ", ")
}

// LogText says what of a cell of a press log cannot stand on paper, and what is accepted: as of a text of a job file.
func LogText(cell string) (wrong, accepted string) {
	if _, wrong = printable(fold(cell)); wrong != "" {
		return wrong, acceptedText
	}
	if n := utf8.RuneCountInString(cell); n > maxText {
		return fmt.Sprintf("has %d characters", n), fmt.Sprintf("at most %d are accepted", maxText)
	}
	return "", ""
}

const acceptedText = "letters of Latin, Greek and Cyrillic script, figures and signs are accepted"
