package disk

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"unicode"
)

// Read reads a plain file of at most so many bytes. A pipe or a device has no end that could be
// waited for.
func Read(path string, most int64) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case strings.ContainsFunc(path, unicode.IsControl):
		return nil, fmt.Errorf("%q: has a control character in its name; give it another", path)
	case err != nil:
		return nil, Named(path, err)
	case info.IsDir():
		return nil, fmt.Errorf("%s: is a folder; a file is wanted", path)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: is a pipe or a device; a file is wanted", path)
	case info.Size() > most:
		return nil, tooLarge(path, info.Size(), most)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, Named(path, err)
	}
	defer f.Close()
	src := make([]byte, 0, info.Size()+bytes.MinRead) // large enough at once
	return ReadAll(f, src, path, most)
}

// ReadAll reads to the end, which comes after at most so many bytes, into the room that there is.
func ReadAll(r io.Reader, room []byte, name string, most int64) ([]byte, error) {
	src := bytes.NewBuffer(room)
	if _, err := src.ReadFrom(io.LimitReader(r, most+1)); err != nil {
		return nil, Named(name, err)
	}
	if int64(src.Len()) > most {
		return nil, tooLarge(name, int64(src.Len()), most)
	}
	return src.Bytes(), nil
}

func tooLarge(name string, has, most int64) error {
	return fmt.Errorf("%s: has %d bytes or more; at most %d are read", name, has, most)
}

// Named is an error of the system with the path as the user gave it, without the name of the
// system's call.
func Named(path string, err error) error { return fmt.Errorf("%s: %w", path, bare(err)) }

// bare takes the system's call and path off an error, and says it in the words of this program.
func bare(err error) error {
	var pe *fs.PathError
	var le *os.LinkError
	switch {
	case errors.As(err, &pe):
		err = pe.Err
	case errors.As(err, &le):
		err = le.Err
	}
	if err.Error() == "path escapes from parent" { // package os has no name for it
		return errors.New("a link leads out of the folder")
	}
	return worded(err)
}
