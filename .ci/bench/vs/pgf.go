package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"
)

// writePGF writes the sheets for pdfLaTeX as someone would who draws in LaTeX and minds the time:
// PGF's basic layer with its quick commands, not the TikZ front; the same font and metric as
// writeTeX made.
func writePGF(dir string, all []leaf) error {
	t := tex{slots: map[rune]byte{}, fonts: map[canvas.Font]string{}}
	t.assign(all)
	colors := looks{prefix: "k"}
	var body bytes.Buffer
	for _, l := range all {
		t.high = l.hMM
		fmt.Fprintf(&body, "\\shipout\\vbox to%sbp{\\hsize=%sbp\\vss\\hbox to%[2]sbp{\\begin{pgfpicture}\\pgfpathrectangle{\\pgfpointorigin}{\\pgfqpoint{%[2]sbp}{%[1]sbp}}\\pgfusepath{use as bounding box}\\pgfsetroundjoin\n", text(bp(l.hMM), 3), text(bp(l.wMM), 3))
		for _, op := range l.art {
			if p := op.Text; p != nil {
				turn := ""
				if p.AngleDeg != 0 {
					turn = ",rotate=" + text(p.AngleDeg, 3)
				}
				fmt.Fprintf(&body, "\\pgftext[left,base,at=\\pgfqpoint{%sbp}{%sbp}%s]{\\%s\\color{%s}", text(bp(p.At.X), 2), text(bp(l.hMM-p.At.Y), 2), turn, t.fonts[p.Font], colors.name(rgb(p.Color)))
				t.letters(&body, p.Text)
				body.WriteString("}\n")
				continue
			}
			t.pgfPath(&body, op, &colors)
		}
		body.WriteString("\\end{pgfpicture}\\hss}}\n")
	}
	var out bytes.Buffer
	out.WriteString("\\documentclass{minimal}\n\\usepackage{pgfcore}\n\\pdfcompresslevel=9\n")
	if err := t.head(&out, dir, all); err != nil {
		return err
	}
	for _, c := range colors.list {
		fmt.Fprintf(&out, "\\definecolor{%s}{rgb}{%s}\n", c[0], strings.ReplaceAll(c[1], " ", ","))
	}
	t.letterCodes(&out)
	out.Write(body.Bytes())
	out.WriteString("\\endgroup\n\\end{document}\n")
	return os.WriteFile(filepath.Join(dir, "pgf.tex"), out.Bytes(), 0o644)
}

func (t *tex) pgfPath(b *bytes.Buffer, op page.Op, colors *looks) {
	paint := "stroke"
	if op.Fill != nil {
		fmt.Fprintf(b, "\\pgfsetfillcolor{%s}", colors.name(rgb(*op.Fill)))
		paint = "fill"
	}
	if op.Pen.WidthMM > 0 {
		var dash strings.Builder
		for _, v := range op.Pen.DashMM {
			fmt.Fprintf(&dash, "{%sbp}", text(bp(v), 2))
		}
		fmt.Fprintf(b, "\\pgfsetstrokecolor{%s}\\pgfsetlinewidth{%sbp}\\pgfsetdash{%s}{0bp}", colors.name(rgb(op.Pen.Color)), text(bp(op.Pen.WidthMM), 2), dash.String())
		if op.Fill != nil {
			paint = "fillstroke"
		}
	}
	put := func(command string, points ...canvas.Point) {
		b.WriteString(command)
		for _, q := range points {
			fmt.Fprintf(b, "{%sbp}{%sbp}", text(bp(q.X), 2), text(bp(t.high-q.Y), 2))
		}
	}
	for _, q := range op.Path.Pieces {
		switch q.Op {
		case 'M':
			put("\\pgfpathqmoveto", q.P)
		case 'L':
			put("\\pgfpathqlineto", q.P)
		case 'C':
			put("\\pgfpathqcurveto", q.A, q.B, q.P)
		case 'Z':
			b.WriteString("\\pgfpathclose")
		}
	}
	fmt.Fprintf(b, "\\pgfusepathq%s\n", paint)
}
