package placement

import "fmt"

// The sides of a garment.
const (
	Front  = "front"
	Back   = "back"
	Sleeve = "sleeve"
)

// Range is a low and a high end in mm.
type Range struct{ LowMM, HighMM float64 }

// Place is where a print usually stands.
type Place struct {
	Side   string // Front, Back or Sleeve
	Down   Range  // from the collar seam to the top of the print; on a sleeve from its hem up to the print's foot
	Across Range  // from the middle of the garment to the middle of the print; zero: in the middle
	Left   bool   // Across counts to the wearer's left
}

const in = 25.4

// places by word. Distances in inches as the guides give them.
var places = map[string]Place{
	"full-front":   {Side: Front, Down: Range{2 * in, 3 * in}},
	"full-back":    {Side: Back, Down: Range{2 * in, 4 * in}},
	"center-chest": {Side: Front, Down: Range{2 * in, 3.1 * in}},
	"left-chest":   {Side: Front, Down: Range{2.8 * in, 4 * in}, Across: Range{3 * in, 4 * in}, Left: true},
	"right-chest":  {Side: Front, Down: Range{2.8 * in, 4 * in}, Across: Range{3 * in, 4 * in}},
	"neck":         {Side: Back, Down: Range{0.5 * in, 1 * in}},
	"left-sleeve":  {Side: Sleeve, Down: Range{1 * in, 1.5 * in}, Left: true},
	"right-sleeve": {Side: Sleeve, Down: Range{1 * in, 1.5 * in}},
}

// Usual is where a print of the given place usually stands, in mm.
//
//	full-front    2 to 3 in below the collar seam
//	full-back     2 to 4 in
//	center-chest  2 to 3.1 in
//	left-chest    2.8 to 4 in, 3 to 4 in from the middle; right-chest alike
//	neck          0.5 to 1 in below the seam ("just below"; the figure is from memory)
//	left-sleeve   1 to 1.5 in above the hem (from memory); right-sleeve alike
//
// Range: these eight words; an error for any other. Source: the guides named in the package
// comment (published, spanned), the neck and the sleeves from memory.
func Usual(place string) (Place, error) {
	p, ok := places[place]
	if !ok {
		return Place{}, fmt.Errorf("placement: the place %q is not known; full-front, full-back, center-chest, left-chest, right-chest, neck, left-sleeve and right-sleeve are accepted", place)
	}
	return p, nil
}
