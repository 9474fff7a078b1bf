package file

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"bladecard/calc/job"
)

// someCalibration has figures that no default has.
func someCalibration() *job.Calibration {
	return &job.Calibration{
		Factor: 1.21, Error: 0.05, Scatter: 0.08, Day: 0.07, Count: 12, Date: job.Date{Year: 2026, Month: 11, Day: 20},
		MeanDeg: 16, MeanShoreA: 71, MeanSlope: 0.2, Angle: -0.01, AngleError: 0.06, Hardness: 0.003, HardnessError: 0.024,
		NextStroke: 0.45, NextStrokeError: 0.2, Blades: []string{"70", `the "soft" one`},
		Meshes: []job.MeshFactor{{Name: "110-80", Factor: 1.1, Error: 0.04, Own: 0.02, Count: 5}, {Name: "156-64", Factor: 1.3, Error: 0.03, Own: 0.01, Count: 7}},
	}
}

// The keys that a calibration has beside the four that it must have, as they are put in.
const otherKeys = `day = 0.07
` + laterKeys

const laterKeys = `date = 2026-11-20
mean-angle = 16
mean-hardness = 71
mean-slope = 0.2
angle = -0.01
angle-error = 0.06
hardness = 0.003
hardness-error = 0.024
next-stroke = 0.45
next-stroke-error = 0.2
blades = ["70", "the \"soft\" one"]
`

const (
	newMesh      = "[[calibration.mesh]]\nmesh = \"110-80\"\nfactor = 1.1\nerror = 0.04\nown-error = 0.02\ncount = 5\n"
	otherMesh    = "[[calibration.mesh]]\nmesh = \"156-64\"\nfactor = 1.3\nerror = 0.03\nown-error = 0.01\ncount = 7\n"
	inlineNew    = `{ mesh = "110-80", factor = 1.1, error = 0.04, own-error = 0.02, count = 5 }`
	inlineOther  = `{ mesh = "156-64", factor = 1.3, error = 0.03, own-error = 0.01, count = 7 }`
	leastKeys    = "factor = 1\nerror = 0.1\nscatter = 0.1\ncount = 3\n"
	leastNow     = "factor = 1.21\nerror = 0.05\nscatter = 0.08\ncount = 12\n"
	inlineLeast  = "factor = 1, error = 0.1, scatter = 0.1, count = 3"
	inlineNow    = "factor = 1.21, error = 0.05, scatter = 0.08, count = 12"
	rack         = "[[blade]] # the soft one\nlayup = \"70\"\n"
	calibrationA = "[calibration]\n"
	wholeBlock   = calibrationA + "factor = 1.21\nerror = 0.05\nscatter = 0.08\nday = 0.07\ncount = 12\n" + laterKeys + newMesh + otherMesh
)

func dotted(keys string) string {
	return "calibration." + strings.ReplaceAll(strings.TrimSuffix(keys, "\n"), "\n", "\ncalibration.") + "\n"
}

func inRow(keys string) string { return strings.ReplaceAll(strings.TrimSuffix(keys, "\n"), "\n", ", ") }

