package file

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"
)

// What no parser may see: each is refused at its place, and only that is reported.
func TestLimits(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"size", strings.Repeat("#", MaxFileBytes+1), "j.toml:1:1: the file has 1048577 bytes; at most 1048576 bytes are accepted"},
		{"utf-16", "\xff\xfet\x00", "j.toml:1:1: the file is UTF-16; UTF-8 is accepted: save the file as UTF-8"},
		{"utf-32", "\xff\xfe\x00\x00t\x00\x00\x00", "j.toml:1:1: the file is UTF-32; UTF-8 is accepted: save the file as UTF-8"},
		{"not utf-8", "title = \"a\"\n# é \xe9\n", "j.toml:2:5: the byte 0xe9 is not UTF-8; UTF-8 is accepted: save the file as UTF-8"},
		{"nul", "title = \"a\x00\"", "j.toml:1:11: there is a NUL byte: this is no text file, or one with two bytes a letter; UTF-8 is accepted: save the file as UTF-8"},
		{"delete", "a = 1\n\x7f", "j.toml:2:1: there is a control character, 0x7f; text, tabs and line ends are accepted"},
		{"dotted", "\na.b.c.d.e.f.g.h.i = 1", "j.toml:2:17: a key has more than 8 parts; at most 8 parts are accepted"},
		{"dotted header", "[a.b.c.d.e.f.g.h.i]", "j.toml:1:18: a key has more than 8 parts; at most 8 parts are accepted"},
		{"dotted inline", "a = {x = 1, a.b.c.d.e.f.g.h.i = 1}", "j.toml:1:29: a key has more than 8 parts; at most 8 parts are accepted"},
		{"dotted, quoted parts", `"a"."b".c.d.e.f."g".h . i = 1`, "j.toml:1:25: a key has more than 8 parts; at most 8 parts are accepted"},
		{"long key", strings.Repeat("k", 201) + " = 1", "j.toml:1:1: a key has more than 200 bytes; at most 200 bytes are accepted"},
		{"long quoted key", `a = 1` + "\n" + `"` + strings.Repeat("k", 201) + `" = 1`, "j.toml:2:1: a key has more than 200 bytes; at most 200 bytes are accepted"},
		{"deep list", "a = " + strings.Repeat("[", 17) + strings.Repeat("]", 17), "j.toml:1:5: lists and tables stand more than 16 deep inside one another; a depth of 16 is accepted"},
		{"deep table", strings.Repeat("a={", 17) + strings.Repeat("}", 17), "j.toml:1:51: lists and tables stand more than 16 deep inside one another; a depth of 16 is accepted"},
		{"key of several lines", "\"\"\"a\"\"\" = 1", `j.toml:1:3: '"' stands where = is wanted; a key, = and its value are accepted, the key of letters a-z, digits, - and _`},
	} {
		if j, errs := DecodeJob("j.toml", []byte(c.src)); j != nil || errs.Error() != c.want {
			t.Errorf("%s: job %v, errors\n%s\nwant\n%s", c.name, j != nil, errs.Error(), c.want)
		}
	}
}

// What the limits must let pass although it looks like what it refuses.
func TestLimitsLetPass(t *testing.T) {
	for _, src := range []string{
		"customer = \"a.b.c.d.e.f.g.h.i.j.k [[[[[[[[[[[[[[[[[[[[\"",
		"customer = '{{{{{{{{{{{{{{{{{{{{{ \\'",
		"customer = \"\"\"\n[[[[[[[[[[[[[[[[[[[[[ \"\" \\\"\"\" a.b.c.d.e.f.g.h.i.j \"\"\"\"\"",
		"customer = '''\n[[[[[[[[[[[[[[[[[[[[[ '' a.b.c.d.e.f.g.h.i.j'''''",
		"# " + strings.Repeat("a.", 50) + strings.Repeat("[", 50),
		"customer = \"" + strings.Repeat("a", 200) + "\"",
		"\r\n\r\ncustomer = \"a\" # [.[.[.[\r\n",
	} {
		if j, errs := DecodeJob("j.toml", []byte("title = \"t\"\n"+src+"\n[[location]]\n[[location.screen]]\n")); j == nil || errs != nil {
			t.Errorf("%q: %v", src, errs)
		}
	}
}

