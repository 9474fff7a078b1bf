// Package reorder finds in a shop's press log what the screens of a job ran with last, and how that differs
// from the plan. A screen is known by its job (number, or title where it has none), its location, and its
// color, or its number where the log or the job names no color. It computes no film but that of a wet or a
// weighed print, by the definition of the ink's volume solids.
package reorder