// TestWithCalibration: every legal layout is changed in place, and nothing else moves.
func TestWithCalibration(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"nothing there", "", wholeBlock},
		{"at the end", rack, rack + "\n" + wholeBlock},
		{"no line end", "paper = \"a4\"", "paper = \"a4\"\n\n" + wholeBlock},
		{"a table", calibrationA + leastKeys + rack, calibrationA + leastNow + otherKeys + newMesh + otherMesh + rack},
		{
			"comments and indentation",
			"# shop\n  [calibration] # by fit\n  # the factor\n  factor = 1.0 # of all\n  error = 0.1\n\n  scatter = 0.1# near\n  count = 3 # prints\n  # behind\n" + rack,
			"# shop\n  [calibration] # by fit\n  # the factor\n  factor = 1.21 # of all\n  error = 0.05\n\n  scatter = 0.08# near\n  count = 12 # prints\n" +
				"  " + strings.ReplaceAll(strings.TrimSuffix(otherKeys, "\n"), "\n", "\n  ") + "\n" + newMesh + otherMesh + "  # behind\n" + rack,
		},
		{"another order", calibrationA + "count = 3\nscatter = 0.1\nfactor = 1\nerror = 0.1\n", calibrationA + "count = 12\nscatter = 0.08\nfactor = 1.21\nerror = 0.05\n" + otherKeys + newMesh + otherMesh},
		{"quoted head and keys", "[ \"calibration\" ]\n'factor' = 1\nerror = 0.1\n\"scatter\" = 0.1\ncount = 3\n",
			"[ \"calibration\" ]\n'factor' = 1.21\nerror = 0.05\n\"scatter\" = 0.08\ncount = 12\n" + otherKeys + newMesh + otherMesh},
		{"BOM", "\uFEFF" + calibrationA + leastKeys, "\uFEFF" + calibrationA + leastNow + otherKeys + newMesh + otherMesh},
		{"CRLF", crlf(calibrationA + leastKeys + rack), crlf(calibrationA + leastNow + otherKeys + newMesh + otherMesh + rack)},
		{"CRLF, nothing there", crlf(rack), crlf(rack + "\n" + wholeBlock)},
		{"no line end behind it", calibrationA + strings.TrimSuffix(leastKeys, "\n"), calibrationA + leastNow + otherKeys + newMesh + otherMesh},
		{"dotted keys", dotted(leastKeys) + "paper = \"a4\" # last\n" + rack,
			dotted(leastNow+otherKeys+"mesh = ["+inlineNew+", "+inlineOther+"]\n") + "paper = \"a4\" # last\n" + rack},
		{"inline table", "calibration = { " + inlineLeast + " } # all\npaper = \"a4\"\n",
			"calibration = { " + inlineNow + ", " + inRow(otherKeys) + ", mesh = [" + inlineNew + ", " + inlineOther + "] } # all\npaper = \"a4\"\n"},
		{"a text that holds a head", "name = \"\"\"\n[calibration]\nfactor = 9\"\"\"\n" + calibrationA + leastKeys,
			"name = \"\"\"\n[calibration]\nfactor = 9\"\"\"\n" + calibrationA + leastNow + otherKeys + newMesh + otherMesh},
		{"no date any more, and one that is", calibrationA + "date = 2025-01-01 # then\n" + leastKeys, calibrationA + "date = 2026-11-20 # then\n" + leastNow + strings.Replace(otherKeys, "date = 2026-11-20\n", "", 1) + newMesh + otherMesh},
		{
			"meshes of their own: one stays, one goes, one comes",
			calibrationA + leastKeys + otherKeys + "[[calibration.mesh]] # fine\nmesh = \"156-64\" # name\nfactor = 1 # of it\nerror = 0.1\ncount = 3\n" +
				"# gone\n[[calibration.mesh]]\nmesh = \"355-34\"\nfactor = 1\nerror = 0.1\ncount = 3\n# end\n" + rack,
			calibrationA + leastNow + otherKeys + "[[calibration.mesh]] # fine\nmesh = \"156-64\" # name\nfactor = 1.3 # of it\nerror = 0.03\ncount = 7\nown-error = 0.01\n" +
				"# gone\n" + newMesh + "# end\n" + rack,
		},
		{
			"indented meshes",
			calibrationA + leastKeys + otherKeys + "  [[calibration.mesh]]\n    mesh = \"156-64\"\n    factor = 1\n    error = 0.1\n    count = 3\n",
			calibrationA + leastNow + otherKeys + "  [[calibration.mesh]]\n    mesh = \"156-64\"\n    factor = 1.3\n    error = 0.03\n    count = 7\n    own-error = 0.01\n" +
				"  [[calibration.mesh]]\n" + "    " + strings.ReplaceAll(strings.TrimSuffix(strings.TrimPrefix(newMesh, "[[calibration.mesh]]\n"), "\n"), "\n", "\n    ") + "\n",
		},
		{
			"the table between its meshes, other tables between",
			"[[calibration.mesh]]\nmesh = '156-64'\nfactor = 1\nerror = 0.1\ncount = 3\n" + rack + calibrationA + leastKeys + otherKeys + "[[mesh]]\nmesh = \"156-64\"\n",
			"[[calibration.mesh]]\nmesh = '156-64'\nfactor = 1.3\nerror = 0.03\ncount = 7\nown-error = 0.01\n" + newMesh + rack + calibrationA + leastNow + otherKeys + "[[mesh]]\nmesh = \"156-64\"\n",
		},
		{
			"meshes in a list on lines",
			calibrationA + leastKeys + otherKeys + "mesh = [\n  # first\n  { mesh = \"355-34\", factor = 1, error = 0.1, count = 3 }, # goes\n  # second\n  { mesh = \"156-64\", factor = 1, error = 0.1, count = 3 }, # stays\n  { mesh = \"305-40\", factor = 1, error = 0.1, count = 3 } # goes too\n]\n",
			calibrationA + leastNow + otherKeys + "mesh = [\n  # first\n  # second\n  " + inlineNew + ",\n  { mesh = \"156-64\", factor = 1.3, error = 0.03, count = 7, own-error = 0.01 }, # stays\n]\n",
		},
		{
			"meshes in a list on one line",
			calibrationA + leastKeys + otherKeys + "mesh = [{ mesh = \"355-34\", factor = 1, error = 0.1, count = 3 }, " + strings.Replace(inlineOther, "1.3", "1", 1) + "]\n",
			calibrationA + leastNow + otherKeys + "mesh = [" + inlineNew + ", " + inlineOther + "]\n",
		},
		{
			"the last of a list goes",
			calibrationA + leastKeys + otherKeys + "mesh = [" + inlineOther + ", " + inlineNew + ", { mesh = \"355-34\", factor = 1, error = 0.1, count = 3 }]\n",
			calibrationA + leastNow + otherKeys + "mesh = [" + inlineOther + ", " + inlineNew + ", ]\n",
		},
		{"nothing of a list stays", calibrationA + leastKeys + otherKeys + "mesh = []\n", calibrationA + leastNow + otherKeys + "mesh = [" + inlineNew + ", " + inlineOther + "]\n"},
		{"meshes in dotted keys", dotted(leastKeys + otherKeys + "mesh = [" + inlineNew + "] # these\n"),
			dotted(leastNow + otherKeys + "mesh = [" + inlineOther + ", " + inlineNew + "] # these\n")},
		{"only the mesh list is dotted last", "calibration.mesh = [" + inlineNew + ", " + inlineOther + "]\n" + dotted(leastKeys+otherKeys),
			"calibration.mesh = [" + inlineNew + ", " + inlineOther + "]\n" + dotted(leastNow+otherKeys)},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, err := WithCalibration("shop.toml", []byte(c.src), someCalibration())
			if err != nil {
				t.Fatal(err)
			}
			if string(out) != c.want {
				t.Fatalf("got\n%q\nwant\n%q", out, c.want)
			}
			again, err := WithCalibration("shop.toml", out, someCalibration())
			if err != nil || string(again) != string(out) {
				t.Errorf("a second time: %v\n%q", err, again)
			}
			s, errs := DecodeShop("shop.toml", out)
			sorted := someCalibration()
			if errs != nil {
				t.Fatal(errs)
			}
			sortMeshes(s.Calibration)
			if !reflect.DeepEqual(s.Calibration, sorted) {
				t.Errorf("%+v", s.Calibration)
			}
		})
	}
}

