package file

import (
	"bytes"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"bladecard/calc/job"
)

// layout is how a shop file writes its calibration.
type layout struct {
	form   form
	head   int         // offset behind the line of [calibration]
	keys   []keyed     // of the calibration, in their order
	brace  int         // offset behind the brace that opens an inline calibration
	list   *keyed      // mesh = [...]
	meshes []meshTable // of [[calibration.mesh]], or of the list
}

type form int

const (
	formNone   form = iota
	formTable       // [calibration]
	formDotted      // calibration.factor = 1
	formInline      // calibration = { factor = 1 }
)

// keyed is a key with its value: offsets of key and value, and behind the value.
type keyed struct {
	name           string
	at, value, end int
}

// meshTable is what the file says of a mesh: offsets of its start, and behind its end.
type meshTable struct {
	name    string
	keys    []keyed
	at, end int
}

// findLayout walks the syntax tree of a file that the decoder has accepted.
func findLayout(text []byte) layout {
	var l layout
	var table []string // the header that keys stand under
	var p unstable.Parser
	p.Reset(text)
	for p.NextExpression() {
		node := p.Expression()
		switch node.Kind {
		case unstable.Table, unstable.ArrayTable:
			keys := node.Key()
			table = nil
			first := -1
			for keys.Next() {
				table = append(table, string(keys.Node().Data))
				if first < 0 {
					first = int(keys.Node().Raw.Offset)
				}
			}
			switch strings.Join(table, "\x00") {
			case "calibration":
				l.form, l.head = formTable, lineEnd(text, first)
			case "calibration\x00mesh":
				l.meshes = append(l.meshes, meshTable{at: lineStart(text, first), end: lineEnd(text, first)})
			}
		case unstable.KeyValue:
			l.add(text, table, node)
		}
	}
	return l
}

// add takes in a key of the file if it is one of the calibration.
func (l *layout) add(text []byte, table []string, node *unstable.Node) {
	path, key := keyOf(text, table, node)
	if path[0] != "calibration" {
		return
	}
	value := node.Value()
	switch {
	case len(path) == 1: // calibration = { ... }
		l.form, l.brace = formInline, int(value.Raw.Offset)+1
		for kids := value.Children(); kids.Next(); {
			l.add(text, path, kids.Node())
		}
	case len(path) == 2 && path[1] == "mesh": // mesh = [ { ... } ]
		l.list = &key
		for kids := value.Children(); kids.Next(); {
			l.addElement(text, kids.Node())
		}
	case len(path) == 2:
		l.keys = append(l.keys, key)
	case len(l.meshes) > 0: // below [[calibration.mesh]]
		m := &l.meshes[len(l.meshes)-1]
		m.end = lineEnd(text, key.end)
		m.take(text, key)
	}
	if l.form == formNone && len(table) == 0 {
		l.form = formDotted
	}
}

// addElement takes in an inline table of the list of meshes.
func (l *layout) addElement(text []byte, node *unstable.Node) {
	m := meshTable{at: int(node.Raw.Offset)}
	m.end = m.at + 1
	for kids := node.Children(); kids.Next(); {
		_, key := keyOf(text, nil, kids.Node())
		m.end = key.end
		m.take(text, key)
	}
	m.end = skipTo(text, m.end, '}') + 1
	l.meshes = append(l.meshes, m)
}

func (m *meshTable) take(text []byte, key keyed) {
	m.keys = append(m.keys, key)
	if key.name == "mesh" {
		m.name = textOf(text[key.value:key.end])
	}
}

// keyOf is the whole path of a key, and where it stands.
func keyOf(text []byte, table []string, node *unstable.Node) ([]string, keyed) {
	path := slices.Clone(table)
	k := keyed{at: int(node.Raw.Offset), end: int(node.Raw.Offset + node.Raw.Length)}
	for keys := node.Key(); keys.Next(); {
		k.name = string(keys.Node().Data)
		path = append(path, k.name)
		k.value = int(keys.Node().Raw.Offset + keys.Node().Raw.Length)
	}
	for strings.IndexByte(" \t=", text[k.value]) >= 0 {
		k.value++
	}
	return path, k
}

// textOf is the text that a value stands for.
func textOf(value []byte) string {
	var p unstable.Parser
	p.Reset(append([]byte("x = "), value...))
	if p.NextExpression() {
		return string(p.Expression().Value().Data)
	}
	return ""
}

