package unit

import "math/big"

// kind is one kind of quantity with the units that it is written in. The factor turns a
// figure into the kind's first unit; only temperatures have a zero of their own.
type kind struct {
	noun  string // "a length"
	bare  bool   // a number without a unit is taken, in the first unit
	units []one
}

// one is a unit with its spellings, the plain one first.
type one struct {
	names  []string
	factor *big.Rat
	zero   *big.Rat // subtracted before the factor is applied; nil is 0
	inner  bool     // names a field's unit only, never written by people
}

// ratio returns the exact number that text writes, such as "127/5" or "4.4482216152605".
func ratio(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("unit: not a ratio: " + text)
	}
	return r
}

// over returns a/b of two exact numbers.
func over(a, b string) *big.Rat { return new(big.Rat).Quo(ratio(a), ratio(b)) }

func in(factor *big.Rat, names ...string) one { return one{names: names, factor: factor} }

const (
	newtonPerLbf = "4.4482216152605" // 0.45359237 kg x 9.80665 m/s2, exact
	newtonPerKgf = "9.80665"         // exact
	kgPerLb      = "0.45359237"      // exact
	litrePerGal  = "3.785411784"     // 231 in3, exact
)

var kinds = []*kind{
	{noun: "a length", units: []one{
		in(ratio("1"), "mm"),
		in(ratio("1/1000"), "um", "µm", "μm"),
		in(ratio("10"), "cm"),
		in(ratio("1000"), "m"),
		in(ratio("25.4"), "in", "inch", `"`, "″"),
		in(ratio("304.8"), "ft"),
		in(ratio("0.0254"), "mil"),
	}},
	{noun: "an area", units: []one{
		in(ratio("1"), "cm2", "cm²"),
		in(ratio("1/100"), "mm2", "mm²"),
		in(ratio("6.4516"), "in2", "in²"),
		in(ratio("10000"), "m2", "m²"),
	}},
	{noun: "a line load", units: []one{
		in(ratio("1"), "N/cm"),
		in(ratio("1/100"), "N/m"),
		in(ratio("10"), "N/mm"),
		in(over(newtonPerLbf, "2.54"), "lbf/in"),
		in(ratio(newtonPerKgf), "kgf/cm"),
	}},
	{noun: "a temperature", units: []one{
		in(ratio("1"), "C", "°C"),
		{names: []string{"F", "°F"}, factor: ratio("5/9"), zero: ratio("32")},
		{names: []string{"K"}, factor: ratio("1"), zero: ratio("273.15")},
	}},
	{noun: "a share", units: []one{
		{names: []string{"share"}, factor: ratio("1"), inner: true},
		in(ratio("1/100"), "%"),
	}},
	{noun: "an angle", bare: true, units: []one{
		in(ratio("1"), "deg", "°"),
	}},
	{noun: "a line count", units: []one{
		in(ratio("1"), "lpi", "l/in"),
		in(ratio("2.54"), "l/cm", "lpcm"),
	}},
	{noun: "a resolution", units: []one{
		in(ratio("1"), "dpi"),
	}},
	{noun: "a pressure", units: []one{
		in(ratio("1"), "MPa"),
		in(ratio("1/1000"), "kPa"),
		in(over(newtonPerLbf, "645.16"), "psi"),
		in(ratio("1/10"), "bar"),
	}},
	{noun: "a time", units: []one{
		in(ratio("1"), "s"),
		in(ratio("60"), "min"),
	}},
	{noun: "a speed", units: []one{
		in(ratio("1"), "m/s"),
		in(ratio("0.0254"), "in/s"),
		in(over("0.3048", "60"), "ft/min"),
		in(over("1", "60"), "m/min"),
	}},
	{noun: "a density", units: []one{
		in(ratio("1"), "kg/L", "kg/l"),
		in(ratio("1"), "g/cm3", "g/cm³"),
		in(ratio("1"), "g/mL", "g/ml"),
		in(over(kgPerLb, litrePerGal), "lb/gal"),
	}},
	{noun: "a mass", units: []one{
		in(ratio("1"), "g"),
		in(ratio("1000"), "kg"),
		in(ratio("453.59237"), "lb"),
		in(over("453.59237", "16"), "oz"),
	}},
	{noun: "a scattering", units: []one{
		in(ratio("1"), "1/mm", "/mm"),
	}},
	{noun: "a heat flux", units: []one{
		in(ratio("1"), "kW/m2", "kW/m²"),
	}},
	{noun: "a viscosity", units: []one{
		in(ratio("1"), "Pa.s", "Pa·s", "Pa s"),
		in(ratio("1/1000"), "mPa.s", "mPa·s", "mPa s"),
		in(ratio("1/1000"), "cP"),
		in(ratio("1/10"), "P"),
	}},
	{noun: "a consistency", units: []one{
		in(ratio("1"), "Pa.s^n", "Pa·s^n", "Pa s^n"),
	}},
}

// examples show a likely text for each unit that a field is kept in.
var examples = map[string]string{
	"um": `"25 um"`, "cm2": `"600 cm2"`, "mm": `"30 cm" or "12 in"`, "N/cm": `"20 N/cm"`, "C": `"160 C" or "320 F"`, "share": `"38 %"`,
	"deg": `22.5 or "22.5 deg"`, "lpi": `"45 lpi"`, "dpi": `"300 dpi"`, "MPa": `"5.5 MPa"`, "bar": `"2.5 bar"`, "s": `"60 s"`,
	"m/s": `"0.3 m/s"`, "m/min": `"1.8 m/min"`, "kg/L": `"1.2 kg/L"`, "kW/m2": `"10 kW/m2"`, "Pa.s": `"3 Pa.s"`,
	"Pa.s^n": `"50 Pa.s^n"`,
}

type found struct {
	kind *kind
	unit *one
}

// named finds a unit by each of its spellings. No spelling stands in two kinds.
var named = func() map[string]found {
	m := map[string]found{}
	for _, k := range kinds {
		for i := range k.units {
			for _, name := range k.units[i].names {
				m[name] = found{k, &k.units[i]}
			}
		}
	}
	return m
}()
