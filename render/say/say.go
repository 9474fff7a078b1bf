package say

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"bladecard/templates"
)

// Voice speaks one language in one system of units.
type Voice struct {
	words templates.Words
	inch  bool
	mil   bool   // films in mil
	point string // decimal sign
	Code  string // language code
}

// New returns the voice of a language (en) in units metric or inch.
func New(language, units string) (*Voice, error) {
	if language == "" {
		language = "en"
	}
	w, err := templates.Language(language)
	if err != nil {
		return nil, err
	}
	return &Voice{words: w, inch: units == "inch", point: w["number.point"], Code: language}, nil
}

// InMil returns the voice with its films and stencils in thousandths of an inch.
func (v *Voice) InMil() *Voice {
	w := *v
	w.mil = true
	return &w
}

// T is the text of a key with every {name} replaced: pairs are name, value, name, value. A key
// that the language lacks is a fault of the program and panics with its name.
func (v *Voice) T(key string, pairs ...string) string {
	s, ok := v.words[key]
	if !ok {
		panic("say: the language " + v.Code + " has no text for " + key)
	}
	if len(pairs) == 0 {
		return s
	}
	return fill(s, pairs)
}

// fill puts values in the place of the {names} of s, in one pass: what looks like a name in a value
// stays as it is.
func fill(s string, pairs []string) string {
	var out strings.Builder
	out.Grow(len(s) + 32)
	for {
		open := strings.IndexByte(s, '{')
		if open < 0 {
			break
		}
		size := strings.IndexByte(s[open:], '}')
		if size < 0 {
			break
		}
		value, known := s[open:open+size+1], false
		for i := 0; i+1 < len(pairs) && !known; i += 2 {
			if known = pairs[i] == s[open+1:open+size]; known {
				value = pairs[i+1]
			}
		}
		out.WriteString(s[:open])
		out.WriteString(value)
		s = s[open+size+1:]
	}
	out.WriteString(s)
	return out.String()
}

// DecimalComma tells whether the language writes decimals with a comma, as its spreadsheets then do.
func (v *Voice) DecimalComma() bool { return v.point == "," }

// Has tells whether the language has a text for the key.
func (v *Voice) Has(key string) bool { _, ok := v.words[key]; return ok }

// Number writes a value with the given decimals, without needless zeros.
func (v *Voice) Number(x float64, decimals int) string {
	s := v.fixed(x, decimals)
	if decimals > 0 {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), v.point)
	}
	return s
}

// Film rounds a film to what its band allows: tenths below 10 um, whole um below 100, steps of
// 5 um above; hundredths of a mil. Zeros are kept. Only the number; FilmUM adds the unit.
func (v *Voice) Film(um float64) string { return v.filmLike(um, um) }

// filmLike writes a film with the digits that another has.
func (v *Voice) filmLike(um, like float64) string {
	switch a := math.Abs(like); {
	case v.mil:
		return v.fixed(um/25.4, 2)
	case a < 9.95:
		return v.fixed(um, 1)
	case a < 99.5:
		return v.fixed(um, 0)
	}
	return v.fixed(math.Round(um/5)*5, 0)
}

// FilmUM is a film with its unit.
func (v *Voice) FilmUM(um float64) string { return v.Film(um) + v.filmUnit() }

func (v *Voice) filmUnit() string {
	if v.mil {
		return nbsp + v.T("unit.mil")
	}
	return nbsp + "µm"
}

// FilmLike is a film with its unit and the digits that another film has.
func (v *Voice) FilmLike(um, like float64) string { return v.filmLike(um, like) + v.filmUnit() }

// FilmRange is a range of films, "33–51 µm", with the digits of its middle, or a single figure where the ends are
// alike; FilmEnds leaves the unit out.
func (v *Voice) FilmRange(low, high float64) string { return v.FilmEnds(low, high) + v.filmUnit() }

func (v *Voice) FilmEnds(low, high float64) string {
	mid := middle(low, high)
	a, b := v.filmLike(low, mid), v.filmLike(high, mid)
	if a == b && !v.mil && mid >= 9.95 { // so narrow that it takes a digit more
		decimals := 1
		if mid >= 99.5 {
			decimals = 0
		}
		if c, d := v.fixed(low, decimals), v.fixed(high, decimals); c != d {
			a, b = c, d
		}
	}
	if a == b {
		return a
	}
	return a + "–" + b
}

