package job_test

import (
	"encoding/json"
	"fmt"
	"strings"

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
	j, _ := job.DecodeJob("job.toml", []byte(regatta))
	fmt.Println(j.Title, j.Locations[0].WidthMM, j.Locations[0].Screens[0].EOM.Share)
	_, errs := job.DecodeJob("job.toml", []byte(regatta+"load = 5\n"))
	fmt.Println(errs)
	// Output:
	// Regatta shirts 304.8 0.2
	// job.toml:10:8: location "full front", screen 1: load: 5 has no unit; a line load such as "20 N/cm" is accepted, in N/cm, N/m, N/mm, lbf/in or kgf/cm
}

func ExampleDecodeShop() {
	s, errs := job.DecodeShop("shop.toml", []byte("[[blade]]\nlayup = \"65/90/65\"\n"))
	fmt.Println(len(s.Blades), s.Blades[0].Hardness, len(s.Meshes) > 0, errs == nil)
	// Output: 1 [65 90 65] true true
}

func ExampleBuiltInShop() {
	s := job.BuiltInShop()
	fmt.Println(s.Presses[0].Name, s.Presses[0].LoadNPerCM, "N/cm")
	// Output: automatic 5 N/cm
}

func ExampleResolve() {
	j, _ := job.DecodeJob("job.toml", []byte(regatta))
	errs := job.Resolve(j, job.BuiltInShop())
	s := j.Locations[0].Screens[0]
	fmt.Println(errs == nil, s.Ink.Name, s.Mesh.CountPerInch, s.Mesh.OnRack)
	// Output: true plastisol 156 true
}

func ExampleScreen_KeyPos() {
	j, _ := job.DecodeJob("job.toml", []byte(regatta))
	s := &j.Locations[0].Screens[0]
	fmt.Println(s.KeyPos("eom"), s.KeyPos("angle"))
	// Output: job.toml:9:7 job.toml:7:1
}

func ExampleParseMesh() {
	count, thread, _ := job.ParseMesh("61/cm-64")
	fmt.Printf("%.2f per inch, %.0f um\n", count, thread)
	// Output: 154.94 per inch, 64 um
}

func ExampleParseLayup() {
	hardness, _ := job.ParseLayup("65/90/65")
	fmt.Println(hardness)
	// Output: [65 90 65]
}

func ExampleShop_FindPress() {
	press, ok := job.BuiltInShop().FindPress("")
	fmt.Println(press.Name, ok)
	// Output: automatic true
}

func ExampleShop_FindBlade() {
	blade, ok := job.BuiltInShop().FindBlade("70")
	fmt.Println(blade.Hardness, blade.FreeHeightMM, ok)
	// Output: [70] 25 true
}

func ExampleShop_FindInk() {
	ink, ok := job.BuiltInShop().FindInk("silicone")
	fmt.Println(ink.Dries, ok)
	// Output: react true
}

func ExampleErrors_Err() {
	_, errs := job.DecodeJob("job.toml", []byte(regatta))
	fmt.Println(errs.Err() == nil)
	// Output: true
}

func ExampleSchema() {
	src, _ := job.Schema("job")
	var schema struct{ Required []string }
	json.Unmarshal(src, &schema)
	fmt.Println(schema.Required)
	// Output: [title location]
}

func ExampleKeyTables() {
	text, _ := job.KeyTables("shop")
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "| `waste` ") {
			fmt.Print(line)
		}
	}
	// Output: | `waste` | share `"10 %"` | 0 to 100 % | `10 %` | ink lost to test prints and rags, of what is printed |
}

func ExampleKinds() {
	fmt.Println(job.Kinds())
	// Output: [job shop]
}
