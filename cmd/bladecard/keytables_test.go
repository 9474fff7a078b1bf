package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"bladecard/calc/file"
)

// TestKeyTables holds templates/keys.md to the tables of every key that the decoder's tags give.
// Run `go test ./cmd/bladecard -run KeyTables -update` after a change of a tag.
func TestKeyTables(t *testing.T) {
	t.Parallel()
	var want bytes.Buffer
	want.WriteString("# Every key of the files\n\nGenerated from the tags that the program reads files by.\n")
	for _, kind := range file.Kinds() {
		table, err := file.KeyTables(kind)
		if err != nil {
			t.Fatal(err)
		}
		want.WriteString("\n## Every key of a " + kind + " file\n\n" + table)
	}
	path := filepath.Join("..", "..", "templates", "keys.md")
	if *update {
		if err := os.WriteFile(path, want.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	have, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got := bytes.ReplaceAll(have, []byte("\r\n"), []byte("\n")); !bytes.Equal(got, want.Bytes()) {
		t.Errorf("%s: %s", path, firstDifference(string(got), want.String()))
	}
}
