package main

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strings"

	"bladecard/calc/file"
)

// A table's head of a shop file, and one that belongs to the calibration.
var (
	tableHead       = regexp.MustCompile(`^\s*\[`)
	calibrationHead = regexp.MustCompile(`^\s*\[\[?\s*calibration\s*[.\]]`)
)

// withCalibration is a shop file with the block in place of its calibration, or at its end. All
// else stays byte for byte; that nothing else changed is proven by reading both.
func withCalibration(path string, src []byte, block string) ([]byte, error) {
	end := "\n"
	if bytes.Contains(src, []byte("\r\n")) {
		end = "\r\n"
	}
	var out bytes.Buffer
	inside, done := false, false
	for _, line := range bytes.SplitAfter(src, []byte("\n")) {
		if tableHead.Match(line) {
			inside = calibrationHead.Match(line)
			if inside && !done {
				out.WriteString(strings.ReplaceAll(block, "\n", end))
				done = true
			}
		}
		if trimmed := bytes.TrimSpace(line); inside && len(trimmed) > 0 && trimmed[0] != '#' {
			continue
		}
		out.Write(line)
	}
	if !done {
		if n := out.Len(); n > 0 && out.Bytes()[n-1] != '\n' {
			out.WriteString(end)
		}
		out.WriteString(end + strings.ReplaceAll(block, "\n", end))
	}
	before, errs := file.DecodeShop(path, src)
	after, more := file.DecodeShop(path, out.Bytes())
	if len(errs)+len(more) > 0 {
		return nil, fmt.Errorf("%s: the calibration cannot be put in: %w", path, errors.Join(append(errs, more...)[0]))
	}
	before.Calibration, after.Calibration = nil, nil
	if !reflect.DeepEqual(before, after) {
		return nil, fmt.Errorf("%s: the calibration cannot be put in without touching other keys; move [calibration] to the end of the file", path)
	}
	return out.Bytes(), nil
}

// tomlText writes a name as a TOML text.
func tomlText(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}
