// Package say turns the figures of a Plan into words and numbers of a language and a unit
// system. The words themselves stand in templates/lang; this package knows only how a figure
// is rounded and written. It computes nothing but the change of unit that the reader asked for.
package say
