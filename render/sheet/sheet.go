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

// Options are what a sheet may leave out.
type Options struct {
	NoCustomer bool            // the customer's name is not printed
	Logo       *canvas.Picture // the shop's picture, at the top of the first page; nil: none
	Accent     string          // #rrggbb, colour of the rules of the head; empty: black
}

// maker lays out one sheet.
type maker struct {
	*flow.Flow
	plan *plan.Plan
	say  *say.Voice
	opt  Options
}

// Pages lays out the setup sheet of a plan. Where little stands on its last page the room between
// the rows is closed up, if that saves the page.
func Pages(p *plan.Plan, paper page.Paper, v *say.Voice, o Options) ([]page.Face, error) {
	first, used, err := lay(p, paper, v, o, 1)
	if err != nil || len(first) == 1 || used > littleMM {
		return first, err
	}
	for _, open := range []float64{0.75, 0.5} {
		closer, _, err := lay(p, paper, v, o, open)
		if err != nil {
			return nil, err
		}
		if len(closer) < len(first) {
			return closer, nil
		}
	}
	return first, nil
}

// littleMM is what a last page should hold at least, below its head line.
const littleMM = 60.0

// lay lays the sheet out once, with a share of the usual room between rows and parts. It returns
// what is used of the last page too.
func lay(p *plan.Plan, paper page.Paper, v *say.Voice, o Options, open float64) ([]page.Face, float64, error) {
	m := maker{Flow: flow.New(paper, "setup sheet", joined(" · ", v.T("sheet-doc.heading"), p.Job, p.Title), open), plan: p, say: v, opt: o}
	m.head()
	m.warnings()
	m.placements()
	for _, l := range p.Locations {
		m.location(l)
	}
	m.note("job time", m.say.JobTime(p))
	m.ink()
	m.heat()
	m.cautions()
	m.charts()
	m.Number(func(n, of int) string {
		return v.T("sheet-doc.page", "n", fmt.Sprint(n), "of", fmt.Sprint(of))
	})
	if m.Err != nil {
		return nil, 0, fmt.Errorf("setup sheet: %w", m.Err)
	}
	return m.Pages, m.Y - m.Top(), nil
}

// location is all that is said of one print position.
func (m *maker) location(l plan.Location) {
	m.Space(flow.GapMM)
	m.Ensure(2*canvas.LineHeight(flow.Bold(12)) + stationH + 10)
	m.Paragraph("location", m.title(l), flow.Bold(12))
	m.order(l)
	m.note("rounds", m.say.Rounds(m.plan.Press.Kind, l))
	m.note("press time", m.say.PressTime(l.Time))
	m.note("base", m.say.Base(l.Base))
	m.screens(l)
	m.strokes(l)
	m.film(l)
	m.held(l)
	m.equivalents(l)
}

// note is a paragraph that may be empty.
func (m *maker) note(name, text string) {
	if text != "" {
		m.Paragraph(name, text, flow.Regular(flow.BodyPT))
	}
}

// title is the name of a location with its size, where that is stated.
func (m *maker) title(l plan.Location) string {
	if !(l.WidthMM > 0 && l.HeightMM > 0) {
		return l.Name
	}
	return m.say.T("sheet-doc.location", "name", l.Name, "size", m.say.Size(l.WidthMM, l.HeightMM))
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
func patch(s plan.Screen) flow.Cell {
	w := swatch(s)
	return flow.Cell{Patch: &w}
}

func swatch(s plan.Screen) figure.Swatch {
	if c, err := figure.ParseColor(s.Swatch); err == nil {
		return figure.Swatch{Color: &c}
	}
	return figure.Swatch{}
}

// number is the number of a screen as a cell.
func number(s plan.Screen) flow.Cell { return flow.Cell{Text: fmt.Sprint(s.Number), Strong: true} }

// color is the colour of a screen, or its ink where the job names no colour.
func (m *maker) color(s plan.Screen) string {
	if s.Color != "" {
		return s.Color
	}
	return m.say.InkName(s.Ink)
}
