package card_test

import (
	"io"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/render/canvas/pdf"
	"bladecard/render/page"
	"bladecard/render/say"
	"bladecard/samples/bench"
)

// benchCards is the plan of a made-up job with so many screens, of which a hundred differ, and the
// voice to say it in.
func benchCards(b *testing.B, screens int) (*plan.Plan, *say.Voice) {
	b.Helper()
	shop := file.BuiltInShop()
	p := plantest.Plan(b, string(bench.Job(1, min(screens, 100), "")), shop)
	v, err := say.New("en", "metric")
	if err != nil {
		b.Fatal(err)
	}
	v.Fill(p)
	for all := p.Locations; screens > 100; screens -= 100 {
		p.Locations = append(p.Locations, all...)
	}
	return p, v
}

// BenchmarkCards sets planned cards and writes them as one PDF, four a sheet, both sides.
func BenchmarkCards(b *testing.B) {
	for _, n := range []int{1, 6, 100, 1000} {
		b.Run(map[int]string{1: "one", 6: "a job", 100: "hundred", 1000: "thousand"}[n], func(b *testing.B) {
			p, v := benchCards(b, n)
			b.ReportAllocs()
			for b.Loop() {
				list, err := all(p, page.Sizes[0], v)
				if err != nil {
					b.Fatal(err)
				}
				sheets, err := page.Impose(page.A4, page.Sizes[0], len(list), laid(list), page.Options{Title: "t"})
				if err != nil {
					b.Fatal(err)
				}
				if err := page.WriteEach(io.Discard, pdf.Meta{Title: "t"}, sheets); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.N*n)/b.Elapsed().Seconds(), "cards/s")
		})
	}
}
