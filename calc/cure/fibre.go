package cure

import "math"

// Fibre is what a fibre bears in C; +Inf is no limit here.
type Fibre struct {
	WarnC  float64 // from here on something goes wrong for some cloths
	StopC  float64 // never above
	Kind   string  // published, from memory
	Source string  // where the figures stand
}

// fibres are the limits by the job file's word for the fibre. For nylon the published iron limit
// of one dot is 110 C, its assignment to the fibre from memory; prints are cured above it, so the
// stop is a customary one and the maker's word counts.
var fibres = map[string]Fibre{
	"polyester": {WarnC: 129, StopC: 154, Kind: "published", Source: "an ink maker's dye migration bulletin [43], 265 F; a temperature note on performance fabrics [44], 310 F"},
	"blend":     {WarnC: 149, StopC: math.Inf(1), Kind: "published", Source: "a garment supplier's article on plastisol [45], 300 F for synthetic blends"},
	"tri-blend": {WarnC: 149, StopC: math.Inf(1), Kind: "published", Source: "a garment supplier's article on plastisol [45], 300 F for synthetic blends"},
	"nylon":     {WarnC: math.Inf(1), StopC: 150, Kind: "from memory", Source: "customary; the garment maker's word counts"},
	"cotton":    {WarnC: math.Inf(1), StopC: 200, Kind: "published", Source: "care symbols [46]: iron, three dots; a guard against scorch"},
}

// FibreLimit is what a fibre bears: from where to warn, where to stop, with kind and source.
// Polyester warns at 129 C (265 F), where dyes begin to move, and stops at 154 C (310 F); blends
// warn at 149 C (300 F); nylon stops at 150 C; cotton at the iron's 200 C.
//
// Range: cotton, polyester, blend, tri-blend, nylon; an error for any other. Kind: published but
// for nylon, which is from memory. Source: in each Fibre.
func FibreLimit(fibre string) (Fibre, error) {
	f, ok := fibres[fibre]
	if !ok {
		return Fibre{}, errFibre(fibre)
	}
	return f, nil
}
