package main

import (
	"bytes"
	"html"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"bladecard/calc/choose"
	"bladecard/calc/day"
	"bladecard/calc/fit"
	"bladecard/calc/plan"
	"bladecard/calc/trials"
	"bladecard/render/card"
	"bladecard/render/daysheet"
	"bladecard/render/page"
	"bladecard/render/phone"
	"bladecard/render/sheet"
	"bladecard/render/trialsheet"
)

// metric is a figure in a unit that an inch shop does not use.
var metric = regexp.MustCompile(`[0-9][ \x{a0}\x{202f}]?(mm|cm|m/s|m/min|bar|°C|ml|L|kg)\b`)

// besideInch is a metric figure that stands beside that of an inch shop: in brackets, or the bar alone under the psi.
var besideInch = regexp.MustCompile(`\([0-9.,]+[ \x{a0}](bar|°C)\)|[0-9.,]+\x{a0}bar( on our press|$)`)

var tags = regexp.MustCompile(`<[^>]*>`)

// TestInchShopsReadNoMetric: all papers of an inch shop state lengths, pressures, speeds, temperatures, volumes and what is
// a pound or more in its units. Films and threads stay in µm, tension in N/cm and small weights in g, as inch shops
// read them from comb, mesh, meter and scale; the bar of a card's gauge stands under its psi.
func TestInchShopsReadNoMetric(t *testing.T) {
	dir := t.TempDir()
	src := content(t, "../../samples/shop.toml")
	src = bytes.Replace(src, []byte(`units = "metric"`), []byte(`units = "inch"`), 1)
	shop := filepath.Join(dir, "shop.toml")
	write(t, shop, string(src))
	c := &call{shop: shop, stderr: io.Discard, told: map[string]bool{}, cores: 1}
	texts := map[string][]string{}
	add := func(paper string, faces []page.Face, err error) {
		if err != nil {
			t.Fatalf("%s: %v", paper, err)
		}
		for _, f := range faces {
			for _, b := range f.Boxes {
				texts[paper] = append(texts[paper], b.Text)
			}
		}
	}
	var first loaded
	var plans []*plan.Plan
	for i, path := range sampleJobs(t) {
		l, err := c.load(path)
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first = l
		}
		plans = append(plans, l.plan)
		faces, err := sheet.Pages(l.plan, page.Letter, l.voice, sheet.Options{})
		add("sheet", faces, err)
		for both, err := range card.Each(l.plan, page.Sizes[0], l.voice) {
			add("card", []page.Face{both.Front, both.Back}, err)
		}
		var out strings.Builder
		if err := phone.Write(&out, l.plan, l.voice); err != nil {
			t.Fatal(err)
		}
		texts["phone"] = append(texts["phone"], strings.Split(html.UnescapeString(tags.ReplaceAllString(out.String(), "\n")), "\n")...)
	}
	faces, err := daysheet.Pages(day.Of(first.shop, plans), "shop", "", page.Letter, first.voice)
	add("day", faces, err)
	patches, errs := choose.PatchesOf(first.shop, "", "")
	if errs != nil {
		t.Fatal(errs)
	}
	tried, err := trials.Plan(patches.Setups, fit.Expected(), trials.Usual(), 1)
	if err != nil {
		t.Fatal(err)
	}
	faces, err = trialsheet.Pages(tried, trialsheet.Shop{PatchMM: patches.SideMM}, page.Letter, first.voice)
	add("trial", faces, err)
	for paper, all := range texts {
		inch := 0
		for _, text := range all {
			if strings.Contains(text, "\u00a0in") {
				inch++
			}
			text = strings.ReplaceAll(besideInch.ReplaceAllString(text, ""), "gray board 1.2 mm", "") // what the job calls its stock
			if found := metric.FindString(text); found != "" {
				t.Errorf("%s: %q in %q", paper, found, text)
			}
		}
		if inch == 0 {
			t.Errorf("%s: no figure in inches is found", paper)
		}
	}
	if len(texts) != 5 {
		t.Errorf("%d papers", len(texts))
	}
}
