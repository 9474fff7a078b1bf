package card_test

import (
	"bladecard/calc/plan"
	"bladecard/render/card"
	"bladecard/render/page"
	"bladecard/render/say"
)

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
