package job

// KeyPos is the place of a key's value in the screen's table, or of the table itself where the
// file leaves the key out; the screen's own Pos when it comes from no file.
func (s *Screen) KeyPos(key string) Pos {
	if s.at == nil {
		return s.Pos
	}
	return s.at.find(key)
}
