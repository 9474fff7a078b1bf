package job

import (
	"fmt"

	"bladecard/calc/internal/words"
)

// Unnamed is the name of a location that the file does not name.
func Unnamed(i int) string { return fmt.Sprintf("location %d", i+1) }

func locationWhere(i int, l *Location) string {
	if l.Name == Unnamed(i) {
		return l.Name
	}
	return "location " + words.Quote(l.Name)
}

// ScreenWhere is how errors call the n-th screen of the i-th location, both counted from 0.
func ScreenWhere(i int, l *Location, n int) string {
	return fmt.Sprintf("%s, screen %d", locationWhere(i, l), n+1)
}
