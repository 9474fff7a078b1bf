// Package page is the paper: placed boxes, text fitting, checks and imposition with crop marks.
//
// The way of a card, everything in millimetres from the top left corner, y downward:
//
//	boxes := Fit(...).Boxes, Paragraph(...).Boxes, Text, Rule, Fill, Drawing
//	face  := Face{Name, W, H, Safe, Boxes}     one side of a card, as data
//	errs  := Check(face, Rules{SmallestPT: 14})   overlaps, safe area, sizes, glyphs, numbers
//	sheets, err := Impose(A4, Card132, cards, Options{...})   or Pages(faces...)
//	err = Write(w, Meta{...}, sheets)
//
// A Box is data. A drawing is recorded when its box is made: Drawing runs the function once on
// a recording canvas with its own corner at 0, 0 and keeps the pieces in Box.Art. Check walks
// those pieces, so that a label inside a chart answers for its size and place as any text does,
// and Write plays them on the PDF of render/canvas/pdf.
//
// Check tells of two boxes that overlap, unless one of them is marked Under (a panel, a swatch,
// a frame that others lie on); of texts and drawings outside Face.Safe; of any box outside the
// face; of text under the smallest size, wider or taller than its box; of runes that the font
// lacks; of numbers that are not finite. Inside a drawing it tells of ink outside the box, of
// small type, and of labels on each other.
//
// Text is normalised to NFC. A rune that either face lacks, a rune above U+FFFF, a control
// character, a combining mark that has no composed form and invalid UTF-8 are errors, in Check
// and again in Write: they never become an empty box on paper. canvas.Missing lists them.
//
// Impose puts cards on sheets as data. Pages alternate front sheet, back sheet. On the back the
// columns are reversed and the rows kept, so that the back of a card lies behind its front with
// the same edge up. When the chosen flip edge turns the sheet about its horizontal axis, the
// whole back page is turned by half a turn (Sheet.Turned); rectangles in Sheet are always those
// of the printed page. Single pages are never turned.
package page
