package say

import "bladecard/calc/plan"

// Named is the plan with the locations that the job does not name called as the language calls them. Logs, rows and JSON
// keep the names of the plan, by which they are found again.
func (v *Voice) Named(p *plan.Plan) *plan.Plan {
	out := p
	for i, l := range p.Locations {
		told := v.Location(l.Name)
		if told == l.Name {
			continue
		}
		if out == p {
			copied := *p
			copied.Locations = append([]plan.Location{}, p.Locations...)
			out = &copied
		}
		out.Locations[i].Name = told
	}
	return out
}
