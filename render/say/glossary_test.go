package say

import (
	"slices"
	"strings"
	"testing"

	"bladecard/templates"
)

// TestGlossary: every language has the terms of English, each with a meaning that is short and does not stand on
// the term alone, in the order of its own alphabet.
func TestGlossary(t *testing.T) {
	keys := func(list []Term) (out []string) {
		for _, x := range list {
			out = append(out, x.Key)
		}
		slices.Sort(out)
		return out
	}
	want := keys(voice(t, "metric").Glossary())
	if len(want) < 30 {
		t.Fatalf("only %d terms", len(want))
	}
	for _, lang := range templates.Languages() {
		list := voiceIn(t, lang, "metric").Glossary()
		if got := keys(list); !slices.Equal(got, want) {
			t.Errorf("%s has the terms %v; English has %v", lang, got, want)
		}
		seen := map[string]bool{}
		for i, x := range list {
			if x.Term == "" || len(x.Means) < 15 || len([]rune(x.Means)) > 120 || strings.HasSuffix(x.Means, ".") {
				t.Errorf("%s: %s: %q means %q", lang, x.Key, x.Term, x.Means)
			}
			if seen[x.Term] {
				t.Errorf("%s: two terms are called %q", lang, x.Term)
			}
			seen[x.Term] = true
			if i > 0 && sortKey(list[i-1].Term) > sortKey(x.Term) {
				t.Errorf("%s: %q stands before %q", lang, list[i-1].Term, x.Term)
			}
		}
	}
	if list := voiceIn(t, "es", "metric").Glossary(); list[0].Term != "abertura" || list[1].Term != "altura libre" || list[3].Term != "área abierta" {
		t.Errorf("Spanish begins with %v", list[:4])
	}
}
