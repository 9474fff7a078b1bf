package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"path/filepath"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// writeODG writes the sheets as a flat OpenDocument drawing: a drawing page a sheet, a path shape
// a path, a text frame a text in the document's own font. Looks are shared as styles.
func writeODG(dir string, all []leaf) error {
	o := odg{shapes: looks{prefix: "g"}, types: looks{prefix: "t"}, dashes: looks{prefix: "d"}}
	var body bytes.Buffer
	for i, l := range all {
		fmt.Fprintf(&body, `<draw:page draw:name="p%d" draw:master-page-name="sheet">`+"\n", i+1)
		for _, op := range l.art {
			if op.Text != nil {
				o.text(&body, op.Text)
			} else {
				o.path(&body, op)
			}
		}
		body.WriteString("</draw:page>\n")
	}
	var out bytes.Buffer
	out.WriteString(`<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0" xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.graphics">
<office:font-face-decls><style:font-face style:name="card" svg:font-family="'DejaVu Sans Condensed'"/></office:font-face-decls>
<office:styles>
`)
	for _, d := range o.dashes.list {
		fmt.Fprintf(&out, `<draw:stroke-dash draw:name="%s" draw:style="rect" %s/>`+"\n", d[0], d[1])
	}
	out.WriteString("</office:styles>\n<office:automatic-styles>\n")
	fmt.Fprintf(&out, `<style:page-layout style:name="paper"><style:page-layout-properties fo:margin="0mm" fo:page-width="%smm" fo:page-height="%smm" style:print-orientation="landscape"/></style:page-layout>`+"\n", text(all[0].wMM, 3), text(all[0].hMM, 3))
	for _, s := range o.shapes.list {
		fmt.Fprintf(&out, `<style:style style:name="%s" style:family="graphic"><style:graphic-properties %s/></style:style>`+"\n", s[0], s[1])
	}
	out.WriteString(`<style:style style:name="frame" style:family="graphic"><style:graphic-properties draw:stroke="none" draw:fill="none" fo:padding-top="0mm" fo:padding-bottom="0mm" fo:padding-left="0mm" fo:padding-right="0mm" fo:wrap-option="no-wrap" draw:auto-grow-width="true" draw:auto-grow-height="true" draw:textarea-horizontal-align="left" draw:textarea-vertical-align="top"/></style:style>` + "\n")
	for _, s := range o.types.list {
		fmt.Fprintf(&out, `<style:style style:name="%s" style:family="paragraph"><style:paragraph-properties fo:margin="0mm"/><style:text-properties style:font-name="card" style:letter-kerning="false" %s/></style:style>`+"\n", s[0], s[1])
	}
	out.WriteString("</office:automatic-styles>\n<office:master-styles><style:master-page style:name=\"sheet\" style:page-layout-name=\"paper\"/></office:master-styles>\n<office:body><office:drawing>\n")
	out.Write(body.Bytes())
	out.WriteString("</office:drawing></office:body></office:document>\n")
	return os.WriteFile(filepath.Join(dir, "cards.fodg"), out.Bytes(), 0o644)
}

type odg struct{ shapes, types, dashes looks }

