package lesson_test

import (
	"fmt"

	"bladecard/calc/file"
	"bladecard/calc/lesson"
)

func ExampleMake() {
	l, err := lesson.Make(file.BuiltInShop())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range l.Blades {
		fmt.Printf("%-8s %.2f N m, %.2f of a single 70, edge at 15 deg %.0f\n", b.Name, b.RigidityNM, b.To70, *b.Edges[2])
	}
	fmt.Println(len(l.Exercises) >= 10)
	// Output:
	// 60       0.34 N m, 0.65 of a single 70, edge at 15 deg 35
	// 65/90/65 0.48 N m, 0.91 of a single 70, edge at 15 deg 28
	// 70       0.53 N m, 1.00 of a single 70, edge at 15 deg 27
	// 70/90/70 0.58 N m, 1.10 of a single 70, edge at 15 deg 25
	// 80       0.89 N m, 1.69 of a single 70, edge at 15 deg 21
	// true
}

func ExampleStiffnessNPerCMPerMM() {
	k, err := lesson.StiffnessNPerCMPerMM(0.526, 25)
	fmt.Printf("%.2f N/cm per mm %v\n", k, err)
	// Output: 1.01 N/cm per mm <nil>
}