// FilmBoth is a film with its unit, in an inch shop with mil beside it: "38 µm (1.5 mil)".
func (v *Voice) FilmBoth(um float64) string {
	if !v.inch || v.mil {
		return v.FilmUM(um)
	}
	return v.FilmUM(um) + " (" + v.fixed(um/25.4, 1) + nbsp + v.T("unit.mil") + ")"
}

// FilmRangeBoth is a range of films, in an inch shop with mil beside it: "33–51 µm (1.3–2.0 mil)".
func (v *Voice) FilmRangeBoth(low, high float64) string {
	if !v.inch || v.mil {
		return v.FilmRange(low, high)
	}
	return v.FilmRange(low, high) + " (" + v.fixed(low/25.4, 1) + "–" + v.fixed(high/25.4, 1) + nbsp + v.T("unit.mil") + ")"
}

// Fine is a thickness that is known better than a film: whole micrometres.
func (v *Voice) Fine(um float64) string {
	if v.mil {
		return v.FilmUM(um)
	}
	return v.Number(um, 0) + nbsp + "µm"
}

// Signed is a change of film with its sign, "+12 µm".
func (v *Voice) Signed(um float64) string { return sign(um) + v.FilmUM(math.Abs(um)) }

// Prints tells whether a change of film is more than nothing once it is rounded.
func (v *Voice) Prints(um float64) bool { return strings.Trim(v.Film(um), "-0"+v.point) != "" }

// SignedPercent is a change in percent with its sign: tenths below 10, zeros kept.
func (v *Voice) SignedPercent(p float64) string {
	d := 0
	if math.Abs(p) < 9.95 {
		d = 1
	}
	text := v.fixed(math.Abs(p), d)
	if v.Number(math.Abs(p), d) == "0" {
		text = v.some(math.Abs(p), d)
	}
	return sign(p) + text + nbsp + "%"
}

// Percent is a share of 1 in percent.
func (v *Voice) Percent(share float64) string { return v.some(100*share, 0) + nbsp + "%" }

// Angle is an angle in degrees, halves kept.
func (v *Voice) Angle(deg float64) string { return v.Number(deg, 1) + "°" }

// AngleRange is a range of angles, "10–20°".
func (v *Voice) AngleRange(low, high float64) string {
	if v.Number(low, 1) == v.Number(high, 1) {
		return v.Angle(low)
	}
	return v.Number(low, 1) + "–" + v.Angle(high)
}

// Length is a length in mm, or in inches by the marks of a rule.
func (v *Voice) Length(mm float64) string {
	switch {
	case v.inch:
		return v.inches(mm, 2) + nbsp + v.T("unit.inch")
	case mm < 10:
		return v.some(mm, 2) + nbsp + "mm"
	}
	return v.Number(mm, 0) + nbsp + "mm"
}

// Lengths is a range of lengths, "71–102 mm"; a single one where both ends are alike.
func (v *Voice) Lengths(lowMM, highMM float64) string {
	low, high := v.Length(lowMM), v.Length(highMM)
	if low == high {
		return low
	}
	return low[:strings.LastIndex(low, nbsp)] + "–" + high
}

// Size is a width and a height.
func (v *Voice) Size(wMM, hMM float64) string {
	if v.inch {
		return v.inches(wMM, 2) + " × " + v.inches(hMM, 2) + nbsp + v.T("unit.inch")
	}
	return v.Number(wMM, 0) + " × " + v.Number(hMM, 0) + nbsp + "mm"
}

// Thickness is the thickness of rubber: tenths of mm, or sixteenths or thousandths of an inch.
func (v *Voice) Thickness(mm float64) string {
	if v.inch {
		return v.inches(mm, 3) + nbsp + v.T("unit.inch")
	}
	return v.some(mm, 1) + nbsp + "mm"
}

// Load is a line load in N/cm, or in pounds per inch.
func (v *Voice) Load(nPerCM float64) string {
	if v.inch {
		return v.some(nPerCM*2.54/4.4482216152605, 1) + nbsp + "lbf/" + v.T("unit.inch")
	}
	return v.some(nPerCM, 1) + nbsp + "N/cm"
}

