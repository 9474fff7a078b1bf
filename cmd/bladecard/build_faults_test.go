package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"bladecard/cmd/bladecard/internal/exit"
	"bladecard/samples/bench"
)

// wordsIn are the files of a folder.
func wordsIn(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for name, data := range outputsIn(t, dir) {
		out[name] = string(data)
	}
	return out
}

const leastJob = "title = \"Towpath tees\"\n[[location]]\n[[location.screen]]\n"

// built runs a build in this process.
func built(args ...string) (code int, said string) {
	var out, errs bytes.Buffer
	code = run(append([]string{"build"}, args...), nil, &out, &errs)
	return code, errs.String()
}

// A link in the output folder is not followed: neither a file's, whose target would be written
// over, nor a folder's, which would lead out.
func TestBuildFollowsNoLinks(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	shelf, out, far := filepath.Join(dir, "shelf"), filepath.Join(dir, "out"), filepath.Join(dir, "far")
	write(t, filepath.Join(shelf, "a.toml"), leastJob)
	write(t, filepath.Join(shelf, "sub", "b.toml"), leastJob)
	write(t, filepath.Join(far, "mine.txt"), "mine")
	for from, to := range map[string]string{filepath.Join(out, "a-cards.pdf"): filepath.Join(far, "mine.txt"), filepath.Join(out, "sub"): far} {
		if err := os.MkdirAll(out, 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(to, from); err != nil {
			t.Fatal(err)
		}
	}
	code, said := built(shelf, "-o", out)
	if code != exitFile || !strings.Contains(said, "a-cards.pdf is a link to "+filepath.Join(far, "mine.txt")+"; nothing of this job is written") || !strings.Contains(said, "b-cards.pdf: a link leads out of the folder") {
		t.Errorf("code %d: %s", code, said)
	}
	code, said = built(shelf, "-o", out, "--force") // not even then
	if code != exitFile || !strings.Contains(said, "b-cards.pdf: a link leads out of the folder") {
		t.Errorf("code %d: %s", code, said)
	}
	if have := wordsIn(t, far); len(have) != 1 || have["mine.txt"] != "mine" {
		t.Errorf("outside of the output folder there is now %v", have)
	}
	if to, err := os.Readlink(filepath.Join(out, "a-cards.pdf")); err != nil || to != filepath.Join(far, "mine.txt") {
		t.Errorf("the link leads to %s, %v", to, err)
	}
}

// A pipe has no end, a folder no bytes, a link may lead nowhere: errors, and the other jobs are made.
func TestBuildReadsFilesOnly(t *testing.T) {
	t.Parallel()
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no pipes and devices among its files")
	}
	dir := t.TempDir()
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	write(t, filepath.Join(shelf, "good.toml"), leastJob)
	write(t, filepath.Join(shelf, "pipeshop.toml"), "shop = \"shop.pipe\"\n"+leastJob)
	write(t, filepath.Join(shelf, "devshop.toml"), "shop = \"/dev/zero\"\n"+leastJob)
	write(t, filepath.Join(shelf, "dirshop.toml"), "shop = \".\"\n"+leastJob)
	write(t, filepath.Join(shelf, "selfshop.toml"), "shop = \"selfshop.toml\"\n"+leastJob)
	write(t, filepath.Join(shelf, "devlogo.toml"), "shop = \"logoshop.toml\"\n"+leastJob)
	write(t, filepath.Join(shelf, "logoshop.toml"), "logo = \"/dev/zero\"\nunits = \"metric\"\n")
	for _, pipe := range []string{"pipe.toml", "shop.pipe"} {
		if err := exec.Command("mkfifo", filepath.Join(shelf, pipe)).Run(); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink("gone.toml", filepath.Join(shelf, "link.toml")); err != nil {
		t.Fatal(err)
	}
	code, said := built(shelf, "-o", out)
	for _, want := range []string{
		"pipe.toml: is a pipe or a device", "shop.pipe: is a pipe or a device", "/dev/zero: is a pipe or a device", "shelf: is a folder",
		"shop: names the job file itself; a shop file is accepted", "link.toml: no such file", "logo: /dev/zero: is a pipe or a device",
		"8 jobs: 1 made, 0 unchanged, 7 failed",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("nothing says %q:\n%s", want, said)
		}
	}
	if have := outputsIn(t, out); code != exitFile || len(have) != 2 {
		t.Errorf("code %d, %d outputs", code, len(have))
	}
}

