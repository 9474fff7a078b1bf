package main

import (
	"strings"

	"bladecard/calc/job"
	"bladecard/render/page"
)

// paperFlags declares the flags of the paper that cards are printed on.
type paperFlags struct {
	size, paper, flip string
	single            bool
	dx, dy            float64
}

func (p *paperFlags) declare(f *flags) {
	p.size, p.flip = page.Sizes[0].Name, "long"
	f.word(&p.size, "size", "a card size", "`SIZE` of a card in mm or in, one of "+strings.Join(sizeNames(), ", "), sizeNames()...)
	paperFlag(f, &p.paper)
	f.word(&p.flip, "flip", "an edge", "`EDGE` on which the printer flips the sheet: long or short", "long", "short")
	f.yes(&p.single, "single", "one card a page of the card's size, without marks")
	f.length(&p.dx, "back-right", page.MaxOffsetMM, "shift the backs right by a `LENGTH`, for a printer that is off; a number alone is mm")
	f.length(&p.dy, "back-down", page.MaxOffsetMM, "shift the backs down by a `LENGTH`")
}

// paperFlag declares --paper.
func paperFlag(f *flags, to *string) {
	f.word(to, "paper", "a paper", "`PAPER` a4 or letter; left out: the shop's", page.A4.Name, page.Letter.Name)
}

// documents is what the flags say.
func (p *paperFlags) documents() documents {
	d := documents{paper: p.paper, single: p.single, dx: p.dx, dy: p.dy}
	for _, s := range page.Sizes {
		if s.Name == p.size {
			d.size = s
		}
	}
	if p.flip == "short" {
		d.flip = page.ShortEdge
	}
	return d
}

// paperOf is the paper of the command line, else the shop's.
func paperOf(paper string, shop *job.Shop) page.Paper {
	if paper == page.Letter.Name || paper == "" && shop.Paper == page.Letter.Name {
		return page.Letter
	}
	return page.A4
}

func sizeNames() []string {
	var out []string
	for _, s := range page.Sizes {
		out = append(out, s.Name)
	}
	return out
}
