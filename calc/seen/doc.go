// Package seen answers what went wrong: from what a printer sees on a print, with or without a measured film,
// to what to look at first, the smallest changes, what to measure and what it is not, each with the figures of
// the screen's own plan. The answers are codes and figures; the words stand in templates/lang.
package seen