// Nothing that a job says, and no name of a file, leads out of the output folder.
func TestBuildNames(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "in", "here", "out")
	tricky := "job = \"../../../away\"\ncustomer = \"C:/away\"\ntitle = \"/away\"\n[[location]]\nname = \"../../away\"\n[[location.screen]]\ncolor = \"..\"\n"
	names := []string{"plain.toml", "two words.toml", "CON.toml", "nul.x.toml", "a..toml", "-o.toml", "漢字.TOML", "%2e%2e%2faway.toml"}
	for i, name := range names {
		write(t, filepath.Join(shelf, name), strings.Replace(tricky, "away", fmt.Sprint("away", i), 1))
	}
	code, said := built(shelf, "-o", out)
	if code != exitDone || !strings.Contains(said, fmt.Sprintf("%d jobs: %d made", len(names), len(names))) {
		t.Errorf("code %d: %s", code, said)
	}
	if n := len(outputsIn(t, out)); n != 2*len(names) {
		t.Errorf("%d outputs; %d are wanted", n, 2*len(names))
	}
	for at, want := range map[string]int{dir: 2, filepath.Join(dir, "in"): 1, filepath.Join(dir, "in", "here"): 1} {
		if list, err := os.ReadDir(at); err != nil || len(list) != want {
			t.Errorf("%s holds %v; %d are wanted", at, list, want)
		}
	}
	if runtime.GOOS == "windows" {
		return // no such names there
	}
	write(t, filepath.Join(shelf, "two\nlines.toml"), leastJob)
	if code, said := built(shelf, "-o", out); code != exitFile || !strings.Contains(said, `two\nlines.toml": has a control character in its name`) || strings.Count(said, "\n") != 2 {
		t.Errorf("code %d: %s", code, said)
	}
}

// An output folder that cannot be made, or not written to, leaves everything as it was. Root may
// write anywhere but where nobody may: /proc.
func TestBuildWhereNobodyMayWrite(t *testing.T) {
	t.Parallel()
	if runtime.GOOS != "linux" {
		t.Skip("only Linux has a folder that even root may not write to")
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "a.toml"), leastJob)
	for out, want := range map[string]string{"/proc/out": "error: /proc/out: ", "/proc": "error: /proc: ", filepath.Join(dir, "a.toml", "out"): "is a file, not a folder"} {
		if code, said := built(filepath.Join(dir, "a.toml"), "-o", out); code != exitFile || !strings.Contains(said, want) {
			t.Errorf("%s: code %d, %s", out, code, said)
		}
	}
}

// Two builds at once in one folder: one waits for the other, and both are right.
func TestBuildsAtOnce(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	exe := program(t, dir)
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	if err := bench.Folder(shelf, 16, 3, ""); err != nil {
		t.Fatal(err)
	}
	finished(t, exe, shelf, filepath.Join(dir, "want"))
	var cmds []*exec.Cmd
	var said [3]bytes.Buffer
	for i := range said {
		cmd := exec.Command(exe, "build", shelf, "-o", out)
		cmd.Stderr = &said[i]
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		cmds = append(cmds, cmd)
	}
	made := 0
	for i, cmd := range cmds {
		if err := cmd.Wait(); err != nil {
			t.Errorf("%v: %s", err, said[i].String())
		}
		made += strings.Count(said[i].String(), "16 jobs: 16 made, 0 unchanged, 0 failed")
	}
	if made != 1 {
		t.Errorf("%d builds made the jobs; one is wanted:\n%s\n%s\n%s", made, said[0].String(), said[1].String(), said[2].String())
	}
	want, have := outputsIn(t, filepath.Join(dir, "want")), outputsIn(t, out)
	for name := range want {
		if !bytes.Equal(want[name], have[name]) {
			t.Errorf("%s is not right", name)
		}
	}
}

// Ctrl-C ends a build at once with its own exit code, nothing half-written, and the next build
// goes on from there.
func TestBuildStopped(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a process on Windows cannot be sent Ctrl-C alone")
	}
	dir := t.TempDir()
	exe := program(t, dir)
	shelf, out := filepath.Join(dir, "shelf"), filepath.Join(dir, "out")
	if err := bench.Folder(shelf, 300, 3, ""); err != nil {
		t.Fatal(err)
	}
	var said bytes.Buffer
	cmd := exec.Command(exe, "build", shelf, "-o", out)
	cmd.Stderr = &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for range 200 { // until it is at work
		if len(outputsIn(t, out)) > 3 {
			break
		}
		time.Sleep(20 * time.Millisecond)
	}
	stop := time.Now()
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	err := cmd.Wait()
	took := time.Since(stop)
	var ended *exec.ExitError
	if !errors.As(err, &ended) || ended.ExitCode() != exit.Stopped || !strings.Contains(said.String(), "stopped; ") {
		t.Errorf("%v: %s", err, said.String())
	}
	if took > time.Second {
		t.Errorf("it took %v to stop", took)
	}
	half := outputsIn(t, out)
	if len(half) == 0 || len(half) == 600 {
		t.Fatalf("%d outputs when stopped", len(half))
	}
	left, err := os.ReadDir(filepath.Join(out, ".bladecard", "new"))
	if err != nil || len(left) > 0 {
		t.Errorf("%d temporary files are left, %v", len(left), err)
	}
	// What was written before is whole: a single job's command writes the same.
	for name, have := range half {
		if !strings.HasSuffix(name, "-cards.pdf") {
			continue
		}
		path := strings.TrimSuffix(name, "-cards.pdf") + ".toml"
		if code := run([]string{"cards", filepath.Join(shelf, path), "-o", filepath.Join(dir, "single")}, nil, new(bytes.Buffer), new(bytes.Buffer)); code != exitDone {
			t.Fatal(code)
		}
		want, err := os.ReadFile(filepath.Join(dir, "single", filepath.Base(name)))
		if err != nil || !bytes.Equal(have, want) {
			t.Errorf("%s is not whole", name)
		}
	}
}