// Tension is that of a screen: meters read N/cm in inch shops too.
func (v *Voice) Tension(nPerCM float64) string { return v.some(nPerCM, 1) + nbsp + "N/cm" }

// Speed is a stroke speed.
func (v *Voice) Speed(mPerS float64) string {
	if v.inch {
		return v.some(mPerS/0.0254, 0) + nbsp + v.T("unit.inch") + "/s"
	}
	return v.some(mPerS, 2) + nbsp + "m/s"
}

// Temperature is a temperature in the shop's unit; TemperatureRange a range of them.
func (v *Voice) Temperature(c float64) string {
	if v.inch {
		return v.Number(c*9/5+32, 0) + nbsp + "°F"
	}
	return v.Number(c, 0) + nbsp + "°C"
}

// TemperatureRange is a range of temperatures, "149–171 °C".
func (v *Voice) TemperatureRange(lowC, highC float64) string {
	if lowC == highC {
		return v.Temperature(lowC)
	}
	if v.inch {
		return v.Number(lowC*9/5+32, 0) + "–" + v.Temperature(highC)
	}
	return v.Number(lowC, 0) + "–" + v.Temperature(highC)
}

// Seconds is a time; below ten seconds a tenth matters.
func (v *Voice) Seconds(s float64) string {
	if s < 9.95 {
		return v.fixed(s, 1) + nbsp + "s"
	}
	return v.Number(s, 0) + nbsp + "s"
}

// SecondsRange is a range of seconds with the digits of its middle; below ten seconds a tenth matters.
func (v *Voice) SecondsRange(low, high float64) string {
	d := 0
	if middle(low, high) < 9.95 {
		d = 1
	}
	if a, b := v.fixed(low, d), v.fixed(high, d); a != b {
		return a + "–" + b + nbsp + "s"
	}
	return v.Seconds(low)
}

// Gap is a range of off-contact: tenths of mm, or fractions of an inch.
func (v *Voice) Gap(lowMM, highMM float64) string {
	if !v.inch {
		return v.pair(lowMM, highMM, 1) + nbsp + "mm"
	}
	low, high := v.shims(lowMM), v.shims(highMM)
	if low == high {
		return low + nbsp + v.T("unit.inch")
	}
	return low + "–" + high + nbsp + v.T("unit.inch")
}

// Small is a length of tenths or hundredths of mm, or of thousandths of an inch.
func (v *Voice) Small(mm float64) string {
	if v.inch {
		return v.some(mm/25.4, 3) + nbsp + v.T("unit.inch")
	}
	return v.some(mm, 2) + nbsp + "mm"
}

// BeltSpeed is a range of belt speeds.
func (v *Voice) BeltSpeed(low, high float64) string {
	if v.inch {
		return v.pair(low/0.3048, high/0.3048, 1) + nbsp + v.T("unit.foot") + "/min"
	}
	return v.pair(low, high, 1) + nbsp + "m/min"
}

// Mass is a mass of ink: grams, kilograms from one up; in an inch shop ounces, pounds from one up. What is less than
// an ounce is weighed in grams everywhere.
func (v *Voice) Mass(g float64) string {
	const pound = 453.59237
	switch oz := 16 * g / pound; {
	case v.inch && oz >= 15.95:
		return v.kept(g/pound, 1) + nbsp + v.T("unit.pound")
	case v.inch && oz >= 1:
		return v.figures(oz, oz) + nbsp + v.T("unit.ounce")
	case g < 9.95:
		return v.Grams(g)
	case g < 1000:
		return v.Number(g, 0) + nbsp + "g"
	}
	return v.kept(g/1000, 2) + nbsp + "kg"
}

// Grams is what a scale shows for one print, in two figures; such scales read grams everywhere.
func (v *Voice) Grams(g float64) string { return v.figures(g, g) + nbsp + "g" }

// GramRange is a span of Grams.
func (v *Voice) GramRange(low, high float64) string {
	mid := middle(low, high)
	return v.figures(low, mid) + "–" + v.figures(high, mid) + nbsp + "g"
}

