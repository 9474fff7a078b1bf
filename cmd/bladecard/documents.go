package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/render/canvas/pdf"
	"bladecard/render/card"
	"bladecard/render/page"
	"bladecard/render/sheet"
)

// The edges that a printer flips paper on, as --flip takes them.
const (
	flipLong  = "long"
	flipShort = "short"
)

// documents is what the command line says of a job's paper.
type documents struct {
	size       string // a name of page.Sizes
	paper      string // a4, letter; empty: the shop's
	flip       string // flipLong, flipShort
	single     bool
	dx, dy     float64 // mm that the backs move
	noCustomer bool
}

// cards writes the cards of a job as one PDF.
func (d documents) cards(w io.Writer, l loaded) error {
	sheets, err := d.cardSheets(l)
	if err != nil {
		return fmt.Errorf("%s: %w", l.path, err)
	}
	m := meta(l, "sheet.subject")
	if !d.single {
		m.Duplex = d.edge().Duplex()
	}
	return page.WriteEach(w, m, sheets)
}

func (d documents) edge() page.Flip {
	if d.flip == flipShort {
		return page.ShortEdge
	}
	return page.LongEdge
}

// cardSheets lays the cards of a job out on sheets, while the sheets are taken.
func (d documents) cardSheets(l loaded) (page.Sheets, error) {
	size := page.Sizes[max(0, slices.IndexFunc(page.Sizes, func(s page.Size) bool { return s.Name == d.size }))]
	p := l.printed()
	return page.Impose(paperOf(d.paper, l.shop), size, card.Count(p), card.Each(p, size, l.voice), page.Options{
		Single: d.single, Flip: d.edge(), BackDX: d.dx, BackDY: d.dy,
		Title: titleOf(l), FlipNote: l.voice.T("sheet.flip-" + d.flip),
		FrontNote: l.voice.T("sheet.front"), BackNote: l.voice.T("sheet.back"),
		ShopNote: l.voice.T("sheet.shop", "shop", l.voice.Shop(l.plan.ShopFrom, l.plan.Shop, l.plan.ShopFile)),
	})
}

// sheet writes the setup sheet of a job.
func (d documents) sheet(w io.Writer, l loaded) error {
	logo, err := l.floor.picture()
	if err != nil {
		return err
	}
	faces, err := sheet.Pages(l.printed(), paperOf(d.paper, l.shop), l.voice, sheet.Options{NoCustomer: d.noCustomer, Logo: logo, Accent: l.shop.Accent, Contact: l.shop.Contact})
	if err != nil {
		return fmt.Errorf("%s: %w", l.path, err)
	}
	return page.Write(w, meta(l, "sheet-doc.subject"), page.Pages(faces...))
}

// putPages writes the paper of a shop to a file; the key has its title and subject in the words of the language.
func (c *call) putPages(to *disk.Writer, path string, f *floor, key string, faces []page.Face) error {
	m := pdf.Meta{Title: f.voice.T(key + ".title"), Author: f.shop.Name, Subject: f.voice.T(key + ".subject"), Language: f.voice.Code}
	return c.put(to, path, func(w io.Writer) error { return page.Write(w, m, page.Pages(faces...)) })
}

func titleOf(l loaded) string { return strings.TrimSpace(l.plan.Job + " " + l.plan.Title) }

// meta is what a PDF says of itself. Its date is the job's day of delivery, never the clock's.
func meta(l loaded, subject string) pdf.Meta {
	m := pdf.Meta{Title: titleOf(l), Author: l.plan.Shop, Subject: l.voice.T(subject), Language: l.voice.Code}
	if day, err := time.Parse(time.DateOnly, l.plan.Due); err == nil {
		m.Date = day
	}
	return m
}
