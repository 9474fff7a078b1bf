// Command write fills a folder with made-up job files, to measure on:
//
//	go run ./samples/bench/write -jobs 1000 -screens 6 DIR
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"bladecard/samples/bench"
)

func main() {
	jobs := flag.Int("jobs", 1000, "how many job files")
	screens := flag.Int("screens", 6, "screens of each job")
	shop := flag.String("shop", "", "shop file that the jobs name; left out: the built-in shop")
	flag.Parse()
	if flag.NArg() != 1 || *jobs < 1 || *screens < 1 {
		fmt.Fprintln(os.Stderr, "usage: write [-jobs N] [-screens N] [-shop FILE] DIR")
		os.Exit(2)
	}
	at := *shop
	var err error
	if at != "" {
		at, err = filepath.Abs(at)
	}
	if err == nil {
		err = bench.Folder(flag.Arg(0), *jobs, *screens, filepath.ToSlash(at))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(3)
	}
}
