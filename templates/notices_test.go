package templates

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// Every module that is linked into the program on some system has its notice, and no other has one:
// .ci/notices writes them.
func TestNoticesAreThoseOfWhatIsLinked(t *testing.T) {
	linked := []string{"go"}
	for _, system := range []string{"linux", "darwin", "windows"} {
		cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}", "bladecard/cmd/bladecard")
		cmd.Env = append(cmd.Environ(), "GOOS="+system)
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		linked = append(linked, strings.Fields(string(out))...)
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
	slices.Sort(have)
	if !slices.Equal(have, linked) {
		t.Errorf("there are notices of\n%v\nlinked are\n%v", have, linked)
	}
}
