package plan

// meshEquivalents is how many other meshes are tried as equivalents, the nearest ink volumes first.
const meshEquivalents = 4

// equivalents lists the other blades of the rack, and other meshes of the racks, that meet all
// demands of the screen with a film inside the band of the chosen setup, each with the setup
// that does it and its film against the chosen one.
func (c chooser) equivalents(ch choice, meshes []bench) ([]Equivalent, error) {
	out := []Equivalent{}
	if !ch.best.miss.none() {
		return out, nil
	}
	same := c.band(ch.best.curedUM, ch.best)
	add := func(kind, mesh string, t trial) {
		if !(t.curedUM >= same.Low && t.curedUM <= same.High) {
			return // meets the demands with another film
		}
		out = append(out, Equivalent{
			Kind: kind, Blade: bladeName(t.stock), Mesh: mesh, AngleDeg: t.angleDeg, Strokes: t.strokes,
			CuredUM: t.curedUM, DeltaPercent: 100 * (t.curedUM/ch.best.curedUM - 1),
		})
	}
	for _, t := range ch.each {
		if t.stock.id != ch.best.stock.id && t.fault == "" && t.miss.none() {
			add("blade", c.bench.meshName, t)
		}
	}
	c.nearestFirst(meshes)
	for _, b := range meshes[:min(meshEquivalents, len(meshes))] {
		other := c
		other.bench = b
		got, err := other.choose()
		if err != nil {
			return nil, err
		}
		if got.found && got.best.miss.none() {
			add("mesh", b.meshName, got.best)
		}
	}
	return out, nil
}
