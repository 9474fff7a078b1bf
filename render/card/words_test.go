package card_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bladecard/render/internal/plantest"
	"bladecard/render/page"

	"github.com/BurntSushi/toml"
)

// sampleJobs are the texts of all sample jobs.
func sampleJobs(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../samples/jobs/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	var out []string
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, string(src))
	}
	return out
}

// sampleCards are the cards of all sample jobs.
func sampleCards(t *testing.T, size page.Size) []page.Card {
	t.Helper()
	var out []page.Card
	for _, src := range sampleJobs(t) {
		p, v := plantest.Text(t, "../../samples/jobs", src)
		cards, err := all(p, size, v)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, cards...)
	}
	return out
}

// TestOnlyLabelsAreTheSame: a text that all cards share is one of the language file without a
// figure or a name to fill in. Everything else differs somewhere.
func TestOnlyLabelsAreTheSame(t *testing.T) {
	var file map[string]any
	if _, err := toml.DecodeFile("../../templates/lang/en.toml", &file); err != nil {
		t.Fatal(err)
	}
	labels := map[string]bool{}
	for _, table := range file {
		if words, is := table.(map[string]any); is {
			for _, w := range words {
				if s, is := w.(string); is && !strings.Contains(s, "{") {
					labels[strings.Join(strings.Fields(s), " ")] = true
				}
			}
		}
	}
	cards := sampleCards(t, page.Card132)
	for side, face := range map[string]func(page.Card) page.Face{
		"front": func(c page.Card) page.Face { return c.Front },
		"back":  func(c page.Card) page.Face { return c.Back },
	} {
		common := drawn(face(cards[0]))
		for _, c := range cards[1:] {
			words := drawn(face(c))
			for name, text := range common {
				if words[name] != text {
					delete(common, name)
				}
			}
		}
		same := 0
		for name, text := range common {
			if text == "" { // a rule or the colour
				continue
			}
			if same++; !labels[text] {
				t.Errorf("%s: every card has %q in %q, which is no label", side, text, name)
			}
		}
		if side == "back" && same < 5 {
			t.Errorf("%d labels are shared; the log strip alone has six", same)
		}
	}
}
