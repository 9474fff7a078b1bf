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
		fmt.Printf("%-8s %.2f as stiff as the usual blade, edge at 15 deg %.0f\n", b.Name, b.Stiff, *b.Edges[2])
	}
	fmt.Println(len(l.Prints), "prints")
	// Output:
	// 60       0.65 as stiff as the usual blade, edge at 15 deg 35
	// 65/90/65 0.91 as stiff as the usual blade, edge at 15 deg 28
	// 70       1.00 as stiff as the usual blade, edge at 15 deg 27
	// 70/90/70 1.10 as stiff as the usual blade, edge at 15 deg 25
	// 80       1.69 as stiff as the usual blade, edge at 15 deg 21
	// 11 prints
}
