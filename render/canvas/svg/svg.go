package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"bladecard/render/canvas"
)

// Write writes what draw draws as an SVG image of w by h mm.
func Write(out io.Writer, w, h float64, draw func(canvas.Canvas) error) error {
	s := &svg{}
	fmt.Fprintf(&s.b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %[1]s %[2]s">`+"\n", mm(w), mm(h))
	fmt.Fprintf(&s.b, `<rect width="%s" height="%s" fill="#ffffff"/>`+"\n", mm(w), mm(h))
	if err := draw(s); err != nil {
		return err
	}
	s.b.WriteString("</svg>\n")
	_, err := out.Write(s.b.Bytes())
	return err
}

type svg struct{ b bytes.Buffer }

// mm writes a length with the thousandths that anyone can see.
func mm(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func hex(c canvas.Color) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Draw writes a path element.
func (s *svg) Draw(p canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	s.b.WriteString(`<path d="`)
	for _, q := range p.Pieces {
		switch q.Op {
		case 'M', 'L':
			fmt.Fprintf(&s.b, "%c%s %s", q.Op, mm(q.P.X), mm(q.P.Y))
		case 'C':
			fmt.Fprintf(&s.b, "C%s %s %s %s %s %s", mm(q.A.X), mm(q.A.Y), mm(q.B.X), mm(q.B.Y), mm(q.P.X), mm(q.P.Y))
		case 'Z':
			s.b.WriteByte('Z')
		}
	}
	s.b.WriteString(`" fill="`)
	if fill == nil {
		s.b.WriteString("none")
	} else {
		s.b.WriteString(hex(*fill))
	}
	s.b.WriteByte('"')
	if pen.WidthMM > 0 {
		fmt.Fprintf(&s.b, ` stroke="%s" stroke-width="%s"`, hex(pen.Color), mm(pen.WidthMM))
		if len(pen.DashMM) > 0 {
			var dash []string
			for _, d := range pen.DashMM {
				dash = append(dash, mm(d))
			}
			fmt.Fprintf(&s.b, ` stroke-dasharray="%s"`, strings.Join(dash, " "))
		}
	}
	s.b.WriteString("/>\n")
}

// Text writes a text element; its length is pinned to the document font's, whatever font the
// reader has.
func (s *svg) Text(x, y float64, text string, f canvas.Font, c canvas.Color, angleDeg float64) {
	if text == "" {
		return
	}
	weight := "normal"
	if f.Face == canvas.Bold {
		weight = "bold"
	}
	fmt.Fprintf(&s.b, `<text x="%s" y="%s" font-family="DejaVu Sans Condensed, DejaVu Sans, sans-serif" font-size="%s" font-weight="%s" fill="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"`,
		mm(x), mm(y), mm(f.SizePT*canvas.MMPerPT), weight, hex(c), mm(s.TextWidth(text, f)))
	if angleDeg != 0 {
		fmt.Fprintf(&s.b, ` transform="rotate(%s %s %s)"`, mm(-angleDeg), mm(x), mm(y))
	}
	s.b.WriteByte('>')
	_ = xml.EscapeText(&s.b, []byte(text)) // a buffer takes all
	s.b.WriteString("</text>\n")
}

// TextWidth is that of the document's font.
func (s *svg) TextWidth(text string, f canvas.Font) float64 { return canvas.Width(text, f) }
