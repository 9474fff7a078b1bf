package say_test

import (
	"testing"

	"bladecard/calc/plan"
	"bladecard/render/say"
)

// TestNamed: a location without a name is called as the language calls it, on paper alone.
func TestNamed(t *testing.T) {
	p := &plan.Plan{Locations: []plan.Location{{Name: "location 1"}, {Name: "location 2"}, {Name: "pecho"}}}
	for code, want := range map[string][3]string{
		"en": {"location 1", "location 2", "pecho"},
		"es": {"posición 1", "posición 2", "pecho"},
	} {
		v, err := say.New(code, "metric")
		if err != nil {
			t.Fatal(err)
		}
		var got [3]string
		for i, l := range v.Named(p).Locations {
			got[i] = l.Name
		}
		if got != want {
			t.Errorf("%s: %q; %q is wanted", code, got, want)
		}
	}
	if p.Locations[0].Name != "location 1" {
		t.Errorf("the plan itself says %q now", p.Locations[0].Name)
	}
}
