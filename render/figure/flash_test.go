package figure

import (
	"errors"
	"testing"

	"bladecard/render/canvas"
)

// TestFlash: with a flash the block is black, its word white, and a lamp is drawn; without one
// it is white with a black word. Both stay in their place.
func TestFlash(t *testing.T) {
	r := Rect{5, 5, 28, 17}
	for _, c := range []struct {
		needed     bool
		ground     canvas.Color
		word       canvas.Color
		leastPaths int
		mostPaths  int
	}{{true, canvas.Black, canvas.White, 7, 7}, {false, canvas.White, canvas.Black, 1, 1}} {
		rec := &recorder{}
		if err := (Flash{Needed: c.needed, Word: "flash", SizePT: 14}).Draw(rec, r); err != nil {
			t.Fatal(err)
		}
		rec.clean(t, r, 14)
		if n := len(rec.paths); n < c.leastPaths || n > c.mostPaths {
			t.Errorf("needed %v: %d paths, %d to %d are wanted", c.needed, n, c.leastPaths, c.mostPaths)
		}
		if *rec.paths[0].fill != c.ground || len(rec.texts) != 1 || rec.texts[0].color != c.word {
			t.Errorf("needed %v: ground %v, texts %v", c.needed, *rec.paths[0].fill, rec.texts)
		}
	}
	// Two lines leave the lamp out before the word.
	rec := &recorder{}
	if err := (Flash{Needed: true, Word: "flash twice", SizePT: 14}).Draw(rec, Rect{0, 0, 22, 14}); err != nil || len(rec.texts) != 2 {
		t.Errorf("two lines: %v, %d", err, len(rec.texts))
	}
	if err := (Flash{Word: "flashflashflash", SizePT: 14}).Draw(&recorder{}, Rect{0, 0, 12, 6}); !errors.Is(err, ErrNoRoom) {
		t.Errorf("no room: %v", err)
	}
}

// TestPulls: an arrow a stroke, a dashed one back for each flood, all in their place.
func TestPulls(t *testing.T) {
	r := Rect{2, 2, 15, 12}
	for n := 1; n <= mostPulls; n++ {
		for _, flood := range []bool{false, true} {
			rec := &recorder{}
			if err := (Pulls{Strokes: n, Flood: flood}).Draw(rec, r); err != nil {
				t.Fatal(err)
			}
			rec.clean(t, r, SmallestPT)
			heads, dashed := 0, 0
			for _, p := range rec.paths {
				if p.fill != nil {
					heads++
				}
				if p.pen.DashMM != nil {
					dashed++
				}
			}
			if want := map[bool]int{true: n}[flood]; heads != n || dashed != want {
				t.Errorf("%d strokes, flood %v: %d heads, %d dashed", n, flood, heads, dashed)
			}
		}
	}
	for _, n := range []int{0, -1, mostPulls + 1} {
		if err := (Pulls{Strokes: n}).Draw(&recorder{}, r); err == nil {
			t.Errorf("%d strokes are drawn", n)
		}
	}
}