// Why the walk limits keys before the decoder sees them: a key of four times as many parts costs the decoder more
// than ten times the memory, and as much time. Where this fails after an update of the library, maxParts may go.
func TestDecoderIsSlowOnDottedKeys(t *testing.T) {
	cost := func(parts int) float64 {
		src := []byte(strings.Repeat("a.", parts) + "a = 1")
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		if _, _, wrong := parse(src); wrong != "" {
			t.Fatal(wrong)
		}
		runtime.ReadMemStats(&after)
		return float64(after.TotalAlloc - before.TotalAlloc)
	}
	if times := cost(800) / cost(200); times < 10 {
		t.Errorf("four times the parts cost %.1f times the memory", times)
	}
}

// Hostile files take time in proportion to their size: the decoder alone took 20 s for 32 kB of
// dotted keys. The bound is wide, for busy machines: no case takes a second of a quiet one.
func TestHostileFilesAreQuick(t *testing.T) {
	const large = MaxFileBytes - 2000
	fill := func(size int, unit string) string { return strings.Repeat(unit, size/len(unit)) }
	count := func(size int, format string) string {
		var b strings.Builder
		for i := 0; b.Len() < size; i++ {
			fmt.Fprintf(&b, format, i)
		}
		return b.String()
	}
	for name, src := range map[string]string{
		"one dotted key, 32 kB":     fill(32<<10, "a.") + "a = 1",
		"one dotted key, 1 MiB":     fill(large, "a.") + "a = 1",
		"one that is no key, 1 MiB": fill(large, "a.") + " = = 1",
		"closed lists, 1 MiB":       "a = " + fill(large/2, "[") + fill(large/2, "]"),
		"dotted header, 1 MiB":      "[" + fill(large, "a.") + "a]",
		"dotted, inline, 1 MiB":     "a = { " + fill(large, "a.") + "a = 1 }",
		"open lists, 1 MiB":         "a = " + fill(large, "["),
		"escapes, 1 MiB":            "a = \"" + fill(large, `\u00e9`) + "\"",
		"dotted keys":               count(128<<10, "a.b.c.d.e.f.g.h%d = 1\n"),
		"keys under a long key":     "[a.b.c.d.e.f.g." + strings.Repeat("k", 180) + "]\n" + count(128<<10, "k%d = 1\n"),
		"inline tables":             "a = [" + fill(128<<10, "{b=1},") + "]",
		"errors on one line":        "title = \"t\"\ngarment = {" + count(128<<10, "k%d=1,") + "name = \"n\"}",
		"screens with an error":     "title = \"t\"\n[[location]]\n" + fill(128<<10, "[[location.screen]]\nmesh = 1\n"),
		"keys that are not ours":    count(128<<10, "k%d = 1\n"),
	} {
		start := time.Now()
		_, errs := DecodeJob("j.toml", []byte(src))
		if took := time.Since(start); took > 10*time.Second || len(errs) == 0 {
			t.Errorf("%s: %d bytes took %v, %d errors", name, len(src), took, len(errs))
		}
	}
}

// A shop file has the same limits.
func TestLimitsOfShop(t *testing.T) {
	for src, want := range map[string]string{
		strings.Repeat("a.", 16<<10) + "a = 1": "s.toml:1:17: a key has more than 8 parts; at most 8 parts are accepted",
		strings.Repeat("#", MaxFileBytes+1):    "s.toml:1:1: the file has 1048577 bytes; at most 1048576 bytes are accepted",
		"name = \"a\"\n\xc3(":                  "s.toml:2:1: the byte 0xc3 is not UTF-8; UTF-8 is accepted: save the file as UTF-8",
	} {
		if s, errs := DecodeShop("s.toml", []byte(src)); s != nil || errs.Error() != want {
			t.Errorf("%.40q: shop %v, errors\n%s\nwant\n%s", src, s != nil, errs.Error(), want)
		}
	}
	if _, errs := DecodeShop("s.toml", []byte("#"+strings.Repeat("#", MaxFileBytes-1))); errs != nil {
		t.Errorf("a file of just the largest size: %v", errs)
	}
}

func TestEntriesAreCapped(t *testing.T) {
	_, errs := DecodeJob("j.toml", []byte("title = \"a\"\n[[location]]\n"+strings.Repeat("[[location.screen]]\n", 65)))
	want := "j.toml:67:1: location 1: screen: has 65 entries; at most 64 are accepted"
	if errs.Error() != want {
		t.Errorf("got\n%s\nwant\n%s", errs.Error(), want)
	}
	_, errs = DecodeJob("j.toml", []byte("title = \"a\"\n"+strings.Repeat("[[location]]\n[[location.screen]]\n", 65)))
	if want := "j.toml:130:1: location: has 65 entries; at most 64 are accepted"; errs.Error() != want {
		t.Errorf("got\n%s\nwant\n%s", errs.Error(), want)
	}
}