// skipTo is the offset of a byte behind blanks, line ends, commas and comments; the end of what can
// be skipped where something else comes first.
func skipTo(text []byte, at int, want byte) int {
	for at < len(text) && text[at] != want {
		switch text[at] {
		case ' ', '\t', '\r', '\n', ',':
			at++
		case '#':
			at = lineEnd(text, at)
		default:
			return at
		}
	}
	return at
}

// edit puts text in place of a stretch of a file.
type edit struct {
	at, end int
	text    string
}

// putCalibration changes the calibration of a file that the decoder has accepted.
func putCalibration(src []byte, c *job.Calibration) []byte {
	text := bytes.TrimPrefix(src, []byte("\uFEFF"))
	mark := src[:len(src)-len(text)]
	end := "\n"
	if first := lineEnd(text, 0); bytes.HasSuffix(text[:first], []byte("\r\n")) {
		end = "\r\n"
	}
	l := findLayout(text)
	var edits []edit
	if l.form == formNone {
		block := CalibrationText(c)
		if len(text) > 0 {
			block = "\n" + block
		}
		edits = []edit{{len(text), len(text), strings.ReplaceAll(block, "\n", end)}}
	} else {
		edits = append(l.putKeys(text, entriesOf(*c), end), l.putMeshes(text, c.Meshes, end)...)
	}
	return append(slices.Clone(mark), applied(text, edits, end)...)
}

// applied makes the edits of a text. What goes in behind a last line that has no end gets one.
func applied(text []byte, edits []edit, end string) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int { return a.at - b.at })
	var out []byte
	at := 0
	for _, e := range edits {
		out = append(out, text[min(at, e.at):e.at]...)
		if e.at == len(text) && e.text != "" && len(out) > 0 && out[len(out)-1] != '\n' {
			out = append(out, end...)
		}
		out = append(out, e.text...)
		at = max(at, e.end)
	}
	return append(out, text[at:]...)
}

// putKeys changes the values of keys, takes away those that are no longer said, and puts in those
// that are new.
func (l *layout) putKeys(text []byte, entries []entry, end string) []edit {
	edits, fresh := changed(l.keys, entries)
	for i, k := range l.keys {
		if !slices.ContainsFunc(entries, func(e entry) bool { return e.key == k.name }) {
			edits = append(edits, l.without(text, i))
		}
	}
	if len(fresh) > 0 {
		edits = append(edits, l.more(text, fresh, end))
	}
	return edits
}

// changed are the edits of the values of keys that stay; fresh are the entries that have no key yet.
func changed(keys []keyed, entries []entry) (edits []edit, fresh []entry) {
	for _, e := range entries {
		i := slices.IndexFunc(keys, func(k keyed) bool { return k.name == e.key })
		if i < 0 {
			fresh = append(fresh, e)
		} else {
			edits = append(edits, edit{keys[i].value, keys[i].end, e.value})
		}
	}
	return edits, fresh
}

// without takes a key away: its line, or of an inline table the key with its comma.
func (l *layout) without(text []byte, i int) edit {
	k := l.keys[i]
	switch {
	case l.form != formInline:
		return edit{lineStart(text, k.at), lineEnd(text, k.end), ""}
	case i > 0:
		return edit{l.keys[i-1].end, k.end, ""}
	}
	return edit{k.at, skipTo(text, k.end, 0), ""}
}

// more puts keys in behind the last one.
func (l *layout) more(text []byte, entries []entry, end string) edit {
	at, indent := l.head, ""
	if n := len(l.keys); n > 0 {
		last := l.keys[n-1]
		if l.form == formInline {
			return edit{last.end, last.end, ", " + inline(entries)}
		}
		at, indent = lineEnd(text, last.end), indentOf(text, last.at)
	}
	switch l.form {
	case formInline:
		return edit{l.brace, l.brace, " " + inline(entries) + " "}
	case formDotted:
		if len(l.keys) == 0 {
			at, indent = lineEnd(text, l.list.end), indentOf(text, l.list.at)
		}
		indent += "calibration."
	}
	return edit{at, at, lines(entries, indent, end)}
}

// indentOf are the blanks before a key or a header in its line.
func indentOf(text []byte, at int) string {
	line := text[lineStart(text, at):at]
	return string(line[:len(line)-len(bytes.TrimLeft(line, " \t"))])
}

