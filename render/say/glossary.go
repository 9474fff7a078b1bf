package say

import (
	"cmp"
	"slices"
	"strings"
)

// Term is a word of the trade and what it means.
type Term struct{ Key, Term, Means string }

// Glossary lists the words of the trade by the alphabet of the language, small letters as capitals and without
// their accents.
func (v *Voice) Glossary() []Term {
	var out []Term
	for key, term := range v.words {
		if name, is := strings.CutPrefix(key, "glossary."); is && strings.HasSuffix(name, ".term") {
			name = strings.TrimSuffix(name, ".term")
			out = append(out, Term{name, term, v.T("glossary." + name + ".means")})
		}
	}
	slices.SortFunc(out, func(a, b Term) int {
		return cmp.Or(cmp.Compare(sortKey(a.Term), sortKey(b.Term)), cmp.Compare(a.Key, b.Key))
	})
	return out
}

var bare = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n~")

func sortKey(term string) string { return bare.Replace(strings.ToLower(term)) }
