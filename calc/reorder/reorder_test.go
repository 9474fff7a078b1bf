package reorder_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/plan"
	"bladecard/calc/plantest"
	"bladecard/calc/reorder"
)

const (
	twoScreens = "job = \"T-1\"\ntitle = \"Towpath tees\"\n[[location]]\nname = \"front\"\n[[location.screen]]\ncolor = \"white\"\nmesh = \"156-64\"\neom = \"12 um\"\nblade = \"70\"\nangle = 15\nstrokes = 1\n" +
		"[[location.screen]]\ncolor = \"red\"\nmesh = \"156-64\"\neom = \"12 um\"\nblade = \"70\"\nangle = 15\nstrokes = 1\n"
	head = "date,job,location,screen,color,mesh,eom (um),ink,blade,angle (deg),strokes,wet (um),cured (um),before (g),after (g),area (cm2),wiped,cure (C),wash,name\n"
)

// filled is the plan of a job in the built-in shop, with the last runs of a log.
func filled(t testing.TB, src, log string) *plan.Plan {
	t.Helper()
	shop := file.BuiltInShop()
	p := plantest.Plan(t, src, shop)
	g, errs := reorder.Read("log.csv", []byte(log), file.LogText)
	if errs != nil {
		t.Fatal(errs)
	}
	g.Fill(p, shop)
	return p
}

// TestWhich: a screen is found by job, location and color, or by its number where a color is lacking; its last
// row that was filled in counts.
func TestWhich(t *testing.T) {
	noColor := strings.Replace(head, ",color", "", 1)
	untitled := strings.Replace(twoScreens, "job = \"T-1\"\n", "", 1)
	twice := strings.Replace(twoScreens, "\"red\"", "\"white\"", 1)
	const setup = "156-64,12,,%s,15,1,,,,,,,,,\n"
	row := func(day, job, location, screen, color, blade string) string {
		return strings.Join([]string{day, job, location, screen, color}, ",") + "," + fmt.Sprintf(setup, blade)
	}
	for name, c := range map[string]struct{ src, log, want string }{
		"none":                       {twoScreens, head, "- -"},
		"by color":                   {twoScreens, head + row("2026-11-10", "T-1", "front", "7", "red", "60") + row("2026-11-10", "t-1 ", "Front", "8", "White", "80"), "80 60"},
		"another job, location":      {twoScreens, head + row("2026-11-10", "T-2", "front", "1", "white", "60") + row("2026-11-10", "T-1", "back", "1", "white", "60"), "- -"},
		"another color":              {twoScreens, head + row("2026-11-10", "T-1", "front", "1", "blue", "60"), "- -"},
		"no color in the row":        {twoScreens, head + row("2026-11-10", "T-1", "front", "2", "", "60"), "- 60"},
		"no color in the log":        {twoScreens, noColor + "2026-11-10,T-1,front,1," + fmt.Sprintf(setup, "60"), "60 -"},
		"a color twice":              {twice, head + row("2026-11-10", "T-1", "front", "2", "white", "60"), "- 60"},
		"by title":                   {untitled, head + row("2026-11-10", "Towpath tees", "front", "1", "white", "60"), "60 -"},
		"not by title with a number": {twoScreens, head + row("2026-11-10", "Towpath tees", "front", "1", "white", "60"), "- -"},
		"not filled in":              {twoScreens, head + row("", "T-1", "front", "1", "white", "60"), "- -"},
		"the latest day":             {twoScreens, head + row("2026-11-10", "T-1", "front", "1", "white", "60") + row("2026-11-09", "T-1", "front", "1", "white", "80"), "60 -"},
		"of one day the lower row":   {twoScreens, head + row("2026-11-10", "T-1", "front", "1", "white", "60") + row("2026-11-10", "T-1", "front", "1", "white", "80"), "80 -"},
		"renumbered since":           {twoScreens, head + row("2026-11-10", "T-1", "front", "1", "white", "60") + row("2026-11-11", "T-1", "front", "3", "white", "80"), "80 -"},
	} {
		var got []string
		for _, s := range filled(t, c.src, c.log).Locations[0].Screens {
			if s.Last == nil {
				got = append(got, "-")
			} else {
				got = append(got, s.Last.Blade)
			}
		}
		if text := strings.Join(got, " "); text != c.want {
			t.Errorf("%s: blades %s; %s are wanted", name, text, c.want)
		}
	}
}

