package disk

import (
	"errors"
	"io/fs"
	"syscall"
)

// system are the errors of systems that people meet, each with what is said of it, whatever the system itself calls
// it. The first that an error is counts; those of one system alone are in system_windows.go and system_other.go.
var system = append(systemOwn, []struct {
	is   error
	says string
}{
	{syscall.EPERM, "operation not permitted"}, // it is fs.ErrPermission too
	{fs.ErrPermission, "permission denied"},
	{fs.ErrNotExist, "no such file or directory"},
	{fs.ErrExist, "file exists"},
	{syscall.EISDIR, "is a directory"},
	{syscall.ENOTDIR, "not a directory"},
	{syscall.ENOSPC, "no space left on device"},
	{syscall.EDQUOT, "disk quota exceeded"},
	{syscall.EROFS, "read-only file system"},
	{syscall.ENAMETOOLONG, "file name too long"},
	{syscall.ELOOP, "too many levels of symbolic links"},
	{syscall.EMFILE, "too many open files"},
	{syscall.ENFILE, "too many open files"},
	{syscall.EIO, "input/output error"},
	{syscall.EBUSY, "in use by another program"},
	{syscall.ETXTBSY, "in use by another program"},
	{syscall.EPIPE, "broken pipe"},
}...)

// systemError is an error of the system with the words of this program for it.
type systemError struct {
	error
	says string
}

func (e systemError) Error() string { return e.says }
func (e systemError) Unwrap() error { return e.error }

// worded says an error of the system in words that every language has; one that is not known as the system says it.
func worded(err error) error {
	var number syscall.Errno
	if !errors.As(err, &number) {
		return err
	}
	for _, s := range system {
		if errors.Is(err, s.is) {
			return systemError{err, s.says}
		}
	}
	return systemError{err, "the system says " + err.Error()}
}
