package templates

import _ "embed"

var (
	//go:embed shop.toml
	shop []byte
	//go:embed inks.toml
	inks []byte
)

// Shop returns the file of the built-in shop, templates/shop.toml.
func Shop() []byte { return append([]byte(nil), shop...) }

// Inks returns the file of the built-in ink classes, templates/inks.toml.
func Inks() []byte { return append([]byte(nil), inks...) }
