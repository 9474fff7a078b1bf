package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// peakEnv has TestPeakMemory make the largest job and the longest log there may be. Without it they
// are an eighth as large, and may take half of the memory: the program itself takes some.
const peakEnv = "BLADECARD_PEAK"

// TestPeakMemory: the most memory that the largest inputs take at once, as the system counts it. The cards of 64
// locations of 64 screens stay under 300 MB, and the fit of 200,000 rows under 100 MB beyond its file.
func TestPeakMemory(t *testing.T) {
	t.Parallel()
	part, share := 8, 0.5
	if os.Getenv(peakEnv) != "" {
		part, share = 1, 1
	}
	dir := t.TempDir()
	exe := program(t, dir)
	file := func(name string, fill func(*bytes.Buffer)) (path string, size int) {
		var b bytes.Buffer
		fill(&b)
		path = filepath.Join(dir, name)
		write(t, path, b.String())
		return path, b.Len()
	}
	shop, _ := file("shop.toml", func(b *bytes.Buffer) {
		b.WriteString("[[blade]]\nlayup = \"70\"\n[[blade]]\nlayup = \"80\"\n[[mesh]]\nmesh = \"305-40\"\n[[press]]\nname = \"flat table\"\nkind = \"flatbed\"\nheads = 1\n")
	})
	job, _ := file("job.toml", func(b *bytes.Buffer) {
		b.WriteString("title = \"t\"\nshop = \"shop.toml\"\npress = \"flat table\"\n[stock]\nkind = \"paper\"\n")
		for range 64 / part {
			b.WriteString("[[location]]\n")
			for range 64 {
				b.WriteString("[[location.screen]]\nink = \"solvent graphics\"\nuse = \"solid\"\n")
			}
		}
	})
	log, logBytes := file("log.csv", func(b *bytes.Buffer) {
		b.WriteString("date;job;press;mesh;eom (um);feature (mm);ink;blade;angle (deg);strokes;wet (um);note\n")
		for i := range 200_000 / part {
			fmt.Fprintf(b, "2027-02-03;L-023;flat table;305-40;%d;6;solvent graphics;%d;%.4f;1;%d,%d;a note to fill the row\n",
				5+i%8, 70+10*(i%2), 10+15*float64(i%9973)/9973, 18+i%3, i%10)
		}
	})
	const mb = 1e6
	for _, c := range []struct {
		args []string
		most float64
	}{
		{[]string{"cards", job, "-o", dir}, 300 * mb * share},
		{[]string{"fit", log, shop, "--chart", filepath.Join(dir, "fit.svg")}, 100*mb*share + float64(logBytes)},
	} {
		cmd := exec.Command(exe, c.args...)
		used := peakOf(t, cmd)
		t.Logf("%s: %.0f MB at most; %.0f are accepted", c.args[0], used/mb, c.most/mb)
		if used > c.most {
			t.Errorf("%s takes %.0f MB; at most %.0f are accepted", c.args[0], used/mb, c.most/mb)
		}
	}
}

// peakOf runs a command and returns the most memory that it took, in bytes. The system's own count for a
// process that has ended holds that of the test too, from which it was forked; so the process is
// looked at while it runs.
func peakOf(t *testing.T, cmd *exec.Cmd) (peak float64) {
	t.Helper()
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	done := make(chan error, 1)
	go func() { done <- cmd.Wait() }()
	for {
		select {
		case err := <-done:
			if err != nil || peak == 0 {
				t.Fatalf("%v: %v, a peak of %.0f bytes\n%s", cmd.Args, err, peak, said.String())
			}
			return peak
		case <-time.After(2 * time.Millisecond):
			status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", cmd.Process.Pid))
			_, rest, has := strings.Cut(string(status), "VmHWM:")
			if kB := 0.0; err == nil && has {
				if _, err := fmt.Sscan(rest, &kB); err != nil {
					t.Fatal(err)
				}
				peak = 1024 * kB
			}
		}
	}
}
