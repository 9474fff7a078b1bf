package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// quoted sets a text in single quotes for a POSIX shell.
func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

// script is the completion of a shell, in a file.
func script(t *testing.T, shell string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run([]string{"completion", shell}, nil, &out, &errs); code != exitDone {
		t.Fatal(code, errs.String())
	}
	path := filepath.Join(t.TempDir(), shell)
	write(t, path, out.String())
	return path
}

// completions are lines typed, with what a shell must offer for the last word of each.
var completions = []struct {
	line string
	want []string
}{
	{"bladecard cor", []string{"correct"}},
	{"bladecard c", []string{"cards", "check", "completion", "correct"}},
	{"bladecard cards --pap", []string{"--paper"}},
	{"bladecard cards --paper ", []string{"a4", "letter"}},
	{"bladecard cards --paper l", []string{"letter"}},
	{"bladecard handout --level p", []string{"press"}},
	{"bladecard build --fo", []string{"--force"}},
	{"bladecard schema s", []string{"shop"}},
	{"bladecard completion f", []string{"fish"}},
	{"bladecard check j", []string{"job one.toml", "jobs/"}},
	{"bladecard check ./j", []string{"./job one.toml", "./jobs/"}},
	{"bladecard fit l", []string{"log.csv"}},
	{"bladecard fit log.csv j", []string{"job one.toml", "jobs/"}},
	{"bladecard cards -o j", []string{"jobs/"}},
	{"bladecard handout -o j", []string{"job one.toml", "jobs/", "junk.txt"}},
	{"bladecard sweep --vary a", []string{"angle="}},
	{"bladecard new j", []string{"jobs/"}},
	{"bladecard help cor", []string{"correct"}},
	{"bladecard correct --screen ", nil},
	{"bladecard help show --", nil},
}

// bashWords are lines as bash parts them: an equals sign is a word.
var bashWords = []struct {
	words []string
	want  []string
}{
	{[]string{"cards", "--paper", "=", ""}, []string{"a4", "letter"}},
	{[]string{"cards", "--paper", "="}, []string{"a4", "letter"}},
	{[]string{"cards", "--paper", "=", "le"}, []string{"letter"}},
	{[]string{"cards", "-paper", ""}, []string{"a4", "letter"}},
	{[]string{"sweep", "--vary", "angle", "="}, nil},
	{[]string{"sweep", "--vary", "angle", "=", "0"}, nil},
	{[]string{"cards", "job one.toml", "--sin"}, []string{"--single"}},
	{[]string{"nothing", "j"}, nil},
}

// In the folder where lines are typed there are a job, a log, a folder and what is none of them.
func typingFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"job one.toml", "log.csv", "junk.txt", "jobs/x.toml"} {
		write(t, filepath.Join(dir, name), "")
	}
	return dir
}

func TestBashCompletion(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("bash is not on this machine")
	}
	path, dir := script(t, "bash"), typingFolder(t)
	if out, err := exec.Command("bash", "-n", path).CombinedOutput(); err != nil || len(out) > 0 {
		t.Fatalf("%v\n%s", err, out)
	}
	try := func(words, want []string) {
		var say strings.Builder
		say.WriteString("source " + quoted(path) + "; COMP_WORDS=(")
		for _, w := range words {
			say.WriteString(quoted(w) + " ")
		}
		say.WriteString("); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _bladecard; printf '%s\\n' \"${COMPREPLY[@]}\"")
		cmd := exec.Command("bash", "-c", say.String())
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%q: %v\n%s", words, err, out)
		}
		compareOffers(t, strings.Join(words, " "), out, want)
	}
	for _, c := range completions {
		try(strings.Split(c.line, " "), c.want)
	}
	for _, c := range bashWords {
		try(append([]string{"bladecard"}, c.words...), c.want)
	}
}

// compareOffers compares what a shell offers, a line each, with what is wanted; folders may end in a slash.
func compareOffers(t *testing.T, line string, out []byte, want []string) {
	t.Helper()
	if wrong := wrongOffers(out, want); wrong != "" {
		t.Errorf("%s: %s", line, wrong)
	}
}

