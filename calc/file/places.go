package file

import (
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"bladecard/calc/internal/words"
	"bladecard/calc/job"
)

// place is where a key, a table or an entry of a list stands in the file. Places form the same
// tree as the values, so the first of several [[tables]] keeps its own. A nil place is no place.
type place struct {
	src   *source
	key   int // offset of the key, of the header of a table, of the entry
	value int // offset of the value
	kids  map[string]*place
	items []*place
}

// kid is the place of a key inside; nil when the file doesn't have it.
func (p *place) kid(key string) *place {
	if p == nil {
		return nil
	}
	return p.kids[key]
}

// item is the place of an entry of a list; the list's own place when it is not known.
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

// Find is the place of a key's value inside, the place of the table itself where the file
// leaves the key out.
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
	k := &place{src: p.src, key: offset, value: offset}
	p.kids[key] = k
	return k
}

// last is the table that a header means: the last entry, of a list of tables.
func (p *place) last() *place {
	if n := len(p.items); n > 0 {
		return p.items[n-1]
	}
	return p
}

// findPlaces walks the syntax tree of a file that parse has accepted.
func findPlaces(src *source) (*place, job.Errors) {
	root := &place{src: src}
	current := root
	var p unstable.Parser
	p.Reset(src.text)
	for p.NextExpression() {
		switch node := p.Expression(); node.Kind {
		case unstable.KeyValue:
			current.add(node)
		case unstable.Table, unstable.ArrayTable:
			current = root
			header := -1
			for keys := node.Key(); keys.Next(); {
				key := keys.Node()
				if header < 0 {
					header = src.header(int(key.Raw.Offset), node.Kind == unstable.ArrayTable)
				}
				current = current.make(string(key.Data), header)
				if node.Kind == unstable.ArrayTable && keys.IsLast() {
					current.items = append(current.items, &place{src: src, key: header, value: header})
				}
				current = current.last()
			}
			if node.Kind == unstable.Table {
				current.key, current.value = header, header
			}
		}
	}
	var syntax *unstable.ParserError
	if err := p.Error(); errors.As(err, &syntax) {
		offset := len(src.text)
		if len(syntax.Highlight) > 0 {
			offset = int(p.Range(syntax.Highlight).Offset)
		}
		return nil, src.fail(offset, "this is not TOML: "+words.ParserSays(syntax.Message), "TOML 1.0 is accepted")
	}
	var errs job.Errors
	for _, offset := range src.twice {
		errs = append(errs, src.fail(offset, "this is not TOML: the key is there already", "each key once in a table is accepted")...)
	}
	return root, errs
}

// header is the offset of the bracket that opens a table's header, from that of its first key.
func (s *source) header(key int, double bool) int {
	i := key
	for i > 0 && s.text[i-1] != '[' {
		i--
	}
	i--
	if double {
		i--
	}
	return max(i, 0)
}

// add takes in a key with its value.
func (p *place) add(node *unstable.Node) {
	end := 0
	for keys := node.Key(); keys.Next(); {
		key := keys.Node()
		if keys.IsLast() && p.kids[string(key.Data)] != nil { // the decoder lets a.b = 1, a = 2 pass and drops the 2
			p.src.twice = append(p.src.twice, int(key.Raw.Offset))
		}
		p = p.make(string(key.Data), int(key.Raw.Offset))
		end = int(key.Raw.Offset + key.Raw.Length)
	}
	// The tree doesn't say where a list starts: it is behind the last key and the sign.
	for end < len(p.src.text) && (p.src.text[end] == ' ' || p.src.text[end] == '\t' || p.src.text[end] == '=') {
		end++
	}
	p.value = end
	p.inside(node.Value())
}

// inside takes in what is inside an inline table or a list.
func (p *place) inside(value *unstable.Node) {
	switch value.Kind {
	case unstable.InlineTable:
		for kids := value.Children(); kids.Next(); {
			p.add(kids.Node())
		}
	case unstable.Array:
		for kids := value.Children(); kids.Next(); {
			kid := kids.Node()
			item := &place{src: p.src, key: p.value, value: p.value}
			if kid.Raw.Length > 0 {
				item.key, item.value = int(kid.Raw.Offset), int(kid.Raw.Offset)
			}
			p.items = append(p.items, item)
			item.inside(kid)
		}
	}
}
