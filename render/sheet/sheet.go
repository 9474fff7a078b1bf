package sheet

import (
	"fmt"
	"strings"

	"bladecard/calc/plan"
	"bladecard/render/figure"
	"bladecard/render/page"
	"bladecard/render/say"
)

// Options are what a sheet may leave out.
type Options struct {
	NoCustomer bool          // the customer's name is not printed
	Logo       *page.Picture // the shop's picture, at the top of the first page; nil: none
	Accent     string        // #rrggbb, colour of the rules of the head; empty: black
}

// maker lays out one sheet.
type maker struct {
	*flow
	plan *plan.Plan
	say  *say.Voice
	opt  Options
}

// Pages lays out the setup sheet of a plan.
func Pages(p *plan.Plan, paper page.Paper, v *say.Voice, o Options) ([]page.Face, error) {
	m := maker{flow: &flow{paper: paper, again: joined(" · ", v.T("sheet-doc.heading"), p.Job, p.Title)}, plan: p, say: v, opt: o}
	m.next()
	m.head()
	m.warnings()
	for _, l := range p.Locations {
		m.location(l)
	}
	m.ink()
	m.heat()
	m.cautions()
	m.number(func(n, of int) string {
		return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of))
	})
	if m.err != nil {
		return nil, fmt.Errorf("setup sheet: %w", m.err)
	}
	return m.pages, nil
}

// location is all that is said of one print position.
func (m *maker) location(l plan.Location) {
	name := l.Name
	if l.WidthMM > 0 && l.HeightMM > 0 {
		name = m.say.T("sheet-doc.location", "name", l.Name, "size", m.say.Size(l.WidthMM, l.HeightMM))
	}
	m.space(gapMM)
	m.ensure(2*page.LineHeight(bold(12)) + stationH + 10)
	m.paragraph("location", name, bold(12))
	m.order(l)
	m.placement(l)
	m.screens(l)
	m.strokes(l)
	m.film(l)
	m.held(l)
	m.equivalents(l)
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

// patch is the colour of a screen's ink as a cell.
func patch(s plan.Screen) cell {
	w := swatch(s)
	return cell{patch: &w}
}

func swatch(s plan.Screen) figure.Swatch {
	if c, err := figure.ParseColor(s.Swatch); err == nil {
		return figure.Swatch{Color: &c}
	}
	return figure.Swatch{}
}

// number is the number of a screen as a cell.
func number(s plan.Screen) cell { return cell{text: fmt.Sprint(s.Number), strong: true} }

// color is the colour of a screen, or its ink where the job names no colour.
func color(s plan.Screen) string {
	if s.Color != "" {
		return s.Color
	}
	return s.Ink
}
