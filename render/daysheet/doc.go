// Package daysheet lays out the list of a day: the order of the jobs on each press, what to lay out, make and mix, and
// the settings of the dryer. It hangs on the wall.
package daysheet
