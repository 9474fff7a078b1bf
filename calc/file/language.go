package file

import "regexp"

var languageKey = regexp.MustCompile(`(?m)^[ \t]*language[ \t]*=[ \t]*["']([A-Za-z-]+)["']`)

// LanguageOf is what a shop file says under the key language, as it stands there, even where the file has errors that keep
// it from being read; empty where it says nothing.
func LanguageOf(src []byte) string {
	if m := languageKey.FindSubmatch(src); m != nil {
		return string(m[1])
	}
	return ""
}
