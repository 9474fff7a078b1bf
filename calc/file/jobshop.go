package file

import (
	"reflect"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// IsShop tells whether the text is that of a shop file and of no job file: it has a key at its top
// that only a shop has, and neither a title nor a location. What cannot be read is none.
func IsShop(src []byte) bool {
	data, _, errs := open("", src)
	if errs != nil || data["title"] != nil || data["location"] != nil {
		return false
	}
	ofJob := keysOf(fieldsOf(reflect.TypeFor[job.Job]()))
	for _, key := range keysOf(fieldsOf(reflect.TypeFor[job.Shop]())) {
		_, has := data[key]
		_, list := data[key].([]map[string]any) // a job names its press, and a shop lists several
		if list || has && !words.Has(ofJob, key) {
			return true
		}
	}
	return false
}

// IsJob tells whether the text is that of a job file: it has a title or a location. What cannot be
// read is none.
func IsJob(src []byte) bool {
	data, _, errs := open("", src)
	return errs == nil && (data["title"] != nil || data["location"] != nil)
}