// wrongOffers says what of the offers is not as wanted; empty where all is.
func wrongOffers(out []byte, want []string) string {
	var have, plain []string
	for l := range strings.Lines(string(out)) {
		l, _, _ = strings.Cut(strings.TrimRight(l, "\n"), "\t") // fish says more behind a tab
		if l = strings.TrimRight(l, "/"); l != "" {
			have = append(have, strings.ReplaceAll(l, `\ `, " "))
		}
	}
	for _, w := range want {
		plain = append(plain, strings.TrimRight(w, "/"))
	}
	slices.Sort(have)
	have = slices.Compact(have) // zsh tells of a folder by two ways
	slices.Sort(plain)
	if !slices.Equal(have, plain) {
		return fmt.Sprintf("offered are %q; %q are wanted", have, plain)
	}
	return ""
}

// The program offers every command and, behind each, every flag with what it does, every word that a
// flag accepts, and no hidden command.
func TestCompletionOffersAll(t *testing.T) {
	t.Parallel()
	first := offered(t, "")
	english := &call{}
	for _, k := range commands() {
		if _, is := first[k.name]; is == k.hidden {
			t.Errorf("%s is offered: %v", k.name, is)
		}
		if k.hidden {
			continue
		}
		dashes := offered(t, k.name, "-")
		n := 0
		english.flagsOf(k).set.VisitAll(func(f *flag.Flag) {
			n++
			if dashes[dashed(f.Name)] == "" {
				t.Errorf("%s: %s is not offered with what it does", k.name, f.Name)
			}
			for _, w := range english.flagsOf(k).words[f.Name] {
				if _, is := offered(t, k.name, dashed(f.Name), "")[w]; !is {
					t.Errorf("%s %s: %q is not offered", k.name, f.Name, w)
				}
			}
		})
		if dashes["--help"] == "" || len(dashes) != n+1 {
			t.Errorf("%s offers %d flags of %d and --help", k.name, len(dashes), n)
		}
	}
	for _, args := range [][]string{{}, {"x"}, {"0"}, {"-1"}, {"99999999999"}} {
		if code := run(append([]string{"__complete"}, args...), nil, io.Discard, io.Discard); code != exitUsage {
			t.Errorf("%q: exit code %d", args, code)
		}
	}
}

// offered asks the program what may follow: the words with what they mean.
func offered(t *testing.T, words ...string) map[string]string {
	t.Helper()
	var out bytes.Buffer
	if code := run(append([]string{"__complete", strconv.Itoa(len(words))}, words...), nil, &out, io.Discard); code != exitDone {
		t.Fatalf("%q: exit code %d", words, code)
	}
	have := map[string]string{}
	for l := range strings.Lines(out.String()) {
		word, does, _ := strings.Cut(strings.TrimSpace(l), "\t")
		have[word] = does
	}
	return have
}

// The lines that the help prints for a shell work in a home where nothing is yet.
func TestCompletionInstalls(t *testing.T) {
	t.Parallel()
	var out bytes.Buffer
	if code := run([]string{"completion", "--help"}, nil, &out, io.Discard); code != exitDone {
		t.Fatal(code)
	}
	lines, shell := map[string][]string{}, ""
	for l := range strings.Lines(out.String()) {
		switch line := strings.TrimSpace(l); {
		case slices.Contains(shells, strings.TrimSuffix(line, ":")):
			shell = strings.TrimSuffix(line, ":")
		case strings.HasPrefix(l, "    ") && shell != "":
			lines[shell] = append(lines[shell], line)
		}
	}
	for shell, file := range map[string]string{
		"bash": ".local/share/bash-completion/completions/bladecard", "zsh": ".zfunc/_bladecard", "fish": ".config/fish/completions/bladecard.fish",
	} {
		home := t.TempDir()
		cmd := exec.Command("sh", "-ec", strings.Join(lines[shell], "\n"))
		cmd.Env = append(os.Environ(), "HOME="+home)
		if said, err := cmd.CombinedOutput(); err != nil || len(said) > 0 {
			t.Errorf("%s: %v\n%s\n%q", shell, err, said, lines[shell])
			continue
		}
		got, err := os.ReadFile(filepath.Join(home, file))
		want, _ := os.ReadFile("shells/" + shell)
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s: %v", shell, err)
		}
	}
	if got := lines["powershell"]; len(got) != 2 || !strings.HasPrefix(got[0], "New-Item -ItemType Directory -Force") {
		t.Errorf("powershell: %q", got)
	}
}

