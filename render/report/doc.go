// Package report writes a Plan for the terminal: a readable table with the path that led to
// each setup. It computes nothing; the JSON of a Plan is the Plan itself.
package report
