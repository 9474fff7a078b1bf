package phone

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"regexp"
	"slices"
	"strings"

	"bladecard/calc/plan"
	"bladecard/calc/seen"
	"bladecard/render/canvas"
	"bladecard/render/canvas/svg"
	"bladecard/render/charts"
	"bladecard/render/figure"
	"bladecard/render/say"
)

//go:embed page.html
var pageText string

//go:embed index.html
var indexText string

//go:embed style.css
var style string

var (
	pageTemplate  = template.Must(template.New("page").Funcs(template.FuncMap{"glue": glue}).Parse(pageText))
	indexTemplate = template.Must(template.New("index").Parse(indexText))
)

// Where a line must not break: a number keeps the words beside it and a range its ends, which browsers part behind the dash.
var (
	counted = regexp.MustCompile(`(^|[\s(])(\d+) (\pL)`)
	named   = regexp.MustCompile(`(\pL{3}) (\d)`)
	leaning = regexp.MustCompile(`(\pL) ([\d.,]+°)`)
	ranged  = regexp.MustCompile(`(\d)–(\d)`)
)

// glue is a text whose figures are not broken over lines.
func glue(text string) string {
	text = counted.ReplaceAllString(text, "$1$2\u00a0$3")
	text = leaning.ReplaceAllString(named.ReplaceAllString(text, "$1\u00a0$2"), "$1\u00a0$2")
	return ranged.ReplaceAllString(text, "$1\u2060–\u2060$2")
}

// The measures of a chart, in mm: the smaller, the larger its type on the page of a phone.
const chartW, chartH = 88.0, 76.0

// mostFaults is how many faults a screen answers on the page, as on the card.
const mostFaults = 5

// pair is a name and what belongs to it.
type pair struct{ Name, Value, Sub string }

type pageData struct {
	Lang, Title, Shop         string
	Style                     template.CSS
	Facts, Warnings, Cautions []string
	Locations                 []locationData
}

type locationData struct {
	Name, Wrong     string
	Facts, Warnings []string
	Screens         []screenData
}

type screenData struct {
	ID, HeadWord, Head, Color, Ink, Place string
	NextID, Next                          string // the print that follows; an empty NextID: no other screen
	Swatch                                template.CSS
	Brief                                 string // its warnings in few words, above what hands set
	Warnings                              []string
	Set, Facts, Faults                    []pair
	Flash, FlashSub                       string
	Lines                                 []string
	FlashOn                               bool
	Charts                                []chartData
}

type chartData struct {
	Name string
	SVG  template.HTML
}

// Write writes the page of a plan.
func Write(w io.Writer, p *plan.Plan, v *say.Voice) error {
	p = v.Named(p)
	d := pageData{
		Lang: v.Code, Title: strings.TrimSpace(p.Job + " " + p.Title), Style: template.CSS(style),
		Shop: v.T("sheet.shop", "shop", v.Shop(p.ShopFrom, p.Shop, p.ShopFile)), Warnings: texts(p.Warnings),
	}
	if p.Quantity > 0 {
		d.Facts = append(d.Facts, v.Many("day.pieces", p.Quantity))
	}
	if p.Due != "" {
		d.Facts = append(d.Facts, v.T("show.due", "date", v.Date(p.Due)))
	}
	d.Facts = append(d.Facts, p.Press.Name)
	if t := v.JobTime(p); t != "" {
		d.Facts = append(d.Facts, t)
	}
	charts, err := chartsOf(p, v)
	if err != nil {
		return err
	}
	told := map[string]bool{}
	for i, l := range p.Locations {
		at := locationData{Name: v.Location(l.Name), Wrong: v.T("card.wrong"), Warnings: texts(l.Warnings)}
		if t := v.PressTime(l.Time); t != "" {
			at.Facts = append(at.Facts, t)
		}
		for _, s := range l.Screens {
			x, err := screenOf(p, i, s, v)
			if err != nil {
				return err
			}
			x.Charts = charts[x.ID]
			at.Screens = append(at.Screens, x)
			for _, code := range s.Cautions {
				if text := v.T("caution." + code); !told[text] {
					told[text] = true
					d.Cautions = append(d.Cautions, text)
				}
			}
		}
		d.Locations = append(d.Locations, at)
	}
	if d.Cautions != nil {
		d.Cautions = append(d.Cautions, v.T("caution.defer"))
	}
	return pageTemplate.Execute(w, d)
}

func texts(list []plan.Warning) []string {
	var out []string
	for _, w := range list {
		out = append(out, w.Text)
	}
	return out
}

