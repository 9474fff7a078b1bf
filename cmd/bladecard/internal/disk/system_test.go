package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
	"testing"
)

// TestErrorsOfTheSystem: by what they are and not by their text, and what they are stays known.
func TestErrorsOfTheSystem(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
		is   error
	}{
		{&fs.PathError{Op: "open", Path: "x", Err: syscall.ENOENT}, "a.toml: no such file or directory", fs.ErrNotExist},
		{&fs.PathError{Op: "open", Path: "x", Err: syscall.EACCES}, "a.toml: permission denied", fs.ErrPermission},
		{&fs.PathError{Op: "open", Path: "x", Err: syscall.EPERM}, "a.toml: operation not permitted", fs.ErrPermission},
		{&os.LinkError{Op: "rename", Old: "x", New: "y", Err: syscall.EISDIR}, "a.toml: is a directory", syscall.EISDIR},
		{&fs.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC}, "a.toml: no space left on device", syscall.ENOSPC},
		{&fs.PathError{Op: "write", Path: "x", Err: syscall.EROFS}, "a.toml: read-only file system", syscall.EROFS},
		{&fs.PathError{Op: "write", Path: "x", Err: os.NewSyscallError("write", syscall.EBUSY)}, "a.toml: in use by another program", syscall.EBUSY},
		{&fs.PathError{Op: "write", Path: "x", Err: syscall.EXDEV}, "a.toml: the system says " + syscall.EXDEV.Error(), syscall.EXDEV},
		{errors.New("of this program"), "a.toml: of this program", nil},
		{fmt.Errorf("goes away: %w", fs.ErrNotExist), "a.toml: goes away: file does not exist", fs.ErrNotExist},
	} {
		if got := Named("a.toml", c.err); got.Error() != c.want || c.is != nil && !errors.Is(got, c.is) {
			t.Errorf("%v is told as %q; %q is wanted", c.err, got, c.want)
		}
	}
}
