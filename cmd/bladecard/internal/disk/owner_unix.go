//go:build unix

package disk

import (
	"os"
	"syscall"
)

// namesOf is how many names a file has.
func namesOf(info os.FileInfo) uint64 {
	if st, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(st.Nlink)
	}
	return 1
}

// keepOwner gives a new file the owner and the group of another.
func keepOwner(f *os.File, of os.FileInfo) error {
	want, ok := of.Sys().(*syscall.Stat_t)
	if !ok {
		return nil
	}
	info, err := f.Stat()
	if err != nil {
		return err
	}
	if have, ok := info.Sys().(*syscall.Stat_t); ok && have.Uid == want.Uid && have.Gid == want.Gid {
		return nil
	}
	return f.Chown(int(want.Uid), int(want.Gid))
}
