package file

import (
	"reflect"
	"strings"

	"bladecard/calc/job"
)

// IsShop tells whether the text is that of a shop file and of no job file: it has a key at its top
// that only a shop has, and neither a title nor a location. What cannot be read is none.
func IsShop(src []byte) bool {
	_, data, _, errs := open("", src)
	if errs != nil || data["title"] != nil || data["location"] != nil {
		return false
	}
	if _, racks := data["press"].([]map[string]any); racks {
		return true
	}
	ofJob := topKeys(job.Job{})
	for key := range topKeys(job.Shop{}) {
		if _, has := data[key]; has && !ofJob[key] {
			return true
		}
	}
	return false
}

// IsJob tells whether the text is that of a job file: it has a title or a location. What cannot be
// read is none.
func IsJob(src []byte) bool {
	_, data, _, errs := open("", src)
	return errs == nil && (data["title"] != nil || data["location"] != nil)
}

// topKeys are the keys at the top of a file.
func topKeys(of any) map[string]bool {
	out := map[string]bool{}
	t := reflect.TypeOf(of)
	for i := range t.NumField() {
		if key, _, _ := strings.Cut(t.Field(i).Tag.Get("toml"), ","); key != "" && key != "-" {
			out[key] = true
		}
	}
	return out
}
