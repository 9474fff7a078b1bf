package file

import (
	"bytes"
	"slices"
	"strings"

	"bladecard/calc/internal/charset"
	"bladecard/calc/job"
)

// editor changes the calibration of a shop file. The decoder has accepted the file, so that each key that a
// calibration needs is there.
type editor struct {
	text   []byte
	eol    string // of the file's lines
	style  style
	order  []*place // the keys of the calibration
	keys   []*place // those beside mesh
	list   *place   // mesh = [...]; nil: there are tables or none
	meshes []meshTable
	edits  []edit
}

// style is how the file writes the calibration.
type style int

const (
	styleNone   style = iota
	styleTable        // [calibration]
	styleDotted       // calibration.factor = 1
	styleInline       // calibration = { factor = 1 }
)

// meshTable is where the file speaks of a mesh, from an offset to the one behind its end.
type meshTable struct {
	name    string
	keys    []*place
	at, end int
}

// edit puts text in place of a stretch of a file.
type edit struct {
	at, end int
	text    string
}

// putCalibration changes a shop file whose calibration is was, nil for none, so that it is now.
func putCalibration(src []byte, was, now *job.Calibration) []byte {
	text := charset.Text(src)
	e := editor{text: text, eol: "\n"}
	if bytes.HasSuffix(text[:lineEnd(text, 0)], []byte("\r\n")) {
		e.eol = "\r\n"
	}
	if was == nil {
		block := strings.ReplaceAll(CalibrationText(now), "\n", e.eol)
		if len(text) > 0 {
			block = e.eol + block
		}
		e.put(len(text), len(text), block)
	} else {
		e.find(was)
		e.putKeys(entriesOf(*now))
		e.putMeshes(now.Meshes)
	}
	return append(slices.Clone(src[:len(src)-len(text)]), e.applied()...)
}

// find looks up how the file writes its calibration.
func (e *editor) find(was *job.Calibration) {
	root, _, _ := findPlaces(newSource("", e.text))
	block := root.kid("calibration")
	switch e.text[block.value] {
	case '[':
		e.style = styleTable
	case '{':
		e.style = styleInline
	default:
		e.style = styleDotted
	}
	e.order = block.order
	for _, key := range e.order {
		if key.name != "mesh" {
			e.keys = append(e.keys, key)
			continue
		}
		if key.end > 0 { // no header ends a list
			e.list = key
		}
		for i, item := range key.items {
			e.meshes = append(e.meshes, e.meshAt(was.Meshes[i].Name, item))
		}
	}
}

// meshAt finds the stretch of a mesh: its lines under a header, or from brace to brace.
func (e *editor) meshAt(name string, item *place) meshTable {
	last := item.order[len(item.order)-1].end
	if e.list == nil {
		return meshTable{name, item.order, lineStart(e.text, item.key), lineEnd(e.text, last)}
	}
	for e.text[last] != '}' {
		if e.text[last] == '#' {
			last = lineEnd(e.text, last)
		} else {
			last++
		}
	}
	return meshTable{name, item.order, item.key, last + 1}
}

func (e *editor) put(at, end int, text string) { e.edits = append(e.edits, edit{at, end, text}) }

// applied makes the edits. Where something goes in behind a last line without an end, the line gets one.
func (e *editor) applied() []byte {
	slices.SortStableFunc(e.edits, func(a, b edit) int { return a.at - b.at })
	var out []byte
	at := 0
	for _, d := range e.edits {
		out = append(out, e.text[min(at, d.at):d.at]...)
		if d.at == len(e.text) && d.text != "" && len(out) > 0 && out[len(out)-1] != '\n' {
			out = append(out, e.eol...)
		}
		out = append(out, d.text...)
		at = max(at, d.end)
	}
	return append(out, e.text[at:]...)
}

// putKeys changes the values of keys, takes away those that are no longer said, and puts in those
// that are new.
func (e *editor) putKeys(entries []entry) {
	fresh := e.change(e.keys, entries)
	for _, k := range e.keys {
		if slices.ContainsFunc(entries, func(n entry) bool { return n.key == k.name }) {
			continue
		}
		switch {
		case e.style != styleInline:
			e.put(lineStart(e.text, k.key), lineEnd(e.text, k.end), "")
		case k == e.order[0]:
			e.put(k.key, e.order[1].key, "")
		default:
			before := e.order[slices.Index(e.order, k)-1]
			e.put(before.end, k.end, "")
		}
	}
	e.more(fresh)
}

