package file

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"bladecard/calc/job"
)

// CalibrationText writes a calibration as a shop file states it: a [calibration] table, with a
// [[calibration.mesh]] for each mesh. It is text and takes any figures; CheckCalibration tells
// whether a shop file takes them. Kind: D, the format of the shop file.
func CalibrationText(c *job.Calibration) string {
	var b strings.Builder
	b.WriteString("[calibration]\n" + lines(entriesOf(*c), "", "\n"))
	for _, m := range c.Meshes {
		b.WriteString("[[calibration.mesh]]\n" + lines(entriesOf(m), "", "\n"))
	}
	return b.String()
}

// CheckCalibration reads a calibration as a shop file would, and returns the errors of the keys
// that a shop file does not take; nil when it takes all. Kind: D, the ranges are those of
// job.Calibration.
func CheckCalibration(c *job.Calibration) job.Errors {
	_, errs := DecodeShop("calibration", []byte(CalibrationText(c)))
	return errs
}

// WithCalibration returns a shop file with the calibration in place of the one that it has, or at its
// end. name is how errors call the file. Only the values of the calibration change, so that all
// else stays byte for byte: comments, order, indentation, line ends, and whether the calibration is
// a table, an inline table or dotted keys. Keys and meshes that the file has no longer go, and new
// ones come in behind the last of their kind. The error is that of a file that cannot be read; the
// result was read back, says the calibration, and differs from the file in nothing else. Kind: D,
// the format of the shop file.
func WithCalibration(name string, src []byte, c *job.Calibration) ([]byte, error) {
	before, errs := DecodeShop(name, src)
	if len(errs) > 0 {
		return nil, errs
	}
	want, errs := DecodeShop(name, []byte(CalibrationText(c)))
	if len(errs) > 0 {
		return nil, errs
	}
	out := putCalibration(src, before.Calibration, c)
	after, errs := DecodeShop(name, out)
	if len(errs) > 0 {
		return nil, fmt.Errorf("%s: the calibration cannot be put in: %w", name, errs)
	}
	got := after.Calibration
	before.Calibration, after.Calibration = nil, nil
	sortMeshes(got)
	sortMeshes(want.Calibration)
	if !reflect.DeepEqual(before, after) || !reflect.DeepEqual(got, want.Calibration) {
		return nil, fmt.Errorf("%s: the calibration cannot be put in without touching other keys; put the printed block in by hand", name)
	}
	return out, nil
}

func sortMeshes(c *job.Calibration) {
	if c != nil {
		slices.SortStableFunc(c.Meshes, func(a, b job.MeshFactor) int { return strings.Compare(a.Name, b.Name) })
	}
}

// entry is a key with the text of its value.
type entry struct{ key, value string }

// entriesOf writes the keys of a struct of the file format, without its lists of tables and what is not stated.
func entriesOf(of any) []entry {
	var out []entry
	v := reflect.ValueOf(of)
	for i := range v.NumField() {
		e := entry{key: v.Type().Field(i).Tag.Get("toml")}
		switch x := v.Field(i).Interface().(type) {
		case float64:
			e.value = strconv.FormatFloat(x, 'g', -1, 64)
		case int:
			e.value = strconv.Itoa(x)
		case string:
			e.value = strconv.Quote(x)
		case []string:
			e.value = "[" + strings.Join(each(x, strconv.Quote), ", ") + "]"
		case job.Date:
			e.value = x.ISO()
		}
		if e.value != "" {
			out = append(out, e)
		}
	}
	return out
}

// lines writes each key on a line of its own.
func lines(entries []entry, before, end string) string {
	var b strings.Builder
	for _, e := range entries {
		b.WriteString(before + e.key + " = " + e.value + end)
	}
	return b.String()
}

// inline writes keys in a row.
func inline(entries []entry) string {
	return strings.TrimSuffix(lines(entries, "", ", "), ", ")
}

// inlineMeshes writes meshes as a list of inline tables.
func inlineMeshes(meshes []job.MeshFactor) string {
	return "[" + strings.Join(each(meshes, inlineMesh), ", ") + "]"
}

func inlineMesh(m job.MeshFactor) string { return "{ " + inline(entriesOf(m)) + " }" }

// each writes every entry of a list.
func each[T any](list []T, text func(T) string) []string {
	var out []string
	for _, e := range list {
		out = append(out, text(e))
	}
	return out
}
