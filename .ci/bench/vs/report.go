package main

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"strings"
	"time"
)

// How far the content of another way may be from ours.
const (
	wordsMayDiffer = 0.005 // share of our words, page by page
	pathsMayLack   = 0.01  // share of our painted paths, fills and strokes together, since some turn a dashed stroke into fills; more than ours is no fault
	inkMayDiffer   = 0.10  // share of our ink, by the look of the pages
)

// report prints the table and tells whether content is equal and ours fast enough.
func report(w io.Writer, list []way, all []leaf, cards, runs int) bool {
	ours := list[0]
	texts, paths := 0, 0
	for _, l := range all {
		t := len(l.art.Texts())
		texts += t
		paths += len(l.art) - t
	}
	fmt.Fprintf(w, "%d cards, front and back, on %d pages: %d texts, %d paths in the drawing. Medians of %d runs after a warm one.\n", cards, len(all), texts, paths, runs)
	fmt.Fprintln(w, "Ours reads, computes, draws and writes; the others set a finished source whose making is not timed.")
	fmt.Fprintf(w, "Machine: %s, %d cores, %s; load %s; %s.\n\n", cpu(), runtime.NumCPU(), runtime.GOOS+"/"+runtime.GOARCH, load(), time.Now().Format(time.DateOnly))
	fmt.Fprintf(w, "%-21s %9s %9s %9s %8s %8s %6s %9s %7s %8s %8s %9s %8s\n", "way", "median s", "least s", "most s", "cpu s", "x ours", "pages", "bytes", "words", "fills", "strokes", "words off", "ink off")
	ok := true
	var faults []string
	var fastest, ready time.Duration
	for i, l := range list {
		if l.err != nil {
			fmt.Fprintf(w, "%-21s %s\n", l.name, l.err)
			faults = append(faults, l.name+" did not run")
			continue
		}
		low, high := l.times[0], l.times[0]
		for _, t := range l.times {
			low, high = min(low, t), max(high, t)
		}
		c := l.content
		wordsOff, inkOff := wordsApart(ours.content, c), inkApart(ours.content, c)
		fmt.Fprintf(w, "%-21s %9.3f %9.3f %9.3f %8.3f %8.1f %6d %9d %7d %8d %8d %8.2f%% %7.2f%%\n", l.name, l.median().Seconds(), low.Seconds(), high.Seconds(), middle(l.cpu).Seconds(),
			l.median().Seconds()/ours.median().Seconds(), c.pages, c.bytes, c.count, c.fills, c.strokes, 100*wordsOff, 100*inkOff)
		if i == 0 {
			continue
		}
		if l.ready {
			ready = l.median()
		} else if fastest == 0 || l.median() < fastest {
			fastest = l.median()
		}
		if c.pages != ours.content.pages {
			faults = append(faults, fmt.Sprintf("%s has %d pages, ours %d", l.name, c.pages, ours.content.pages))
		}
		if wordsOff > wordsMayDiffer {
			faults = append(faults, fmt.Sprintf("%s: %.2f %% of the words are others than ours; at most %g %%", l.name, 100*wordsOff, 100*wordsMayDiffer))
		}
		if float64(c.fills+c.strokes) < (1-pathsMayLack)*float64(ours.content.fills+ours.content.strokes) {
			faults = append(faults, l.name+" paints fewer paths than ours")
		}
		if inkOff > inkMayDiffer {
			faults = append(faults, fmt.Sprintf("%s looks different by %.1f %% of the ink; at most %g %%", l.name, 100*inkOff, 100*inkMayDiffer))
		}
	}
	fmt.Fprintln(w)
	for _, l := range list {
		fmt.Fprintf(w, "%s: %s\n", l.name, l.version)
	}
	fmt.Fprintln(w)
	for _, f := range faults {
		fmt.Fprintln(w, "FAULT:", f)
		ok = false
	}
	if ours.err != nil || fastest == 0 {
		return false
	}
	times := fastest.Seconds() / ours.median().Seconds()
	verdict := "reached"
	if !(times >= timesFaster) {
		verdict, ok = "MISSED", false
	}
	fmt.Fprintf(w, "ours is %.1f x as fast as the fastest way that a shop would write; at least %g x is wanted: %s\n", times, timesFaster, verdict)
	if ready > 0 {
		fmt.Fprintf(w, "against TeX that is handed the drawing solved, as finished operators of PDF, which nobody writes by hand: %.1f x\n", ready.Seconds()/ours.median().Seconds())
	}
	return ok
}

func cpu() string {
	data, _ := os.ReadFile("/proc/cpuinfo")
	for line := range strings.Lines(string(data)) {
		if k, v, found := strings.Cut(line, ":"); found && strings.TrimSpace(k) == "model name" {
			return strings.TrimSpace(v)
		}
	}
	return "processor unknown"
}

func load() string {
	data, err := os.ReadFile("/proc/loadavg")
	if f := strings.Fields(string(data)); err == nil && len(f) >= 3 {
		return strings.Join(f[:3], " ")
	}
	return "unknown"
}
