package templates

import (
	"embed"
	"fmt"
	"strings"
)

//go:embed starter/*/*.toml
var starters embed.FS

// Starter returns the commented file to start from, of a kind, job or shop, in a language: the
// file starter/CODE/KIND.toml. Every language that stands alone has both.
func Starter(code, kind string) ([]byte, error) {
	src, err := starters.ReadFile("starter/" + Base(code) + "/" + kind + ".toml")
	if err != nil {
		return nil, fmt.Errorf("there is no starter %s in the language %q; languages are: %s", kind, code, strings.Join(Languages(), ", "))
	}
	return src, nil
}
