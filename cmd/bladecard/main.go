// Command bladecard turns job definitions of a screen-printing shop into cards to clip on each
// screen. This folder holds the terminal only: flags, files, exit codes. The figures come from
// calc, the paper from render, the words from templates.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