func crlf(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }

// A key that the calibration has no longer goes with its line, or with its comma.
func TestCalibrationKeyGoes(t *testing.T) {
	c := someCalibration()
	c.Date = job.Date{}
	rest := strings.Replace(otherKeys, "date = 2026-11-20\n", "", 1)
	for src, want := range map[string]string{
		calibrationA + leastKeys + otherKeys + newMesh + otherMesh:                                                                         calibrationA + leastNow + rest + newMesh + otherMesh,
		"calibration = { date = 2026-11-20, " + inlineLeast + ", " + inRow(rest) + ", mesh = [" + inlineNew + ", " + inlineOther + "] }\n": "calibration = { " + inlineNow + ", " + inRow(rest) + ", mesh = [" + inlineNew + ", " + inlineOther + "] }\n",
		"calibration = { mesh = [" + inlineNew + ", " + inlineOther + "], date = 2026-11-20, " + inlineLeast + ", " + inRow(rest) + " }\n": "calibration = { mesh = [" + inlineNew + ", " + inlineOther + "], " + inlineNow + ", " + inRow(rest) + " }\n",
		"calibration = { " + inlineLeast + ", date = 2026-11-20, " + inRow(rest) + ", mesh = [" + inlineNew + ", " + inlineOther + "] }\n": "calibration = { " + inlineNow + ", " + inRow(rest) + ", mesh = [" + inlineNew + ", " + inlineOther + "] }\n",
	} {
		out, err := WithCalibration("shop.toml", []byte(src), c)
		if err != nil || string(out) != want {
			t.Errorf("%v\ngot  %q\nwant %q", err, out, want)
		}
	}
}

