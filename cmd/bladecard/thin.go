package main

import (
	"fmt"

	"bladecard/render/say"
)

// evenly returns at most so many of the indexes 0 to count-1, evenly spread, the ends among them.
func evenly(count, most int) []int {
	out := make([]int, min(count, most))
	for i := range out {
		out[i] = i
		if count > most {
			out[i] = i * (count - 1) / (most - 1)
		}
	}
	return out
}

// drawn is what a chart says of an even choice; the empty text where it draws all.
func drawn(v *say.Voice, key string, count, most int) string {
	if count <= most {
		return ""
	}
	return v.T(key, "n", fmt.Sprint(most), "all", fmt.Sprint(count))
}

// noteText tells beside the figures what must be known of them; nothing where the text is empty.
func (c *call) noteText(text string) {
	if text != "" && !c.quiet {
		fmt.Fprintf(c.stderr, "note: %s\n", text)
	}
}

// titled is the title of an axis with what the chart says of its choice.
func titled(title, drawn string) string {
	if drawn == "" {
		return title
	}
	return title + " (" + drawn + ")"
}
