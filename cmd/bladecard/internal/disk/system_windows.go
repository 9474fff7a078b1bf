package disk

import "syscall"

// systemOwn are the errors that Windows has numbers of its own for.
var systemOwn = []struct {
	is   error
	says string
}{
	{syscall.Errno(32), "in use by another program"}, // ERROR_SHARING_VIOLATION: the log stands open in a spreadsheet
	{syscall.Errno(33), "in use by another program"}, // ERROR_LOCK_VIOLATION
	{syscall.Errno(112), "no space left on device"},  // ERROR_DISK_FULL
	{syscall.Errno(39), "no space left on device"},   // ERROR_HANDLE_DISK_FULL
	{syscall.Errno(19), "read-only file system"},     // ERROR_WRITE_PROTECT
	{syscall.Errno(267), "not a directory"},          // ERROR_DIRECTORY
	{syscall.Errno(206), "file name too long"},       // ERROR_FILENAME_EXCED_RANGE
	{syscall.Errno(123), "not a name of a file"},     // ERROR_INVALID_NAME
	{syscall.Errno(109), "broken pipe"},              // ERROR_BROKEN_PIPE
	{syscall.Errno(232), "broken pipe"},              // ERROR_NO_DATA
}