// path writes a line, or a shape whose view box is what it covers, in hundredths of a mm.
func (o *odg) path(b *bytes.Buffer, op page.Op) {
	style := `draw:fill="none"`
	if op.Fill != nil {
		style = `draw:fill="solid" draw:fill-color="` + hex(*op.Fill) + `"`
	}
	if op.Pen.WidthMM > 0 {
		style += fmt.Sprintf(` svg:stroke-color="%s" svg:stroke-width="%smm" draw:stroke-linejoin="round"`, hex(op.Pen.Color), text(op.Pen.WidthMM, 3))
		if len(op.Pen.DashMM) > 0 {
			style += ` draw:stroke="dash" draw:stroke-dash="` + o.dashes.name(dash(op.Pen.DashMM)) + `"`
		} else {
			style += ` draw:stroke="solid"`
		}
	} else {
		style += ` draw:stroke="none"`
	}
	name := o.shapes.name(style)
	straight := len(op.Path.Pieces) == 2
	for _, q := range op.Path.Pieces {
		straight = straight && q.Op != 'C' && q.Op != 'Z'
	}
	if straight {
		p, q := op.Path.Pieces[0].P, op.Path.Pieces[1].P
		fmt.Fprintf(b, `<draw:line draw:style-name="%s" svg:x1="%smm" svg:y1="%smm" svg:x2="%smm" svg:y2="%smm"/>`+"\n", name, text(p.X, 3), text(p.Y, 3), text(q.X, 3), text(q.Y, 3))
		return
	}
	x0, y0, x1, y1 := bounds(op.Path)
	moved := canvas.Path{}
	for _, q := range op.Path.Pieces {
		moved.Pieces = append(moved.Pieces, canvas.Piece{Op: q.Op, A: canvas.Point{X: q.A.X - x0, Y: q.A.Y - y0}, B: canvas.Point{X: q.B.X - x0, Y: q.B.Y - y0}, P: canvas.Point{X: q.P.X - x0, Y: q.P.Y - y0}})
	}
	w, h := max(x1-x0, 0.01), max(y1-y0, 0.01)
	fmt.Fprintf(b, `<draw:path draw:style-name="%s" svg:x="%smm" svg:y="%smm" svg:width="%smm" svg:height="%smm" svg:viewBox="0 0 %d %d" svg:d="%s"/>`+"\n",
		name, text(x0, 3), text(y0, 3), text(w, 3), text(h, 3), hundredths(w), hundredths(h), pathData(moved, 0, 100))
}

// dash is the pattern as OpenDocument says it: up to two kinds of dash with one gap.
func dash(d []float64) string {
	s := fmt.Sprintf(`draw:dots1="1" draw:dots1-length="%smm" draw:distance="%smm"`, text(d[0], 3), text(d[1%len(d)], 3))
	if len(d) >= 4 {
		s += fmt.Sprintf(` draw:dots2="1" draw:dots2-length="%smm"`, text(d[2], 3))
	}
	return s
}

// hhea ascent of the face, as a share of the type size: where the office puts the baseline.
const odgAscent = 0.928

func (o *odg) text(b *bytes.Buffer, t *page.PlacedText) {
	weight := ""
	if t.Font.Face == canvas.Bold {
		weight = ` fo:font-weight="bold"`
	}
	look := o.types.name(fmt.Sprintf(`fo:font-size="%spt" fo:color="%s"%s`, text(t.Font.SizePT, 2), hex(t.Color), weight))
	em := t.Font.SizePT * canvas.MMPerPT
	drop := odgAscent * em
	size := fmt.Sprintf(`svg:width="%smm" svg:height="%smm"`, text(page.Width(t.Text, t.Font)+0.2, 3), text((canvas.Ascent+canvas.Descent)*em, 3))
	if t.AngleDeg == 0 {
		fmt.Fprintf(b, `<draw:frame draw:style-name="frame" %s svg:x="%smm" svg:y="%smm">`, size, text(t.At.X, 3), text(t.At.Y-drop, 3))
	} else {
		angle := t.AngleDeg * math.Pi / 180
		sin, cos := math.Sincos(angle)
		fmt.Fprintf(b, `<draw:frame draw:style-name="frame" %s draw:transform="rotate(%s) translate(%smm %smm)">`, size, text(angle, 6), text(t.At.X-drop*sin, 3), text(t.At.Y-drop*cos, 3))
	}
	fmt.Fprintf(b, `<draw:text-box><text:p text:style-name="%s">`, look)
	_ = xml.EscapeText(b, []byte(t.Text)) // a buffer takes all
	b.WriteString("</text:p></draw:text-box></draw:frame>\n")
}
