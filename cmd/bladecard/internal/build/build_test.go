package build

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"bladecard/cmd/bladecard/internal/disk"
	"bladecard/cmd/bladecard/internal/exit"
)

// echo makes a document of a job file's own text; a text with "bad" is an error.
type echo struct{}

func (echo) Make(path string, src []byte, said io.Writer) (Made, int) {
	if bytes.Contains(src, []byte("bad")) {
		fmt.Fprintf(said, "%s: bad\n", path)
		return Made{}, exit.Job
	}
	return Made{Documents: [][]byte{append([]byte("cards of "), src...)}}, exit.Done
}

func (echo) Shop(string) Shop { return Shop{} }

func (echo) LogSum(string, string, string) string { return "" }

func (echo) Inputs(string) []string { return nil }

// built builds a folder of jobs into another.
func built(t *testing.T, shelf, out string, change ...func(*Options)) (code int, said string) {
	t.Helper()
	var errs bytes.Buffer
	o := Options{Dir: out, Suffixes: []string{"-cards.pdf"}, MaxImage: 1 << 20, Stdout: io.Discard, Stderr: &errs, NewMaker: func() Maker { return echo{} }}
	for _, f := range change {
		f(&o)
	}
	code = Run(context.Background(), []string{shelf}, 4, o)
	return code, errs.String()
}

func forced(o *Options) { o.Force = true }

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// text is what a file holds; empty where there is none.
func text(path string) string {
	data, _ := os.ReadFile(path)
	return string(data)
}

// Two jobs that differ in capitals only have outputs of one name on some disks. However often they
// are built, the first in the order of names is made and the second is an error that names both.
func TestNamesThatDifferInCapitals(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the disk may not tell capitals apart")
	}
	for _, pair := range [][2]string{{"a.TOML", "a.toml"}, {"A.toml", "a.toml"}} {
		dir := t.TempDir()
		put(t, filepath.Join(dir, "shelf", pair[0]), "title = \"first\"")
		put(t, filepath.Join(dir, "shelf", "a.m.toml"), "title = \"between\"")
		put(t, filepath.Join(dir, "shelf", pair[1]), "title = \"second\"")
		for i := range 60 {
			out := filepath.Join(dir, fmt.Sprint("out", i%50)) // the last ten again
			code, said := built(t, filepath.Join(dir, "shelf"), out)
			first, second := filepath.Join(dir, "shelf", pair[0]), filepath.Join(dir, "shelf", pair[1])
			name := strings.TrimSuffix(pair[1], ".toml") + "-cards.pdf"
			made := strings.TrimSuffix(pair[0], filepath.Ext(pair[0])) + "-cards.pdf"
			if want := fmt.Sprintf("error: %s and %s would both be written to %s", first, second, name); code != exit.File || strings.Count(said, want) != 1 || strings.Count(said, "error:") != 1 {
				t.Fatalf("build %d: code %d, %s", i, code, said)
			}
			if have := text(filepath.Join(out, made)); have != "cards of title = \"first\"" {
				t.Fatalf("build %d: %q", i, have)
			}
		}
	}
}

// A shop file has no outputs, so that each folder may have one of the same name.
func TestShopsOfOneName(t *testing.T) {
	dir := t.TempDir()
	for _, folder := range []string{"a", "b"} {
		put(t, filepath.Join(dir, folder, "shop.toml"), "units = \"metric\"\n[[blade]]\nlayup = \"70\"\n")
		put(t, filepath.Join(dir, folder, folder+".toml"), "title = \"t\"")
	}
	var errs bytes.Buffer
	o := Options{Dir: filepath.Join(dir, "out"), Suffixes: []string{"-cards.pdf"}, Stdout: io.Discard, Stderr: &errs, NewMaker: func() Maker { return echo{} }}
	if code := Run(context.Background(), []string{filepath.Join(dir, "a"), filepath.Join(dir, "b")}, 2, o); code != exit.Done || !strings.Contains(errs.String(), "2 jobs: 2 made") {
		t.Errorf("code %d: %s", code, errs.String())
	}
}

