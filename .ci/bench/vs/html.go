package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// writeHTML writes the sheets as a page of HTML: an inline SVG a sheet, in mm, with live text in
// the document's own font. Looks are shared as classes.
func writeHTML(dir string, all []leaf) error {
	var body bytes.Buffer
	classes := looks{prefix: "c"}
	for _, l := range all {
		fmt.Fprintf(&body, `<svg viewBox="0 0 %s %s">`+"\n", text(l.wMM, 3), text(l.hMM, 3))
		for _, op := range l.art {
			if op.Text != nil {
				svgText(&body, &classes, op.Text)
				continue
			}
			fmt.Fprintf(&body, `<path class="%s" d="%s"/>`+"\n", classes.name(svgStyle(op)), pathData(op.Path, 3, 1))
		}
		body.WriteString("</svg>\n")
	}
	var out bytes.Buffer
	fmt.Fprintf(&out, "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>cards</title><style>\n")
	fmt.Fprintf(&out, "@page{size:%[1]smm %[2]smm;margin:0}\nbody{margin:0}\nsvg{display:block;width:%[1]smm;height:%[2]smm;break-after:page}\n", text(all[0].wMM, 3), text(all[0].hMM, 3))
	out.WriteString("svg:last-child{break-after:auto}\npath{fill:none;stroke-linejoin:round}\n")
	out.WriteString("text{font-family:'DejaVu Sans Condensed','DejaVu Sans';font-stretch:condensed;font-kerning:none;font-variant-ligatures:none;white-space:pre}\n")
	for _, c := range classes.list {
		fmt.Fprintf(&out, ".%s{%s}\n", c[0], c[1])
	}
	out.WriteString("</style></head><body>\n")
	out.Write(body.Bytes())
	out.WriteString("</body></html>\n")
	return os.WriteFile(filepath.Join(dir, "cards.html"), out.Bytes(), 0o644)
}

// looks gives each look a name, once.
type looks struct {
	prefix string
	names  map[string]string
	list   [][2]string
}

func (k *looks) name(look string) string {
	if n, ok := k.names[look]; ok {
		return n
	}
	if k.names == nil {
		k.names = map[string]string{}
	}
	n := fmt.Sprintf("%s%d", k.prefix, len(k.list)+1)
	k.names[look] = n
	k.list = append(k.list, [2]string{n, look})
	return n
}

func svgStyle(op page.Op) string {
	var s []string
	if op.Fill != nil {
		s = append(s, "fill:"+hex(*op.Fill))
	}
	if op.Pen.WidthMM > 0 {
		s = append(s, "stroke:"+hex(op.Pen.Color), "stroke-width:"+text(op.Pen.WidthMM, 3))
		if len(op.Pen.DashMM) > 0 {
			var d []string
			for _, v := range op.Pen.DashMM {
				d = append(d, text(v, 3))
			}
			s = append(s, "stroke-dasharray:"+strings.Join(d, " "))
		}
	}
	return strings.Join(s, ";")
}

func svgText(b *bytes.Buffer, classes *looks, t *page.PlacedText) {
	weight := ""
	if t.Font.Face == canvas.Bold {
		weight = ";font-weight:bold"
	}
	class := classes.name("font-size:" + text(t.Font.SizePT*canvas.MMPerPT, 4) + "px;fill:" + hex(t.Color) + weight)
	fmt.Fprintf(b, `<text class="%s" x="%s" y="%s"`, class, text(t.At.X, 3), text(t.At.Y, 3))
	if t.AngleDeg != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, text(-t.AngleDeg, 3), text(t.At.X, 3), text(t.At.Y, 3))
	}
	b.WriteByte('>')
	_ = xml.EscapeText(b, []byte(t.Text)) // a buffer takes all
	b.WriteString("</text>\n")
}

// pathData writes a path in SVG's letters, lengths times scale.
func pathData(p canvas.Path, decimals int, scale float64) string {
	var b []byte
	put := func(op byte, points ...canvas.Point) {
		b = append(b, op)
		for i, q := range points {
			if i > 0 {
				b = append(b, ' ')
			}
			b = short(b, q.X*scale, decimals)
			b = append(b, ' ')
			b = short(b, q.Y*scale, decimals)
		}
	}
	for _, q := range p.Pieces {
		switch q.Op {
		case 'M', 'L':
			put(q.Op, q.P)
		case 'C':
			put('C', q.A, q.B, q.P)
		case 'Z':
			put('Z')
		}
	}
	return string(b)
}
