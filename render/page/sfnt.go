package page

import (
	"encoding/binary"
	"fmt"
	"math"
)

// glyph is what a rune needs on paper, in 1/1000 of the type size.
type glyph struct {
	width      int // advance, rounded as the PDF states it
	yMin, yMax int // ink below and above the baseline; both 0 for a blank
}

// metrics are the glyphs of one face by rune. They are read once and never written again.
type metrics map[rune]glyph

// tables are the tables of a TrueType font by name.
type tables map[string][]byte

// tablesOf finds the tables that are needed here. A damaged font may panic: its readers recover.
func tablesOf(ttf []byte) (tables, error) {
	be := binary.BigEndian
	t := tables{}
	for i := range int(be.Uint16(ttf[4:])) {
		rec := ttf[12+16*i:]
		off, size := be.Uint32(rec[8:]), be.Uint32(rec[12:])
		t[string(rec[:4])] = ttf[off : off+size]
	}
	for _, name := range []string{"head", "hhea", "hmtx", "cmap", "loca", "glyf"} {
		if t[name] == nil {
			return nil, fmt.Errorf("font: no table %q", name)
		}
	}
	return t, nil
}

// readMetrics reads the glyphs of the wanted runes from a TrueType font with a Unicode cmap of
// format 4. Runes that the font lacks are left out.
func readMetrics(ttf []byte, want func(rune) bool) (m metrics, err error) {
	defer func() {
		if p := recover(); p != nil { // a table that points outside the file
			m, err = nil, fmt.Errorf("font: damaged table: %v", p)
		}
	}()
	be := binary.BigEndian
	t, err := tablesOf(ttf)
	if err != nil {
		return nil, err
	}
	em := float64(be.Uint16(t["head"][18:]))
	longLoca := be.Uint16(t["head"][50:]) == 1
	metricsCount := int(be.Uint16(t["hhea"][34:]))
	hmtx, loca, glyf := t["hmtx"], t["loca"], t["glyf"]
	index, err := cmapFormat4(t["cmap"])
	if err != nil {
		return nil, err
	}
	mille := func(v float64) int { return int(math.Round(v * 1000 / em)) }
	m = metrics{}
	for r, g := range index {
		if !want(r) {
			continue
		}
		adv := be.Uint16(hmtx[4*min(g, metricsCount-1):])
		var from, to uint32
		if longLoca {
			from, to = be.Uint32(loca[4*g:]), be.Uint32(loca[4*g+4:])
		} else {
			from, to = 2*uint32(be.Uint16(loca[2*g:])), 2*uint32(be.Uint16(loca[2*g+2:]))
		}
		out := glyph{width: mille(float64(adv))}
		if to > from {
			head := glyf[from:to]
			out.yMin = mille(float64(int16(be.Uint16(head[4:]))))
			out.yMax = mille(float64(int16(be.Uint16(head[8:]))))
		}
		m[r] = out
	}
	return m, nil
}

// cmapFormat4 reads the Unicode map of a font, without the runes that map to glyph 0.
func cmapFormat4(cmap []byte) (map[rune]int, error) {
	be := binary.BigEndian
	for i := range int(be.Uint16(cmap[2:])) {
		rec := cmap[4+8*i:]
		platform, encoding := be.Uint16(rec), be.Uint16(rec[2:])
		t := cmap[be.Uint32(rec[4:]):]
		if (platform != 0 && (platform != 3 || encoding != 1)) || be.Uint16(t) != 4 {
			continue
		}
		n := int(be.Uint16(t[6:])) / 2
		ends, starts := t[14:], t[16+2*n:]
		deltas, offsets := t[16+4*n:], t[16+6*n:]
		out := map[rune]int{}
		for s := range n {
			lo, hi := int(be.Uint16(starts[2*s:])), int(be.Uint16(ends[2*s:]))
			delta, off := int(be.Uint16(deltas[2*s:])), int(be.Uint16(offsets[2*s:]))
			for c := lo; c <= hi && c < 0xFFFF; c++ {
				g := c
				if off != 0 {
					g = int(be.Uint16(offsets[2*s+off+2*(c-lo):]))
				}
				if g == 0 && off != 0 {
					continue
				}
				if g = (g + delta) & 0xFFFF; g != 0 {
					out[rune(c)] = g
				}
			}
		}
		return out, nil
	}
	return nil, fmt.Errorf("font: no Unicode cmap of format 4")
}
