package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"bladecard/render/canvas"
	"bladecard/render/page"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
)

// writeTeX writes the sheets for pdfLaTeX at its fastest: the lines and shapes as PDF operators
// that TeX only hands through, no drawing package; every text set by TeX in the document's own
// font, under a metric with a slot for each letter in use; no class to speak of, and the page
// shipped out without the output routine.
func writeTeX(dir string, all []leaf) error {
	t := tex{slots: map[rune]byte{}, fonts: map[canvas.Font]string{}}
	t.assign(all)
	var body bytes.Buffer
	for _, l := range all {
		t.page(&body, l)
	}
	var out bytes.Buffer
	out.WriteString("\\documentclass{minimal}\n\\pdfcompresslevel=9\n")
	if err := t.head(&out, dir, all); err != nil {
		return err
	}
	// T: a text at x, y from the lower left corner; R: the same, turned.
	out.WriteString("\\def\\T#1,#2;#3{\\rlap{\\kern#1bp\\raise#2bp\\hbox{#3}}}\n")
	out.WriteString("\\def\\R#1,#2;#3;#4{\\rlap{\\kern#1bp\\raise#2bp\\hbox{\\pdfsave\\pdfsetmatrix{#3}\\rlap{#4}\\pdfrestore}}}\n")
	out.WriteString("\\def\\P{\\pdfliteral page}\n")
	t.letterCodes(&out)
	out.Write(body.Bytes())
	out.WriteString("\\endgroup\n\\end{document}\n")
	return os.WriteFile(filepath.Join(dir, "cards.tex"), out.Bytes(), 0o644)
}

// head names page size and fonts, and writes the fonts' files.
func (t *tex) head(out *bytes.Buffer, dir string, all []leaf) error {
	if t.err != nil {
		return t.err
	}
	out.WriteString("\\pdfgentounicode=1\n")
	fmt.Fprintf(out, "\\pdfpagewidth=%sbp\n\\pdfpageheight=%sbp\n\\pdfhorigin=0pt\n\\pdfvorigin=0pt\n", text(bp(all[0].wMM), 3), text(bp(all[0].hMM), 3))
	for i, name := range faceNames {
		fmt.Fprintf(out, "\\pdfmapline{=%[1]s <cards.enc <%[1]s.ttf}\n", name)
		if err := t.face(dir, canvas.Face(i == 1), name); err != nil {
			return err
		}
	}
	for _, f := range t.inOrder() {
		fmt.Fprintf(out, "\\font\\%s=%s at %sbp\n", t.fonts[f], faceName(f.Face), text(f.SizePT, 3))
	}
	return nil
}

// letterCodes begins the document, in which every letter but the three of TeX's own stands for itself.
func (t *tex) letterCodes(out *bytes.Buffer) {
	out.WriteString("\\begin{document}\n\\frenchspacing\n\\parindent=0pt\n")
	out.WriteString("\\begingroup\\catcode`\\#=12\\catcode`\\$=12\\catcode`\\&=12\\catcode`\\~=12\\catcode`\\_=12\\catcode`\\^=12\\endlinechar=-1\n")
	for s := 128; s < 256; s++ {
		fmt.Fprintf(out, "\\catcode%d=12 ", s)
	}
	out.WriteString("\\catcode`\\%=12\n")
}

var faceNames = [2]string{"cardsregular", "cardsbold"}

func faceName(f canvas.Face) string {
	if f == canvas.Bold {
		return faceNames[1]
	}
	return faceNames[0]
}

func bp(mm float64) float64 { return mm * 72 / 25.4 }

type tex struct {
	slots map[rune]byte // where the metric keeps a letter
	fonts map[canvas.Font]string
	high  float64 // of the page, mm
	err   error
}

