package file_test

import (
	"encoding/json"
	"fmt"
	"strings"

	"bladecard/calc/file"
	"bladecard/calc/job"
)

const regatta = `title = "Regatta shirts"

[[location]]
name = "full front"
width = "12 in"

[[location.screen]]
mesh = "156-64"
eom = "20 %"
`

func ExampleDecodeJob() {
	j, _ := file.DecodeJob("job.toml", []byte(regatta))
	fmt.Println(j.Title, j.Locations[0].WidthMM, j.Locations[0].Screens[0].EOM.Share)
	_, errs := file.DecodeJob("job.toml", []byte(regatta+"load = 5\n"))
	fmt.Println(errs)
	// Output:
	// Regatta shirts 304.8 0.2
	// job.toml:10:8: location "full front", screen 1: load: 5 has no unit; a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm
}

func ExampleDecodeShop() {
	s, errs := file.DecodeShop("shop.toml", []byte("[[blade]]\nlayup = \"65/90/65\"\n"))
	fmt.Println(len(s.Blades), s.Blades[0].Hardness, len(s.Meshes) > 0, errs == nil)
	// Output: 1 [65 90 65] true true
}

func ExampleBuiltInShop() {
	s := file.BuiltInShop()
	fmt.Println(s.Presses[0].Name, s.Presses[0].LoadNPerCM, "N/cm")
	// Output: automatic 5 N/cm
}

func ExampleSchema() {
	src, _ := file.Schema("job", "en")
	var schema struct{ Required []string }
	json.Unmarshal(src, &schema)
	fmt.Println(schema.Required)
	// Output: [title location]
}

func ExampleKinds() {
	fmt.Println(file.Kinds())
	// Output: [job shop]
}

func ExampleCalibrationText() {
	text := file.CalibrationText(&job.Calibration{Factor: 1.1, Scatter: 0.1, Count: 12})
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "[") || strings.HasPrefix(line, "factor") {
			fmt.Print(line)
		}
	}
	// Output:
	// [calibration]
	// factor = 1.1
}

func ExampleCheckCalibration() {
	errs := file.CheckCalibration(&job.Calibration{Factor: 1.1, Scatter: 3.5, Count: 12, MeanShoreA: 70, MeanDeg: 15})
	fmt.Println(errs[0].Key, errs[0].Wrong)
	// Output: calibration.scatter 3.5 is out of range
}

func ExampleWithCalibration() {
	c := &job.Calibration{Factor: 1.1, Scatter: 0.1, Count: 12, MeanShoreA: 70, MeanDeg: 15}
	shop, err := file.WithCalibration("shop.toml", []byte("[calibration]\nfactor = 1 # of ours\nscatter = 0.2\ncount = 3\n"), c)
	for line := range strings.Lines(string(shop)) {
		if strings.HasPrefix(line, "factor") {
			fmt.Print(line, err)
		}
	}
	// Output:
	// factor = 1.1 # of ours
	// <nil>
}
