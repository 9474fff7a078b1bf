package sheet

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/canvas"
	"bladecard/render/figure"
	"bladecard/render/flow"
	"bladecard/render/page"
	"bladecard/render/say"
)

// Options are what a sheet may leave out, and what of the shop is no part of a plan.
type Options struct {
	NoCustomer bool            // the customer's name is not printed
	Logo       *canvas.Picture // the shop's picture, at the top of the first page; nil: none
	Accent     string          // #rrggbb, color of the rule of the head; empty: black
	Contact    string          // who to call; empty: a line to write it on
}

// maker lays out one sheet.
type maker struct {
	*flow.Flow
	plan *plan.Plan
	say  *say.Voice
	opt  Options
	code func(canvas.Canvas) error // what a phone reads of the job
}

// leastOpen is the least share of the usual room between rows.
const leastOpen = 0.25

// Pages lays out the setup sheet of a plan. The room between the rows is closed up where that brings all that the
// press needs onto the first page.
func Pages(p *plan.Plan, paper page.Paper, v *say.Voice, o Options) ([]page.Face, error) {
	p = v.Named(p)
	code, err := figure.Code(v.JobCode(p), codeMM)
	if err != nil {
		return nil, fmt.Errorf("setup sheet: %w", err)
	}
	lay := func(open float64) maker {
		m := maker{Flow: flow.New(paper, "setup sheet", joined(" · ", v.T("sheet-doc.heading"), p.Job, p.Title), open), plan: p, say: v, opt: o, code: code}
		m.front()
		return m
	}
	m := lay(1)
	if len(m.Pages) == 2 {
		if closest := lay(leastOpen); len(closest.Pages) == 1 {
			m = closest
			for _, open := range []float64{0.8, 0.6, 0.4} {
				if closer := lay(open); len(closer.Pages) == 1 {
					m = closer
					break
				}
			}
		}
	}
	m.Open = 1
	m.details()
	m.heat()
	m.ink()
	m.charts()
	m.Number(func(n, of int) string {
		return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of))
	})
	if m.Err != nil {
		return nil, fmt.Errorf("setup sheet: %w", m.Err)
	}
	return m.Pages, nil
}

// front is all that the press needs.
func (m *maker) front() {
	m.head()
	m.warnings()
	for i, l := range m.plan.Locations {
		m.place(l, i == 0)
		m.order(l)
		m.screens(l)
	}
	m.swaps()
	m.note("job time", m.say.JobTime(m.plan))
	m.firstPrint()
	m.cautions()
}

// note is a paragraph that may be empty. Its last word never stands alone on a line.
func (m *maker) note(name, text string) {
	if text == "" {
		return
	}
	font := flow.Regular(flow.SmallPT)
	lines := canvas.Wrap(text, font, m.Width()-m.Side)
	if last := lines[len(lines)-1]; !strings.Contains(last, " ") {
		if before, more := strings.CutSuffix(text, " "+last); more {
			text = before + "\u00a0" + last
		}
	}
	m.Paragraph(name, text, font)
}

// joined joins what is not empty.
func joined(sep string, parts ...string) string {
	var out []string
	for _, s := range parts {
		if s != "" {
			out = append(out, s)
		}
	}
	return strings.Join(out, sep)
}

func swatch(s plan.Screen) figure.Swatch {
	if c, err := figure.ParseColor(s.Swatch); err == nil {
		return figure.Swatch{Color: &c}
	}
	return figure.Swatch{}
}

// number is the number of a screen as a cell, and patch its color.
func number(s plan.Screen) flow.Cell { return flow.Cell{Text: fmt.Sprint(s.Number), Strong: true} }
func patch(s plan.Screen) flow.Cell  { return flow.Patch(swatch(s)) }

// member is a screen as a row of several names it.
type member struct {
	location string
	number   int
}

// shortMM is the most that a short name takes.
const shortMM = 36.0

// short is a name that stands whole elsewhere, cut for a row of a table; its last word stays, which often tells it
// from the others.
func short(name string) string {
	font := flow.Bold(flow.SmallPT)
	if canvas.Width(name, font) <= shortMM {
		return name
	}
	last := name[strings.LastIndexByte(name, ' ')+1:]
	if w := canvas.Width(last, font); w < shortMM/2 {
		head, _ := canvas.Cut(name, font, shortMM-w)
		return head + " " + last
	}
	head, _ := canvas.Cut(name, font, shortMM)
	return head
}

// members lists screens, each location with its own after sep; their numbers alone where the job has one location.
func (m *maker) members(list []member, sep string) string {
	var out strings.Builder
	for i, x := range list {
		switch {
		case i > 0 && x.location == list[i-1].location:
			out.WriteString(", ")
		case len(m.plan.Locations) > 1:
			if i > 0 {
				out.WriteString(sep)
			}
			out.WriteString(short(x.location) + "\u00a0") // the number stays with its location
		}
		out.WriteString(fmt.Sprint(x.number))
	}
	return out.String()
}

// color is the color of a screen, or its ink where the job names no color.
func (m *maker) color(s plan.Screen) string {
	if s.Color != "" {
		return s.Color
	}
	return m.say.InkName(s.Ink)
}
