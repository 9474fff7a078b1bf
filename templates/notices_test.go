package templates

import (
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Every module that is linked into the program on some system has its notice, and no other has one:
// .ci/notices writes them.
func TestNoticesAreThoseOfWhatIsLinked(t *testing.T) {
	linked := []string{"go", "roboto"} // the font stands inside go-chart
	dirs := map[string]string{}
	for _, system := range []string{"linux", "darwin", "windows"} {
		cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}{{end}}{{end}}", "bladecard/cmd/bladecard")
		cmd.Env = append(cmd.Environ(), "GOOS="+system)
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(out)) {
			if path, dir, is := strings.Cut(strings.TrimSpace(line), "\t"); is {
				linked = append(linked, path)
				dirs[path] = dir
			}
		}
	}
	slices.Sort(linked)
	linked = slices.Compact(linked)
	var have []string
	for _, n := range Notices() {
		have = append(have, n.Of)
		if !strings.Contains(n.Text, "opyright") || len(n.Text) < 200 {
			t.Errorf("the notice of %s is none:\n%s", n.Of, n.Text)
		}
	}
	// Word for word: a module that changes its licence with a new version changes it here.
	for _, n := range Notices() {
		for _, name := range []string{"LICENSE", "LICENSE-DejaVu", "COPYING", "licenses/ftl.txt"} {
			own, err := os.ReadFile(filepath.Join(dirs[n.Of], name))
			if dirs[n.Of] == "" || errors.Is(err, fs.ErrNotExist) {
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			if text := strings.TrimSpace(strings.ReplaceAll(string(own), "\r", "")); !strings.Contains(n.Text, text) {
				t.Errorf("the notice of %s is not that of its %s", n.Of, name)
			}
		}
	}
	slices.Sort(have)
	if !slices.Equal(have, linked) {
		t.Errorf("there are notices of\n%v\nlinked are\n%v", have, linked)
	}
}
