package templates

import (
	"embed"
	"path"
	"strings"
)

//go:embed notices/*.txt
var notices embed.FS

// Notice is the licence of what is linked into the program.
type Notice struct {
	Of   string // module path; "go" is the language's own library, "roboto" a font inside go-chart
	Text string
}

// Notices lists the licences of all that is linked in, by module path.
func Notices() []Notice {
	entries, err := notices.ReadDir("notices")
	if err != nil {
		panic("templates: " + err.Error()) // embedded: cannot fail at run time
	}
	var out []Notice
	for _, e := range entries {
		text, err := notices.ReadFile(path.Join("notices", e.Name()))
		if err != nil {
			panic("templates: " + err.Error())
		}
		out = append(out, Notice{strings.ReplaceAll(strings.TrimSuffix(e.Name(), ".txt"), "_", "/"), strings.TrimSpace(string(text))})
	}
	return out
}
