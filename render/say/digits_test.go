package say

import (
	"testing"

	"bladecard/calc/plan"
)

// TestDigits: a range has the digits of its value, a small value is more than nothing, and an inch shop reads
// sixteenths off its rule.
func TestDigits(t *testing.T) {
	m, i := voice(t, "metric"), voice(t, "inch")
	for _, c := range []struct{ what, got, want string }{
		{"film, one decimal", m.FilmUM(8), "8.0\u00a0µm"},
		{"its range", m.FilmRange(6, 10.6), "6.0–10.6\u00a0µm"},
		{"film of two figures", m.FilmUM(10.4), "10\u00a0µm"},
		{"its range", m.FilmRange(7.3, 14.8), "7–15\u00a0µm"},
		{"film near a hundred", m.FilmUM(95), "95\u00a0µm"},
		{"its range", m.FilmRange(73.2, 123.6), "73–124\u00a0µm"},
		{"film in fives", m.FilmRange(118, 187), "120–185\u00a0µm"},
		{"range from nothing", m.FilmRange(0, 40), "0–40\u00a0µm"},
		{"film in mil", m.InMil().FilmRange(25.4, 38.1), "1.00–1.50\u00a0mil"},
		{"grams, value", m.Grams(2), "2.0\u00a0g"},
		{"grams, range", m.GramRange(1.58, 2.56), "1.6–2.6\u00a0g"},
		{"grams of a small print", m.Grams(0.034), "0.034\u00a0g"},
		{"grams, range over ten", m.GramRange(8.4, 13.7), "8–14\u00a0g"},
		{"seconds, range", m.SecondsRange(7, 12), "7.0–12.0\u00a0s"},
		{"seconds, its start", m.Seconds(9), "9.0\u00a0s"},
		{"seconds, one value", m.SecondsRange(45, 45), "45\u00a0s"},
		{"belt, range", m.BeltSpeed(1, 2.34), "1.0–2.3\u00a0m/min"},
		{"gap, range", m.Gap(2, 3.2), "2.0–3.2\u00a0mm"},
		{"gap, whole", m.Gap(2, 3), "2–3\u00a0mm"},
		{"a length that rounds to nothing", m.Length(0.004), "0.004\u00a0mm"},
		{"a load that rounds to nothing", m.Load(0.02), "0.02\u00a0N/cm"},
		{"a share that rounds to nothing", m.Percent(0.0031), "0.3\u00a0%"},
		{"a change that rounds to nothing", m.SignedPercent(-0.04), "−0.04\u00a0%"},
		{"a change, zeros kept", m.SignedPercent(3), "+3.0\u00a0%"},
		{"nothing", m.Length(0), "0\u00a0mm"},
		{"noise", m.Length(1e-12), "0\u00a0mm"},
		{"a volume that rounds to nothing", m.Volume(3), "0.003\u00a0L"},

		{"off-contact, the usual", i.Gap(1.5875, 3.175), "1/16–1/8\u00a0in"},
		{"off-contact, shims", i.Gap(2.4, 4.7625), "3/32–3/16\u00a0in"},
		{"off-contact, one value", i.Gap(3.2, 3.2), "1/8\u00a0in"},
		{"off-contact, less than a shim", i.Gap(0.3, 0.3), "1/32\u00a0in"},
		{"off-contact, over an inch", i.Gap(25.4, 28.575), "1–1\u00a01/8\u00a0in"},
		{"squeegee", i.Length(350), "13\u00a03/4\u00a0in"},
		{"squeegee, whole", i.Length(304.8), "12\u00a0in"},
		{"a feature off the rule", i.Length(12), "0.47\u00a0in"},
		{"a fine line", i.Length(0.1), "0.004\u00a0in"},
		{"blade thickness", i.Thickness(9.5), "3/8\u00a0in"},
		{"free height", i.Thickness(25), "1\u00a0in"},
		{"print size", i.Size(298.45, 355.6), "11\u00a03/4 × 14\u00a0in"},
		{"placement", i.Lengths(71, 102), "2\u00a013/16–4\u00a0in"},
		{"air", i.Gauge(2.07, 30), "30\u00a0psi (2.1\u00a0bar)"},
		{"air, metric", m.Gauge(2.07, 30), "2.1\u00a0bar (30\u00a0psi)"},
		{"air, one setting", m.Gauge(0.5595, 8.115), "0.6\u00a0bar (9\u00a0psi)"},
		{"air, one setting in psi", i.Gauge(0.5595, 8.115), "8\u00a0psi (0.6\u00a0bar)"},
		{"air, whole bars", m.Gauge(2, 29.01), "2.0\u00a0bar (29\u00a0psi)"},
		{"air that rounds to nothing", m.Gauge(0.02, 0.29), "0.02\u00a0bar (0.3\u00a0psi)"},
		{"film with mil", i.FilmBoth(38.1), "38\u00a0µm (1.5\u00a0mil)"}, {"films with mil", i.FilmRangeBoth(25.4, 38.1), "25–38\u00a0µm (1.0–1.5\u00a0mil)"},
		{"film, metric", m.FilmBoth(38.1), "38\u00a0µm"},
		{"coats", m.Coats(4), "2+2 coats"},
		{"coats, odd", m.Coats(3), "2+1 coats"},
		{"one coat", m.Coats(1), "1 coat"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q; %q is wanted", c.what, c.got, c.want)
		}
	}
	if m.Prints(0.04) || !m.Prints(-0.06) {
		t.Error("0.04 um is said to print, or 0.06 um is not")
	}
}

// TestStrokes: the hits of several strokes are told apart from strokes.
func TestStrokes(t *testing.T) {
	v := voice(t, "metric")
	for _, c := range []struct {
		hits, strokes int
		word, count   string
	}{
		{1, 1, "stroke", "1"}, {1, 2, "strokes", "2"}, {2, 1, "hits", "2"}, {2, 2, "strokes", "2+2"}, {3, 2, "strokes", "2+2+2"}, {6, 3, "strokes", "6×3"},
	} {
		if word, count := v.Strokes(plan.Screen{Hits: c.hits, Strokes: c.strokes}); word != c.word || count != c.count {
			t.Errorf("%d hits of %d strokes: %s %s; %s %s is wanted", c.hits, c.strokes, count, word, c.count, c.word)
		}
	}
}

// TestNarrowFilms: a range whose ends round alike takes a digit more, or stands as one figure.
func TestNarrowFilms(t *testing.T) {
	v := voice(t, "metric")
	for _, c := range []struct {
		low, high float64
		want      string
	}{{19.5, 20.4, "19.5–20.4\u00a0µm"}, {19, 21, "19–21\u00a0µm"}, {204, 206, "204–206\u00a0µm"}, {20, 20, "20\u00a0µm"}, {5.91, 5.93, "5.9\u00a0µm"}} {
		if got := v.FilmRange(c.low, c.high); got != c.want {
			t.Errorf("%v to %v: %q, %q is wanted", c.low, c.high, got, c.want)
		}
	}
}

// TestSameDot: a dot is the same figure in a warning and in what is said of the halftone.
func TestSameDot(t *testing.T) {
	v := voice(t, "metric")
	if got, want := v.Figure("dot_um", 107), v.Fine(107); got != want {
		t.Errorf("%q, %q is wanted", got, want)
	}
}
