package file

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// twoScreens is a job file whose first screen has the line, line 4.
func twoScreens(line string) string {
	return "title = \"t\"\n[[location]]\n[[location.screen]]\n" + line + "\n[[location.screen]]\nstrokes = 1\n"
}

// What BurntSushi/toml does when it fills structs itself, beside what this package does. Where
// the first half of a case fails after an update of the library, its trap is gone.
func TestTrapsOfTheDecoder(t *testing.T) {
	type screen struct {
		Strokes int
		Angle   float64
		Film    text
	}
	type file struct {
		Title    string
		Location []struct{ Screen []screen }
	}
	ours := func(src, want string) {
		t.Helper()
		if _, errs := DecodeJob("j.toml", []byte(src)); errs.Error() != want {
			t.Errorf("got\n%s\nwant\n%s", errs.Error(), want)
		}
	}

	t.Run("type error at the last table", func(t *testing.T) {
		src := twoScreens(`strokes = "two"`)
		var f file
		_, err := toml.Decode(src, &f)
		if err == nil || !strings.Contains(err.Error(), "line 6 ") {
			t.Errorf("the decoder reports %v; its trap was line 6 for the error of line 4", err)
		}
		ours(src, `j.toml:4:11: location 1, screen 1: strokes: "two" is a text; a whole number without quotes is accepted, 1 to 6`)
	})
	t.Run("own error at the last table", func(t *testing.T) {
		src := "title = \"t\"\n[[location]]\n[[location.screen]]\nfilm = \"1 um\"\n[[location.screen]]\nfilm = \"1..2 um\"\n"
		var f file
		_, err := toml.Decode(src, &f)
		if err == nil || !strings.Contains(err.Error(), "line 6 ") {
			t.Errorf("the decoder reports %v; its trap was line 6 for the error of line 4", err)
		}
		ours(src, `j.toml:4:8: location 1, screen 1: film: "1 um" is not a range; a length range such as "45..70 um" is accepted, in mm, um, cm, m, in, ft or mil`)
	})
	t.Run("unknown keys without a place", func(t *testing.T) {
		src := twoScreens(`strike = 1`)
		var f file
		meta, err := toml.Decode(src, &f)
		if err != nil || len(meta.Undecoded()) != 1 || meta.Undecoded()[0].String() != "location.screen.strike" {
			t.Errorf("the decoder leaves %v, error %v", meta.Undecoded(), err)
		}
		ours(src, `j.toml:4:1: location 1, screen 1: strike: is not a key of this table; did you mean strokes? accepted are color, swatch, ink, use, mesh, eom, halftone, bitmap, feature, finest, coverage, film, height, blade, strokes, hits, flash, angle or load`)
	})
	t.Run("keys in any case", func(t *testing.T) {
		src := twoScreens(`STROKES = 2`)
		var f file
		if _, err := toml.Decode(src, &f); err != nil || f.Location[0].Screen[0].Strokes != 2 {
			t.Errorf("the decoder reads %+v, error %v", f, err)
		}
		ours(src, `j.toml:4:1: location 1, screen 1: STROKES: is not a key of this table; keys are written in small letters: strokes. accepted are color, swatch, ink, use, mesh, eom, halftone, bitmap, feature, finest, coverage, film, height, blade, strokes, hits, flash, angle or load`)
	})
	t.Run("numbers that are none", func(t *testing.T) {
		src := twoScreens(`angle = nan`)
		var f file
		if _, err := toml.Decode(src, &f); err != nil || !math.IsNaN(f.Location[0].Screen[0].Angle) {
			t.Errorf("the decoder reads %+v, error %v", f, err)
		}
		ours(src, `j.toml:4:9: location 1, screen 1: angle: NaN is not a finite number; an angle such as 22.5 or "22.5 deg" is accepted, in deg`)
	})
	t.Run("second value dropped", func(t *testing.T) {
		var data map[string]any
		_, err := toml.Decode("a.b = 1\na = 2\n", &data)
		if want := map[string]any{"a": map[string]any{"b": int64(1)}}; err != nil || !reflect.DeepEqual(data, want) {
			t.Errorf("the decoder reads %v, error %v", data, err)
		}
		ours("a.b = 1\na = 2\n", `j.toml:2:1: the key is there already; each key once in a table is accepted`)
	})
}

// text refuses what is no range, as a type of one's own does in the decoder.
type text string

func (t *text) UnmarshalText(b []byte) error {
	if string(b) == "1 um" {
		return errors.New("not a range")
	}
	*t = text(b)
	return nil
}