// A name that is not UTF-8 is refused at once, and named so that a terminal can show it.
func TestNameThatIsNoUTF8(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the disk takes no such names")
	}
	dir := t.TempDir()
	put(t, filepath.Join(dir, "shelf", "caf\xe9.toml"), "title = \"t\"")
	put(t, filepath.Join(dir, "shelf", "good.toml"), "title = \"t\"")
	for range 2 {
		code, said := built(t, filepath.Join(dir, "shelf"), filepath.Join(dir, "out"))
		if code != exit.File || !strings.Contains(said, `caf\xe9.toml": has a name that is not UTF-8; give it another`) || strings.Contains(said, "\xe9") {
			t.Errorf("code %d: %s", code, said)
		}
	}
	if code, said := built(t, filepath.Join(dir, "shelf", "caf\xe9.toml"), filepath.Join(dir, "out")); code != exit.File || strings.Contains(said, "\xe9") {
		t.Errorf("code %d: %s", code, said)
	}
	if have := text(filepath.Join(dir, "out", "good-cards.pdf")); have == "" {
		t.Error("the good one is not made")
	}
	// Nor can a record tell of a folder without a name in UTF-8.
	put(t, filepath.Join(dir, "out\xe9", "shelf", "a.toml"), "title = \"t\"")
	if code, said := built(t, filepath.Join(dir, "out\xe9", "shelf"), filepath.Join(dir, "out2")); code != exit.File || strings.Contains(said, "\xe9") {
		t.Errorf("code %d: %s", code, said)
	}
}

// What stands in place of the build's own records is told; no output is lost, and none is taken for
// made that is not there.
func TestSpoiledRecords(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(t *testing.T, out string)
		code  int
		want  string // is said
		made  bool   // the job's outputs stand, as made
	}{
		{"a record of no outputs", func(t *testing.T, out string) {
			record := filepath.Join(out, ".bladecard", "jobs", "a.json")
			data := text(record)
			i, j := strings.Index(data, "["), strings.LastIndex(data, "]")
			put(t, record, data[:i]+"[]"+data[j+1:])
			os.Remove(filepath.Join(out, "a-cards.pdf"))
		}, exit.Done, "1 made", true},
		{"a folder for a record", func(t *testing.T, out string) {
			record := filepath.Join(out, ".bladecard", "jobs", "a.json")
			os.Remove(record)
			put(t, filepath.Join(record, "in it"), "")
		}, exit.File, "a.json is a folder where bladecard keeps a record; nothing of this job is written\nhint: remove it", true},
		{"a record of 300 MB", func(t *testing.T, out string) {
			if err := os.Truncate(filepath.Join(out, ".bladecard", "jobs", "a.json"), 300<<20); err != nil {
				t.Fatal(err)
			}
		}, exit.File, "a.json has 314572800 bytes; a record has at most 1048576", true},
		{"a record of words", func(t *testing.T, out string) {
			put(t, filepath.Join(out, ".bladecard", "jobs", "a.json"), "words")
		}, exit.File, "a.json is not a record that this version of bladecard reads", true},
		{"a link out for a record", func(t *testing.T, out string) {
			record := filepath.Join(out, ".bladecard", "jobs", "a.json")
			os.Remove(record)
			link(t, filepath.Join(filepath.Dir(out), "far"), record)
		}, exit.File, "a.json is a link where bladecard keeps a record", true},
		{"a dead link out for the lock", func(t *testing.T, out string) {
			lock := filepath.Join(out, ".bladecard", "lock")
			os.Remove(lock)
			link(t, filepath.Join(filepath.Dir(out), "far"), lock)
		}, exit.File, "lock is a link where bladecard keeps its lock", true},
		{"a folder for the lock", func(t *testing.T, out string) {
			lock := filepath.Join(out, ".bladecard", "lock")
			os.Remove(lock)
			put(t, filepath.Join(lock, "in it"), "")
		}, exit.File, "lock is a folder where bladecard keeps its lock", true},
		{"a file for the records' folder", func(t *testing.T, out string) {
			os.RemoveAll(filepath.Join(out, ".bladecard"))
			put(t, filepath.Join(out, ".bladecard"), "mine")
		}, exit.File, ".bladecard is a file where bladecard keeps its records\nhint: move it away", true},
		{"no record at all", func(t *testing.T, out string) {
			os.RemoveAll(filepath.Join(out, ".bladecard"))
		}, exit.Done, "1 made", true}, // the same bytes stand there
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
			put(t, filepath.Join(shelf, "a.toml"), "title = \"t\"")
			if code, said := built(t, shelf, out); code != exit.Done {
				t.Fatal(said)
			}
			c.spoil(t, out)
			code, said := built(t, shelf, out)
			if code != c.code || !strings.Contains(said, c.want) {
				t.Errorf("code %d: %s", code, said)
			}
			if have := text(filepath.Join(out, "a-cards.pdf")); (have == "cards of title = \"t\"") != c.made {
				t.Errorf("the output is %q", have)
			}
			if _, err := os.Lstat(filepath.Join(dir, "far")); err == nil {
				t.Error("something was written outside")
			}
		})
	}
}

