package build

import (
	"fmt"
	"io"
	"strings"
	"sync/atomic"
	"time"
)

// bar shows on a terminal how far a build has come. A nil bar shows nothing.
type bar struct {
	w           io.Writer
	total       atomic.Int64 // files found so far, ahead of those that are done
	done, wrong int
	last        time.Time
	shown       bool
}

const (
	barWide  = 40
	barEvery = 100 * time.Millisecond
)

func newBar(w io.Writer, paths []string) *bar {
	b := &bar{w: w}
	go find(paths, func(source) bool { b.total.Add(1); return true })
	return b
}

// step counts a file as done.
func (b *bar) step(wrong bool) {
	if b == nil {
		return
	}
	b.done++
	if wrong {
		b.wrong++
	}
	if now := time.Now(); now.Sub(b.last) >= barEvery {
		b.last = now
		b.show()
	}
}

func (b *bar) show() {
	total := max(int(b.total.Load()), b.done)
	n := barWide * b.done / total
	text := fmt.Sprintf("\r%s%s %d of %d", strings.Repeat("=", n), strings.Repeat(".", barWide-n), b.done, total)
	if b.wrong > 0 {
		text += fmt.Sprintf(", %d failed", b.wrong)
	}
	fmt.Fprint(b.w, text)
	b.shown = true
}

// clear makes room for a line of text.
func (b *bar) clear() {
	if b != nil && b.shown {
		fmt.Fprint(b.w, "\r", strings.Repeat(" ", barWide+40), "\r")
		b.shown = false
	}
}
