package page

import (
	"bytes"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

var papers = []Paper{A4, Letter}

// behind is where a rectangle of the printed back page lies on the front page, seen through the
// paper, when the sheet was turned about the given edge: about its upright axis x mirrors, about
// its level axis y mirrors.
func behind(s Sheet, f Flip, r Rect) Rect {
	if uprightAxis := (s.W < s.H) == (f == LongEdge); uprightAxis {
		r.X = s.W - r.X - r.W
	} else {
		r.Y = s.H - r.Y - r.H
	}
	return r
}

// Front n and back n share the trim on both flips, for every size, paper and number of cards.
// Their upper edges are the same edge of the paper.
func TestDuplexRegistration(t *testing.T) {
	for _, p := range papers {
		for _, size := range Sizes {
			for _, flip := range []Flip{LongEdge, ShortEdge} {
				for _, n := range []int{1, 2, 3, 4, 5, 9} {
					sheets, err := impose(p, size, dummies(size, n), Options{Flip: flip})
					if err != nil {
						t.Fatal(err)
					}
					seen := 0
					for i := 0; i < len(sheets); i += 2 {
						front, back := sheets[i], sheets[i+1]
						if front.Back || !back.Back || front.Number != back.Number || front.Turned {
							t.Fatalf("%s %s: pages %d and %d are not front and back", p.Name, size.Name, i, i+1)
						}
						for k, f := range front.Cards {
							b := back.Cards[k]
							if f.Index != seen || b.Index != seen {
								t.Errorf("card %d is in place of %d", f.Index, seen)
							}
							seen++
							got := behind(front, flip, b.Trim)
							if math.Abs(got.X-f.Trim.X) > 0.1 || math.Abs(got.Y-f.Trim.Y) > 0.1 || !near(got.W, f.Trim.W) || !near(got.H, f.Trim.H) {
								t.Errorf("%s %s flip %d: back %+v is not behind front %+v", p.Name, size.Name, flip, got, f.Trim)
							}
							// About the level axis, what is printed upright stands on its head
							// against the front: then the page must be turned, else not.
							if upsideDown := (back.W > back.H) == (flip == LongEdge); back.Turned != upsideDown {
								t.Errorf("%s %s flip %d: turned %v", p.Name, size.Name, flip, back.Turned)
							}
						}
					}
					if seen != n {
						t.Errorf("%s %s: %d cards placed of %d", p.Name, size.Name, seen, n)
					}
				}
			}
		}
	}
}

// On an unturned back the columns are reversed, the rows are kept.
func TestBackReversesColumns(t *testing.T) {
	sheets, err := impose(A4, Card132, dummies(Card132, 4), Options{Flip: ShortEdge})
	if err != nil {
		t.Fatal(err)
	}
	want := []Rect{{16.5, 9, 132, 96}, {148.5, 9, 132, 96}, {16.5, 105, 132, 96}, {148.5, 105, 132, 96}}
	for k, other := range []int{1, 0, 3, 2} {
		if got := sheets[0].Cards[k].Trim; got != want[k] {
			t.Errorf("front %d at %+v, want %+v", k+1, got, want[k])
		}
		if got := sheets[1].Cards[k].Trim; got != want[other] {
			t.Errorf("back %d at %+v, want %+v", k+1, got, want[other])
		}
	}
}

func TestBackOffset(t *testing.T) {
	for _, flip := range []Flip{LongEdge, ShortEdge} {
		plain, err := impose(A4, Card132, dummies(Card132, 4), Options{Flip: flip})
		if err != nil {
			t.Fatal(err)
		}
		moved, err := impose(A4, Card132, dummies(Card132, 4), Options{Flip: flip, BackDX: 1.2, BackDY: -0.7})
		if err != nil {
			t.Fatal(err)
		}
		for k := range plain[1].Cards {
			a, b := plain[1].Cards[k].Trim, moved[1].Cards[k].Trim
			if !near(b.X-a.X, 1.2) || !near(b.Y-a.Y, -0.7) {
				t.Errorf("flip %d: back %d moved by %v, %v", flip, k+1, b.X-a.X, b.Y-a.Y)
			}
			if plain[0].Cards[k].Trim != moved[0].Cards[k].Trim {
				t.Errorf("flip %d: front %d moved", flip, k+1)
			}
		}
	}
	for _, d := range []float64{6, -6, math.NaN(), math.Inf(1)} {
		if _, err := impose(A4, Card132, nil, Options{BackDY: d}); err == nil {
			t.Errorf("offset %v is taken", d)
		}
	}
}

// Crop marks and notes stay off every trim and inside the printable edge, also when the back is
// shifted; every line of cut has a mark at both ends when it is not.
func TestMarksAndNotes(t *testing.T) {
	for _, p := range papers {
		for _, size := range Sizes {
			for _, flip := range []Flip{LongEdge, ShortEdge} {
				for _, d := range []float64{0, 0.4, -2, 5} {
					o := Options{Flip: flip, BackDX: d, BackDY: -d / 2, Title: strings.Repeat("Lakeside ", 40), FlipNote: "flip on the edge", FrontNote: "front", BackNote: "back"}
					sheets, err := impose(p, size, dummies(size, size.Cols*size.Rows), o)
					if err != nil {
						t.Fatal(err)
					}
					for i, s := range sheets {
						printable := Rect{0, 0, s.W, s.H}.Inset(EdgeMM)
						var things []Rect
						for _, m := range s.Marks {
							things = append(things, Rect{min(m.X1, m.X2), min(m.Y1, m.Y2), math.Abs(m.X2 - m.X1), math.Abs(m.Y2 - m.Y1)})
						}
						if whole := 2 * (size.Cols + 1 + size.Rows + 1); len(s.Marks) != whole && (d == 0 || !s.Back) {
							t.Errorf("%s %s: %d marks, want %d", p.Name, size.Name, len(s.Marks), whole)
						}
						for _, n := range s.Notes {
							r := n.Rect
							if s.Turned {
								r.X, r.Y = s.W-r.Right(), s.H-r.Bottom()
							}
							for _, m := range things[:len(s.Marks)] {
								if overlap(m.Inset(-markPenMM/2), r) > 0 {
									t.Errorf("%s %s page %d: %s lies on a mark", p.Name, size.Name, i+1, n.Name)
								}
							}
							if canvas.Width(n.Text, n.Font) > n.W {
								t.Errorf("%s is wider than its place", n.Name)
							}
							things = append(things, r)
						}
						if want := 2; len(s.Notes) != want && (d == 0 || !s.Back) {
							t.Errorf("%s %s: %d notes, want %d", p.Name, size.Name, len(s.Notes), want)
						}
						for _, r := range things {
							if by := beyond(r, printable); by > 1e-6 {
								t.Errorf("%s %s page %d: %+v is %.2f mm in the unprintable edge", p.Name, size.Name, i+1, r, by)
							}
							for _, c := range s.Cards {
								if by := overlap(r.Inset(-markPenMM/2), c.Trim); by > 0 {
									t.Errorf("%s %s page %d: %+v is %.2f mm inside a trim", p.Name, size.Name, i+1, r, by)
								}
							}
						}
					}
				}
			}
		}
	}
}

// The flip and the side stand on the margin.
func TestNotesSayTheFlip(t *testing.T) {
	sheets, err := impose(Letter, Card132, dummies(Card132, 5), Options{Title: "2417 Lakeside", FlipNote: "long edge", FrontNote: "front", BackNote: "back"})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"front · 1/2 · long edge", "back · 1/2 · long edge", "front · 2/2 · long edge", "back · 2/2 · long edge"} {
		notes := sheets[i].Notes
		if notes[0].Text != "2417 Lakeside" || notes[1].Text != want {
			t.Errorf("page %d: %q, %q", i+1, notes[0].Text, notes[1].Text)
		}
	}
}

