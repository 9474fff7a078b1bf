package page

import (
	"fmt"

	"bladecard/render/canvas"
)

// farMM bounds every coordinate: ten metres are more than any paper.
const farMM = 10000

func checkNumbers(what string, vs ...float64) error {
	for _, v := range vs {
		if !(v >= -farMM && v <= farMM) {
			return fmt.Errorf("%s is %v; finite numbers within +-%d mm are accepted", what, v, farMM)
		}
	}
	return nil
}

func checkPen(p canvas.Pen) error {
	if !(p.WidthMM >= 0 && p.WidthMM <= farMM) {
		return fmt.Errorf("line width is %v mm; 0 or more is accepted", p.WidthMM)
	}
	sum := 0.0
	for _, d := range p.DashMM {
		if !(d >= 0 && d <= farMM) {
			return fmt.Errorf("dash is %v mm; 0 or more is accepted", d)
		}
		sum += d
	}
	if len(p.DashMM) > 0 && sum < 0.01 {
		return fmt.Errorf("dashes %v mm add up to nothing", p.DashMM)
	}
	return nil
}

func checkFont(f canvas.Font) error {
	if !(f.SizePT >= 1 && f.SizePT <= 500) {
		return fmt.Errorf("type size is %v pt; 1 to 500 is accepted", f.SizePT)
	}
	return nil
}

// checkOp tells what cannot be drawn in one piece of a drawing.
func checkOp(op canvas.Op) error {
	if t := op.Text; t != nil {
		if err := checkNumbers("text place", t.At.X, t.At.Y, t.AngleDeg); err != nil {
			return fmt.Errorf("text %q: %w", t.Text, err)
		}
		if err := checkFont(t.Font); err != nil {
			return fmt.Errorf("text %q: %w", t.Text, err)
		}
		_, err := canvas.Clean(t.Text)
		return err
	}
	for i, q := range op.Path.Pieces {
		switch q.Op {
		case 'M', 'L', 'C', 'Z':
		default:
			return fmt.Errorf("path piece %d is %q; M, L, C and Z are accepted", i+1, q.Op)
		}
		if i == 0 && q.Op != 'M' {
			return fmt.Errorf("path begins with %q; M is accepted", q.Op)
		}
		if err := checkNumbers("path point", q.A.X, q.A.Y, q.B.X, q.B.Y, q.P.X, q.P.Y); err != nil {
			return err
		}
	}
	return checkPen(op.Pen)
}

// Drawable tells what cannot be drawn in a box.
func (b Box) Drawable() error {
	if err := checkNumbers("place", b.X, b.Y, b.W, b.H, b.BaselineMM); err != nil {
		return err
	}
	if b.W < 0 || b.H < 0 {
		return fmt.Errorf("size is %g x %g mm; 0 or more is accepted", b.W, b.H)
	}
	switch b.Kind {
	case KindText:
		if err := checkFont(b.Font); err != nil {
			return err
		}
		_, err := canvas.Clean(b.Text)
		return err
	case KindRule, KindFill:
		return checkPen(b.Pen)
	case KindDrawing:
		for _, op := range b.Art {
			if err := checkOp(op); err != nil {
				return err
			}
		}
		return nil
	}
	if b.Kind == KindImage && b.Picture != nil {
		return nil
	}
	return fmt.Errorf("kind %d is not one of text, drawing, rule, fill, image with a picture", b.Kind)
}
