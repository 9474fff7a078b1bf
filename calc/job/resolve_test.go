package job_test

import (
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/calc/job"
	"bladecard/calc/plantest"
)

const least = "title = \"t\"\n[[location]]\n[[location.screen]]\n"

func inScreen(line string) string { return least + line + "\n" }

func TestResolveMesh(t *testing.T) {
	shop := plantest.Shop(t, `mesh = [{ mesh = "156-64", tension = "31 N/cm", frame-width = "30 cm", frame-height = "40 cm" }, { mesh = "156-64", tension = "32 N/cm", frame-width = "51 cm", frame-height = "66 cm" },
		{ mesh = "230-40" }, { mesh = "230-48" }, { mesh = "120/cm-34" }]`)
	for _, c := range []struct {
		size, mesh, name, wrong string
		tension                 float64
		onRack                  bool
	}{
		{"", "156-64", "156-64", "", 31, true},
		{"width = \"35 cm\"\nheight = \"30 cm\"\n", "156-64", "156-64", "", 32, true}, // does not fit in the first frame
		{"width = \"35 cm\"\nheight = \"20 cm\"\n", "156-64", "156-64", "", 31, true}, // fits turned
		{"", "156", "156-64", "", 31, true},
		{"", "156/in-64", "156-64", "", 31, true},
		{"", "120/cm", "120/cm-34", "", 0, true},
		{"", "304.8-34", "120/cm-34", "", 0, true},
		{"", "61/cm-64", "61/cm-64", "", 0, false}, // 154.94 per inch, another cloth than 156
		{"", "156-70", "156-70", "", 0, false},
		{"", "230", "", `"230" is more than one mesh on the racks; "230-40" or "230-48" is accepted`, 0, false},
		{"", "305", "120/cm-34", "", 0, true}, // the count that 120/cm is sold as, 0.07 % off
		{"", "355", "", `"355" does not say the thread, and no mesh on the racks has that count; `, 0, false},
		{"width = \"55 cm\"\nheight = \"60 cm\"\n", "156-64", "", `the image, 550 x 600 mm, fits in no frame of 156-64 on the racks, the first of them 300 x 400 mm inside; a mesh`, 0, false},
	} {
		j, errs := file.DecodeJob("j.toml", []byte("title = \"t\"\n[[location]]\n"+c.size+"[[location.screen]]\nmesh = \""+c.mesh+"\"\n"))
		if errs != nil {
			t.Fatal(errs)
		}
		errs = job.Resolve(j, shop)
		if c.wrong != "" {
			if len(errs) != 1 || !strings.Contains(errs[0].Error(), "location 1, screen 1: mesh: "+c.wrong) {
				t.Errorf("%s: errors %v, want %s", c.mesh, errs, c.wrong)
			}
			continue
		}
		m := j.Locations[0].Screens[0].Mesh
		if errs != nil || m.Name != c.name || m.TensionNPerCM != c.tension || m.OnRack != c.onRack || m.ThreadUM == 0 || m.CountPerInch == 0 {
			t.Errorf("%s: %+v, errors %v", c.mesh, m, errs)
		}
	}
}

func TestResolveInk(t *testing.T) {
	for src, want := range map[string]string{
		least: "plastisol", "garment = {}\n" + least: "plastisol", "stock.kind = \"board\"\n" + least: "solvent graphics",
		inScreen(`ink = "discharge"`): "discharge",
	} {
		j, errs := file.DecodeJob("j.toml", []byte(src))
		errs = append(errs, job.Resolve(j, file.BuiltInShop())...)
		if s := j.Locations[0].Screens[0]; errs != nil || s.Ink.Name != want || s.InkName != want {
			t.Errorf("%s: ink %+v, errors %v", src, s.Ink, errs)
		}
	}
}

