package job

// KeyPos is the place of a key's value in the screen's table, or of the table itself where the
// file leaves the key out.
func (s *Screen) KeyPos(key string) Pos {
	if k := s.at.kid(key); k != nil {
		return k.valuePos()
	}
	return s.Pos
}
