package main

import (
	"bytes"
	"flag"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"bladecard/render/say"
	"bladecard/templates"
)

// helpPage is what a command line prints, which must be help.
func helpPage(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &errs); code != exitDone || errs.Len() > 0 {
		t.Fatalf("%q: exit code %d, %s", args, code, errs.String())
	}
	return out.String()
}

// The page of all commands fits a terminal of eighty columns and says what each does, in every language; so do the
// pages of the commands, but for lines to be typed as they stand.
func TestHelpFits(t *testing.T) {
	t.Parallel()
	for _, lang := range templates.Languages() {
		v, err := say.New(lang, "")
		if err != nil {
			t.Fatal(err)
		}
		first := helpPage(t, "help", "--lang", lang)
		said := strings.Join(strings.Fields(first), " ")
		pages := map[string]string{"": first}
		for _, c := range commands() {
			if strings.Contains(said, " "+c.name+" ") == c.hidden {
				t.Errorf("%s: %s is shown: %v", lang, c.name, c.hidden)
			}
			if c.hidden {
				continue
			}
			if want := c.name + " " + doesOf(v, c); !strings.Contains(said, want) {
				t.Errorf("%s: %q is not shown", lang, want)
			}
			pages[c.name] = helpPage(t, c.name, "--help", "--lang", lang)
			if other := helpPage(t, "help", c.name, "--lang="+lang); other != pages[c.name] {
				t.Errorf("%s: help %s differs from %s --help", lang, c.name, c.name)
			}
		}
		for name, page := range pages {
			for l := range strings.Lines(page) {
				l = strings.TrimSuffix(l, "\n")
				if utf8.RuneCountInString(l) > usageWide && !strings.HasPrefix(l, "    ") || strings.TrimRight(l, " ") != l {
					t.Errorf("%s: help %s: %d columns: %q", lang, name, utf8.RuneCountInString(l), l)
				}
			}
			if strings.ContainsAny(strings.ReplaceAll(page, "{}", ""), "{}") {
				t.Errorf("%s: help %s has a brace that nothing filled in", lang, name)
			}
		}
	}
}

// TestHelpIsWhole: every language has a text for each command, flag and value, and none for what the program has not.
func TestHelpIsWhole(t *testing.T) {
	t.Parallel()
	want := map[string]bool{"command": true} // whether another language must say it in its own words
	argument := func(text string) {
		for _, word := range standsFor.FindAllString(text, -1) {
			want["argument."+word] = false
		}
	}
	argument("COMMAND")
	english, err := templates.Language("en")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range commands() {
		if c.hidden {
			continue
		}
		argument(c.args)
		want["command."+c.name+".does"] = true
		if more := "command." + c.name + ".more"; english[more] != "" {
			want[more] = true
		}
		f := new(call).flagsOf(c)
		f.set.VisitAll(func(known *flag.Flag) {
			argument(f.kinds[known.Name])
			own, all := "command."+c.name+".flag."+known.Name, "flag."+known.Name
			if english[own] != "" {
				want[own] = true
			} else {
				want[all] = true
			}
		})
	}
	delete(want, "command")
	for _, lang := range templates.Languages() {
		w, err := templates.Language(lang)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range slices.Sorted(maps.Keys(want)) {
			if w[key] == "" {
				t.Errorf("%s lacks %s", lang, key)
			}
		}
		for key := range w {
			if top, _, _ := strings.Cut(key, "."); top == "command" || top == "flag" || top == "argument" {
				if _, is := want[key]; !is {
					t.Errorf("%s has %s, which the program has not", lang, key)
				}
			}
		}
	}
}

var englishHelp = regexp.MustCompile(`(?i)\b(the|is|are|of|and|with|without|which|that|this|to|from|default|needed|print|prints|also|writes|write|job|jobs|shop)\b`)

// saidAsIs are the words of the program that stand in a text of any language: commands, flags, keys, names of files
// and what stands in quotes.
var saidAsIs = regexp.MustCompile("`[^`]*`|\"[^\"]*\"|--?[a-z][a-z-]*|[a-z]+\\.(toml|json|html)|\\(job o shop\\)|job\\|shop|sharpen-after y prints")

