package file

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"

	"bladecard/calc/job"
)

// place tells where a key, a table or an entry of a list stands in the file. Places form the same
// tree as the values, so that each of several [[tables]] has its own. A nil place stands nowhere.
type place struct {
	src   *source
	name  string
	key   int // offset of the key, of the header of a table, of the entry
	value int // offset of the value
	end   int // offset behind the value, or behind the last key of a header
	kids  map[string]*place
	order []*place // the kids as the file has them
	items []*place
}

// kid returns the place of a key inside, nil when the file doesn't have it.
func (p *place) kid(key string) *place {
	if p == nil {
		return nil
	}
	return p.kids[key]
}

// item returns the place of an entry of a list, or that of the list where it is not known.
func (p *place) item(i int) *place {
	if p == nil || i >= len(p.items) {
		return p
	}
	return p.items[i]
}

func (p *place) keyPos() job.Pos {
	if p == nil {
		return job.Pos{}
	}
	return p.src.pos(p.key)
}

func (p *place) valuePos() job.Pos {
	if p == nil {
		return job.Pos{}
	}
	return p.src.pos(p.value)
}

// Find returns the place of a key's value inside, or that of the table where the file leaves the
// key out.
func (p *place) Find(key string) job.Pos {
	if k := p.kid(key); k != nil {
		return k.valuePos()
	}
	return p.keyPos()
}

// make returns the place of a key inside, made when it is new.
func (p *place) make(key string, offset int) *place {
	if k := p.kids[key]; k != nil {
		return k
	}
	if p.kids == nil {
		p.kids = map[string]*place{}
	}
	k := &place{src: p.src, name: key, key: offset, value: offset}
	p.kids[key] = k
	p.order = append(p.order, k)
	return k
}

// last returns the table that a header means: the last entry where there is a list of tables.
func (p *place) last() *place {
	if n := len(p.items); n > 0 {
		return p.items[n-1]
	}
	return p
}

// walk builds the places of a file from its syntax tree. It reads a file before the decoder does, and
// refuses what the decoder would choke on: BurntSushi/toml takes time in the square of the parts of
// a dotted key (3 s and 2.6 GB for one of 16 kB) and half a gigabyte of stack for a megabyte of open brackets, where
// the parser of the tree takes time in proportion to the size and bounds its own depth.
type walk struct {
	src   *source
	root  *place
	table *place // what the last header opened
	depth int    // lists and inline tables that are open
	from  int    // where the first key of the last expression stands
	twice job.Errors
	errs  job.Errors
}

// findPlaces walks a file. It reports in twice the keys that a table has already and that the decoder would drop
// in silence.
func findPlaces(src *source) (root *place, twice, errs job.Errors) {
	w := walk{src: src, root: &place{src: src}}
	w.table = w.root
	var p unstable.Parser
	p.Reset(src.text)
	for w.errs == nil && p.NextExpression() {
		node := p.Expression()
		if first := node.Key(); first.Next() {
			w.from = int(first.Node().Raw.Offset)
		}
		switch node.Kind {
		case unstable.KeyValue:
			w.key(w.table, node)
		case unstable.Table, unstable.ArrayTable:
			w.header(node)
		}
	}
	var syntax *unstable.ParserError
	if w.errs == nil && errors.As(p.Error(), &syntax) {
		offset := len(src.text)
		if len(syntax.Highlight) > 0 {
			offset = int(p.Range(syntax.Highlight).Offset)
		}
		w.errs = src.syntax(w.from, offset, syntax.Message)
	}
	return w.root, w.twice, w.errs
}

// part is one name of a dotted key, from its offset to the one behind it.
type part struct {
	name    string
	at, end int
}

// parts reads the key of a node. It returns nil and ends the walk where the key is beyond the limits.
func (w *walk) parts(node *unstable.Node) []part {
	var out []part
	for keys := node.Key(); keys.Next(); {
		key := keys.Node()
		p := part{string(key.Data), int(key.Raw.Offset), int(key.Raw.Offset + key.Raw.Length)}
		out = append(out, p)
		if w.refused(p.at, len(out), maxParts, "parts") || w.refused(p.at, p.end-out[0].at, maxKey, "bytes") {
			return nil
		}
	}
	return out
}

// refuse ends the walk with an error.
func (w *walk) refuse(offset int, wrong, accepted string) {
	if w.errs == nil {
		w.errs = w.src.fail(offset, wrong, accepted)
	}
}

// refused ends the walk where a key has more of something than the most.
func (w *walk) refused(offset, n, most int, what string) bool {
	if n > most {
		w.refuse(offset, fmt.Sprintf("a key has more than %d %s", most, what), fmt.Sprintf("at most %d %s are accepted", most, what))
	}
	return n > most
}

// header opens the table that a header names, and makes it where it is new.
func (w *walk) header(node *unstable.Node) {
	parts := w.parts(node)
	if parts == nil {
		return
	}
	list := node.Kind == unstable.ArrayTable
	at := bytes.LastIndexByte(w.src.text[:parts[0].at], '[')
	if list {
		at--
	}
	w.table = w.root
	for i, part := range parts {
		w.table = w.table.make(part.name, at)
		if list && i == len(parts)-1 {
			w.table.items = append(w.table.items, &place{src: w.src, key: at, value: at})
		}
		w.table = w.table.last()
	}
	if !list {
		w.table.key, w.table.value = at, at
	}
	w.table.end = parts[len(parts)-1].end
}

// key notes where a key of a table and its value stand.
func (w *walk) key(table *place, node *unstable.Node) {
	parts := w.parts(node)
	for i, part := range parts {
		if i == len(parts)-1 && table.kids[part.name] != nil { // the decoder lets a.b = 1, a = 2 pass and drops the 2
			w.twice = append(w.twice, w.src.fail(part.at, "the key is there already", acceptedOnce)...)
		}
		table = table.make(part.name, part.at)
	}
	if parts == nil {
		return
	}
	table.value = parts[len(parts)-1].end
	// The tree doesn't say where a list starts: it is behind the last key and the sign.
	for text := w.src.text; table.value < len(text) && bytes.IndexByte([]byte(" \t="), text[table.value]) >= 0; {
		table.value++
	}
	table.end = int(node.Raw.Offset + node.Raw.Length)
	w.inside(table, node.Value())
}

// inside notes what stands inside an inline table or a list.
func (w *walk) inside(p *place, value *unstable.Node) {
	if value.Kind != unstable.InlineTable && value.Kind != unstable.Array {
		return
	}
	if w.depth++; w.depth > maxNest {
		w.refuse(p.value, fmt.Sprintf("lists and tables stand more than %d deep inside one another", maxNest), fmt.Sprintf("a depth of %d is accepted", maxNest))
	}
	for kids := value.Children(); w.errs == nil && kids.Next(); {
		kid := kids.Node()
		if value.Kind == unstable.InlineTable {
			w.key(p, kid)
			continue
		}
		item := &place{src: w.src, key: p.value, value: p.value}
		if kid.Raw.Length > 0 {
			item.key, item.value = int(kid.Raw.Offset), int(kid.Raw.Offset)
		}
		p.items = append(p.items, item)
		w.inside(item, kid)
	}
	w.depth--
}
