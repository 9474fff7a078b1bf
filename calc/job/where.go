package job

import (
	"fmt"

	"bladecard/calc/internal/words"
)

// Unnamed returns the name of a location that the file does not name.
func Unnamed(i int) string { return fmt.Sprintf("location %d", i+1) }

func locationWhere(i int, l *Location) string {
	if l.Name == Unnamed(i) {
		return l.Name
	}
	return "location " + words.Quote(l.Name)
}

// ScreenWhere says how errors call the n-th screen of the i-th location, both counted from 0.
func ScreenWhere(i int, l *Location, n int) string {
	return fmt.Sprintf("%s, screen %d", locationWhere(i, l), n+1)
}

// Places tells where the keys of a table stand in its file.
type Places interface {
	// Find returns the place of a key's value, or of the table itself where the file leaves the key out.
	Find(key string) Pos
}

// KeyPos returns the place of a key's value in the screen's table, or of the table itself where the
// file leaves the key out; the screen's own Pos when it comes from no file.
func (s *Screen) KeyPos(key string) Pos {
	if s.Keys == nil {
		return s.Pos
	}
	return s.Keys.Find(key)
}
