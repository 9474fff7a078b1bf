package page_test

import (
	"bytes"
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
	"bladecard/render/page"
	"bladecard/render/pagecheck"
)

// A card from boxes to paper: place, check, impose, write.
func Example() {
	side := func(name string) page.Face {
		size := page.Card132
		f := page.Face{Name: name, W: size.W, H: size.H, Safe: page.Rect{X: 5, Y: 13, W: size.W - 10, H: size.H - 18}}
		bold := page.Style{Font: canvas.Font{Face: canvas.Bold, SizePT: 24}}
		title := page.Fit("title", page.Rect{X: 5, Y: 14, W: 122, H: 12}, name, bold, 14)
		f.Boxes = append(f.Boxes, title.Boxes...)
		f.Boxes = append(f.Boxes, page.Drawing("dot", 5, 40, 30, 10, func(c canvas.Canvas) {
			c.Text(1, 8, "a dot", canvas.Font{SizePT: 14}, canvas.Black, 0)
		}))
		return f
	}
	card := page.Card{Front: side("front of 1"), Back: side("back of 1")}
	for _, f := range []page.Face{card.Front, card.Back} {
		fmt.Println(f.Name, pagecheck.Check(f, 14))
	}
	cards := func(yield func(page.Card, error) bool) { yield(card, nil) }
	sheets, err := page.Impose(page.A4, page.Card132, 1, cards, page.Options{Flip: page.LongEdge})
	if err != nil {
		fmt.Println(err)
		return
	}
	var out bytes.Buffer
	err = page.WriteEach(&out, pdf.Meta{Title: "one card", Language: "en"}, sheets)
	fmt.Println(out.Len() > 0, err)
	// Output:
	// front of 1 []
	// back of 1 []
	// true <nil>
}