// assign gives every letter a slot (ASCII its own, others from 128 up) and every size a name.
func (t *tex) assign(all []leaf) {
	next := 128
	for _, l := range all {
		for _, p := range l.art.Texts() {
			if _, ok := t.fonts[p.Font]; !ok {
				n := len(t.fonts)
				t.fonts[p.Font] = "f" + string(rune('a'+n/26)) + string(rune('a'+n%26))
			}
			for _, r := range p.Text {
				if _, ok := t.slots[r]; ok {
					continue
				}
				if r < 127 {
					t.slots[r] = byte(r)
					continue
				}
				if next > 255 {
					t.err = fmt.Errorf("more than 128 letters beyond ASCII: one TeX font does not hold them")
					return
				}
				t.slots[r] = byte(next)
				next++
			}
		}
	}
}

func (t *tex) inOrder() []canvas.Font {
	var out []canvas.Font
	for f := range t.fonts {
		out = append(out, f)
	}
	slices.SortFunc(out, func(a, b canvas.Font) int { return strings.Compare(t.fonts[a], t.fonts[b]) })
	return out
}

// page ships a sheet out. What was said of colour, width and dash is not said again until it
// changes; a run of paths is one literal.
func (t *tex) page(b *bytes.Buffer, l leaf) {
	t.high = l.hMM
	fmt.Fprintf(b, "\\shipout\\vbox to%sbp{\\hsize=%sbp\\vss\\hbox to%[2]sbp{\\P{1 j}\n", text(bp(l.hMM), 3), text(bp(l.wMM), 3))
	var said state
	font := ""
	run := false // inside a literal
	enter := func(want bool) {
		if run != want {
			if want {
				b.WriteString("\\P{")
			} else {
				b.WriteString("}\n")
			}
			run = want
		}
	}
	for _, op := range l.art {
		if p := op.Text; p != nil {
			if said.fill != rgb(p.Color) {
				enter(true)
				said.fill = rgb(p.Color)
				b.WriteString(said.fill + " rg ")
			}
			enter(false)
			if f := t.fonts[p.Font]; f != font {
				font = f
				b.WriteString("\\" + f + "\n")
			}
			t.text(b, p)
			continue
		}
		enter(true)
		t.path(b, op, &said)
	}
	enter(false)
	b.WriteString("\\hss}}\n")
}

type state struct{ fill, draw, width, dash string }

func rgb(c canvas.Color) string {
	return text(float64(c.R)/255, 3) + " " + text(float64(c.G)/255, 3) + " " + text(float64(c.B)/255, 3)
}

func (t *tex) text(b *bytes.Buffer, p *page.PlacedText) {
	x, y := text(bp(p.At.X), 2), text(bp(t.high-p.At.Y), 2)
	if p.AngleDeg == 0 {
		fmt.Fprintf(b, "\\T%s,%s;{", x, y)
	} else {
		sin, cos := math.Sincos(p.AngleDeg * math.Pi / 180)
		fmt.Fprintf(b, "\\R%s,%s;%s %s %s %s;{", x, y, text(cos, 5), text(sin, 5), text(-sin, 5), text(cos, 5))
	}
	t.letters(b, p.Text)
	b.WriteString("}\n")
}

func (t *tex) letters(b *bytes.Buffer, s string) {
	for _, r := range s {
		switch r {
		case '\\', '{', '}':
			fmt.Fprintf(b, "\\char%d ", r)
		default:
			b.WriteByte(t.slots[r])
		}
	}
}

