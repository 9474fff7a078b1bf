package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestPlainText(t *testing.T) {
	t.Parallel()
	for in, want := range map[string]string{
		"a tab\tand a line\n":               "a tab\tand a line\n",
		"\x1b[31mred\x07\r\x7f":             `\u001b[31mred\u0007\u000d\u007f`,
		"\u202egpj.toml\u2066\u200f\u061c":  `\u202egpj.toml\u2066\u200f\u061c`,
		"\u2028\u2029\u009b\u200b\ufeff":    `\u2028\u2029\u009b\u200b\ufeff`,
		"\U000e0001":                        `\udb40\udc01`,
		"\xff\xc3(\xed\xa0\x80":             `\xff\xc3(\xed\xa0\x80`,
		"Förbundets tröja, 38 µm − 2 °, 漢字": "Förbundets tröja, 38 µm − 2 °, 漢字",
		"cut \xe6\xbc":                      `cut \xe6\xbc`,
	} {
		var whole, single bytes.Buffer
		w, s := &plainText{w: &whole}, &plainText{w: &single}
		if n, err := io.WriteString(w, in); n != len(in) || err != nil {
			t.Errorf("%q: %d bytes, %v", in, n, err)
		}
		for i := range len(in) { // a rune may come in pieces
			io.WriteString(s, in[i:i+1])
		}
		w.close()
		s.close()
		if whole.String() != want || single.String() != want {
			t.Errorf("%q: %q and, a byte at a time, %q; %q is wanted", in, whole.String(), single.String(), want)
		}
	}
}

// broken is an output that takes nothing, such as a full disk.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// What cannot be printed is an error, whatever the command.
func TestOutputThatTakesNothing(t *testing.T) {
	t.Parallel()
	job := filepath.Join(t.TempDir(), "job.toml")
	write(t, job, "title = \"t\"\n[[location]]\n[[location.screen]]\n")
	for _, args := range [][]string{
		{"help"}, {"check", job}, {"check", "--json", job}, {"show", job}, {"show", "--json", job}, {"show", "--why", job},
		{"correct", job, "--measured", "30 um"}, {"log", job}, {"sweep", job, "--vary", "angle=10,20"}, {"schema", "job"},
		{"completion", "bash"}, {"version"}, {"version", "--json"}, {"cards", job, "-o", t.TempDir()},
		{"fit", "../../samples/press-log.csv", "../../samples/shop.toml"}, {"fit", "../../samples/press-log.csv", "../../samples/shop.toml", "--json"},
	} {
		var errs bytes.Buffer
		if code := run(args, nil, broken{}, &errs); code != exitFile || !strings.Contains(errs.String(), "no space left on device") {
			t.Errorf("%v: exit code %d\n%s", args, code, errs.String())
		}
	}
}

// Whatever names files have, jobs say and flags are, no command writes to a terminal what it would
// obey, and no name makes a line of its own.
func TestForeignTextIsPlain(t *testing.T) {
	const foreign = "x\x1b[31m\u202egpj\x9b\xff"
	dir := t.TempDir()
	t.Chdir(dir)
	in := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Skip(err) // such names are not for every system
		}
		return name
	}
	const good = "title = \"good\"\n[[location]]\n[[location.screen]]\n"
	// The reader of files refuses control characters in names; the rest it reads.
	named, bidi := in(foreign+".toml", good), in("\u202egood\u200f.toml", good)
	bad := in("bad.toml", "title = \"t\"\nshop = \"\u202egpj.toml\"\n\"k\u202e\" = 1\n[[location]]\n[[location.screen]]\nink = \"\u202ex\"\n")
	log := in("\u202elog.csv", "mesh,eom (um),blade,angle (deg),wet (um)\n\u202e156,12,\u200f70,15,45\n")
	lines := in("two\nlines.toml", good)
	for _, args := range [][]string{
		{"check", named, bidi, bad, lines, "."}, {"check", "--json", named, bidi, bad, lines, "."}, {"show", named, bidi, bad}, {"show", "--json", bidi},
		{"cards", named, bidi, "-o", "out"}, {"cards", bidi, "-o", "out\u202e"}, {"sheet", named, bidi, bad, "-o", "out"}, {"log", named, bidi, bad},
		{"correct", bidi, "--measured", foreign}, {"correct", named, "--measured", "30 um"}, {"sweep", bidi, "--vary", foreign}, {"sweep", named, "--vary", "angle=1,2"},
		{"fit", log}, {"fit", named}, {"fit", log, named}, {"handout", named, "-o", "h.pdf"}, {"handout", bidi, "-o", "h\u202e.pdf"},
		{"new", foreign}, {"new", bidi}, {"build", named, bidi, bad, lines, "-o", "built"}, {"build", ".", "-o", "built", "--json"},
		{"build", bidi, "-o", named}, {foreign}, {"help", foreign}, {"check", "--" + foreign}, {"check", "--two\nlines"}, {"check", "--lang", foreign},
		{"cards", bidi, "-o", "out", "--size", foreign}, {"cards", bidi, "-o", "out", "--single=" + foreign}, {"schema", foreign}, {"completion", foreign},
		{"version", foreign}, {"check", bidi, "--shop", named}, {"check", bidi, "--shop", "\u202eshop.toml"}, {"__complete", "1", foreign}, {"__complete", foreign},
	} {
		var out, errs bytes.Buffer
		code := run(args, nil, &out, &errs)
		said := out.String() + errs.String()
		if code != exitDone && errs.Len() == 0 && !strings.Contains(said, "{") {
			t.Errorf("%q: exit code %d, and nothing is said", args, code)
		}
		for line := range strings.Lines(said) {
			line = strings.TrimSuffix(line, "\n")
			if !utf8.ValidString(line) || strings.ContainsFunc(line, func(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf) }) {
				t.Errorf("%q: raw: %q", args, line)
			}
			if strings.HasPrefix(line, "lines") {
				t.Errorf("%q: a name made a line: %q", args, line)
			}
			if strings.HasPrefix(line, "{") && !json.Valid([]byte(line)) {
				t.Errorf("%q: this is no JSON: %s", args, line)
			}
		}
	}
}
