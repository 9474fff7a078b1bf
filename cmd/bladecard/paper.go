package main

import (
	"strings"

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
	f.word(&d.size, "size", "a card size", "`SIZE` card size in mm or in: "+strings.Join(sizes, ", ")+"; default: "+sizes[0], sizes...)
	paperFlag(f, &d.paper)
	f.word(&d.flip, "flip", "an edge", "`EDGE` the edge that the printer flips on: long (default) or short", flipLong, flipShort)
	f.yes(&d.single, "single", "one card per page at its own size, without crop marks")
	f.length(&d.dx, "back-right", page.MaxOffsetMM, "`LENGTH` moves the backs right where the printer is off, such as \"0.5 mm\"")
	f.length(&d.dy, "back-down", page.MaxOffsetMM, "`LENGTH` moves the backs down")
}

// paperFlag declares --paper.
func paperFlag(f *flags, to *string) {
	f.word(to, "paper", "a paper", "`PAPER` a4 or letter; default: the shop's", page.A4.Name, page.Letter.Name)
}

// paperOf is the paper of the command line, else the shop's.
func paperOf(paper string, shop *job.Shop) page.Paper {
	if paper == page.Letter.Name || paper == "" && shop.Paper == page.Letter.Name {
		return page.Letter
	}
	return page.A4
}