// What a shop file would not take is not put in, and the key is named.
func TestCheckCalibration(t *testing.T) {
	if errs := CheckCalibration(someCalibration()); errs != nil {
		t.Error(errs)
	}
	for key, spoil := range map[string]func(*job.Calibration){
		"scatter":            func(c *job.Calibration) { c.Scatter = 3.5 },
		"factor":             func(c *job.Calibration) { c.Factor = 35 },
		"date":               func(c *job.Calibration) { c.Date.Year = 2100 },
		"mesh 1: factor":     func(c *job.Calibration) { c.Meshes[0].Factor = 35 },
		"mesh":               func(c *job.Calibration) { c.Meshes[0].Name = "" },
		"next-stroke: 0.951": func(c *job.Calibration) { c.NextStroke = 0.951 },
	} {
		c := someCalibration()
		spoil(c)
		key, _, _ = strings.Cut(key, ": ")
		errs := CheckCalibration(c)
		if len(errs) != 1 || !strings.Contains(errs[0].Error(), key) {
			t.Errorf("%s: %v", key, errs)
		}
		_, err := WithCalibration("shop.toml", nil, c)
		var named job.Errors
		if !errors.As(err, &named) || !strings.Contains(err.Error(), key) {
			t.Errorf("%s is put in: %v", key, err)
		}
	}
}

// FuzzWithCalibration: whatever the shop file, there is one that says the calibration and nothing
// else new, or an error.
func FuzzWithCalibration(f *testing.F) {
	f.Add([]byte("calibration = { " + inlineLeast + ", mesh = [" + inlineNew + ",] }"))
	f.Add([]byte(dotted(leastKeys) + "calibration.mesh = [\n" + inlineNew + ", # one\n" + inlineOther + "]\n"))
	f.Add([]byte("[[calibration.mesh]]\nmesh = 'a'\nfactor = 1\nerror = 0.1\ncount = 3\n" + rack + "[calibration]\n" + leastKeys))
	f.Fuzz(func(t *testing.T, src []byte) {
		if _, errs := DecodeShop("shop.toml", src); len(errs) > 0 {
			return
		}
		if _, err := WithCalibration("shop.toml", src, someCalibration()); err != nil {
			t.Errorf("%v\n%q", err, src)
		}
	})
}
