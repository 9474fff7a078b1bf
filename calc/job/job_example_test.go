package job_test

import (
	"fmt"

	"bladecard/calc/file"
	"bladecard/calc/job"
)

func ExampleResolve() {
	j := &job.Job{Locations: []job.Location{{Screens: []job.Screen{{MeshName: "156-64"}}}}}
	errs := job.Resolve(j, file.BuiltInShop())
	s := j.Locations[0].Screens[0]
	fmt.Println(errs == nil, s.Ink.Name, s.Mesh.CountPerInch, s.Mesh.OnRack)
	// Output: true plastisol 156 true
}

func ExampleScreen_KeyPos() {
	j, _ := file.DecodeJob("job.toml", []byte("title = \"t\"\n[[location]]\n[[location.screen]]\neom = \"20 %\"\n"))
	s := &j.Locations[0].Screens[0]
	fmt.Println(s.KeyPos("eom"), s.KeyPos("angle"))
	// Output: job.toml:4:7 job.toml:3:1
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
	press, ok := file.BuiltInShop().FindPress("")
	fmt.Println(press.Name, ok)
	// Output: automatic true
}

func ExampleShop_FindBlades() {
	for _, b := range file.BuiltInShop().FindBlades("70 / 90 / 70") {
		fmt.Println(b.Hardness, b.FreeHeightMM)
	}
	// Output: [70 90 70] 25
}

func ExampleShop_FindInk() {
	ink, ok := file.BuiltInShop().FindInk("silicone")
	fmt.Println(ink.Dries, ok)
	// Output: react true
}

func ExampleErrors_Err() {
	var errs job.Errors
	fmt.Println(errs.Err() == nil)
	errs = append(errs, job.Error{Key: "mesh", Wrong: "is missing"})
	fmt.Println(errs.Err())
	// Output:
	// true
	// mesh: is missing
}

func ExampleFits() {
	image := &job.Location{WidthMM: 350, HeightMM: 300}
	fmt.Println(job.Fits(image, &job.Mesh{FrameWidthMM: 310, FrameHeightMM: 400}), job.Fits(image, &job.Mesh{FrameWidthMM: 300, FrameHeightMM: 400}))
	// Output: true false
}

func ExampleMesh_Cloth() {
	cloth, err := job.Mesh{CountPerInch: 156, ThreadUM: 64}.Cloth()
	fmt.Printf("%.1f um open, %.1f um thick, %v", cloth.OpeningUM, cloth.FabricUM, err)
	// Output: 98.8 um open, 95.2 um thick, <nil>
}

func ExampleBlade_Layers() {
	layers, err := job.Blade{ThicknessMM: 9, Hardness: []float64{70, 90, 70}}.Layers(-5)
	fmt.Printf("%.2f and %.2f MPa, %g mm each, %v", layers[0].ModulusMPa, layers[1].ModulusMPa, layers[0].ThicknessMM, err)
	// Output: 4.43 and 13.18 MPa, 3 mm each, <nil>
}
