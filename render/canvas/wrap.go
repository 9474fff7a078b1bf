package canvas

import "strings"

// Wrap breaks s into lines no wider than w mm, at spaces but not at no-break spaces; a word wider than w is broken
// behind a slash or a hyphen, else between letters. There is always at least one letter a line.
func Wrap(s string, f Font, w float64) []string {
	s = Squash(s)
	var lines []string
	space := Advance(" ", f.Face)
	start, end := 0, 0 // of the line so far
	at := Milles(0)    // its width
	for next := 0; next < len(s); {
		word := s[next:]
		if n := strings.IndexByte(word, ' '); n >= 0 {
			word = word[:n]
		}
		wide := Advance(word, f.Face)
		if end > start && (at+space+wide).MM(f.SizePT) <= w {
			end, at = next+len(word), at+space+wide
		} else {
			if end > start {
				lines = append(lines, s[start:end])
			}
			start, end, at = next, next+len(word), wide
			for at.MM(f.SizePT) > w {
				head := longestPrefix(s[start:end], "", f, w)
				if len(head) == end-start {
					break
				}
				for _, mark := range []string{"/", "-", "–"} {
					if n := strings.LastIndex(head, mark); n > 0 {
						head = head[:n+len(mark)]
						break
					}
				}
				lines = append(lines, head)
				start += len(head)
				at = Advance(s[start:end], f.Face)
			}
		}
		next += len(word) + 1
	}
	if end > start {
		lines = append(lines, s[start:end])
	}
	return lines
}

// Cut shortens s to w mm with an ellipsis at its end, and tells whether it had to.
func Cut(s string, f Font, w float64) (string, bool) {
	s = NFC(s)
	if Width(s, f) <= w {
		return s, false
	}
	return strings.TrimRight(longestPrefix(s, "…", f, w), " ") + "…", true
}

// CutMiddle shortens s to w mm: it keeps the first and the last words around an ellipsis, where no two fit the first
// alone, and of a word that is too long its first and last letters.
func CutMiddle(s string, f Font, w float64) string {
	s = NFC(s)
	if Width(s, f) <= w {
		return s
	}
	middle := func(parts []string, sep, gap string) (string, bool) {
		out, first, last := "", 1, 0
		for n := 0; first+last <= len(parts); n++ {
			try := strings.Join(parts[:first], sep) + gap + strings.Join(parts[len(parts)-last:], sep)
			if last > 0 && Width(try, f) > w {
				break
			}
			if last > 0 {
				out = try
			}
			if n%2 == 0 {
				last++
			} else {
				first++
			}
		}
		return out, out != ""
	}
	words := strings.Fields(s)
	if out, ok := middle(words, " ", " … "); ok {
		return out
	}
	if len(words) > 1 && Width(words[0]+"…", f) <= w {
		return words[0] + "…"
	}
	if out, ok := middle(strings.Split(s, ""), "", "…"); ok {
		return out
	}
	out, _ := Cut(s, f, w)
	return out
}

// longestPrefix is the longest start of s, one letter at least, that with tail is no wider
// than w.
func longestPrefix(s, tail string, f Font, w float64) string {
	end := 0
	at := Advance(tail, f.Face)
	for i, r := range s {
		next := min(i+len(string(r)), len(s)) // an invalid byte reads as a longer rune
		at += Advance(s[i:next], f.Face)
		if end > 0 && at.MM(f.SizePT) > w {
			break
		}
		end = next
	}
	return s[:end]
}

// CutRows keeps the first rows and ends the last with an ellipsis.
func CutRows(lines []string, rows int, f Font, w float64) []string {
	out := append([]string(nil), lines[:rows]...)
	last := out[rows-1]
	if Width(last+"…", f) <= w {
		out[rows-1] = last + "…"
	} else {
		out[rows-1] = strings.TrimRight(longestPrefix(last, "…", f, w), " ") + "…"
	}
	return out
}

// Squash sets single spaces between the words of s.
func Squash(s string) string {
	s = NFC(s)
	if !unspaced(s) {
		s = strings.Join(Words(s), " ")
	}
	return s
}

// unspaced tells that Squash would leave s as it is.
func unspaced(s string) bool {
	last := byte(' ')
	for i := range len(s) {
		b := s[i]
		if b == '\t' || b == '\n' || b == '\r' || b == ' ' && last == ' ' {
			return false
		}
		last = b
	}
	return last != ' '
}

// Words splits s at spaces, tabs and newlines, not at no-break spaces: those keep a figure and
// its unit on one line.
func Words(s string) []string {
	return strings.FieldsFunc(NFC(s), func(r rune) bool {
		return r == ' ' || r == '\t' || r == '\n' || r == '\r'
	})
}
