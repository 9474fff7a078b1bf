package page

import (
	"fmt"

	"bladecard/render/canvas"
)

// slack is what two boxes may overlap, or one may reach out, before Check speaks, in mm:
// less than a hair line.
const slack = 0.06

// Rules are what Check asks of a face.
type Rules struct {
	SmallestPT        float64 // smallest type of a text box
	SmallestDrawingPT float64 // smallest type inside drawings; 0: SmallestPT
}

// Check tells all that is wrong with a face: see the package comment. Each error names the
// face and the box.
func Check(f Face, r Rules) []error {
	c := checker{face: f, rules: r}
	if r.SmallestDrawingPT == 0 {
		c.rules.SmallestDrawingPT = r.SmallestPT
	}
	if err := checkNumbers("size", f.W, f.H, f.Safe.X, f.Safe.Y, f.Safe.W, f.Safe.H); err != nil {
		c.say("", "%w", err)
		return c.errs
	}
	sound := make([]bool, len(f.Boxes))
	for i, b := range f.Boxes {
		if err := checkBox(b); err != nil {
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
	face  Face
	rules Rules
	errs  []error
}

func (c *checker) say(box, format string, args ...any) {
	at := fmt.Sprintf("face %q", c.face.Name)
	if box != "" {
		at += fmt.Sprintf(": box %q", box)
	}
	c.errs = append(c.errs, fmt.Errorf("%s: %w", at, fmt.Errorf(format, args...)))
}

func (c *checker) box(b Box) {
	if by := b.Rect.beyond(Rect{0, 0, c.face.W, c.face.H}); by > slack {
		c.say(b.Name, "reaches %.2f mm out of the face of %g x %g mm", by, c.face.W, c.face.H)
	}
	switch b.Kind {
	case KindText:
		c.inSafe(b)
		c.text(b)
	case KindDrawing:
		c.inSafe(b)
		c.drawing(b)
	}
}

func (c *checker) inSafe(b Box) {
	if by := b.Rect.beyond(c.face.Safe); by > slack {
		c.say(b.Name, "reaches %.2f mm out of the safe area", by)
	}
}

func (c *checker) text(b Box) {
	smallest := b.SmallestPT
	if smallest == 0 {
		smallest = c.rules.SmallestPT
	}
	if b.Font.SizePT < smallest-0.001 {
		c.say(b.Name, "text %q is %.4g pt; %.4g pt and more is accepted", b.Text, b.Font.SizePT, smallest)
	}
	if w := canvas.Width(b.Text, b.Font); w > b.W+slack {
		c.say(b.Name, "text %q is %.2f mm wide; the box takes %.2f mm", b.Text, w, b.W)
	}
	p := b.baseline()
	above, below := canvas.Ink(b.Text, b.Font)
	if by := max(b.Y-(p.Y-above), p.Y+below-b.Bottom()); by > slack {
		c.say(b.Name, "text %q reaches %.2f mm above or below its box", b.Text, by)
	}
}

func (c *checker) drawing(b Box) {
	inside := Rect{0, 0, b.W, b.H}
	var texts []canvas.PlacedText
	for _, op := range b.Art {
		if op.Text == nil {
			if r, ok := pathBounds(op.Path, op.Pen); ok && (op.Fill != nil || op.Pen.WidthMM > 0) {
				if by := r.beyond(inside); by > slack {
					c.say(b.Name, "a path reaches %.2f mm out of the drawing", by)
				}
			}
			continue
		}
		t := *op.Text
		if t.Font.SizePT < c.rules.SmallestDrawingPT-0.001 {
			c.say(b.Name, "label %q is %.4g pt; %.4g pt and more is accepted", t.Text, t.Font.SizePT, c.rules.SmallestDrawingPT)
		}
		q := textQuad(t)
		if by := q.bounds().beyond(inside); by > slack {
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
func (c *checker) pair(a, b *Box) {
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
			if by := textQuad(t).overlap(rectQuad(on.inkRect())); by > slack {
				c.say(on.Name, "lies %.2f mm on label %q of box %q", by, t.Text, ground.Name)
			}
		}
		return
	}
	if by := a.inkRect().overlap(b.inkRect()); by > slack {
		c.say(a.Name, "lies %.2f mm on box %q", by, b.Name)
	}
}

// inkRect is the box; for a rule, with the width of its line.
func (b *Box) inkRect() Rect {
	if b.Kind != KindRule {
		return b.Rect
	}
	return b.Rect.Inset(-b.Pen.WidthMM / 2)
}
