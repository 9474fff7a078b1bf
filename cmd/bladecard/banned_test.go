package main

import (
	"bytes"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"bladecard/calc/file"
	"bladecard/templates"
)

// banned are words that a printer would not say, by language: a pattern, what is said instead, and where the
// pattern is right all the same. Other languages follow their base.
var banned = map[string][]struct {
	word, instead string
	but           []string
}{
	"en": {
		{`colour|grey\b|fibre|metre\b|metres\b|centre\b|litre`, "American spelling", nil},
		{`customary`, "usual", nil},
		{`bent edge|edge bends`, "working angle", nil},
		{`all demands`, "in spec", nil},
		{`\bborne\b`, "the limit", nil},
		{`off contact`, "off-contact", nil},
		{`comb it at once|: combs left`, "wet comb, straight off the press", nil},
		{`Gauge: print`, "by gauge: print minus bare cloth", nil},
		{`film too (thin|heavy)`, "ink too thin, too heavy", nil},
		{`\(band\)|\bBand\b`, "expected range", nil},
		{`a pass each`, "one color per pass", nil},
		{`not on the racks`, "not in stock", nil},
		{`\bmiddling\b`, "adult M", nil},
		{`Class paper`, "training handout", nil},
		{`an hour\b|threads a line|threads an inch`, "per", nil},
		{`carries \S+ of the load`, "the blade is hydroplaning", []string{"(ink carries"}},
		{`cannot be told from`, "you will not see it", nil},
		{`hangs on|hard to the nail|would surprise`, "plain words", nil},
		{`stretched again`, "retension or restretch", nil},
		{`fits on:`, "runs on", nil},
		{`tunnel`, "dryer", nil},
		{`flip about`, "flip on", nil},
		{`edge cut sharp`, "sharpen blade", nil},
	},
	"es": {
		{`[Pp]elícula`, "capa, depósito", []string{"peine de película húmeda", "película capilar"}},
		{`\b[Bb]anda\b`, "rango esperado", []string{"banda del horno", "horno de banda"}},
		{`\b[Cc]inta\b`, "banda del horno", []string{"pegar cinta", "prueba de cinta"}},
		{`[Ss]ecador|túnel`, "horno", []string{"túnel de curado"}},
		{`[Pp]resec`, "flash, flasheo", nil},
		{`[Ee]ntint`, "inundar", nil},
		{`\b[Ff]ichas?\b`, "tarjeta; ficha técnica of an ink", []string{"ficha técnica"}},
		{`[Gg]alga`, "peine de película húmeda", nil},
		{`[Cc]alibre\b`, "medidor de espesor", nil},
		{`[Cc]aucho`, "goma", nil},
		{`[Ss]oporte`, "portarracletas", nil},
		{`\b[Mm]argen`, "rango", nil},
		{`[Hh]oja de ajuste`, "hoja de preparación", nil},
		{`[Gg]rosor`, "espesor", nil},
		{`base blanca`, "base", nil},
		{`\b[Pp]lano\b|macizo`, "sólido, masa", nil},
		{`\b[Ll]uces\b`, "blanco de realce", nil},
		{`[Rr]elieve`, "alto relieve", []string{"alto relieve", "Alto relieve"}},
		{`[Tt]razo`, "detalle más fino", nil},
		{`sostiene`, "retiene", []string{"núcleo lo sostiene", "la sostienen"}},
		{`enfriado`, "enfriamiento", nil},
		{`de pie\b`, "vertical", nil},
		{`[Tt]irada`, "tiraje", nil},
		{`[Ee]stantes?\b`, "existencias", nil},
		{`[Bb]arrido`, "prueba de pasada limpia", nil},
		{`bajo de la manga|bastilla`, "dobladillo", nil},
		{`\b[Bb]otes?\b`, "envases", nil},
		{`taller de serie`, "taller de ejemplo", nil},
		{`camiseta media`, "talla media", nil},
		{`húmedo sobre húmedo`, "mojado sobre mojado", nil},
		{`\b[Pp]regunte\b`, "preguntar", nil},
		{`[Dd]isolvente`, "solvente", nil},
		{`gelific`, "gelar", nil},
		{`[Aa]puntes`, "material de capacitación", nil},
		{`filo doblado`, "ángulo de trabajo", nil},
		{`habitual`, "usual", nil},
		{`[Ii]mpresión|[Ii]mpresiones`, "impreso", []string{"orden de impresión", "lado de impresión"}},
		{`\b(Añada|[Rr]evele|[Mm]ida|[Aa]note|[Aa]nótelo|Siga|Lea|Deje|[Ee]jecute|[Uu]se|[Ii]mprima|[Cc]ambie|[Bb]loquee|[Pp]egue|[Ee]scriba|[Pp]onga|[Rr]evise|[Cc]ompruebe|Limpie|Afile|Lave|Guarde|[Bb]usque|[Dd]ibuje)\b`, "the infinitive: medir, anotar", nil},
		{`plastisol white|water-based|solvent graphics`, "the ink's Spanish name", []string{"plastisol white\"", "solvent graphics\""}},
	},
	"es-MX": {{`[Rr]acleta`, "rasero", nil}},
}

