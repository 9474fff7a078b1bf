// Package handout lays out a lesson of an hour on choosing a blade from a lesson.Lesson, and the wall chart: a flow
// of headings, paragraphs, tables and drawings over upright pages, then a work sheet, a glossary and the answers.
// A Level tells which sections and exercises are printed. It computes no process value; the texts stand in
// templates/lang under "handout".
//
// Body text is BodyPT, tables are TablePT, the running lines FootPT, and nothing is smaller.
package handout
