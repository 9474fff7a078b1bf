package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"bladecard/render/page"
	"bladecard/render/sheet"
)

// Screens that have the same charts share them; of many setups some are drawn, and the sheet says so.
func TestCharts(t *testing.T) {
	for _, tt := range []struct {
		films []string
		drawn int
		title string
	}{
		{[]string{"20..60 um", "30..50 um", "20..60 um"}, 2, "screens 1, 3"},
		{strings.Split(strings.Repeat("20..%d um|", 10), "|")[:10], 8, "screen 1"},
	} {
		src := "title = \"t\"\n[[location]]\nname = \"front\"\n"
		for i, film := range tt.films {
			if strings.Contains(film, "%d") {
				film = fmt.Sprintf(film, 50+i)
			}
			src += fmt.Sprintf("[[location.screen]]\nmesh = \"156-64\"\nfilm = %q\n", film)
		}
		p, v := planned(t, ".", src, "en", "metric", 40)
		faces, err := sheet.Pages(p, page.A4, v, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		charts, titled, noted := 0, false, false
		for _, f := range faces {
			for _, b := range f.Boxes {
				if b.Kind == page.KindDrawing && strings.HasPrefix(b.Name, "chart ") {
					charts++
				}
				titled = titled || strings.HasPrefix(b.Text, tt.title+" ·")
				noted = noted || strings.HasPrefix(b.Text, fmt.Sprintf("%d of %d setups", tt.drawn, len(tt.films)))
			}
		}
		if charts != 2*tt.drawn || !titled || noted != (tt.drawn < len(tt.films) && len(tt.films) > 8) {
			t.Errorf("%d charts, title %v, note %v; %d charts of %d screens are wanted", charts, titled, noted, 2*tt.drawn, len(tt.films))
		}
	}
}

// A title names the screens of every location, and is cut in their names before mesh and blade.
func TestChartTitles(t *testing.T) {
	long := strings.Repeat("a long name ", 16)
	for _, tt := range []struct {
		names  []string
		titles [2]string
	}{
		{[]string{"front", "back"}, [2]string{"front 1 · back 1 · 156-64 · 70", "front 2 · back 2 · 156-64 · 70"}},
		{[]string{long + "front", long + "back"}, [2]string{"a long name a long… front 1 · a long name a long… back 1 · 156-64 · 70", "a long name a long… front 2 · a long name a long… back 2 · 156-64 · 70"}},
		{[]string{long + "front"}, [2]string{"screen 1 · 156-64 · 70", "screen 2 · 156-64 · 70"}},
	} {
		src := "title = \"t\"\n"
		for _, name := range tt.names {
			src += fmt.Sprintf("[[location]]\nname = %q\n", name)
			for _, film := range []string{"20..60 um", "30..50 um"} {
				src += fmt.Sprintf("[[location.screen]]\nmesh = \"156-64\"\nfilm = %q\n", film)
			}
		}
		p, v := planned(t, ".", src, "en", "metric", 40)
		faces, err := sheet.Pages(p, page.A4, v, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range faces {
			for _, b := range f.Boxes {
				if strings.HasPrefix(b.Name, "chart title") {
					got = append(got, strings.ReplaceAll(b.Text, "\u00a0", " "))
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(tt.titles) {
			t.Errorf("titles %q, want %q", got, tt.titles)
		}
	}
}

// The charts of a job spread over their pages and fill them; no last page holds one that is left over.
func TestChartsFillTheirPages(t *testing.T) {
	for n := 2; n <= 8; n++ {
		src := "title = \"t\"\n[[location]]\nname = \"front\"\n"
		for i := range n {
			src += fmt.Sprintf("[[location.screen]]\nmesh = \"156-64\"\nfilm = \"20..%d um\"\n", 50+i)
		}
		p, v := planned(t, ".", src, "en", "metric", 40)
		for _, paper := range []page.Paper{page.A4, page.Letter} {
			faces, err := sheet.Pages(p, paper, v, sheet.Options{})
			if err != nil {
				t.Fatal(err)
			}
			var got []int
			for _, f := range faces {
				rows, end := 0, 0.0
				for _, b := range f.Boxes {
					if b.Kind == page.KindDrawing && strings.HasPrefix(b.Name, "chart ") {
						rows, end = rows+1, max(end, b.Rect.Bottom())
					}
				}
				if rows > 0 {
					got = append(got, rows/2)
				}
				if rows > 0 && end < 0.6*paper.H {
					t.Errorf("%d charts on %g mm: a page of %d ends at %.0f mm", n, paper.H, rows/2, end)
				}
			}
			if got[len(got)-1] == 1 {
				t.Errorf("%d charts on %g mm: %v a page", n, paper.H, got)
			}
		}
	}
}
