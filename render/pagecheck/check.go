// Package pagecheck tells what is wrong with a laid-out page. Tests ask it of every paper; the program does not
// link it.
//
// It tells of two boxes that overlap, unless one of them is marked Under (a panel, a swatch, a frame that others
// lie on); of texts and drawings outside the safe area; of any box outside the face; of text under the smallest
// size, wider or taller than its box; and of what cannot be drawn. Inside a drawing it tells of ink outside the
// box, of small type, and of labels on each other.
package pagecheck

import (
	"fmt"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// slack is what two boxes may overlap, or one may reach out, before Check speaks, in mm:
// less than a hair line.
const slack = 0.06

// Check tells all that is wrong with a face, of which text is at least so large, in boxes and in drawings. Each
// error names the face and the box.
func Check(f page.Face, smallestPT float64) []error {
	c := checker{face: f, smallestPT: smallestPT}
	if !finite(f.W, f.H, f.Safe.X, f.Safe.Y, f.Safe.W, f.Safe.H) {
		c.say("", "size is %g x %g mm, safe area %v", f.W, f.H, f.Safe)
		return c.errs
	}
	sound := make([]bool, len(f.Boxes))
	for i, b := range f.Boxes {
		if err := b.Drawable(); err != nil {
			c.say(b.Name, "%w", err)
			continue
		}
		sound[i] = true
		c.box(b)
	}
	for i := range f.Boxes {
		for j := range i {
			if sound[i] && sound[j] {
				c.pair(&f.Boxes[i], &f.Boxes[j])
			}
		}
	}
	return c.errs
}

type checker struct {
	face       page.Face
	smallestPT float64
	errs       []error
}

func (c *checker) say(box, format string, args ...any) {
	at := fmt.Sprintf("face %q", c.face.Name)
	if box != "" {
		at += fmt.Sprintf(": box %q", box)
	}
	c.errs = append(c.errs, fmt.Errorf("%s: %w", at, fmt.Errorf(format, args...)))
}

func (c *checker) box(b page.Box) {
	if by := beyond(b.Rect, page.Rect{W: c.face.W, H: c.face.H}); by > slack {
		c.say(b.Name, "reaches %.2f mm out of the face of %g x %g mm", by, c.face.W, c.face.H)
	}
	switch b.Kind {
	case page.KindText:
		c.inSafe(b)
		c.text(b)
	case page.KindDrawing:
		c.inSafe(b)
		c.drawing(b)
	}
}

func (c *checker) inSafe(b page.Box) {
	if by := beyond(b.Rect, c.face.Safe); by > slack {
		c.say(b.Name, "reaches %.2f mm out of the safe area", by)
	}
}

func (c *checker) text(b page.Box) {
	if b.Font.SizePT < c.smallestPT-0.001 {
		c.say(b.Name, "text %q is %.4g pt; %.4g pt and more is accepted", b.Text, b.Font.SizePT, c.smallestPT)
	}
	if w := canvas.Width(b.Text, b.Font); w > b.W+slack {
		c.say(b.Name, "text %q is %.2f mm wide; the box takes %.2f mm", b.Text, w, b.W)
	}
	p := b.Baseline()
	above, below := canvas.Ink(b.Text, b.Font)
	if by := max(b.Y-(p.Y-above), p.Y+below-b.Bottom()); by > slack {
		c.say(b.Name, "text %q reaches %.2f mm above or below its box", b.Text, by)
	}
}

func (c *checker) drawing(b page.Box) {
	inside := page.Rect{W: b.W, H: b.H}
	var texts []canvas.PlacedText
	for _, op := range b.Art {
		if op.Text == nil {
			if r, ok := PathBounds(op.Path, op.Pen); ok && (op.Fill != nil || op.Pen.WidthMM > 0) {
				if by := beyond(r, inside); by > slack {
					c.say(b.Name, "a path reaches %.2f mm out of the drawing", by)
				}
			}
			continue
		}
		t := *op.Text
		if t.Font.SizePT < c.smallestPT-0.001 {
			c.say(b.Name, "label %q is %.4g pt; %.4g pt and more is accepted", t.Text, t.Font.SizePT, c.smallestPT)
		}
		q := textQuad(t)
		if by := beyond(q.bounds(), inside); by > slack {
			c.say(b.Name, "label %q reaches %.2f mm out of the drawing", t.Text, by)
		}
		for _, o := range texts {
			if by := q.overlap(textQuad(o)); by > slack {
				c.say(b.Name, "label %q lies %.2f mm on label %q", t.Text, by, o.Text)
			}
		}
		texts = append(texts, t)
	}
}

// pair tells whether two boxes lie on each other. A ground may carry others, but not on the
// labels of its own drawing.
func (c *checker) pair(a, b *page.Box) {
	if a.Under && b.Under {
		return
	}
	if a.Under || b.Under {
		ground, on := a, b
		if b.Under {
			ground, on = b, a
		}
		for _, t := range ground.Art.Texts() {
			t.At.X += ground.X
			t.At.Y += ground.Y
			if by := textQuad(t).overlap(rectQuad(inkRect(on))); by > slack {
				c.say(on.Name, "lies %.2f mm on label %q of box %q", by, t.Text, ground.Name)
			}
		}
		return
	}
	if by := overlap(inkRect(a), inkRect(b)); by > slack {
		c.say(a.Name, "lies %.2f mm on box %q", by, b.Name)
	}
}

// inkRect is the box; for a rule, with the width of its line.
func inkRect(b *page.Box) page.Rect {
	if b.Kind != page.KindRule {
		return b.Rect
	}
	return b.Rect.Inset(-b.Pen.WidthMM / 2)
}
