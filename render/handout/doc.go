// Package handout lays out the class paper on choosing a blade from a lesson.Lesson: a flow of
// headings, paragraphs, tables and drawings over upright pages, the work sheet on pages of its
// own, the answers on the last one. A Level tells which sections and exercises are printed. It
// computes no process value; the texts stand in templates/lang under "handout".
//
// Body text is BodyPT, tables are TablePT, the running lines FootPT, and nothing is smaller.
package handout
