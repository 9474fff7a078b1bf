package file

import "testing"

func TestLanguageOf(t *testing.T) {
	for src, want := range map[string]string{
		"name = \"x\"\nlanguage = \"es\"\n":     "es",
		"language='es-MX' # ours\n[[blade]\n":   "es-MX",
		"# language = \"es\"\nname = \"open\n":  "",
		"title = \"x\"\n":                       "",
		"language = 3\n":                        "",
		"\ufeffname = 3\r\n  language=\"es\"\r": "es",
	} {
		if have := LanguageOf([]byte(src)); have != want {
			t.Errorf("%q: %q, not %q", src, have, want)
		}
	}
}
