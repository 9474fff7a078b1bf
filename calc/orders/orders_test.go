package orders

import (
	"fmt"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/job"
)

// read reads orders that have no fault.
func read(t *testing.T, text string) []Order {
	t.Helper()
	list, errs := Read("o.csv", []byte(text))
	if errs != nil {
		t.Fatal(errs)
	}
	return list
}

// TestRead: rows become the job files that a person would have written, and each reads as one.
func TestRead(t *testing.T) {
	list := read(t, "\ufefftemplate;like;job;title;quantity;garment.fibre;location.name;location.width (cm);screen.color;screen.ink;screen.coverage (%);screen.flash;screen.halftone.lines (lpi)\r\n"+
		"tee;;;;;cotton;front;28,5;;plastisol;;;\r\n"+
		";tee;A-1;\"Say \"\"hi\"\"\";12;;;;white;plastisol white;30;true;\r\n"+
		";tee;;;;;;;\"red; hot\";;20,5;;45\r\n"+
		"\r\n"+
		";tee;A-2;Second;;;;;black;;;;\r\n"+
		";;;;;;back;;black;;;;\r\n")
	if len(list) != 2 {
		t.Fatalf("%d orders", len(list))
	}
	const want = `job = "A-1"
title = "Say \"hi\""
quantity = 12

[garment]
fibre = "cotton"

[[location]]
name = "front"
width = "28.5 cm"

[[location.screen]]
color = "white"
ink = "plastisol white"
coverage = "30 %"
flash = true

[[location.screen]]
color = "red; hot"
ink = "plastisol"
coverage = "20.5 %"

[location.screen.halftone]
lines = "45 lpi"
`
	if got := string(list[0].TOML); got != want {
		t.Errorf("%s\n%s is wanted", got, want)
	}
	for _, o := range list {
		j, errs := file.DecodeJob("o.toml", o.TOML)
		if errs != nil {
			t.Errorf("%s: %v", o.Number, errs)
		}
		if o.Number == "A-2" && (len(j.Locations) != 2 || j.Locations[1].Name != "back") {
			t.Errorf("A-2: %+v", j.Locations)
		}
	}
	if at, column := list[0].Place(strings.Count(want[:strings.Index(want, "20.5 %")], "\n") + 1); at.Line != 4 || column != "screen.coverage" {
		t.Errorf("the coverage of the second screen comes from %v, %s", at, column)
	}
}

// TestFaults: each fault of a file stands at its cell and says what would be accepted.
func TestFaults(t *testing.T) {
	const head = "like,template,job,title,quantity,location.name,screen.ink\n"
	for name, c := range map[string]struct{ text, want string }{
		"unknown column":    {"job,titel\nA,b\n", `o.csv:1:5: header: "titel" is not a column; did you mean "title"?`},
		"column twice":      {"job,job\nA,b\n", `column "job" stands twice`},
		"no name":           {"quantity,screen.ink\n1,x\n", "has neither job nor title"},
		"no header":         {"", "header: is not there"},
		"two quantities":    {head + ",,A,t,12,front,x\n,,A,t,13,front,y\n", `o.csv:3:7: quantity: "13" here and "12" in line 2, of one order`},
		"two titles":        {head + ",,A,t,12,front,x\n,,A,u,,front,y\n", `title: "u" here and "t" in line 2`},
		"no template":       {head + "tee,,A,t,12,front,x\n", `like: there is no template "tee"`},
		"template twice":    {head + ",tee,,,,,x\n,tee,,,,,y\n,,A,t,12,front,x\n", `the template "tee" stands twice`},
		"no job at first":   {head + ",,,,12,front,x\n", "the first row names no job"},
		"job again":         {head + ",,A,t,,,x\n,,B,u,,,x\n,,A,t,,,x\n", "stands above already"},
		"cell too many":     {head + ",,A,t,12,front,x,y\n", `"y" stands beyond the last column`},
		"quote left open":   {head + ",,A,\"t,12,front,x\n", "row: "},
		"control in a cell": {head + ",,A\x01,t,12,front,x\n", ""},
	} {
		list, errs := Read("o.csv", []byte(c.text))
		if c.want == "" { // the job file tells
			if _, bad := file.DecodeJob("o.toml", list[0].TOML); bad == nil {
				t.Errorf("%s: no error", name)
			}
			continue
		}
		if errs == nil || !strings.Contains(errs.Error(), c.want) {
			t.Errorf("%s: %v; %q is wanted", name, errs, c.want)
		}
	}
}

// TestKnown: every key that a job file takes for a text, a number, a day or a range has a column.
func TestKnown(t *testing.T) {
	have := map[string]bool{}
	for _, c := range known() {
		have[c.name] = true
	}
	for _, want := range []string{"job", "title", "due", "quantity", "press", "shop", "garment.shade", "stock.kind", "location.down", "screen.eom", "screen.film", "screen.flash", "screen.halftone.smallest"} {
		if !have[want] {
			t.Errorf("%s has no column", want)
		}
	}
	for _, no := range []string{"garment", "location", "screen.halftone", "location.screen"} {
		if have[no] {
			t.Errorf("the table %s has a column", no)
		}
	}
}

// FuzzRead: no text is a crash, and the job file of an order that was read is TOML or tells its place.
func FuzzRead(f *testing.F) {
	f.Add("job;title;screen.ink\nA;b;c\n")
	f.Add("like,template,job,title\n,t,,x\nt,,A,\n")
	f.Fuzz(func(t *testing.T, text string) {
		list, errs := Read("o.csv", []byte(text))
		if errs != nil {
			return
		}
		for _, o := range list {
			if _, bad := file.DecodeJob("o.toml", o.TOML); bad != nil {
				for _, e := range bad {
					if at, _ := o.Place(e.Line); at == (job.Pos{}) {
						t.Errorf("%q: %v has no place", text, e)
					}
				}
			}
		}
	})
}

func ExampleRead() {
	list, errs := Read("orders.csv", []byte("job,title,quantity,screen.color,screen.ink\nA-1,Quay tees,24,white,plastisol white\n,,,navy,plastisol\n"))
	if errs != nil {
		fmt.Println(errs)
		return
	}
	fmt.Printf("%d order\n%s", len(list), list[0].TOML)
	// Output:
	// 1 order
	// job = "A-1"
	// title = "Quay tees"
	// quantity = 24
	//
	// [[location]]
	//
	// [[location.screen]]
	// color = "white"
	// ink = "plastisol white"
	//
	// [[location.screen]]
	// color = "navy"
	// ink = "plastisol"
}