// onShell runs a test with the path of a shell, and skips it where the machine lacks the shell.
func onShell(t *testing.T, name string, test func(t *testing.T, shell string)) {
	t.Run(name, func(t *testing.T) {
		path, err := exec.LookPath(name)
		if err != nil {
			t.Skipf("%s is not on this machine", name)
		}
		test(t, path)
	})
}

// The shells that are here read their scripts and complete; those that are not are held to the
// structure above.
func TestOtherShells(t *testing.T) {
	t.Parallel()
	dir := typingFolder(t)
	onShell(t, "zsh", func(t *testing.T, zsh string) {
		path := script(t, "zsh")
		if out, err := exec.Command(zsh, "-n", path).CombinedOutput(); err != nil {
			t.Errorf("%v\n%s", err, out)
		}
		driver, err := filepath.Abs("testdata/completion/offers.zsh")
		if err != nil {
			t.Fatal(err)
		}
		shellOffers(t, dir, func(wait string, lines []string) *exec.Cmd {
			return exec.Command(zsh, append([]string{"-f", driver, path, wait}, lines...)...)
		})
	})
	onShell(t, "fish", func(t *testing.T, fish string) {
		path := script(t, "fish")
		if out, err := exec.Command(fish, "-n", path).CombinedOutput(); err != nil {
			t.Errorf("%v\n%s", err, out)
		}
		shellOffers(t, dir, func(_ string, lines []string) *exec.Cmd {
			say := "source " + path
			for _, line := range lines {
				say += "; echo '> '; complete -C " + quoted(line)
			}
			return exec.Command(fish, "--no-config", "-c", say)
		})
	})
	onShell(t, "pwsh", func(t *testing.T, pwsh string) {
		path := script(t, "powershell")
		for _, c := range completions {
			if slices.ContainsFunc(c.want, func(w string) bool { return strings.ContainsAny(w, "./") }) || c.want == nil {
				continue // names of files are its own doing
			}
			line := strings.ReplaceAll(c.line, "'", "''")
			out, err := exec.Command(pwsh, "-NoProfile", "-Command", ". ([scriptblock]::Create((Get-Content -Raw "+quoted(path)+"))); (TabExpansion2 '"+line+"' "+strconv.Itoa(len(c.line))+").CompletionMatches.CompletionText").CombinedOutput()
			if err != nil {
				t.Fatalf("%s: %v\n%s", c.line, err, out)
			}
			compareOffers(t, c.line, bytes.ReplaceAll(out, []byte("\r"), nil), c.want)
		}
	})
}

// shellOffers types every line into a shell, which prints a line "> " before the offers of each. What is wrong is
// typed again, with more time for the answer: on a busy machine a shell drops the Tab when the next key is there
// before it has answered.
func shellOffers(t *testing.T, dir string, typed func(wait string, lines []string) *exec.Cmd) {
	t.Helper()
	left := completions
	var wrong []string
	for _, wait := range []string{"0.05", "0.2", "1"} {
		var lines []string
		for _, c := range left {
			lines = append(lines, c.line)
		}
		cmd := typed(wait, lines)
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		offers := strings.Split(string(out), "> \n")[1:]
		if err != nil || len(offers) != len(left) {
			t.Fatalf("%v, offers for %d lines of %d\n%s", err, len(offers), len(left), out)
		}
		again := left[:0:0]
		wrong = nil
		for i, c := range left {
			if w := wrongOffers([]byte(offers[i]), c.want); w != "" {
				again, wrong = append(again, c), append(wrong, cmd.Args[0]+": "+c.line+": "+w)
			}
		}
		if left = again; len(left) == 0 {
			return
		}
	}
	t.Error(strings.Join(wrong, "\n"))
}