// putMeshes does the same to the meshes.
func (l *layout) putMeshes(text []byte, meshes []job.MeshFactor, end string) []edit {
	left := slices.Clone(meshes)
	var edits []edit
	var gone []int
	stays := -1 // one of the meshes that do
	for i, m := range l.meshes {
		at := slices.IndexFunc(left, func(f job.MeshFactor) bool { return f.Name == m.name })
		if at < 0 {
			gone = append(gone, i)
			continue
		}
		same, fresh := changed(m.keys, entriesOf(left[at])[1:]) // the name stays as it is written
		edits = append(edits, same...)
		if last := m.keys[len(m.keys)-1]; len(fresh) > 0 && l.list != nil {
			edits = append(edits, edit{last.end, last.end, ", " + inline(fresh)})
		} else if len(fresh) > 0 {
			behind := lineEnd(text, last.end)
			edits = append(edits, edit{behind, behind, lines(fresh, indentOf(text, last.at), end)})
		}
		left = slices.Delete(left, at, at+1)
		stays = i
	}
	if l.list != nil {
		if stays < 0 {
			return []edit{{l.list.value, l.list.end, inlineMeshes(meshes)}}
		}
		for _, i := range gone {
			edits = append(edits, l.withoutElement(text, i))
		}
		if len(left) > 0 {
			edits = append(edits, l.moreElements(text, stays, left))
		}
		return edits
	}
	for _, i := range gone {
		edits = append(edits, edit{l.meshes[i].at, l.meshes[i].end, ""})
	}
	switch {
	case len(left) == 0:
	case len(l.meshes) == 0 && l.form != formTable:
		edits = append(edits, l.more(text, []entry{{"mesh", inlineMeshes(left)}}, end))
	default:
		edits = append(edits, l.moreTables(text, left, end))
	}
	return edits
}

// withoutElement takes an inline table out of the list: its lines with what is said of it there, or
// what it shares a line with stays.
func (l *layout) withoutElement(text []byte, i int) edit {
	m := l.meshes[i]
	start, end := lineStart(text, m.at), m.end
	for end < len(text) && strings.IndexByte(" \t,", text[end]) >= 0 {
		end++
	}
	if rest := bytes.TrimRight(text[end:lineEnd(text, end)], "\r\n"); len(rest) == 0 || rest[0] == '#' {
		if len(bytes.TrimSpace(text[start:m.at])) == 0 {
			return edit{start, lineEnd(text, end), ""}
		}
	}
	if i+1 < len(l.meshes) {
		return edit{m.at, l.meshes[i+1].at, ""}
	}
	return edit{m.at, end, ""}
}

// moreElements puts inline tables in before one that stays, so that every comment stays with its own.
func (l *layout) moreElements(text []byte, stays int, meshes []job.MeshFactor) edit {
	at := l.meshes[stays].at
	between := ", "
	if start := lineStart(text, at); start > l.list.value {
		between = "," + string(text[lineEndBefore(text, start):start]) + indentOf(text, at)
	}
	var b strings.Builder
	for _, m := range meshes {
		b.WriteString("{ " + inline(entriesOf(m)) + " }" + between)
	}
	return edit{at, at, b.String()}
}

// lineEndBefore is the offset of the line end that stands before the start of a line.
func lineEndBefore(text []byte, start int) int {
	if start > 1 && text[start-2] == '\r' {
		return start - 2
	}
	return start - 1
}

// moreTables puts [[calibration.mesh]] tables in behind the last one, or behind the calibration's
// own keys.
func (l *layout) moreTables(text []byte, meshes []job.MeshFactor, end string) edit {
	at, indent, inner := l.head, "", ""
	if n := len(l.keys); n > 0 {
		at = lineEnd(text, l.keys[n-1].end)
	}
	if n := len(l.meshes); n > 0 {
		last := l.meshes[n-1]
		at, indent = last.end, indentOf(text, last.at+len(text[last.at:])-len(bytes.TrimLeft(text[last.at:], " \t")))
		if len(last.keys) > 0 {
			inner = indentOf(text, last.keys[0].at)
		}
	}
	var b strings.Builder
	for _, m := range meshes {
		b.WriteString(indent + "[[calibration.mesh]]" + end + lines(entriesOf(m), inner, end))
	}
	return edit{at, at, b.String()}
}
