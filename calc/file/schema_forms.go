package file

// formPatterns are the forms of forms.go as regular expressions, with likely texts. They hold
// to what RE2, ECMA 262 and PCRE have in common.
var formPatterns = map[string]struct {
	pattern  string
	examples []string
}{
	"swatch": {`^#[0-9a-fA-F]{6}$`, []string{"#f7f7f2"}},
	"layup":  {`^` + layerPattern + `(/` + layerPattern + `){0,6}$`, []string{"70", "65/90/65"}},
	"mesh":   {`^` + countPattern + `(-` + figurePattern + `)?$`, []string{"156-64", "61/cm-64"}},
	"cloth":  {`^` + countPattern + `-` + figurePattern + `$`, []string{"156-64", "61/cm-64"}},
}

const (
	// 40 to 95 Shore A
	layerPattern = `\s*0*([4-8][0-9](\.[0-9]*)?|9[0-4](\.[0-9]*)?|95(\.0*)?)\s*`
	// digits with at most one point
	digitsPattern = `([0-9]+\.?[0-9]*|\.[0-9]+)`
	figurePattern = `\s*` + digitsPattern + `\s*`
	countPattern  = `\s*` + digitsPattern + `(/cm|/in)?\s*`
)
