package mesh

import "math"

// How a stencil is built (from memory; the emulsion's data sheet and a thickness gauge win): a
// coat of direct emulsion adds about 5 um over the mesh, past 60 um the coats no longer dry
// through and capillary film is laid instead, sold in these thicknesses.
const (
	CoatUM       = 5.0
	MostCoatedUM = 60.0
)

// capillaryUM are the thicknesses of capillary film on the market (from memory, 100 to 400 um;
// single layers to 600 um are published: Printing 3-D T-shirt designs [24]).
var capillaryUM = []float64{80, 100, 150, 200, 250, 300, 400}

// Build is how a stencil of some EOM is made: coats of emulsion, or films laid on each other.
type Build struct {
	Coats   int       // of direct emulsion, both sides counted; 0: film
	FilmsUM []float64 // capillary films, thickest first
}

// BuildFor tells how to make a stencil of the given emulsion over mesh in um: coats of direct
// emulsion up to MostCoatedUM, above that the fewest capillary films that reach it.
//
// Range: 0 to 2000 um; an error outside. Kind: from memory, see CoatUM.
func BuildFor(eomUM float64) (Build, error) {
	if err := within("emulsion over mesh", eomUM, 0, 2000, "um"); err != nil {
		return Build{}, err
	}
	if eomUM <= MostCoatedUM {
		return Build{Coats: max(1, int(math.Ceil(eomUM/CoatUM)))}, nil
	}
	var b Build
	thickest := capillaryUM[len(capillaryUM)-1]
	for left := eomUM; left > 0; {
		if left > thickest {
			b.FilmsUM = append(b.FilmsUM, thickest)
			left -= thickest
			continue
		}
		for _, f := range capillaryUM {
			if f >= left {
				b.FilmsUM = append(b.FilmsUM, f)
				break
			}
		}
		break
	}
	return b, nil
}
