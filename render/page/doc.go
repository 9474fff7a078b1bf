// Package page is the paper: placed boxes, text fitting and imposition with crop marks.
//
// The way of a card, everything in millimeters from the top left corner, y downward:
//
//	boxes := Fit(...).Boxes, Paragraph(...).Boxes, Text, Rule, Fill, Drawing
//	face  := Face{Name, W, H, Safe, Boxes}     one side of a card, as data
//	sheets, err := Impose(A4, Card132, count, cards, Options{...})
//	err = WriteEach(w, Meta{...}, sheets)      or Write(w, Meta{...}, Pages(faces...))
//
// A Box is data. A drawing is recorded when its box is made: Drawing runs the function once on
// a recording canvas with its own corner at 0, 0 and keeps the pieces in Box.Art. Write plays them on
// the PDF of render/canvas/pdf. Package pagecheck walks them in tests, so that a label inside a chart
// answers for its size and place as any text does.
//
// Text is normalized to NFC. A rune that either face lacks, a rune above U+FFFF, a control
// character, a combining mark that has no composed form and invalid UTF-8 are errors of
// Write: they never become an empty box on paper. canvas.Missing lists them.
//
// Impose puts cards on sheets as data. Pages alternate front sheet, back sheet. On the back the
// columns are reversed and the rows kept, so that the back of a card lies behind its front with
// the same edge up. When the chosen flip edge turns the sheet about its horizontal axis, the
// whole back page is turned by half a turn (Sheet.Turned); rectangles in Sheet are always those
// of the printed page. Single pages are never turned.
package page
