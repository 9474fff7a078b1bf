// Package flow fills pages of office paper from the top with headings, paragraphs, drawings and tables that go
// over pages. The setup sheet, the trial sheet and the day list are made with it.
package flow