func TestSingle(t *testing.T) {
	sheets, err := impose(A4, Card6x4, dummies(Card6x4, 3), Options{Single: true, BackDX: 1, Title: "x"})
	if err != nil {
		t.Fatal(err)
	}
	if len(sheets) != 6 {
		t.Fatalf("%d pages", len(sheets))
	}
	for i, s := range sheets {
		if s.W != 152.4 || s.H != 101.6 || s.Back != (i%2 == 1) || s.Turned || len(s.Marks)+len(s.Notes) > 0 ||
			s.Cards[0].Trim != (Rect{0, 0, 152.4, 101.6}) || s.Cards[0].Index != i/2 {
			t.Errorf("page %d: %+v", i+1, s.Cards[0].Trim)
		}
	}
}

func TestImposeRefuses(t *testing.T) {
	wrong := dummies(Card148, 1)
	if _, err := impose(A4, Card132, wrong, Options{}); err == nil || !strings.Contains(err.Error(), "132 x 96 mm is accepted") {
		t.Errorf("a card of another size: %v", err)
	}
	if _, err := impose(Paper{"a6", 105, 148}, Card132, nil, Options{}); err == nil || !strings.Contains(err.Error(), "crop marks") {
		t.Errorf("a paper too small: %v", err)
	}
	if _, err := impose(A4, Size{}, nil, Options{}); err == nil || !strings.Contains(err.Error(), "132x96, 148x105, 6x4") {
		t.Errorf("no size: %v", err)
	}
	nan := Card132
	nan.W = math.NaN()
	if _, err := impose(A4, nan, []Card{{Face{W: math.NaN(), H: 96}, Face{}}}, Options{}); err == nil {
		t.Error("a size that is not a number is taken")
	}
}

