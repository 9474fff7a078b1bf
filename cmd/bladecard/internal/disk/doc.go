// Package disk is the one way in which the program reads and writes files.
//
// A file that the program writes is on disk under a temporary name before it gets its own, so that
// nothing half-written is ever seen. What stands at that name is replaced only where it is a file
// that this program made and that nobody has changed since, or with Force; never where the command
// reads it, and never where it is not a plain file.
//
// The program knows its files by a record beside them: the folder .bladecard holds, for each file
// or each job of a build, the checksum of what was written. A record works alike for every kind of
// file (a CSV file has no place for a mark), it goes with the folder when that is moved or shared,
// and the files themselves stay free of it, with the same bytes each time.
package disk
