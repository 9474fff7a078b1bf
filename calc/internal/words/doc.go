// Package words says what errors of files say in one way: lists, quoted texts, figures, and the
// word that was probably meant.
package words