// change puts in the values of keys that stay, and returns the entries that have no key yet.
func (e *editor) change(keys []*place, entries []entry) (fresh []entry) {
	for _, n := range entries {
		i := slices.IndexFunc(keys, func(k *place) bool { return k.name == n.key })
		if i < 0 {
			fresh = append(fresh, n)
		} else {
			e.put(keys[i].value, keys[i].end, n.value)
		}
	}
	return fresh
}

// more puts keys in behind the last one.
func (e *editor) more(entries []entry) {
	last := e.keys[len(e.keys)-1]
	switch {
	case len(entries) == 0:
	case e.style == styleInline:
		e.put(last.end, last.end, ", "+inline(entries))
	default:
		at, before := lineEnd(e.text, last.end), e.indent(last.key)
		if e.style == styleDotted {
			before += "calibration."
		}
		e.put(at, at, lines(entries, before, e.eol))
	}
}

// indent returns the blanks at the start of the line of an offset.
func (e *editor) indent(at int) string {
	line := e.text[lineStart(e.text, at):at]
	return string(line[:len(line)-len(bytes.TrimLeft(line, " \t"))])
}

// putMeshes does to the meshes what putKeys does to the keys.
func (e *editor) putMeshes(meshes []job.MeshFactor) {
	left := slices.Clone(meshes)
	isNamed := func(name string) func(job.MeshFactor) bool {
		return func(m job.MeshFactor) bool { return m.Name == name }
	}
	stays := slices.IndexFunc(e.meshes, func(m meshTable) bool { return slices.ContainsFunc(left, isNamed(m.name)) })
	if e.list != nil && stays < 0 {
		e.put(e.list.value, e.list.end, inlineMeshes(meshes))
		return
	}
	for i, m := range e.meshes {
		at := slices.IndexFunc(left, isNamed(m.name))
		switch {
		case at >= 0:
			e.changeMesh(m, left[at])
			left = slices.Delete(left, at, at+1)
		case e.list != nil:
			e.dropElement(i)
		default:
			e.put(m.at, m.end, "")
		}
	}
	switch {
	case len(left) == 0:
	case e.list != nil:
		e.moreElements(e.meshes[stays].at, left)
	case len(e.meshes) == 0 && e.style != styleTable:
		e.more([]entry{{"mesh", inlineMeshes(left)}})
	default:
		e.moreTables(left)
	}
}

// changeMesh changes the values of a mesh and puts in those that are new. The name stays as it is written.
func (e *editor) changeMesh(m meshTable, now job.MeshFactor) {
	fresh := e.change(m.keys, entriesOf(now)[1:])
	last := m.keys[len(m.keys)-1]
	if len(fresh) > 0 && e.list != nil {
		e.put(last.end, last.end, ", "+inline(fresh))
	} else if len(fresh) > 0 {
		e.put(m.end, m.end, lines(fresh, e.indent(last.key), e.eol))
	}
}

// dropElement takes an inline table out of the list: its lines with what is said of it there, or
// what it shares a line with stays.
func (e *editor) dropElement(i int) {
	m := e.meshes[i]
	start, end := lineStart(e.text, m.at), m.end
	for end < len(e.text) && strings.IndexByte(" \t,", e.text[end]) >= 0 {
		end++
	}
	rest := bytes.TrimRight(e.text[end:lineEnd(e.text, end)], "\r\n")
	switch {
	case (len(rest) == 0 || rest[0] == '#') && len(bytes.TrimSpace(e.text[start:m.at])) == 0:
		e.put(start, lineEnd(e.text, end), "")
	case i+1 < len(e.meshes):
		e.put(m.at, e.meshes[i+1].at, "")
	default:
		e.put(m.at, end, "")
	}
}

// moreElements puts inline tables in before one that stays, so that every comment stays with its own.
func (e *editor) moreElements(at int, meshes []job.MeshFactor) {
	between := ", "
	if lineStart(e.text, at) > e.list.value {
		between = "," + e.eol + e.indent(at)
	}
	e.put(at, at, strings.Join(each(meshes, inlineMesh), between)+between)
}

// moreTables puts [[calibration.mesh]] tables in behind the last one, or behind the calibration's
// own keys.
func (e *editor) moreTables(meshes []job.MeshFactor) {
	at, outer, inner := lineEnd(e.text, e.keys[len(e.keys)-1].end), "", ""
	if n := len(e.meshes); n > 0 {
		last := e.meshes[n-1]
		at, outer, inner = last.end, e.indent(lineEnd(e.text, last.at)-1), e.indent(last.keys[0].key)
	}
	var b strings.Builder
	for _, m := range meshes {
		b.WriteString(outer + "[[calibration.mesh]]" + e.eol + lines(entriesOf(m), inner, e.eol))
	}
	e.put(at, at, b.String())
}