// Gauge is what the gauge of a press shows, the unit that the shop reads first.
func (v *Voice) Gauge(bar, psi float64) string {
	key := "show.air"
	if v.inch {
		key = "show.air-inch"
	}
	bars, psis := v.gauge(bar, psi)
	return v.T(key, "bar", bars, "psi", psis)
}

// gauge writes a pressure in both units. The shop sets the one that it reads, so the other is that of the rounded figure:
// 0.6 bar and 8 psi are not one setting.
func (v *Voice) gauge(bar, psi float64) (bars, psis string) {
	ratio, tenths, whole := psi/bar, math.Round(10*bar)/10, math.Round(psi)
	switch {
	case v.inch && whole > 0:
		bar, psi = whole/ratio, whole
	case !v.inch && tenths > 0:
		bar, psi = tenths, tenths*ratio
	}
	return v.kept(bar, 1), v.some(psi, 0)
}

// Volume is a volume of ink in litres, or in US quarts.
func (v *Voice) Volume(ml float64) string {
	if v.inch {
		return v.kept(ml/946.352946, 2) + nbsp + v.T("unit.quart")
	}
	return v.kept(ml/1000, 2) + nbsp + "L"
}

// Count is a mesh count in threads per inch and per cm.
func (v *Voice) Count(perInch, perCM float64) string {
	return v.T("mesh.count", "inch", v.Number(perInch, 0), "cm", v.Number(perCM, 0))
}

// Date turns 2026-12-04 into the language's own order.
func (v *Voice) Date(iso string) string {
	if len(iso) != 10 {
		return iso
	}
	return v.T("number.date", "year", iso[:4], "month", iso[5:7], "day", iso[8:])
}

// geometry are lengths in um that are known to the um, unlike a film.
var geometry = []string{"opening_um", "thread_um", "pitch_um", "fabric_um", "eom_um", "dot_um", "holds_um", "comb_um"}

// Figure writes the value of a warning by the unit at the end of its name.
func (v *Voice) Figure(name string, x float64) string {
	if slices.Contains(geometry, name) {
		return v.Fine(x)
	}
	switch unit := name[strings.LastIndexByte(name, '_')+1:]; unit {
	case "um":
		return v.FilmUM(x)
	case "deg":
		return v.Angle(x)
	case "mm":
		return v.Length(x)
	case "c":
		return v.Temperature(x)
	case "s":
		return v.Seconds(x)
	case "g":
		return v.Mass(x)
	case "mpm":
		return v.BeltSpeed(x, x)
	case "kwm2":
		return v.Number(x, 0) + nbsp + "kW/m²"
	case "ncm":
		return v.Load(x)
	case "percent":
		return v.Number(x, 0) + nbsp + "%"
	case "inch":
		return v.Number(x, 0) + nbsp + v.T("unit.lines")
	}
	if x >= 10 {
		return v.Number(x, 0)
	}
	return v.Number(x, 2)
}

// Values are the name, value pairs of a warning's figures and names for T.
func (v *Voice) Values(values map[string]float64, names map[string]string) []string {
	var out []string
	for k, x := range values {
		out = append(out, k, v.Figure(k, x))
	}
	for k, s := range names {
		switch k {
		case "fibre", "slip":
			s = v.T(k + "." + s)
		case "load_class":
			s = v.T("load." + s)
		}
		out = append(out, k, s)
	}
	sort.Sort(pairs(out))
	return out
}

// pairs sorts name, value pairs by name, so that the order of a map never shows.
type pairs []string

func (p pairs) Len() int           { return len(p) / 2 }
func (p pairs) Less(i, j int) bool { return p[2*i] < p[2*j] }
func (p pairs) Swap(i, j int) {
	p[2*i], p[2*j] = p[2*j], p[2*i]
	p[2*i+1], p[2*j+1] = p[2*j+1], p[2*i+1]
}

func sign(x float64) string {
	if x < 0 {
		return "−"
	}
	return "+"
}

// nbsp keeps a number and its unit on one line.
const nbsp = "\u00a0"

// Many is the text for a count: KEY-one for 1, else KEY with {n}.
func (v *Voice) Many(key string, n int, pairs ...string) string {
	if n == 1 {
		key += "-one"
	}
	return v.T(key, append(pairs, "n", fmt.Sprint(n))...)
}
