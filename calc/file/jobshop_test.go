package file

import (
	"testing"

	"bladecard/templates"
)

func TestIsJob(t *testing.T) {
	for text, want := range map[string]bool{
		least: true, "title = \"t\"": true, "[[location]]": true, "title = \"t\"\nunits = \"inch\"": true,
		string(templates.Shop()): false, "": false, "job = \"1\"": false, "title = = 1": false,
	} {
		if got := IsJob([]byte(text)); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}

func TestIsShop(t *testing.T) {
	for text, want := range map[string]bool{
		string(templates.Shop()):                  true,
		"[[blade]]\nlayup = \"70\"":               true,
		"units = \"inch\"":                        true,
		"[[press]]\nname = \"a\"":                 true,
		"[calibration]\nfactor = 1":               true,
		least:                                     false,
		"press = \"a\"":                           false,
		"title = \"t\"\nunits = \"inch\"":         false,
		"[[location]]\n[[blade]]\nlayup = \"70\"": false,
		"":             false,
		"not = = toml": false,
		"[[blade":      false,
	} {
		if got := IsShop([]byte(text)); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
