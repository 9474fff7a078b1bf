package cells_test

import (
	"fmt"
	"math"
	"os"

	"bladecard/calc/cells"
)

func ExampleText() {
	cell := cells.Text("=1+1")
	fmt.Println(cell, cells.TextOf(string(cell)), cells.Text("lantern"))
	// Output: '=1+1 =1+1 lantern
}

func ExampleWriter() {
	w := cells.NewWriter(os.Stdout, ';')
	w.Row(cells.Text("note"), cells.Text("wet (um)"), cells.Text("cured (um)"))
	w.Row(cells.Text("@home; dry"), cells.Number(45.5), cells.Number(math.NaN()))
	fmt.Println(w.Flush())
	// Output:
	// note;wet (um);cured (um)
	// "'@home; dry";45.5;
	// <nil>
}
