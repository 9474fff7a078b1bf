package sheet

import (
	"bladecard/calc/plan"
	"bladecard/render/flow"
	"strings"
)

// last is the table of what the screens of a location ran with last; nothing where none has run.
func (m *maker) last(l plan.Location) {
	v := m.say
	t := flow.Table{Name: "last", Header: []string{"#", "", v.T("last.day"), v.T("last.setup"), v.T("last.film"), v.T("last.changed"), v.T("last.sign-off")}}
	for _, s := range l.Screens {
		if s.Last == nil {
			continue
		}
		changed := strings.Join(v.LastDiffers(*s.Last), "\n")
		if changed == "" {
			changed = v.T("last.same")
		}
		t.Row(append([]flow.Cell{number(s), patch(s)}, flow.Plain(v.Date(s.Last.Date), v.LastSetup(*s.Last), v.LastFilm(s), changed, v.LastSigned(*s.Last))...)...)
	}
	if t.Rows != nil {
		m.Part("last", v.T("last.heading"), "", t)
	}
}
