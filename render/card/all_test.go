package card_test

import (
	"flag"
	"os"
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/card"
	"bladecard/render/page"
	"bladecard/render/say"
)

// TestMain has rapid try 40 jobs a test; BLADECARD_FULL, or -rapid.checks, has it try more.
func TestMain(m *testing.M) {
	if os.Getenv("BLADECARD_FULL") == "" {
		if err := flag.Set("rapid.checks", "40"); err != nil {
			panic(err)
		}
	}
	m.Run()
}

// all lays out the cards of a plan.
func all(p *plan.Plan, size page.Size, v *say.Voice) (cards []page.Card, err error) {
	for c, err := range card.Each(p, size, v) {
		if err != nil {
			return nil, err
		}
		cards = append(cards, c)
	}
	return cards, nil
}

// laid are cards that are laid out, as a document takes them.
func laid(cards []page.Card) page.Cards {
	return func(yield func(page.Card, error) bool) {
		for _, c := range cards {
			if !yield(c, nil) {
				return
			}
		}
	}
}
