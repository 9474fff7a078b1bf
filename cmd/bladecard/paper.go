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
	f.word(&p.size, "size", "a card size", "`SIZE` card size in mm or in: "+strings.Join(sizeNames(), ", ")+"; default: "+page.Sizes[0].Name, sizeNames()...)
	paperFlag(f, &p.paper)
	f.word(&p.flip, "flip", "an edge", "`EDGE` the edge that the printer flips on: long (default) or short", "long", "short")
	f.yes(&p.single, "single", "one card per page at its own size, without crop marks")
	f.length(&p.dx, "back-right", page.MaxOffsetMM, "`LENGTH` moves the backs right where the printer is off, such as \"0.5 mm\"")
	f.length(&p.dy, "back-down", page.MaxOffsetMM, "`LENGTH` moves the backs down")
}

// paperFlag declares --paper.
func paperFlag(f *flags, to *string) {
	f.word(to, "paper", "a paper", "`PAPER` a4 or letter; default: the shop's", page.A4.Name, page.Letter.Name)
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