func TestResolveBladeAndPress(t *testing.T) {
	shop := plantest.Shop(t, "[[blade]]\nname = \"seventy, worn\"\nlayup = \"70\"\nedge = \"worn\"\n[[blade]]\nlayup = \"80\"\n")
	for _, c := range []struct{ blade, edge string }{{"70", "worn"}, {"seventy, worn", "worn"}, {"80", "new"}} {
		j, _ := file.DecodeJob("j.toml", []byte(inScreen(`blade = "`+c.blade+`"`)))
		if errs := job.Resolve(j, shop); errs != nil || j.Locations[0].Screens[0].Blades[0].Edge != c.edge {
			t.Errorf("%s: errors %v", c.blade, errs)
		}
	}
	none := plantest.Shop(t, "[[blade]]\nlayup = \"70/90/70\"\ncount = 0\n[[blade]]\nlayup = \"80\"\n")
	j, _ := file.DecodeJob("j.toml", []byte(inScreen(`blade = "70 / 90 / 70"`)))
	if errs := job.Resolve(j, none); len(errs) != 1 || !strings.Contains(errs[0].Error(), `blade: no blade "70 / 90 / 70" is at hand: its count in the shop file is 0`) {
		t.Errorf("a blade of which there is none: %v", errs)
	}
	j, _ = file.DecodeJob("j.toml", []byte("press = \"manuel\"\n"+least))
	want := `j.toml:1:9: press: the shop has no press "manuel"; did you mean "manual"? its presses are: "automatic", "manual"`
	if errs := job.Resolve(j, shop); errs.Error() != want {
		t.Errorf("got %s, want %s", errs.Error(), want)
	}
}

// Resolve must not hand out what belongs to the shop, and stands jobs made in Go.
func TestResolveCopies(t *testing.T) {
	shop := file.BuiltInShop()
	j := &job.Job{File: "made", Press: "x", Locations: []job.Location{{Screens: []job.Screen{{MeshName: "156-64", BladeName: "70"}, {MeshName: "?", BladeName: "?", InkName: "?"}}}}}
	if errs := job.Resolve(j, shop); len(errs) != 4 {
		t.Errorf("errors %v", errs)
	}
	s := &j.Locations[0].Screens[0]
	s.Ink.CureC.Low, s.Mesh.ThreadUM, s.Blades[0].LengthsMM[0] = 1, 1, 1
	blade := shop.FindBlades("70")[0]
	ink, _ := shop.FindInk("plastisol")
	if ink.CureC.Low == 1 || blade.LengthsMM[0] == 1 || shop.Meshes[4].ThreadUM == 1 {
		t.Error("the job points into the shop")
	}
	if len(job.Resolve(nil, shop)) != 1 || len(job.Resolve(j, nil)) != 1 {
		t.Error("Resolve takes nil")
	}
}

// Opening = 25 400/count - thread must be left; counts per cm are exact at 2.54 cm to the inch.
func TestParseMesh(t *testing.T) {
	for _, c := range []struct {
		text          string
		count, thread float64
		wrong         string
	}{
		{"156-64", 156, 64, ""}, {"61/cm-64", 154.94, 64, ""}, {" 156 - 64 ", 156, 64, ""}, {"156", 156, 0, ""}, {"156/in-64", 156, 64, ""}, {"39.5/cm-55.5", 100.33, 55.5, ""},
		{"", 0, 0, "is not a mesh"}, {"156-", 0, 0, "is not a mesh"}, {"-64", 0, 0, "is not a mesh"}, {"156-64-2", 0, 0, "is not a mesh"}, {"1e3-10", 0, 0, "is not a mesh"},
		{"nan-64", 0, 0, "is not a mesh"}, {"1.2.3-64", 0, 0, "is not a mesh"}, {"4-64", 0, 0, "5 to 1000"}, {"1001-12", 0, 0, "5 to 1000"}, {"156-9", 0, 0, "10 to 2000"}, {"254-100", 0, 0, "has no opening"}, {strings.Repeat("1", 400), 0, 0, "is not a mesh"},
	} {
		count, thread, err := job.ParseMesh(c.text)
		if c.wrong != "" {
			if err == nil || !strings.Contains(err.Error(), c.wrong) || count != 0 || thread != 0 {
				t.Errorf("%q: %v, %v, %v; want %s", c.text, count, thread, err, c.wrong)
			}
		} else if err != nil || thread != c.thread || !(count > c.count-1e-9 && count < c.count+1e-9) {
			t.Errorf("%q: %v, %v, %v", c.text, count, thread, err)
		}
	}
}

func TestParseLayup(t *testing.T) {
	for text, want := range map[string]int{"70": 1, "65/90/65": 3, " 65 / 90 ": 2, "40": 1, "95": 1, "": 0, "39": 0, "96": 0, "65//65": 0, "65/90/": 0, "nan": 0, "70/70/70/70/70/70/70/70": 0} {
		h, err := job.ParseLayup(text)
		if len(h) != want || (err == nil) != (want > 0) {
			t.Errorf("%q: %v, %v; want %d layers", text, h, err, want)
		}
	}
}
