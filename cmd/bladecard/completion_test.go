package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// script is the completion of a shell, in a file.
func script(t *testing.T, shell string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run([]string{"completion", shell}, nil, &out, &errs); code != exitDone {
		t.Fatal(code, errs.String())
	}
	path := filepath.Join(t.TempDir(), shell)
	if err := os.WriteFile(path, out.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
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
	{"bladecard fit l", []string{"log.csv"}},
	{"bladecard cards -o j", []string{"jobs/"}},
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
	path, dir := script(t, "bash"), typingFolder(t)
	for _, c := range completions {
		words := strings.Split(c.line, " ")
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
			t.Fatalf("%s: %v\n%s", c.line, err, out)
		}
		offers(t, c.line, out, c.want)
	}
}

// offers compares what a shell offers, a line each, with what is wanted; folders may end in a slash.
func offers(t *testing.T, line string, out []byte, want []string) {
	t.Helper()
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
	slices.Sort(plain)
	if !slices.Equal(have, plain) {
		t.Errorf("%s: offered are %q; %q are wanted", line, have, plain)
	}
}

// What a shell that is not here would do is held to its structure: every command, every flag and
// every closed set of values stands in its script.
func TestCompletionsHoldAll(t *testing.T) {
	for _, s := range shells {
		src, err := os.ReadFile(script(t, s.name))
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range allCompleted(commands()) {
			want := []string{k.name}
			for _, f := range k.flags {
				want = append(want, strings.TrimLeft(f.name, "-"))
				want = append(want, f.values.words...)
			}
			for _, w := range append(want, k.args.words...) {
				if !bytes.Contains(src, []byte(w)) {
					t.Errorf("%s: nothing of %q of %s", s.name, w, k.name)
				}
			}
			if len(k.flags) == 0 {
				t.Errorf("%s has no flags, not even --help", k.name)
			}
		}
	}
}

// The shells that are here read their scripts, and fish also completes.
func TestOtherShells(t *testing.T) {
	if zsh, err := exec.LookPath("zsh"); err == nil {
		if out, err := exec.Command(zsh, "-n", script(t, "zsh")).CombinedOutput(); err != nil {
			t.Errorf("zsh: %v\n%s", err, out)
		}
	}
	fish, err := exec.LookPath("fish")
	if err != nil {
		return
	}
	path, dir := script(t, "fish"), typingFolder(t)
	for _, c := range completions {
		cmd := exec.Command(fish, "--no-config", "-c", "source "+path+"; complete -C "+quoted(c.line))
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", c.line, err, out)
		}
		out = bytes.ReplaceAll(out, []byte("junk.txt\n"), nil) // fish offers files with another ending too, last
		offers(t, c.line, out, c.want)
	}
}
