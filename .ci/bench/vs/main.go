package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

const timesFaster = 8.0 // than the fastest other way, at least

func main() {
	runs := flag.Int("runs", 5, "runs of each way, after one that warms it; `N`")
	screens := flag.Int("cards", 100, "`N` cards")
	keep := flag.String("keep", "", "work in `DIR` and keep it; left out: a temporary folder")
	flag.Parse()
	if *runs < 1 || *screens < 1 || flag.NArg() > 0 {
		flag.Usage()
		os.Exit(2)
	}
	ok, err := compare(*runs, *screens, *keep)
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(3)
	}
	if !ok {
		os.Exit(1)
	}
}

// compare makes everything, measures, prints, and tells whether ours is as it must be.
func compare(runs, screens int, dir string) (bool, error) {
	if dir == "" {
		tmp, err := os.MkdirTemp("", "bladecard-vs-")
		if err != nil {
			return false, err
		}
		defer os.RemoveAll(tmp)
		dir = tmp
	}
	dir, err := filepath.Abs(dir)
	if err != nil {
		return false, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return false, err
	}
	program, jobPath, err := prepare(dir, screens)
	if err != nil {
		return false, err
	}
	all, err := leaves(jobPath)
	if err != nil {
		return false, err
	}
	for _, write := range []func(string, []leaf) error{writeTeX, writePGF, writeHTML, writeODG} {
		if err := write(dir, all); err != nil {
			return false, err
		}
	}
	list := ways(dir, program, jobPath)
	measure(list, runs)
	for i := range list {
		if list[i].err == nil {
			list[i].content, list[i].err = read(list[i].pdf)
		}
	}
	return report(os.Stdout, list, all, screens, runs), nil
}

// prepare builds the program and writes the job and its shop.
func prepare(dir string, screens int) (program, jobPath string, err error) {
	program, jobPath = filepath.Join(dir, "bladecard"), filepath.Join(dir, "festival.toml")
	build := exec.Command("go", "build", "-o", program, "./cmd/bladecard")
	build.Stderr = os.Stderr
	if err := build.Run(); err != nil {
		return "", "", fmt.Errorf("go build ./cmd/bladecard (from the root of the repository): %w", err)
	}
	shop, err := os.ReadFile(filepath.Join("samples", "shop.toml"))
	if err != nil {
		return "", "", err
	}
	if err := os.WriteFile(filepath.Join(dir, "shop.toml"), shop, 0o644); err != nil {
		return "", "", err
	}
	return program, jobPath, os.WriteFile(jobPath, []byte(jobFile(screens)), 0o644)
}
