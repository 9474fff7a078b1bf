package job

// Places tells where the keys of a table stand in its file.
type Places interface {
	// Find is the place of a key's value, or of the table itself where the file leaves the key out.
	Find(key string) Pos
}

// KeyPos is the place of a key's value in the screen's table, or of the table itself where the
// file leaves the key out; the screen's own Pos when it comes from no file.
func (s *Screen) KeyPos(key string) Pos {
	if s.Keys == nil {
		return s.Pos
	}
	return s.Keys.Find(key)
}
