// Package exit holds the exit codes of the program.
package exit

const (
	Done    = 0
	Job     = 1 // a job has errors; all of them were printed
	Usage   = 2
	File    = 3   // could not read or write
	Stopped = 130 // Ctrl-C: 128 and the number of the signal, as shells count
)
