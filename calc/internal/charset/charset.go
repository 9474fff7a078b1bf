// Package charset tells whether the bytes of a file are text in UTF-8.
package charset

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

const accepted = "UTF-8 is accepted: save the file as UTF-8"

// marks are the first bytes by which other encodings of Unicode are known, the longer ones first.
var marks = []struct{ bytes, name string }{
	{"\xff\xfe\x00\x00", "UTF-32"}, {"\x00\x00\xfe\xff", "UTF-32"}, {"\xff\xfe", "UTF-16"}, {"\xfe\xff", "UTF-16"},
}

// Text returns what follows the mark of UTF-8 that some editors put before a text.
func Text(file []byte) []byte { return bytes.TrimPrefix(file, []byte("\xef\xbb\xbf")) }

// Fault finds the first thing that no text in UTF-8 holds: its offset, what is wrong with it, and what
// would be accepted. All is well where wrong is empty.
func Fault(text []byte) (offset int, wrong, would string) {
	for _, m := range marks {
		if bytes.HasPrefix(text, []byte(m.bytes)) {
			return 0, "the file is " + m.name, accepted
		}
	}
	for i := 0; i < len(text); {
		r, size := rune(text[i]), 1
		if r >= utf8.RuneSelf {
			r, size = utf8.DecodeRune(text[i:])
		}
		switch {
		case r == utf8.RuneError && size == 1:
			return i, fmt.Sprintf("the byte 0x%02x is not UTF-8", text[i]), accepted
		case r == 0:
			return i, "there is a NUL byte: this is no text file, or one with two bytes a letter", accepted
		case r < ' ' && r != '\t' && r != '\n' && r != '\r', r == 0x7f:
			return i, fmt.Sprintf("there is a control character, 0x%02x", r), "text, tabs and line ends are accepted"
		}
		i += size
	}
	return 0, "", ""
}
