package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"bladecard/render/page"
	"bladecard/render/sheet"
	"bladecard/templates"
)

// TestPlacementsAreDrawn: every place that the plan knows is drawn, sleeves too; a location with
// no known place is said to have none; a sheet of paper has no placement.
func TestPlacementsAreDrawn(t *testing.T) {
	t.Parallel()
	places := []string{"full front", "full back", "center chest", "left chest", "right chest", "neck", "left sleeve", "right sleeve", "pocket flap"}
	var src strings.Builder
	src.WriteString("title = \"t\"\nquantity = 10\n")
	for _, s := range places {
		fmt.Fprintf(&src, "[[location]]\nname = %q\nwidth = \"6 cm\"\nheight = \"5 cm\"\n[[location.screen]]\n", s)
	}
	for _, lang := range templates.Bases() {
		p, v := planned(t, ".", src.String(), lang, "metric", 0)
		sound(t, p, v, sheet.Options{})
		faces, err := sheet.Pages(p, page.Letter, v, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		drawn, text := 0, ""
		for _, f := range faces {
			for _, b := range f.Boxes {
				if strings.HasPrefix(b.Name, "garment ") {
					drawn++
				}
				text += b.Text + " "
			}
		}
		if want := len(places) - 1; drawn != want {
			t.Errorf("%s: %d garments; %d are wanted", lang, drawn, want)
		}
		if n := strings.Count(text, v.T("sheet-doc.place-unknown")); n != 1 {
			t.Errorf("%s: %d locations are said to have no place; one has none", lang, n)
		}
	}
	p, v := planned(t, ".", "title = \"t\"\n[stock]\nkind = \"paper\"\n[[location]]\nname = \"full front\"\n[[location.screen]]\nink = \"solvent graphics\"\n", "en", "metric", 0)
	for _, texts := range sound(t, p, v, sheet.Options{}) {
		if strings.Contains(strings.Join(texts, "\n"), v.T("sheet-doc.middle")) {
			t.Error("a sheet of paper has a placement")
		}
	}
}

// TestDistanceNotStated: what has no collar is drawn without a known distance too, and the distance is asked for.
func TestDistanceNotStated(t *testing.T) {
	t.Parallel()
	for _, lang := range templates.Bases() {
		for _, outline := range []string{"cap", "tote", "apron"} {
			p, v := planned(t, ".", "title = \"t\"\n[garment]\noutline = \""+outline+"\"\n[[location]]\nname = \"full front\"\nwidth = \"10 cm\"\nheight = \"5 cm\"\n[[location.screen]]\n", lang, "metric", 0)
			faces, err := sheet.Pages(p, page.A4, v, sheet.Options{})
			if err != nil {
				t.Fatal(err)
			}
			drawn, text := false, ""
			for _, b := range faces[0].Boxes {
				drawn = drawn || strings.HasPrefix(b.Name, "garment ")
				text += b.Text + " "
			}
			if !drawn || !strings.Contains(text, v.T("sheet-doc.down-unknown")) {
				t.Errorf("%s, %s: drawn %v: %s", lang, outline, drawn, text)
			}
		}
	}
}

// TestOneAndSixteenScreens lays out the fewest and the most screens with long names in every
// language on both papers, the customer left out; every screen has its rows, and no last page
// holds the end of a part alone.
func TestOneAndSixteenScreens(t *testing.T) {
	t.Parallel()
	for _, lang := range templates.Bases() {
		for _, n := range []int{1, 16} {
			for _, place := range []string{"left-sleeve", "left-chest", "full-back"} {
				var src strings.Builder
				fmt.Fprintf(&src, "title = %q\ncustomer = \"Quayside\"\nquantity = 500\n[garment]\nname = %q\nfibre = \"blend\"\nshade = \"dark\"\n",
					strings.Repeat("Añil señalización ", 8), strings.Repeat("camiseta de punto ", 8))
				fmt.Fprintf(&src, "[[location]]\nname = %q\nplace = %q\nwidth = \"8 cm\"\nheight = \"7 cm\"\n", strings.Repeat("ubicación larga ", 10)+"x", place)
				for i := range n {
					fmt.Fprintf(&src, "[[location.screen]]\ncolor = %q\nmesh = %q\nfilm = %q\nstrokes = 1\n", fmt.Sprintf("%s %d", strings.Repeat("verde muy oscuro ", 6), i+1),
						[]string{"156-64", "230-40", "110-80"}[i%3], []string{"20..60 um", "100..110 um"}[i%2])
				}
				p, v := planned(t, ".", src.String(), lang, "inch", 40)
				words := sound(t, p, v, sheet.Options{NoCustomer: true})
				text := ""
				for _, w := range words {
					text += strings.Join(w, " ") + " "
				}
				if strings.Contains(text, "Quayside") {
					t.Errorf("%s, %d screens: the customer is printed", lang, n)
				}
				for i := range n {
					if n > 1 && !strings.Contains(text, v.T("sheet-doc.station-print", "n", fmt.Sprint(i+1))) {
						t.Errorf("%s, %d screens: no station of screen %d", lang, n, i+1)
					}
				}
			}
		}
	}
}
