package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func writer(force bool) *Writer {
	return &Writer{Rules: Rules{Force: force}, Waiting: func(string) {}}
}

// A file that the program made is replaced, again and again, until somebody edits it.
func TestFileIsReplacedUntilEdited(t *testing.T) {
	path := filepath.Join(t.TempDir(), "deep", "a.csv")
	for i := range 3 {
		if err := writer(false).File(path, fmt.Appendf(nil, "run %d", i)); err != nil {
			t.Fatal(err)
		}
		if have := read(t, path); have != fmt.Sprint("run ", i) {
			t.Fatal(have)
		}
	}
	put(t, path, "run 2, edited")
	err := writer(false).File(path, []byte("run 3"))
	var refused *Refusal
	if !errors.As(err, &refused) || !refused.Edited || read(t, path) != "run 2, edited" {
		t.Error(err)
	}
	if err := writer(true).File(path, []byte("run 3")); err != nil || read(t, path) != "run 3" {
		t.Error(err)
	}
	// What was written over by force does not count as the program's own when it comes back.
	put(t, path, "run 2, edited")
	if err := writer(false).File(path, []byte("run 4")); !errors.As(err, &refused) {
		t.Error(err)
	}
}

// The folder can be moved with what is in it, and the file keeps its owner.
func TestRecordsMoveWithTheFolder(t *testing.T) {
	dir := t.TempDir()
	if err := writer(false).File(filepath.Join(dir, "here", "a.csv"), []byte("1")); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(filepath.Join(dir, "here"), filepath.Join(dir, "there")); err != nil {
		t.Fatal(err)
	}
	if err := writer(false).File(filepath.Join(dir, "there", "a.csv"), []byte("2")); err != nil {
		t.Error(err)
	}
}

// A process that was killed between the record and the file knows the file the next time.
func TestKilledBetweenRecordAndFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.csv")
	for _, text := range []string{"1", "2"} {
		if err := writer(false).File(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	put(t, path, "1") // the record says 2, and 1 before it
	if err := writer(false).File(path, []byte("3")); err != nil || read(t, path) != "3" {
		t.Error(err)
	}
}

// What is refused, or fails, leaves no folder and no record behind.
func TestRefusedLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "in", "a.csv"), "mine")
	before := fmt.Sprint(standing(t, dir))
	if err := writer(false).File(filepath.Join(dir, "in", "a.csv"), []byte("1")); err == nil {
		t.Error("it is written over")
	}
	if err := writer(false).Files(filepath.Join(dir, "new", "deep"), Claim{File: File{strings.Repeat("x", 300), nil}}); err == nil {
		t.Error("a name that no disk holds is written")
	}
	if err := writer(false).Files(filepath.Join(dir, "in"), Claim{File: File{"new.csv", []byte("1")}}, Claim{File: File{"a.csv", []byte("1")}}); err == nil {
		t.Error("one of two is written")
	}
	if after := fmt.Sprint(standing(t, dir)); after != before {
		t.Errorf("%s was\n%s", after, before)
	}
}

// Two jobs whose outputs have one name: the second is refused while the first is there.
func TestAnotherJob(t *testing.T) {
	dir := t.TempDir()
	a, b, out := filepath.Join(dir, "a", "j.toml"), filepath.Join(dir, "b", "j.toml"), filepath.Join(dir, "out")
	put(t, a, "a")
	put(t, b, "b")
	claim := func(job, text string) Claim { return Claim{File{"j.pdf", []byte(text)}, job} }
	if err := writer(false).Files(out, claim(a, "1")); err != nil {
		t.Fatal(err)
	}
	err := writer(false).Files(out, claim(b, "2"))
	if err == nil || !strings.Contains(err.Error(), "belongs to the job "+a) {
		t.Error(err)
	}
	same := writer(true) // one call makes both: not even by force
	if err := same.Files(out, claim(a, "3")); err != nil {
		t.Fatal(err)
	}
	if err := same.Files(out, claim(b, "3")); err == nil || !strings.Contains(err.Error(), "written") {
		t.Error(err)
	}
	if err := os.Remove(a); err != nil {
		t.Fatal(err)
	}
	if err := writer(false).Files(out, claim(b, "4")); err != nil || read(t, filepath.Join(out, "j.pdf")) != "4" {
		t.Error(err)
	}
}

// Many at once in one folder that is not there yet, half of which are refused and take away what
// they made: each of the others writes its file and its record.
func TestManyAtOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	var all sync.WaitGroup
	for i := range 40 {
		all.Go(func() {
			name := fmt.Sprint(i, ".csv")
			claims := []Claim{{File: File{name, []byte(name)}}}
			if i%2 == 1 {
				claims = append(claims, Claim{File: File{strings.Repeat("x", 300), nil}})
			}
			if err := writer(false).Files(dir, claims...); (err == nil) != (i%2 == 0) {
				t.Error(i, err)
			}
		})
	}
	all.Wait()
	for i := range 40 {
		name := fmt.Sprint(i, ".csv")
		_, err := os.Stat(filepath.Join(dir, name))
		if _, rec := os.Stat(filepath.Join(dir, ".bladecard", "made", name+".json")); (err == nil) != (i%2 == 0) || (rec == nil) != (i%2 == 0) {
			t.Error(name, err, rec)
		}
	}
	if left, err := os.ReadDir(filepath.Join(dir, ".bladecard", "new")); len(left) > 0 {
		t.Error(left, err)
	}
}
