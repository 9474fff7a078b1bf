package job

import (
	"fmt"
	"math"

	"bladecard/calc/internal/deep"
	"bladecard/calc/internal/words"
	"bladecard/calc/unit"
)

// The ink class of a screen that names none (common practice).
const (
	garmentInk = "plastisol"
	sheetInk   = "solvent graphics"
)

// Resolve looks up in the shop what the job names and fills On of the job and Ink, Mesh and Blades of each screen.
// A screen without an ink gets "plastisol" on a garment and "solvent graphics" on a sheet
// (common practice). A mesh that is not on the racks is taken as the job states it, with OnRack
// false. Ink classes, blades and presses that the shop lacks are errors that list what it has;
// all of them come back at once. The job then points into copies of its own, not into the shop.
func Resolve(j *Job, s *Shop) Errors {
	if j == nil || s == nil {
		return Errors{{Wrong: "there is no job or no shop", Accepted: "both are needed"}}
	}
	r := resolver{job: j, shop: s}
	r.press()
	for i := range j.Locations {
		l := &j.Locations[i]
		for n := range l.Screens {
			screen, where := &l.Screens[n], ScreenWhere(i, l, n)
			r.ink(screen, where)
			r.blade(screen, where)
			r.mesh(l, screen, where)
		}
	}
	r.errs.Sort()
	return r.errs
}

// FindPress returns the press of that name, the first one for ""; false when there is none.
func (s *Shop) FindPress(name string) (*Press, bool) {
	return find(s.Presses, func(p *Press) bool { return name == "" || p.Name == name })
}

// FindInk returns the ink class of that name; false when there is none.
func (s *Shop) FindInk(name string) (*Ink, bool) {
	return find(s.Inks, func(x *Ink) bool { return x.Name == name })
}

func find[T any](list []T, is func(*T) bool) (*T, bool) {
	for i := range list {
		if is(&list[i]) {
			return &list[i], true
		}
	}
	return nil, false
}

// FindBlades returns what a name of a blade means: the stock of that name, else every stock of that
// layup, however it is spaced.
func (s *Shop) FindBlades(name string) []Blade {
	var out []Blade
	for _, b := range s.Blades {
		if b.Name == name {
			return []Blade{b}
		}
		if b.Layup == Unspaced(name) {
			out = append(out, b)
		}
	}
	return out
}

type resolver struct {
	errs Errors
	job  *Job
	shop *Shop
}

func (r *resolver) fail(at Pos, where, key, wrong, accepted string) {
	r.errs = append(r.errs, Error{Pos: at, Where: where, Key: key, Wrong: wrong, Accepted: accepted})
}

func (r *resolver) press() {
	if p, ok := r.shop.FindPress(r.job.Press); ok {
		r.job.On = deep.Of(p)
		return
	}
	if r.job.Press == "" {
		return
	}
	known := words.Names(r.shop.Presses, func(p *Press) string { return p.Name })
	where := Pos{File: r.job.File}
	if r.job.Keys != nil {
		where = r.job.Keys.Find("press")
	}
	r.fail(where, "", "press", "the shop has no press "+words.Quote(r.job.Press), words.InList(r.job.Press, known, "its presses are"))
}

func (r *resolver) ink(s *Screen, where string) {
	if s.InkName == "" {
		s.InkName = garmentInk
		if r.job.Stock != nil {
			s.InkName = sheetInk
		}
	}
	ink, ok := r.shop.FindInk(s.InkName)
	if !ok {
		known := words.Names(r.shop.Inks, func(x *Ink) string { return x.Name })
		r.fail(s.KeyPos("ink"), where, "ink", "the ink class "+words.Quote(s.InkName)+" is not known", words.InList(s.InkName, known, "accepted are"))
		return
	}
	s.Ink = deep.Of(ink)
}

func (r *resolver) blade(s *Screen, where string) {
	if s.BladeName == "" {
		return
	}
	found := r.shop.FindBlades(s.BladeName)
	if len(found) == 0 {
		known := words.Names(r.shop.Blades, func(x *Blade) string { return x.Name })
		r.fail(s.KeyPos("blade"), where, "blade", "the rack has no blade "+words.Quote(s.BladeName), words.InList(s.BladeName, known, "in the rack are"))
		return
	}
	s.Blades = nil
	for i := range found {
		if found[i].Count > 0 {
			s.Blades = append(s.Blades, *deep.Of(&found[i]))
		}
	}
	if len(s.Blades) == 0 {
		r.fail(s.KeyPos("blade"), where, "blade", "no blade "+words.Quote(s.BladeName)+" is at hand: its count in the shop file is 0", "a blade with a count of 1 or more is accepted")
	}
}

func (r *resolver) mesh(l *Location, s *Screen, where string) {
	if s.MeshName == "" {
		return
	}
	fail := func(wrong, accepted string) { r.fail(s.KeyPos("mesh"), where, "mesh", wrong, accepted) }
	racked, count, thread, err := r.onRack(s.MeshName)
	if err != nil {
		fail(unit.WrongOf(err), AcceptedMesh)
		return
	}
	cloths := words.Names(racked, func(m *Mesh) string { return m.Name })
	known := words.Names(r.shop.Meshes, func(m *Mesh) string { return m.Name })
	switch {
	case thread == 0 && len(racked) == 0:
		fail(words.Quote(s.MeshName)+" does not say the thread, and no mesh on the racks has that count", words.InList(s.MeshName, known, AcceptedMesh+"; on the racks are"))
		return
	case thread == 0 && len(cloths) > 1:
		fail(words.Quote(s.MeshName)+" is more than one mesh on the racks", words.List(words.Quoted(cloths))+" is accepted")
		return
	case len(racked) == 0:
		s.Mesh = &Mesh{Name: s.MeshName, CountPerInch: count, ThreadUM: thread, Weave: "plain"}
		return
	}
	if m, ok := find(racked, func(m *Mesh) bool { return Fits(l, m) }); ok {
		s.Mesh = deep.Of(m)
		return
	}
	m := &racked[0]
	s.Mesh = deep.Of(m)
	fail(fmt.Sprintf("the image, %s x %s mm, fits in no frame of %s on the racks, the first of them %s x %s mm inside",
		words.Number(l.WidthMM), words.Number(l.HeightMM), m.Name, words.Number(m.FrameWidthMM), words.Number(m.FrameHeightMM)),
		"a mesh on a frame that the image fits in is accepted, or a smaller image")
}

// onRack finds the meshes on the racks that a text means: by name, else by count and thread.
func (r *resolver) onRack(text string) (racked []Mesh, count, thread float64, err error) {
	for _, m := range r.shop.Meshes {
		if m.Name == text {
			racked = append(racked, m)
		}
	}
	count, thread, err = ParseMesh(text)
	if len(racked) > 0 {
		return racked, count, thread, nil
	}
	if err != nil {
		return nil, 0, 0, err
	}
	for _, m := range r.shop.Meshes {
		if math.Abs(m.CountPerInch-count) <= 0.001*count && (thread == 0 || m.ThreadUM == thread) {
			racked = append(racked, m)
		}
	}
	return racked, count, thread, nil
}

// Fits tells whether the image fits in the frame, upright or turned. What is not stated fits.
func Fits(l *Location, m *Mesh) bool {
	if l.WidthMM == 0 || l.HeightMM == 0 || m.FrameWidthMM == 0 || m.FrameHeightMM == 0 {
		return true
	}
	return min(l.WidthMM, l.HeightMM) < min(m.FrameWidthMM, m.FrameHeightMM) &&
		max(l.WidthMM, l.HeightMM) < max(m.FrameWidthMM, m.FrameHeightMM)
}
