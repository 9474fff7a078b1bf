//go:build !windows

package disk

// systemOwn is empty where systems keep to the numbers of POSIX.
var systemOwn []struct {
	is   error
	says string
}
