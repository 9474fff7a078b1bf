// Package file reads job files and shop files: bytes in, plain data out, no file is opened.
//
// DecodeJob and DecodeShop read TOML strictly. The struct tags of job.Job and job.Shop are the
// file format; one binder reads every table by them, converts quantities with
// calc/unit, and collects all errors of the file, each with line, column, place in words, what
// is wrong and what is accepted. job.Resolve then looks up what a job names in a shop.
//
// The way of a file: source.go checks size and encoding; places.go walks the syntax tree of
// pelletier/go-toml, notes where each key stands, and refuses what would be slow to decode;
// BurntSushi/toml gives the values; bind.go fills the types, by the table in scalars.go; jobfile.go and
// shopfile.go check what keys mean together.
//
// Schema turns the same tags into a JSON Schema for editors, and a test turns them into
// templates/keys.md for people. A test puts every kind of value into every key and holds the schema against
// the decoder; what only the decoder can find is listed there.
//
// Limits on files (a megabyte, 64 locations of 64 screens, texts of 200 characters) and
// accepted ranges are judgement: wide enough for each real job, narrow enough to catch a slip
// of the unit (common practice). Formulas are in other packages.
package file
