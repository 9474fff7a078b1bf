package main

import (
	"path/filepath"
	"regexp"
	"testing"
	"unicode/utf8"
)

// besideValue is a line with a value, in use or commented out, and a comment beside the value.
var besideValue = regexp.MustCompile(`(?m)^#?[a-z-]+ = ("[^"]*"|[^"#\n])+ #.*$`)

// TestCommentsEndByColumn80 holds the comments beside values in the starters and the samples to
// column 80. A widely used formatter of TOML, taplo 0.9, panics over some that end beyond it.
func TestCommentsEndByColumn80(t *testing.T) {
	t.Parallel()
	found := 0
	for _, pattern := range []string{"../../templates/starter/*/*.toml", "../../samples/*.toml", "../../samples/jobs/*.toml"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(paths), err)
		}
		for _, path := range paths {
			src := content(t, path)
			for _, line := range besideValue.FindAll(src, -1) {
				found++
				if n := utf8.RuneCount(line); n > 80 {
					t.Errorf("%s: the comment ends in column %d; write it above the key:\n%s", path, n, line)
				}
			}
		}
	}
	if found < 100 {
		t.Errorf("only %d comments beside values were found", found)
	}
}
