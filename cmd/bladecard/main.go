// Command bladecard turns job definitions of a screen-printing shop into cards to clip on each
// screen. This folder holds the terminal only: flags, files, exit codes. The figures come from
// calc, the paper from render, the words from templates.
package main

import (
	"os"
	"runtime/debug"
)

// memoryBytes is where the garbage collector begins to work harder instead of taking more memory. Only
// the largest jobs and logs come near it; none is refused for it. GOMEMLIMIT sets another.
const memoryBytes = 200 << 20

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memoryBytes)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