// TestHelpIsInTheLanguage: no line of the help is that of another language, but for lines to be typed as they stand,
// which are alike in all of them.
func TestHelpIsInTheLanguage(t *testing.T) {
	t.Parallel()
	en := linesOfHelp(t, "en")
	for _, lang := range []string{"es", "es-MX"} {
		lines := linesOfHelp(t, lang)
		if !slices.Equal(lines.typed, en.typed) {
			t.Errorf("%s: what is typed differs:\n%q\n%q", lang, lines.typed, en.typed)
		}
		for _, l := range lines.said {
			if slices.Contains(en.said, l) {
				t.Errorf("%s: a line of English: %q", lang, l)
			}
			if found := englishHelp.FindString(saidAsIs.ReplaceAllString(l, "")); found != "" {
				t.Errorf("%s: %q in %q", lang, found, l)
			}
		}
	}
}

type helpLines struct{ said, typed []string }

// linesOfHelp are the texts of all help in a language; the list of faults is left out, and names of shells.
func linesOfHelp(t *testing.T, lang string) (out helpLines) {
	t.Helper()
	v, err := say.New(lang, "")
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"about", "usage", "flags", "details", "start", "codes", "of-command", "of-this"} {
		out.said = append(out.said, v.T("help."+key))
	}
	for _, c := range commands() {
		if c.hidden {
			continue
		}
		out.said = append(out.said, doesOf(v, c))
		for _, p := range c.paragraphs(v) {
			switch {
			case p == faultsHelp(v):
			case toType(p):
				out.typed = append(out.typed, strings.Split(p, "\n")...)
			default:
				out.said = append(out.said, p)
			}
		}
		f := new(call).flagsOf(c)
		f.set.VisitAll(func(known *flag.Flag) { out.said = append(out.said, f.does(v, known.Name)) })
	}
	return out
}

// TestHelpSpeaksTheShopsLanguage: --lang first, else the nearest shop file, else English; the Tab key too.
func TestHelpSpeaksTheShopsLanguage(t *testing.T) {
	dir := t.TempDir()
	write(t, dir+"/es/shop.toml", "language = \"es\"\n")
	write(t, dir+"/es/deep/job.toml", "title = \"x\"\n")
	write(t, dir+"/none/x", "")
	for _, c := range []struct{ in, args, want string }{
		{"es", "help", "uso: bladecard COMANDO ..."},
		{"es/deep", "--help", "códigos de salida: 0 hecho"},
		{"es", "cards --help", "uso: bladecard cards TRABAJO... -o CARPETA"},
		{"es", "help cards", "hacer las tarjetas"},
		{"es", "help cards --lang en", "usage: bladecard cards JOB... -o DIR"},
		{"es", "help --lang en", "usage: bladecard COMMAND ..."},
		{"none", "help --lang es cards", "hacer las tarjetas"},
		{"none", "help", "usage: bladecard COMMAND ..."},
		{"none", "show ../es/deep/job.toml --help", "mostrar en la terminal"},
		{"none", "show --help --lang es-MX", "centímetro de rasero"},
		{"none", "correct --help --lang es", "deposito-bajo      depósito bajo"},
		{"es", "__complete 1 car", "cards\thacer las tarjetas"},
		{"es", "__complete 2 cards --si", "--single\tuna tarjeta por página"},
		{"es", "__complete 3 correct --seen dep", "deposito-bajo"},
		{"none", "__complete 3 correct --seen too", "too-thin"},
	} {
		t.Run(c.in+" "+c.args, func(t *testing.T) {
			t.Chdir(dir + "/" + c.in)
			if page := helpPage(t, strings.Fields(c.args)...); !strings.Contains(page, c.want) {
				t.Errorf("%q is not in\n%s", c.want, page)
			}
		})
	}
	var errs bytes.Buffer
	t.Chdir(dir + "/es")
	if run([]string{"cards", "-o"}, nil, io.Discard, &errs); !strings.Contains(errs.String(), "hace falta CARPETA") || !strings.Contains(errs.String(), "bladecard cards TRABAJO... -o CARPETA") {
		t.Error(errs.String())
	}
}