// TestFilm: the gauge counts before the comb and the comb before the scale. A wet film of 45 um cures to its volume
// solids, and 1.8 g of wet ink on 300 cm2 are 60 um at 1 kg/L (definition).
func TestFilm(t *testing.T) {
	ink := *must(file.BuiltInShop().FindInk("plastisol"))
	for measured, want := range map[string]struct {
		um   float64
		from string
	}{
		"45,40,100,101.8,300": {40, "gauge"},
		"45,,100,101.8,300":   {45 * ink.Solids, "comb"},
		",,100,101.8,300":     {1.8 / 300 / ink.DensityKgPerL * 1e4 * ink.Solids, "weight"},
	} {
		s := filled(t, twoScreens, strings.Replace(head, "name\n", "name,cloth\n", 1)+"2026-11-10,T-1,front,1,white,156-64,12,plastisol,70,15,1,"+measured+",,,,,none\n").Locations[0].Screens[0]
		if s.Last.CuredUM == nil || math.Abs(*s.Last.CuredUM-want.um) > 1e-9 || s.Last.CuredFrom != want.from {
			t.Errorf("%s: %+v; %g um by %s are wanted", measured, s.Last, want.um, want.from)
		}
	}
	s := filled(t, twoScreens, head+"2026-11-10,T-1,front,1,white,156-64,12,no such ink,70,15,1,45,,,,,,,,\n").Locations[0].Screens[0]
	if s.Last.CuredUM != nil || s.Last.CuredFrom != "" {
		t.Errorf("a wet film of an ink that the shop does not know is cured at %+v", s.Last)
	}
}

func must[T any](v T, ok bool) T {
	if !ok {
		panic("there is none")
	}
	return v
}

// TestDifferences: what is set as the plan has it is no difference, whatever it is called; all else is one.
func TestDifferences(t *testing.T) {
	for row, want := range map[string]string{
		"156-64,12,plastisol,70,15,1,,,,,,yes,162.5,pass,Ana":   "",
		"156-64,12.4,Plastisol,70,15.2,1,,,,,,,,,":              "",
		"110-80,12,plastisol,65/90/65,20,2,,,,,,no,,fail,":      "mesh blade angle strokes",
		"156-64,25,plastisol white,70,15,1,,400,,,,,,,\"A\nB\"": "eom ink film",
	} {
		s := filled(t, twoScreens, head+"2026-11-10,T-1,front,1,white,"+row+"\n").Locations[0].Screens[0]
		var got []string
		for _, d := range s.Last.Differences {
			got = append(got, d.What)
		}
		if text := strings.Join(got, " "); text != want {
			t.Errorf("%s: %q differ; %q is wanted", row, text, want)
		}
		if strings.Contains(s.Last.Name, "\n") {
			t.Errorf("%q goes over lines", s.Last.Name)
		}
	}
}

// TestText: the text of a job tells its last runs alone, so that rows of others change nothing.
func TestText(t *testing.T) {
	text := func(log string) string {
		g, errs := reorder.Read("log.csv", []byte(log), file.LogText)
		if errs != nil {
			t.Fatal(errs)
		}
		return g.Text(reorder.NameOf("T-1", "t"))
	}
	own := "2026-11-10,T-1,front,1,white,156-64,12,plastisol,70,15,1,45,,,,,,,,\n"
	other := strings.Replace(own, "T-1", "T-2", 1)
	later := strings.Replace(own, "45", "46", 1)
	if a := text(head + own); a == "" || a != text(head+other+own+other) || a == text(head+own+later) || text(head+later) != text(head+own+later) || text(head+other) != "" {
		t.Errorf("%q", a)
	}
}

// TestRefused: a log is wanted that tells its rows apart, and whose texts can stand on paper.
func TestRefused(t *testing.T) {
	for src, want := range map[string]string{
		"mesh,eom (um),blade,angle (deg),wet (um)\n":                                                     `there is no column "job" to tell the rows by; job, location, screen`,
		head + "2026-11-10,T-1,front,1,w,156-64,12,p,漢,15,1,,,,,,,,,\n":                                  "log.csv:2:38: blade: holds what cannot be printed: U+6F22",
		head + "2026-11-10,T-1,front,1,w,156-64,12,p,70,15,1,,,,,,,,," + strings.Repeat("n", 201) + "\n": "log.csv:2:54: name: has 201 characters; at most 200 are accepted",
		head + "2026-11-10,T-1,front,1,w,156-64,12,p,70,15,1,x,,,,,,,,\n":                                "log.csv:2:46: wet: ",
	} {
		if g, errs := reorder.Read("log.csv", []byte(src), file.LogText); g != nil || len(errs) == 0 || !strings.Contains(errs.Error(), want) {
			t.Errorf("%q: %v; %q is wanted", src, errs, want)
		}
	}
}

func ExampleLog_Text() {
	g, _ := reorder.Read("log.csv", []byte("date,job,location,screen,mesh,eom (um),blade,angle (deg),cured (um)\n2026-11-10,T-1,front,1,156-64,12,70,15,38\n"), file.LogText)
	fmt.Println(strings.Contains(g.Text("T-1"), "CuredUM:38"), g.Text("T-2") == "")
	// Output: true true
}
