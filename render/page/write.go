package page

import (
	"fmt"
	"io"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/canvas/pdf"
)

// Write draws the sheets, a page each, and writes the PDF. Nothing is written if anything is
// wrong; the error names the face and the box.
func Write(w io.Writer, m pdf.Meta, sheets []Sheet) error {
	return WriteEach(w, m, func(yield func(Sheet, error) bool) {
		for _, s := range sheets {
			if !yield(s, nil) {
				return
			}
		}
	})
}

// WriteEach is Write for sheets that are laid out one after the other. Each is drawn before the next
// is taken.
func WriteEach(w io.Writer, m pdf.Meta, sheets Sheets) error {
	return pdf.Write(w, m, func(yield func(pdf.Page, error) bool) {
		for s, err := range sheets {
			if err == nil {
				err = checkSheet(s)
			}
			if !yield(pdf.Page{Name: s.faces(), W: s.W, H: s.H, Turned: s.Turned, Draw: s.draw}, err) {
				return
			}
		}
	})
}

// faces names what is on the sheet, for error texts.
func (s Sheet) faces() string {
	var names []string
	for _, p := range s.Cards {
		names = append(names, p.Face.Name)
	}
	return fmt.Sprintf("faces %q", strings.Join(names, ", "))
}

// draw draws the sheet upright. Cards and marks of a turned page are placed on the printed page, so
// that they are turned back here.
func (s Sheet) draw(c canvas.Canvas) {
	for _, k := range s.Marks {
		if s.Turned {
			k = Mark{s.W - k.X1, s.H - k.Y1, s.W - k.X2, s.H - k.Y2}
		}
		var p canvas.Path
		p.Move(k.X1, k.Y1)
		p.Line(k.X2, k.Y2)
		c.Draw(p, nil, canvas.Pen{Color: canvas.Black, WidthMM: markPenMM})
	}
	for _, p := range s.Cards {
		at := p.Trim
		if s.Turned {
			at.X, at.Y = s.W-at.Right(), s.H-at.Bottom()
		}
		on := canvas.At(c, at.X, at.Y)
		for _, b := range p.Face.Boxes {
			b.draw(on)
		}
	}
	for _, b := range s.Notes {
		b.draw(c)
	}
}

// checkSheet finds what a page cannot hold, before anything of it is drawn.
func checkSheet(s Sheet) error {
	if !(s.W >= 10 && s.W <= farMM/2 && s.H >= 10 && s.H <= farMM/2) {
		return fmt.Errorf("size is %v x %v mm; 10 to %d mm is accepted", s.W, s.H, farMM/2)
	}
	for _, k := range s.Marks {
		if err := checkNumbers("crop mark", k.X1, k.Y1, k.X2, k.Y2); err != nil {
			return err
		}
	}
	for _, b := range s.Notes {
		if err := b.Drawable(); err != nil {
			return fmt.Errorf("%s: %w", b.Name, err)
		}
	}
	for _, p := range s.Cards {
		if err := checkNumbers("place", p.Trim.X, p.Trim.Y, p.Trim.W, p.Trim.H); err != nil {
			return fmt.Errorf("face %q: %w", p.Face.Name, err)
		}
		for _, b := range p.Face.Boxes {
			if err := b.Drawable(); err != nil {
				return fmt.Errorf("face %q: box %q: %w", p.Face.Name, b.Name, err)
			}
		}
	}
	return nil
}
