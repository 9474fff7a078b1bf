package file

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"bladecard/calc/internal/words"
)

// What is accepted where a file is no TOML, in the words of somebody who types one.
const (
	acceptedTOML    = "TOML 1.0 is accepted"
	acceptedLine    = "one key with its value on a line is accepted, texts and figures with a unit in quotes, such as \"12 in\""
	acceptedPoint   = "a decimal point is accepted, and no comma at the end of a line"
	acceptedValue   = "a text in quotes, a number, true, false, a day, a list in [ ] or a table in { } is accepted"
	acceptedKey     = "a key, = and its value are accepted, the key of letters a-z, digits, - and _"
	acceptedHeader  = "the name of a table in [ ], or in [[ ]] where there are several, is accepted, alone on its line"
	acceptedList    = "entries with a comma between them and ] behind the last are accepted"
	acceptedInline  = "keys with their values, a comma between them and } behind the last are accepted"
	acceptedNumber  = "a number with digits before and behind its point is accepted, such as 0.5"
	acceptedBare    = "a plain number is accepted, or a text in quotes"
	acceptedWhole   = "a number of at most 18 digits is accepted"
	acceptedQuotes  = "a text with a quote at each end is accepted"
	acceptedSigns   = "straight quotes are accepted, \" or '"
	acceptedEscape  = "\\\\ for a backslash, \\\" for a quote, or a text in single quotes is accepted"
	acceptedDay     = "a day such as 2026-12-04, or a text in quotes such as \"156-64\", is accepted"
	acceptedOnce    = "each key once in a table is accepted"
	acceptedTables  = "[[ ]] round the name of each of several tables is accepted"
	acceptedLineEnd = "line ends of Unix or Windows are accepted, CR alone is not"
)

// fault is a message of a parser, a pattern of all of it, and what a person is told instead. $1 is what the parser
// quotes, and $word the whole word of the file that it quotes a letter of.
type fault struct{ says, Wrong, Accepted string }

