package flow_test

import (
	"testing"

	"bladecard/render/flow"
	"bladecard/render/page"
)

// A heading stands on the page of what it is kept with, wherever the page ends.
func TestHeadingKeeps(t *testing.T) {
	const keep = 40.0
	for y := 200.0; y < 285; y += 0.1 {
		f := flow.New(page.A4, "test", "again", 1)
		f.Y = y
		f.Heading("heading", "text", keep)
		at := len(f.Pages)
		f.Ensure(keep)
		if len(f.Pages) != at {
			t.Fatalf("from %.1f mm on the heading stays behind", y)
		}
	}
}