func (t *tex) path(b *bytes.Buffer, op page.Op, said *state) {
	say := func(was *string, now, operator string) {
		if *was != now {
			*was = now
			b.WriteString(now + " " + operator + " ")
		}
	}
	paint := "S"
	if op.Fill != nil {
		say(&said.fill, rgb(*op.Fill), "rg")
		paint = "f"
	}
	if op.Pen.WidthMM > 0 {
		say(&said.draw, rgb(op.Pen.Color), "RG")
		say(&said.width, text(bp(op.Pen.WidthMM), 2), "w")
		dash := "[] 0"
		if len(op.Pen.DashMM) > 0 {
			var d []string
			for _, v := range op.Pen.DashMM {
				d = append(d, text(bp(v), 2))
			}
			dash = "[" + strings.Join(d, " ") + "] 0"
		}
		if said.dash == "" {
			said.dash = "[] 0"
		}
		say(&said.dash, dash, "d")
		if op.Fill != nil {
			paint = "B"
		}
	}
	var line []byte
	put := func(points ...canvas.Point) {
		for _, q := range points {
			line = append(short(line, bp(q.X), 2), ' ')
			line = append(short(line, bp(t.high-q.Y), 2), ' ')
		}
	}
	for _, q := range op.Path.Pieces {
		switch q.Op {
		case 'M':
			put(q.P)
			line = append(line, "m "...)
		case 'L':
			put(q.P)
			line = append(line, "l "...)
		case 'C':
			put(q.A, q.B, q.P)
			line = append(line, "c "...)
		case 'Z':
			line = append(line, "h "...)
		}
	}
	b.Write(line)
	b.WriteString(paint + " ") // no line end: TeX would drop the space before it
}

// face writes the font, its metric, and which letter stands in which slot.
func (t *tex) face(dir string, f canvas.Face, name string) error {
	var widths [256]float64 // of the type size
	letters := [256]string{}
	for r, slot := range t.slots {
		widths[slot] = page.Width(string(r), canvas.Font{Face: f, SizePT: 1}) / canvas.MMPerPT
		letters[slot] = fmt.Sprintf("/uni%04X", r)
	}
	var enc strings.Builder
	enc.WriteString("/cards [\n")
	for _, l := range letters {
		if l == "" {
			l = "/.notdef"
		}
		enc.WriteString(l + "\n")
	}
	enc.WriteString("] def\n")
	ttf := dejavusanscondensed.TTF
	if f == canvas.Bold {
		ttf = dejavusanscondensedbold.TTF
	}
	for file, data := range map[string][]byte{
		"cards.enc": []byte(enc.String()), name + ".ttf": ttf, name + ".tfm": metric(widths, letters),
	} {
		if err := os.WriteFile(filepath.Join(dir, file), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// metric is a TeX font metric file: a width a letter, one height and depth, no kerning, and a
// space between words that neither stretches nor shrinks.
func metric(widths [256]float64, letters [256]string) []byte {
	var words []uint32
	fix := func(v float64) uint32 { return uint32(int32(math.Round(v * (1 << 20)))) }
	table := []float64{0}
	info := make([]uint32, 256)
	for slot := range 256 {
		if letters[slot] == "" {
			continue
		}
		i := slices.Index(table[1:], widths[slot]) + 1
		if i == 0 {
			i = len(table)
			table = append(table, widths[slot])
		}
		info[slot] = uint32(i)<<24 | 1<<20 | 1<<16 // height 1, depth 1
	}
	const heads, heights, depths, italics, params = 2, 2, 2, 1, 7
	half := func(a, b int) { words = append(words, uint32(a)<<16|uint32(b)) }
	half(6+heads+256+len(table)+heights+depths+italics+params, heads)
	half(0, 255)
	half(len(table), heights)
	half(depths, italics)
	half(0, 0)
	half(0, params)
	words = append(words, 0, fix(10)) // no checksum; designed at 10 pt
	words = append(words, info...)
	for _, w := range table {
		words = append(words, fix(w))
	}
	words = append(words, 0, fix(canvas.Ascent), 0, fix(canvas.Descent), 0)
	space := widths[' ']
	words = append(words, 0, fix(space), 0, 0, fix(0.55), fix(1), 0)
	out := make([]byte, 0, 4*len(words))
	for _, w := range words {
		out = append(out, byte(w>>24), byte(w>>16), byte(w>>8), byte(w))
	}
	return out
}
