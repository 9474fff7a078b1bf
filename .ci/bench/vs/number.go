package main

import (
	"math"
	"strconv"

	"bladecard/render/canvas"
)

// short writes v with at most that many decimals and no idle zeros.
func short(b []byte, v float64, decimals int) []byte {
	start := len(b)
	b = strconv.AppendFloat(b, v, 'f', decimals, 64)
	if decimals > 0 {
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
		if b[len(b)-1] == '.' {
			b = b[:len(b)-1]
		}
	}
	if string(b[start:]) == "-0" {
		return append(b[:start], '0')
	}
	return b
}

func text(v float64, decimals int) string { return string(short(nil, v, decimals)) }

func hex(c canvas.Color) string {
	const digits = "0123456789abcdef"
	out := []byte{'#'}
	for _, v := range []uint8{c.R, c.G, c.B} {
		out = append(out, digits[v>>4], digits[v&15])
	}
	return string(out)
}

func hundredths(mm float64) int { return int(math.Round(mm * 100)) }
