package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/calc/file"
)

// TestReadmeKeys: the README's tables of every key are those that the decoder's tags give.
// Run `go test ./cmd/bladecard -run ReadmeKeys -update` after a change of a tag.
func TestReadmeKeys(t *testing.T) {
	path := filepath.Join("..", "..", "README.md")
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	readme := strings.ReplaceAll(string(src), "\r\n", "\n")
	for _, kind := range file.Kinds() {
		table, err := file.KeyTables(kind)
		if err != nil {
			t.Fatal(err)
		}
		start, end := "<!-- keys of "+kind+".toml: generated -->\n", "<!-- end -->"
		before, rest, found := strings.Cut(readme, start)
		got, after, closed := strings.Cut(rest, end)
		if !found || !closed {
			t.Fatalf("README.md lacks the marker %q or the %q after it", start, end)
		}
		want := "\n" + table + "\n"
		if *update {
			readme = before + start + want + end + after
		} else if got != want {
			t.Errorf("keys of %s.toml: %s", kind, firstDifference(got, want))
		}
	}
	if *update && !bytes.Equal(src, []byte(readme)) {
		if err := os.WriteFile(path, []byte(readme), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