// brief are warnings in few words, each once; what would mend one is not among them.
func brief(list []plan.Warning, v *say.Voice) []string {
	var out []string
	for _, w := range list {
		if text := v.BriefWarning(w); !strings.HasPrefix(w.Code, "mend-") && !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// idOf names a screen on its page, as its charts are named.
func idOf(location, screen int) string {
	return fmt.Sprintf("location%d-screen%d", location+1, screen)
}

// screenOf is a screen with the figures that hands set, what to check and what to expect.
func screenOf(p *plan.Plan, location int, s plan.Screen, v *say.Voice) (screenData, error) {
	out := screenData{
		ID: idOf(location, s.Number), HeadWord: v.T("card.head"), Color: s.Color, Ink: v.InkName(s.Ink), Warnings: texts(s.Warnings),
		Place: v.T("card.screen", "n", fmt.Sprint(s.Number), "of", fmt.Sprint(s.Of)), FlashOn: s.Flash.Needed, Lines: []string{v.Flash(s.Flash), v.Cure(s.Cure)},
	}
	if text := v.Last(s); text != "" {
		out.Lines = append(out.Lines, text)
	}
	word, time, sub := v.FlashTile(s.Flash)
	out.Flash = strings.TrimSpace(word + " " + time)
	out.FlashSub = sub
	if out.Color == "" {
		out.Color, out.Ink = out.Ink, ""
	}
	if c, err := figure.ParseColor(s.Swatch); err == nil {
		out.Swatch = template.CSS(fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B))
	}
	heads := make([]string, len(s.Heads))
	for i, h := range s.Heads {
		heads[i] = fmt.Sprint(h)
	}
	if len(heads) > 1 {
		out.HeadWord = v.T("card.heads")
	}
	if out.Head = strings.Join(heads, "+"); p.Press.Kind == "flatbed" || len(heads) == 0 {
		out.HeadWord, out.Head = v.T("card.pass"), fmt.Sprint(s.Number)
	}
	flood := v.T("card.no-flood")
	if s.Flood {
		flood = v.T("card.flood")
	}
	word, count := v.Strokes(s)
	strokes := pair{word, count, flood}
	unit, air, also := v.Air(s)
	label := v.T("card.by-hand")
	if unit != "" {
		label = v.T("card.air", "unit", unit)
	}
	edge := v.T("card.edge-" + s.Blade.Edge)
	if s.Blade.LengthMM > 0 {
		edge = v.Length(s.Blade.LengthMM) + " · " + edge
	}
	out.Set = []pair{
		{v.T("card.blade"), s.Blade.Layup, edge},
		{v.T("card.angle"), v.Angle(s.AngleDeg.Set), v.T("card.hold", "range", v.AngleRange(s.AngleDeg.Low, s.AngleDeg.High))},
		strokes,
		{label, air, also},
	}
	film := v.T("phone.cured")
	if s.HeightMM != nil { // as on its charts
		film = v.T("phone.flat")
	}
	out.Facts = []pair{
		{v.T("card.angle"), v.T("card.to-screen", "angle", v.Angle(s.AngleDeg.ToScreen)), ""},
		{v.T("show.mesh"), s.Mesh.Name, ""},
		{v.T("show.eom"), v.Fine(s.Stencil.EOMUM), ""},
		{v.T("show.wet"), v.Comb(s, " "), ""},
		{film, v.FilmUM(s.CuredUM.Value) + " (" + v.FilmRange(s.CuredUM.Low, s.CuredUM.High) + ")", ""},
		{v.T("show.target"), v.FilmRange(s.TargetUM.Low, s.TargetUM.High), ""},
		{v.T("phone.gap"), v.Gap(s.OffContact.Low, s.OffContact.High), ""},
	}
	if s.Halftone != nil {
		out.Facts = slices.Insert(out.Facts, 2, pair{v.T("day.col-dots"), v.Dots(*s.Halftone), ""})
	}
	out.Brief = strings.Join(brief(s.Warnings, v), " · ")
	out.Next = v.Next(p, s)[0]
	if n := s.Next; n != nil && n.Screen != s.Number {
		out.NextID = idOf(location, n.Screen)
	}
	faults, err := seen.Likely(p, location+1, s.Number, mostFaults)
	if err != nil {
		return screenData{}, err
	}
	for _, f := range faults {
		var do []string
		for _, c := range f.Changes[:min(2, len(f.Changes))] {
			do = append(do, v.Do(c))
		}
		out.Faults = append(out.Faults, pair{v.T("seen-name." + f.Seen), strings.Join(do, v.T("card.then")), ""})
	}
	return out, nil
}

// chartsOf draws the charts of all screens, by the name of the screen.
func chartsOf(p *plan.Plan, v *say.Voice) (map[string][]chartData, error) {
	out := map[string][]chartData{}
	for _, f := range charts.Files(p, v) {
		at := strings.LastIndex(f.Name, "-")
		var b bytes.Buffer
		if err := svg.Write(&b, chartW, chartH, func(c canvas.Canvas) error { return f.Draw(c, chartW, chartH) }); err != nil {
			return nil, err
		}
		text := b.String()
		if i := strings.Index(text, "<svg"); i > 0 {
			text = text[i:] // without the declaration of a file of its own
		}
		id := f.Name[:at]
		out[id] = append(out[id], chartData{v.T("phone.chart-" + f.Name[at+1:]), template.HTML(text)})
	}
	return out, nil
}

// Job is a line of the index.
type Job struct{ File, Title, Sub string }

// WriteIndex writes the page that leads to the jobs.
func WriteIndex(w io.Writer, jobs []Job, v *say.Voice) error {
	return indexTemplate.Execute(w, struct {
		Lang, Title string
		Style       template.CSS
		Jobs        []Job
	}{v.Code, v.T("phone.jobs"), template.CSS(style), jobs})
}
