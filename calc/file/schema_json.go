package file

import (
	"bytes"
	"encoding/json"
)

// object is a JSON object that keeps the order of its members, so that the same types give
// the same bytes.
type object []member

type member struct {
	key   string
	value any
}

// MarshalJSON writes the members in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		if err := write(&b, m.key); err != nil {
			return nil, err
		}
		b.WriteByte(':')
		if err := write(&b, m.value); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func write(b *bytes.Buffer, v any) error {
	enc := json.NewEncoder(b)
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// text writes the object over indented lines.
func (o object) text() []byte {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(o); err != nil {
		panic("job: " + err.Error()) // texts, numbers and lists of them: cannot fail
	}
	return b.Bytes()
}
