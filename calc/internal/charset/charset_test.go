package charset

import "testing"

func TestFault(t *testing.T) {
	const text, utf8 = "text, tabs and line ends are accepted", "UTF-8 is accepted: save the file as UTF-8"
	for _, c := range []struct {
		src, wrong, would string
		offset            int
	}{
		{"größer\t\r\n", "", "", 0},
		{"\xff\xfea\x00", "the file is UTF-16", utf8, 0},
		{"\xfe\xff\x00a", "the file is UTF-16", utf8, 0},
		{"\xff\xfe\x00\x00a\x00\x00\x00", "the file is UTF-32", utf8, 0},
		{"\x00\x00\xfe\xff", "the file is UTF-32", utf8, 0},
		{"ab\x00c", "there is a NUL byte: this is no text file, or one with two bytes a letter", utf8, 2},
		{"gr\xf6\xdfer", "the byte 0xf6 is not UTF-8", utf8, 2},
		{"ü\x1b[2J", "there is a control character, 0x1b", text, 2},
		{"a\x7f", "there is a control character, 0x7f", text, 1},
	} {
		offset, wrong, would := Fault([]byte(c.src))
		if offset != c.offset || wrong != c.wrong || would != c.would {
			t.Errorf("%q: %d, %q, %q; %d, %q, %q are wanted", c.src, offset, wrong, would, c.offset, c.wrong, c.would)
		}
	}
	if got := string(Text([]byte("\ufeffa"))); got != "a" {
		t.Errorf("behind the mark stands %q", got)
	}
}
