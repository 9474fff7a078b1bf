package say

import (
	"reflect"
	"testing"

	"bladecard/calc/plan"
)

func TestTell(t *testing.T) {
	w := func(texts ...string) (out []plan.Warning) {
		for _, s := range texts {
			out = append(out, plan.Warning{Code: "c", Text: s})
		}
		return out
	}
	front := plan.Location{Name: "front", Warnings: w("far"), Screens: []plan.Screen{
		{Number: 1, Warnings: w("worn", "thin 20")}, {Number: 2, Warnings: w("thin 30")}, {Number: 3, Warnings: w("worn")}}}
	back := plan.Location{Name: "back", Screens: []plan.Screen{{Number: 1, Warnings: w("worn")}}}
	told := Tell(w("other press"), front, back)
	var got []string
	for _, x := range told {
		got = append(got, voice(t, "metric").Tell(x, nil))
	}
	want := []string{"other press", "front: far", "front, screens 1, 3; back, screen 1: worn", "front, screen 1: thin 20", "front, screen 2: thin 30"}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	called := voiceIn(t, "es", "metric").Tell(told[2], func(s string) string { return "«" + s + "»" })
	if called != "«front», pantallas 1, 3; «back», pantalla 1: worn" {
		t.Errorf("in Spanish %q", called)
	}
}