func link(t *testing.T, to, at string) {
	t.Helper()
	if err := os.Symlink(to, at); err != nil {
		t.Skip(err)
	}
}

// A build that makes nothing leaves no output folder behind, nor anything in one that was there.
func TestFailingBuildMakesNoFolder(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "shelf", "bad.toml"), "bad")
	put(t, filepath.Join(dir, "empty", "note.txt"), "")
	put(t, filepath.Join(dir, "there", "mine.txt"), "mine")
	for _, out := range []string{"out", "deep/er/out", "there"} {
		for _, shelf := range []string{"shelf", "empty", "nowhere"} {
			if code, said := built(t, filepath.Join(dir, shelf), filepath.Join(dir, out)); code == exit.Done {
				t.Errorf("%s: %s", out, said)
			}
		}
	}
	for _, gone := range []string{"out", "deep", "there/.bladecard"} {
		if _, err := os.Lstat(filepath.Join(dir, gone)); err == nil {
			t.Errorf("%s is there", gone)
		}
	}
}

// Another command of the program may have written an output: it is made again, not taken for
// edited.
func TestOutputOfAnotherCommand(t *testing.T) {
	dir := t.TempDir()
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	job := filepath.Join(shelf, "deep", "a.toml")
	put(t, job, "title = \"t\"")
	single := disk.Writer{Waiting: func(string) {}}
	claim := disk.Claim{File: disk.File{Name: "a-cards.pdf", Data: []byte("larger cards")}, Job: job}
	for range 2 {
		if code, said := built(t, shelf, out); code != exit.Done || !strings.Contains(said, "1 made") {
			t.Fatal(said)
		}
		if err := single.Files(filepath.Join(out, "deep"), claim); err != nil {
			t.Fatal(err)
		}
		if have := text(filepath.Join(out, "deep", "a-cards.pdf")); have != "larger cards" {
			t.Fatal(have)
		}
		single = disk.Writer{Waiting: func(string) {}}
	}
}

// By force a build writes over what it did not make, but not over what it reads.
func TestForceSparesInputs(t *testing.T) {
	dir := t.TempDir()
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	put(t, filepath.Join(shelf, "a.toml"), "title = \"a\"")
	put(t, filepath.Join(shelf, "b.toml"), "title = \"b\"")
	put(t, filepath.Join(out, "a-cards.pdf"), "foreign")
	if err := os.Link(filepath.Join(shelf, "b.toml"), filepath.Join(out, "b-cards.pdf")); err != nil {
		t.Skip(err)
	}
	code, said := built(t, shelf, out, forced)
	if code != exit.File || !strings.Contains(said, "b-cards.pdf is the same file as "+filepath.Join(shelf, "b.toml")) {
		t.Errorf("code %d: %s", code, said)
	}
	if text(filepath.Join(out, "a-cards.pdf")) != "cards of title = \"a\"" || text(filepath.Join(shelf, "b.toml")) != "title = \"b\"" || text(filepath.Join(out, "b-cards.pdf")) != "title = \"b\"" {
		t.Error("a was not written over, or b was")
	}
}

// A job, or the folder of the records, that vanishes while the build is at work is an error of its
// own, and nothing half-written stays.
func TestVanished(t *testing.T) {
	dir := t.TempDir()
	to := filepath.Join(dir, "out")
	out, err := disk.Open(to, func() {})
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	path := filepath.Join(dir, "a.toml")
	b, err := newBuild(Options{Dir: to, Suffixes: []string{"-cards.pdf"}}, out, []string{path})
	if err != nil {
		t.Fatal(err)
	}
	w := &worker{build: b, maker: echo{}}
	s := sourceAt(path, "a.toml")
	if r := w.job(s); r.code != exit.File || !strings.Contains(string(r.said), "a.toml: no such file") {
		t.Errorf("%+v, %s", r, r.said)
	}
	put(t, path, "title = \"t\"")
	if err := os.RemoveAll(filepath.Join(to, ".bladecard")); err != nil {
		t.Fatal(err)
	}
	if r := w.job(s); r.code != exit.File || text(filepath.Join(to, "a-cards.pdf")) != "" {
		t.Errorf("%+v, %s", r, r.said)
	}
}
