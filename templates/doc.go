// Package templates holds what people may read and change without touching code: the built-in
// shop, the built-in ink classes, the commented files to start from, and the words of the
// paper. Everything is embedded in the program. The files carry a note on the source and kind
// of each figure.
package templates
