package mesh

// UMPerInch and CMPerInch are the definition of the inch.
const (
	UMPerInch = 25400.0
	CMPerInch = 2.54
)

// Range of counts that the package takes, threads per inch: coarser than any printing cloth
// at one end (test sieves), finer than any at the other.
const (
	MinPerInch = 2.0
	MaxPerInch = 1000.0
)

// PerCM converts a count from threads per inch to threads per centimetre.
//
// Range: any finite value; nothing is checked. Definition: 1 in = 2.54 cm. Metric counts are
// the true ones, inch counts are what they are sold as: 155 per cm is 393.7 per inch and sold
// as 390 (published: Coudray, Screen Printing, April 2003 [20]).
func PerCM(perInch float64) float64 { return perInch / CMPerInch }

// PitchUM is the distance from thread to thread in micrometres, 25 400 / count, for a count
// in threads per inch.
//
// Range: 2 to 1000 threads per inch; an error outside. Source: ISO 9044 [18] terms (published).
func PitchUM(countPerInch float64) (float64, error) {
	if err := within("count", countPerInch, MinPerInch, MaxPerInch, "threads per inch"); err != nil {
		return 0, err
	}
	return UMPerInch / countPerInch, nil
}
