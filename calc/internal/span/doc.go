// Package span holds inputs of the formulas to their ranges, with one wording of the error for
// all of them.
package span
