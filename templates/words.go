package templates

import (
	"embed"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"
)

//go:embed lang/*.toml
var languages embed.FS

// Words are the texts of one language by key, such as "warning.film-thin".
type Words map[string]string

// Languages lists the codes of the languages that ship, sorted.
func Languages() []string {
	entries, err := languages.ReadDir("lang")
	if err != nil {
		panic("templates: " + err.Error()) // embedded: cannot fail at run time
	}
	var out []string
	for _, e := range entries {
		out = append(out, strings.TrimSuffix(e.Name(), ".toml"))
	}
	sort.Strings(out)
	return out
}

// Language is the words of a language: the file lang/CODE.toml, its tables flattened to keys with
// dots, over those of its base. It is read once; nobody may write to it.
func Language(code string) (Words, error) {
	if known, ok := read.Load(code); ok {
		return known.(Words), nil
	}
	w, err := readLanguage(code)
	if err == nil {
		read.Store(code, w)
	}
	return w, err
}

var read sync.Map // of Words by code

// Base is the language whose texts a language takes where it has none of its own: es of es-MX; itself of a
// language that stands alone.
func Base(code string) string {
	base, _, _ := strings.Cut(code, "-")
	return base
}

// Bases lists the codes of the languages that stand alone, sorted.
func Bases() []string {
	return slices.DeleteFunc(Languages(), func(code string) bool { return Base(code) != code })
}

func readLanguage(code string) (Words, error) {
	src, err := languages.ReadFile("lang/" + code + ".toml")
	if err != nil {
		return nil, fmt.Errorf("language %q is not there; these are: %s", code, strings.Join(Languages(), ", "))
	}
	var tree map[string]any
	if err := toml.Unmarshal(src, &tree); err != nil {
		return nil, fmt.Errorf("lang/%s.toml: %w", code, err)
	}
	w := Words{}
	if base := Base(code); base != code {
		of, err := Language(base)
		if err != nil {
			return nil, err
		}
		w = maps.Clone(of)
	}
	if err := w.flatten("", tree); err != nil {
		return nil, fmt.Errorf("lang/%s.toml: %w", code, err)
	}
	return w, nil
}

func (w Words) flatten(prefix string, tree map[string]any) error {
	for k, v := range tree {
		switch v := v.(type) {
		case string:
			w[prefix+k] = v
		case map[string]any:
			if err := w.flatten(prefix+k+".", v); err != nil {
				return err
			}
		default:
			return fmt.Errorf("%s%s: a text is wanted, not %T", prefix, k, v)
		}
	}
	return nil
}
