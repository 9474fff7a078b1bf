package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// way is one way to get the cards as a PDF.
type way struct {
	name    string
	version string
	args    []string
	pdf     string
	times   []time.Duration // process start to exit
	cpu     []time.Duration // of the process and what it waited for, user and system
	err     error
	content content
	ready   bool // is handed what a program worked out, not what a person writes
}

// ways lists ours first. Each works in a folder of its own under dir.
func ways(dir, program, jobPath string) []way {
	in := func(name string) string {
		p := filepath.Join(dir, name)
		_ = os.MkdirAll(p, 0o755) // what is written there would fail and say so
		return p
	}
	ours, tex, pgf, web, office := in("ours"), in("tex"), in("pgf"), in("web"), in("office")
	browser := "chromium-headless-shell"
	if _, err := exec.LookPath(browser); err != nil {
		browser = "chromium"
	}
	return []way{
		{name: "bladecard cards", version: "this tree", pdf: filepath.Join(ours, "festival-cards.pdf"),
			args: []string{program, "cards", jobPath, "--flip", "short", "-o", ours}},
		{name: "pdfLaTeX, operators", ready: true, version: versionOf("pdflatex", "--version"), pdf: filepath.Join(tex, "cards.pdf"),
			args: []string{"pdflatex", "-interaction=batchmode", "-halt-on-error", "-output-directory", tex, filepath.Join(dir, "cards.tex")}},
		{name: "pdfLaTeX, PGF", version: versionOf("pdflatex", "--version"), pdf: filepath.Join(pgf, "pgf.pdf"),
			args: []string{"pdflatex", "-interaction=batchmode", "-halt-on-error", "-output-directory", pgf, filepath.Join(dir, "pgf.tex")}},
		{name: "headless Chromium", version: versionOf(browser, "--version"), pdf: filepath.Join(web, "cards.pdf"),
			args: []string{browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-extensions", "--disable-background-networking", "--no-first-run",
				"--user-data-dir=" + filepath.Join(web, "profile"), "--no-pdf-header-footer", "--print-to-pdf=" + filepath.Join(web, "cards.pdf"), "file://" + filepath.Join(dir, "cards.html")}},
		{name: "LibreOffice headless", version: versionOf("soffice", "--version"), pdf: filepath.Join(office, "cards.pdf"),
			args: []string{"soffice", "-env:UserInstallation=file://" + filepath.Join(office, "profile"), "--headless", "--nologo", "--norestore",
				"--convert-to", "pdf", "--outdir", office, filepath.Join(dir, "cards.fodg")}},
	}
}

// measure runs every way once to warm it, then all in turn, one at a time, so that a disturbance
// of the machine falls on all of them.
func measure(list []way, runs int) {
	for round := range runs + 1 {
		for i := range list {
			w := &list[i]
			if w.err != nil {
				continue
			}
			took, cpu, err := w.run()
			if err != nil {
				w.err = err
			} else if round > 0 {
				w.times = append(w.times, took)
				w.cpu = append(w.cpu, cpu)
			}
		}
	}
}

func (w *way) run() (took, cpu time.Duration, err error) {
	if err := os.Remove(w.pdf); err != nil && !os.IsNotExist(err) {
		return 0, 0, err
	}
	var said bytes.Buffer
	c := exec.Command(w.args[0], w.args[1:]...)
	c.Stdout, c.Stderr = &said, &said
	c.Dir = filepath.Dir(filepath.Dir(w.pdf))
	start := time.Now()
	err = c.Run()
	took = time.Since(start)
	if err == nil {
		_, err = os.Stat(w.pdf)
	}
	if err != nil {
		return 0, 0, fmt.Errorf("%s: %w: %s", w.args[0], err, last(said.String()))
	}
	return took, c.ProcessState.UserTime() + c.ProcessState.SystemTime(), nil
}

func (w way) median() time.Duration { return middle(w.times) }

func middle(times []time.Duration) time.Duration {
	sorted := slices.Sorted(slices.Values(times))
	n := len(sorted)
	if n == 0 {
		return 0
	}
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

// versionOf is the first line that a tool says of itself, or that there is none.
func versionOf(tool string, args ...string) string {
	out, err := exec.Command(tool, args...).Output()
	if err != nil {
		return "not there: " + err.Error()
	}
	line, _, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	return strings.TrimSpace(line)
}

func last(s string) string {
	s = strings.TrimSpace(s)
	if len(s) > 400 {
		s = "... " + s[len(s)-400:]
	}
	return s
}
