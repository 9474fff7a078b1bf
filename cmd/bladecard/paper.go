package main

import (
	"flag"
	"fmt"
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

func (f *paperFlags) declare(fs *flag.FlagSet) {
	fs.StringVar(&f.size, "size", page.Sizes[0].Name, "card size in mm or in, one of "+sizeNames()+"; the `SIZE`")
	fs.StringVar(&f.paper, "paper", "", "`PAPER` a4 or letter; left out: the shop's")
	fs.StringVar(&f.flip, "flip", "long", "`EDGE` about which the printer turns the sheet: long or short")
	fs.BoolVar(&f.single, "single", false, "one card a page of the card's size, without marks")
	fs.Float64Var(&f.dx, "back-right", 0, "shift the backs right by `MM`, for a printer that is off")
	fs.Float64Var(&f.dy, "back-down", 0, "shift the backs down by `MM`")
}

// documents reads the flags; wrong tells what is wrong with one.
func (f *paperFlags) documents() (d documents, wrong string) {
	d = documents{paper: f.paper, single: f.single, dx: f.dx, dy: f.dy}
	var ok bool
	if d.size, ok = sizeOf(f.size); !ok {
		return d, notOneOf("--size", f.size, "a card size", sizeNames())
	}
	flips := map[string]page.Flip{"long": page.LongEdge, "short": page.ShortEdge}
	if d.flip, ok = flips[f.flip]; !ok {
		return d, notOneOf("--flip", f.flip, "an edge", "long, short")
	}
	return d, wrongPaper(f.paper)
}

// wrongPaper tells what is wrong with the word of --paper; empty when nothing is.
func wrongPaper(paper string) string {
	if paper == "" || paper == page.A4.Name || paper == page.Letter.Name {
		return ""
	}
	return notOneOf("--paper", paper, "a paper", "a4, letter")
}

// notOneOf tells that a flag's word is none of those accepted, and which may have been meant.
func notOneOf(name, word, what, accepted string) string {
	near := job.Nearest(word, strings.Split(accepted, ", "))
	if near != "" {
		near = "did you mean " + near + "? "
	}
	return fmt.Sprintf("%s %q is not %s; %saccepted: %s", name, word, what, near, accepted)
}

// paperOf is the paper of the command line, else the shop's.
func paperOf(paper string, shop *job.Shop) page.Paper {
	if paper == page.Letter.Name || paper == "" && shop.Paper == page.Letter.Name {
		return page.Letter
	}
	return page.A4
}

func sizeOf(name string) (page.Size, bool) {
	for _, s := range page.Sizes {
		if s.Name == name {
			return s, true
		}
	}
	return page.Size{}, false
}

func sizeNames() string {
	var out []string
	for _, s := range page.Sizes {
		out = append(out, s.Name)
	}
	return strings.Join(out, ", ")
}
