package main

import (
	"bladecard/calc/job"
	"bladecard/render/page"
)

// declare declares the flags of the paper that cards are printed on.
func (d *documents) declare(f *flags) {
	var sizes []string
	for _, s := range page.Sizes {
		sizes = append(sizes, s.Name)
	}
	d.size, d.flip = sizes[0], flipLong
	f.word(&d.size, "size", "SIZE", "a card size", sizes...)
	paperFlag(f, &d.paper)
	f.word(&d.flip, "flip", "EDGE", "an edge", flipLong, flipShort)
	f.yes(&d.single, "single")
	f.length(&d.dx, "back-right", page.MaxOffsetMM)
	f.length(&d.dy, "back-down", page.MaxOffsetMM)
}

// paperFlag declares --paper.
func paperFlag(f *flags, to *string) {
	f.word(to, "paper", "PAPER", "a paper", page.A4.Name, page.Letter.Name)
}

// paperOf is the paper of the command line, else the shop's.
func paperOf(paper string, shop *job.Shop) page.Paper {
	if paper == page.Letter.Name || paper == "" && shop.Paper == page.Letter.Name {
		return page.Letter
	}
	return page.A4
}