func TestPages(t *testing.T) {
	f := Face{Name: "page", W: 210, H: 297, Boxes: []Box{Text("t", 20, 20, 50, 0, "words", small, canvas.Black, Left)}}
	s := Pages(f, f)
	if len(s) != 2 || s[1].W != 210 || s[1].H != 297 || s[1].Number != 2 || len(s[1].Marks) > 0 {
		t.Errorf("%+v", s)
	}
}

// TestCardsAreTakenWithTheirSheet: a sheet takes its own cards and no others before it is drawn, an error of a card
// ends the document at its page, and what is not drawn is not laid out.
func TestCardsAreTakenWithTheirSheet(t *testing.T) {
	list := dummies(Card132, 10)
	taken := 0
	cards := func(fail int) Cards {
		return func(yield func(Card, error) bool) {
			taken = 0
			for i, c := range list {
				var err error
				if i == fail {
					err = errors.New("no ink")
				}
				if taken++; !yield(c, err) {
					return
				}
			}
		}
	}
	sheets, err := Impose(A4, Card132, len(list), cards(-1), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var seen []int
	for s, err := range sheets {
		if err != nil {
			t.Fatal(err)
		}
		seen = append(seen, taken, len(s.Cards))
	}
	if want := []int{4, 4, 4, 4, 8, 4, 8, 4, 10, 2, 10, 2}; !slices.Equal(seen, want) {
		t.Errorf("cards taken and placed, a page after the other: %v; %v is wanted", seen, want)
	}
	for range sheets {
		break
	}
	if taken != 4 {
		t.Errorf("%d cards are laid out for one page", taken)
	}
	if sheets, err = Impose(A4, Card132, len(list), cards(5), Options{}); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := WriteEach(&out, pdf.Meta{}, sheets); err == nil || !strings.Contains(err.Error(), "page 3: no ink") || out.Len() > 0 {
		t.Errorf("%v, and %d bytes are written", err, out.Len())
	}
	if taken != 6 {
		t.Errorf("%d cards are laid out; the sixth fails", taken)
	}
}
