package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// content is what a PDF holds, as outside tools see it.
type content struct {
	bytes   int64
	pages   int
	words   []map[string]int // a page: how often each word
	count   int              // words in all
	fills   int              // painted paths
	strokes int
	looks   []picture // a page
}

// picture is a page in greys, 255 white.
type picture struct {
	w, h int
	grey []byte
}

// lookDPI is fine enough that a lost line or a shifted text shows, and coarse enough that the
// way in which edges are smoothed does not.
const lookDPI = 40

func read(pdf string) (content, error) {
	var c content
	info, err := os.Stat(pdf)
	if err != nil {
		return c, err
	}
	c.bytes = info.Size()
	text, err := exec.Command("pdftotext", "-raw", pdf, "-").Output()
	if err != nil {
		return c, fmt.Errorf("pdftotext %s: %w", pdf, err)
	}
	pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	c.pages = len(pages)
	for _, p := range pages {
		words := map[string]int{}
		for _, w := range strings.Fields(p) {
			words[w]++
			c.count++
		}
		c.words = append(c.words, words)
	}
	trace, err := exec.Command("mutool", "trace", pdf).Output()
	if err != nil {
		return c, fmt.Errorf("mutool trace %s: %w", pdf, err)
	}
	c.fills, c.strokes = bytes.Count(trace, []byte("<fill_path ")), bytes.Count(trace, []byte("<stroke_path "))
	c.looks, err = raster(pdf)
	return c, err
}

func raster(pdf string) ([]picture, error) {
	base := strings.TrimSuffix(pdf, ".pdf") + "-look"
	old, _ := filepath.Glob(base + "*.pgm")
	for _, f := range old {
		_ = os.Remove(f)
	}
	if out, err := exec.Command("pdftoppm", "-gray", "-r", strconv.Itoa(lookDPI), pdf, base).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("pdftoppm %s: %w: %s", pdf, err, last(string(out)))
	}
	files, err := filepath.Glob(base + "*.pgm") // sorted: page numbers have leading zeros
	if err != nil {
		return nil, err
	}
	var out []picture
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			return nil, err
		}
		var p picture
		var top int
		if _, err := fmt.Sscanf(string(data[:min(len(data), 40)]), "P5\n%d %d\n%d", &p.w, &p.h, &top); err != nil || len(data) < p.w*p.h {
			return nil, fmt.Errorf("%s is not a grey picture", f)
		}
		p.grey = data[len(data)-p.w*p.h:]
		out = append(out, p)
	}
	return out, nil
}

// wordsApart is the share of our words that the other lacks or has too many, page by page.
func wordsApart(ours, other content) float64 {
	apart := 0
	for i := range max(len(ours.words), len(other.words)) {
		var a, b map[string]int
		if i < len(ours.words) {
			a = ours.words[i]
		}
		if i < len(other.words) {
			b = other.words[i]
		}
		for w, n := range a {
			apart += max(n-b[w], 0)
		}
		for w, n := range b {
			apart += max(n-a[w], 0)
		}
	}
	return float64(apart) / float64(max(ours.count, 1))
}

// inkApart is the share of the ink of our pages by which the other's pages look different, after
// a blur over three pixels, so that a hair's shift counts for little and a lost piece in full.
func inkApart(ours, other content) float64 {
	var apart, ink float64
	for i, p := range ours.looks {
		a := p.blurred()
		for _, v := range a {
			ink += v
		}
		if i >= len(other.looks) || other.looks[i].w != p.w || other.looks[i].h != p.h {
			for _, v := range a {
				apart += v
			}
			continue
		}
		for k, v := range other.looks[i].blurred() {
			if d := v - a[k]; d > 0 {
				apart += d
			} else {
				apart -= d
			}
		}
	}
	return apart / max(ink, 1)
}

// blurred is the ink at each pixel, spread over its neighbours.
func (p picture) blurred() []float64 {
	out := make([]float64, p.w*p.h)
	for y := 1; y < p.h-1; y++ {
		for x := 1; x < p.w-1; x++ {
			sum := 0
			for dy := -1; dy <= 1; dy++ {
				row := (y + dy) * p.w
				sum += 765 - int(p.grey[row+x-1]) - int(p.grey[row+x]) - int(p.grey[row+x+1])
			}
			out[y*p.w+x] = float64(sum) / 9
		}
	}
	return out
}