var inBraces = regexp.MustCompile(`\{[a-z_]+\}`)

// saysBanned lists the banned words of a text in a language; names are what the shop and its jobs call their
// things, and stand as they are.
func saysBanned(lang, text string, names ...string) []string {
	list := banned[templates.Base(lang)]
	if lang != templates.Base(lang) {
		list = append(slices.Clip(list), banned[lang]...)
	}
	var out []string
	for _, b := range list {
		rest := inBraces.ReplaceAllString(text, "")
		for _, but := range append(slices.Clip(b.but), names...) {
			rest = strings.ReplaceAll(rest, but, "")
		}
		for _, found := range regexp.MustCompile(b.word).FindAllString(rest, -1) {
			out = append(out, found+" (say "+b.instead+")")
		}
	}
	return out
}

// TestOldWordsStayAway: no text of a language says a word that a printer would not say.
func TestOldWordsStayAway(t *testing.T) {
	for _, lang := range templates.Languages() {
		w, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		for key, text := range w {
			for _, b := range saysBanned(lang, text) {
				t.Errorf("%s: %s: %s", lang, key, b)
			}
		}
		for _, kind := range file.Kinds() {
			src, err := templates.Starter(lang, kind)
			if err != nil {
				t.Fatal(err)
			}
			if lang != templates.Base(lang) { // it is that of the base
				continue
			}
			for _, b := range saysBanned(lang, string(src), "fibre =", "use =") {
				t.Errorf("%s: starter of a %s: %s", lang, kind, b)
			}
		}
	}
}

// TestHelpSaysNoOldWords: the help of every command, and what wrong words on the command line are told.
func TestHelpSaysNoOldWords(t *testing.T) {
	for _, args := range append(helpOfAll(), []string{"help"}, []string{"no-such"}, []string{"show"}, []string{"correct", "x.toml"}, []string{"fit"}) {
		var out bytes.Buffer
		run(args, strings.NewReader(""), &out, &out)
		if out.Len() == 0 {
			t.Errorf("%v says nothing", args)
		}
		for _, b := range saysBanned("en", out.String()) {
			t.Errorf("bladecard %s: %s", strings.Join(args, " "), b)
		}
	}
}

func helpOfAll() [][]string {
	var out [][]string
	for _, c := range commands() {
		if !c.hidden {
			out = append(out, []string{c.name, "--help"})
		}
	}
	return out
}

// TestSamplesSayNoOldWords: all that show --why says of the samples, in every language. The paper is read where its
// documents are made: see searchable.
func TestSamplesSayNoOldWords(t *testing.T) {
	for _, lang := range templates.Languages() {
		for _, units := range []string{"metric", "inch"} {
			shop := filepath.Join(t.TempDir(), "shop.toml")
			src := content(t, "../../samples/shop.toml")
			src = bytes.Replace(src, []byte(`units = "metric"`), []byte(`units = "`+units+`"`), 1)
			write(t, shop, string(src))
			for _, job := range sampleJobs(t) {
				var out bytes.Buffer
				if code := run([]string{"show", "--why", job, "--shop", shop, "--lang", lang}, strings.NewReader(""), &out, &out); code != exitDone {
					t.Fatalf("%s %s: exit %d: %s", lang, job, code, out.String())
				}
				for _, b := range saysBanned(lang, strings.Join(strings.Fields(out.String()), " ")) {
					t.Errorf("%s %s %s: %s", lang, units, filepath.Base(job), b)
				}
			}
		}
	}
}
