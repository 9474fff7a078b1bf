package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"bladecard/calc/choose"
	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/render/canvas"
	"bladecard/render/card"
	"bladecard/render/page"
	"bladecard/render/say"
)

// leaf is one page as the other ways get it: its size and all that is painted on it, in order.
type leaf struct {
	wMM, hMM float64
	art      page.Art
}

// leaves lays the job out as the cards command does with --flip short (so that no page is turned)
// and takes the drawing down, piece by piece.
func leaves(jobPath string) ([]leaf, error) {
	src, err := os.ReadFile(jobPath)
	if err != nil {
		return nil, err
	}
	j, errs := file.DecodeJob(jobPath, src)
	if len(errs) > 0 {
		return nil, errs[0]
	}
	shopPath := filepath.Join(filepath.Dir(jobPath), j.ShopPath)
	if src, err = os.ReadFile(shopPath); err != nil {
		return nil, err
	}
	shop, errs := file.DecodeShop(shopPath, src)
	if len(errs) > 0 {
		return nil, errs[0]
	}
	if errs = job.Resolve(j, shop); len(errs) > 0 {
		return nil, errs[0]
	}
	voice, err := say.New(shop.Language, shop.Units)
	if err != nil {
		return nil, err
	}
	p, errs := choose.Make(j, shop)
	if len(errs) > 0 {
		return nil, errs[0]
	}
	voice.Fill(p)
	cards, err := card.All(p, page.Card132, voice)
	if err != nil {
		return nil, err
	}
	sheets, err := page.Impose(page.A4, page.Card132, cards, page.Options{
		Flip: page.ShortEdge, Title: strings.TrimSpace(p.Job + " " + p.Title), FlipNote: voice.T("sheet.flip-short"),
		FrontNote: voice.T("sheet.front"), BackNote: voice.T("sheet.back"),
	})
	if err != nil {
		return nil, err
	}
	var out []leaf
	for _, s := range sheets {
		l, err := takeDown(s)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

func takeDown(s page.Sheet) (leaf, error) {
	if s.Turned {
		return leaf{}, fmt.Errorf("sheet %d is turned", s.Number)
	}
	var err error
	keep := func(e error) {
		if err == nil {
			err = e
		}
	}
	art := page.Record(func(c canvas.Canvas) {
		for _, k := range s.Marks {
			var p canvas.Path
			p.Move(k.X1, k.Y1)
			p.Line(k.X2, k.Y2)
			c.Draw(p, nil, canvas.Pen{Color: canvas.Black, WidthMM: 0.15})
		}
		for _, p := range s.Cards {
			for _, b := range p.Face.Boxes {
				keep(draw(page.At(c, p.Trim.X, p.Trim.Y), b))
			}
		}
		for _, b := range s.Notes {
			keep(draw(c, b))
		}
	})
	var painted page.Art
	for _, op := range art {
		if op.Text != nil && op.Text.Text == "" || op.Text == nil && (len(op.Path.Pieces) == 0 || op.Fill == nil && op.Pen.WidthMM <= 0) {
			continue // paints nothing
		}
		painted = append(painted, op)
	}
	return leaf{s.W, s.H, painted}, err
}

// draw paints a box as the PDF does; the comparison of words and paths would tell if the two parted.
func draw(c canvas.Canvas, b page.Box) error {
	switch b.Kind {
	case page.KindText:
		x, y := b.X, b.BaselineMM
		switch free := b.W - page.Width(b.Text, b.Font); b.Align {
		case page.Center:
			x += free / 2
		case page.Right:
			x += free
		}
		if y == 0 {
			y = canvas.Ascent * b.Font.SizePT * canvas.MMPerPT
		}
		c.Text(x, b.Y+y, b.Text, b.Font, b.Color, 0)
	case page.KindRule:
		var p canvas.Path
		p.Move(b.X, b.Y)
		p.Line(b.Right(), b.Bottom())
		c.Draw(p, nil, b.Pen)
	case page.KindFill:
		var p canvas.Path
		p.Move(b.X, b.Y)
		p.Line(b.Right(), b.Y)
		p.Line(b.Right(), b.Bottom())
		p.Line(b.X, b.Bottom())
		p.Close()
		c.Draw(p, b.Fill, b.Pen)
	case page.KindDrawing:
		b.Art.Play(page.At(c, b.X, b.Y))
	default:
		return fmt.Errorf("box %q is of a kind that the other ways are not told of", b.Name)
	}
	return nil
}