// faults are what the two parsers say of files that pass charset.Fault: the decoder, whose words come first, and the
// parser of the tree. The first pattern that fits counts.
var faults = []fault{
	// A line.
	{`expected a top-level item to end with .* but got ',' instead|expected newline but got U\+002C.*`, `a comma stands behind the value`, acceptedPoint},
	{`expected a top-level item to end with .* but got (.+) instead|expected newline but got (.+)`, `$word stands where the line should end`, acceptedLine},
	{`TOML files cannot contain control characters: .*|carriage returns .*|.* cannot have control characters`, `a line ends in CR alone`, acceptedLineEnd},
	// A header.
	{`expected end of table array name delimiter .*|expected ']]' to close array table name`, `[[ is not closed by ]]`, acceptedHeader},
	{`unexpected end of table name .*`, `the table has no name between its brackets`, acceptedHeader},
	{`unexpected table separator .*`, `a part of the table's name is missing beside its point`, acceptedHeader},
	{`expected '\.' or '\]' to end table name, but got (?:'\\n'|'\\r'|'\\x00') instead|expected ']' to close table name`, `the bracket of the table's name is not closed`, acceptedHeader},
	{`expected '\.' or '\]' to end table name, but got (.+) instead`, `$word stands in the name of the table`, acceptedHeader},
	// A key.
	{`unexpected '=': key name appears blank|unexpected '='`, `the key is missing`, acceptedKey},
	{`unexpected '\.'.*`, `the key begins with a point`, acceptedKey},
	{`expected '\.' or '=', but got (?:'\\n'|'\\r'|'\\x00') instead|expected '=' after key|unexpected EOF; expected key separator '='`, `the key has no = and no value`, acceptedKey},
	{`expected '\.' or '=', but got (.+) instead`, `$word stands where = is wanted`, acceptedKey},
	{`expected key but reached end of input`, `the key is missing`, acceptedKey},
	{`invalid character at start of key: (.+)`, `$1 stands where a key is wanted`, acceptedKey},
	// A value.
	{`unexpected EOF; expected value|expected value but found (?:'\\n'|'\\r') instead|expected value, not end of input`, `the value is missing`, acceptedValue},
	{`expected value but found '#' instead|unexpected character U\+0023 .*`, `the value is missing, since # begins a comment`, `a value is accepted, with # inside its quotes`},
	{`expected value but found '([“”„«»‘’‚´\x60])' instead|unexpected character U\+[0-9A-F]+ '([“”„«»‘’‚´\x60])' at start of value`, `$1 is no straight quote`, acceptedSigns},
	{`expected value but found ("\pL.*") instead`, `$word stands without quotes`, acceptedValue},
	{`expected value but found (.+) instead|expected value but got (.+)|unexpected character (.+) at start of value`, `$1 stands where a value is wanted`, acceptedValue},
	{`expected keyword .*|strings must be quoted`, `a text stands without quotes`, acceptedValue},
	{`.* nested more than the maximum of ([0-9]+) levels deep`, `lists and tables stand too deep inside one another`, `a depth of 16 is accepted`},
	// Lists and tables in a line.
	{`unexpected comma|unexpected comma in inline table`, `there is a comma too many`, `one comma between two values is accepted`},
	{`expected a comma \(','\) or array terminator \(']'\), but got end of file|array is incomplete`, `the list is never closed`, acceptedList},
	{`expected a comma \(','\) or array terminator \(']'\), but got (.+)`, `$word stands in the list where a comma or ] is wanted`, acceptedList},
	{`expected ',' or ']' after array value`, `a comma or ] is missing in the list`, acceptedList},
	{`expected a comma or an inline table terminator '}', but got end of file instead|inline table is incomplete`, `the brace is never closed`, acceptedInline},
	{`expected a comma or an inline table terminator '}', but got (.+) instead`, `$word stands in the braces where a comma or } is wanted`, acceptedInline},
	{`expected ',' or '}' after inline table key-value`, `a comma or } is missing in the braces`, acceptedInline},
	// Numbers and days.
	{`floats must start with a digit, not '\.'`, `the number begins with a point`, acceptedNumber},
	{`Invalid float (".*"): '\.' must be followed by one or more digits`, `$1 has no digit behind its point`, acceptedNumber},
	{`decimal point must be followed by a digit`, `the number has no digit behind its point`, acceptedNumber},
	{`Invalid (?:integer|float) (".*"): cannot have leading zeroes`, `$1 begins with a zero`, acceptedBare},
	{`integers cannot have leading zeroes`, `the number begins with a zero`, acceptedBare},
	{`Invalid (?:integer|float) (".*"): underscores must be surrounded by digits`, `$1 has an underscore that does not stand between digits`, acceptedBare},
	{`number must have at least one digit between underscores`, `the number has an underscore that does not stand between digits`, acceptedBare},
	{`expected a digit but got (.+)|expected digit but got (.+)`, `$1 stands where a digit is wanted`, acceptedBare},
	{`expected number after sign|exponent must contain .*|radix prefix must .*|sign is not allowed .*|expected ".*"`, `this is not a number`, acceptedBare},
	{`(?:Invalid float value: |invalid float: |cannot use sign with non-decimal numbers: |not an? (?:binary|octal|hexadecimal) number: )(.+)`, `$1 is not a number`, acceptedBare},
	{`(.+) is out of (?:range for|the safe) .*`, `$1 is too large`, acceptedWhole},
	{`invalid datetime: (.+)`, `$1 is not a day`, acceptedDay},
	// Texts.
	{`strings cannot contain newlines|(?:basic|literal) strings cannot have new lines`, `this quote is not closed on its line`, acceptedQuotes},
	{`unexpected EOF; expected ['"].*|unterminated .* string|multiline .* string not terminated by .*`, `this quote is never closed`, acceptedQuotes},
	{`unexpected (?:'"+'|"'+")|too many quotes at the end of .*`, `there are too many quotes at the end of the text`, `three quotes at each end of a text of several lines are accepted`},
	{`invalid escape in string '\\[\r\n]'|need a character after \\`, `a backslash stands at the end of the line`, acceptedEscape},
	{`invalid escape in string '\\(.)'|invalid escape: '\\(.)'|invalid escape character (.+)`, `a backslash before $1 means nothing in a text`, acceptedEscape},
	{`expected (?:two|four|eight) hexadecimal digits after '\\(.)'.*`, `a backslash before $1 wants digits behind it`, acceptedEscape},
	{`unicode escape sequence .*|invalid hexadecimal digit .*`, `a backslash before "u" wants digits behind it`, acceptedEscape},
	{`Escaped character '\\u(.+)' is not valid UTF-8\.`, `$1 is not the number of a character`, acceptedEscape},
	{`escape sequence is not .*`, `this is not the number of a character`, acceptedEscape},
	// Keys and tables against one another.
	{`Key '(.*)' has already been defined\.`, `the key $1 is there already`, acceptedOnce},
	{`Key '(.*)' was already created as a hash\.|"(.*)" is not a table`, `$1 is a value already and cannot be a table too`, acceptedOnce},
	{`Key '(.*)' was already created and cannot be used as an array\.`, `$1 is there already, and not under [[ ]]`, acceptedTables},
}

var patterns = sync.OnceValue(func() (out []*regexp.Regexp) {
	for _, f := range faults {
		out = append(out, regexp.MustCompile(`^(?s:`+f.says+`)$`))
	}
	return out
})

// plainly says a message of a parser as a person understands it, and what is accepted, with the rest of the file from
// the place that the parser names on. A message that is not known is told as it is.
func plainly(says string, rest []byte) (wrong, accepted string) {
	for i, by := range patterns() {
		found := by.FindStringSubmatch(says)
		if found == nil {
			continue
		}
		said := quoted(strings.Join(found[1:], ""))
		word := said
		if all := wordAt(rest); strings.Contains(all, strings.Trim(said, `"`)) {
			word = words.Quote(all)
		}
		return strings.NewReplacer("$1", said, "$word", word).Replace(faults[i].Wrong), faults[i].Accepted
	}
	return "this is not TOML, its reader says in English: " + words.ParserSays(says), acceptedTOML
}

var word = regexp.MustCompile(`^[\pL\pN_.+-]+`)

// wordAt is the word that a text begins with behind blanks; empty where it begins with a sign.
func wordAt(text []byte) string { return string(word.Find(bytes.TrimLeft(text, " \t"))) }

// quoted is what a parser quotes of a file, in quotes: it writes U+0078 'x', 'x', "x" or x.
func quoted(said string) string {
	if _, char, is := strings.Cut(said, " '"); is && strings.HasPrefix(said, "U+") {
		said = "'" + char
	}
	text, err := strconv.Unquote(said)
	if err != nil {
		text = said
		if n := len(said); n > 2 && said[0] == '\'' && said[n-1] == '\'' {
			text = said[1 : n-1]
		}
	}
	if text == `"` {
		return `'"'`
	}
	return words.Quote(text)
}
