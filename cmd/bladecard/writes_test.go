//go:build unix

package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
)

// The shelf that every command of the table works in.
const (
	shelfJob = "job = \"T-1\"\ntitle = \"Towpath tees\"\ncustomer = \"Weir Cafe\"\nshop = \"shop.toml\"\n[[location]]\nname = \"front\"\n[[location.screen]]\nmesh = \"156-64\"\neom = \"12 um\"\n"
	rackShop = "# the rack\n[[blade]]\nlayup = \"70\"\n[[mesh]]\nmesh = \"156-64\"\n"
	shelfLog = "date,mesh,eom (um),blade,angle (deg),wet (um)\n2026-11-10,156-64,12,70,15,45\n2026-11-11,156-64,12,70,15,47\n2026-11-12,156-64,12,70,15,44\n"
)

// writing is a command that writes, as the table of writes has it.
type writing struct {
	name   string
	args   string // with %o, the name of the folder or file that it writes to
	other  string // what makes the same file with other bytes
	target string // the file that it writes, behind %o
	named  bool   // -o is the file itself
	own    bool   // the file is the user's own, which is edited
	input  string // a file that it reads
}

var writings = []writing{
	{name: "cards -o DIR", args: "cards job.toml -o %o", other: "--single", target: "/job-cards.pdf", input: "shop.toml"},
	{name: "cards -o FILE", args: "cards job.toml -o %o.pdf", other: "--single", target: ".pdf", named: true, input: "job.toml"},
	{name: "cards --charts DIR", args: "cards job.toml -o pdfs --charts %o", other: "--lang es", target: "/job-location1-screen1-angle.svg", input: "shop.toml"},
	{name: "sheet -o DIR", args: "sheet job.toml -o %o", other: "--no-customer", target: "/job-sheet.pdf", input: "shop.toml"},
	{name: "sheet -o FILE", args: "sheet job.toml -o %o.pdf", other: "--no-customer", target: ".pdf", named: true, input: "job.toml"},
	{name: "handout -o FILE", args: "handout shop.toml --level intro -o %o.pdf", other: "--paper letter", target: ".pdf", named: true, input: "shop.toml"},
	{name: "build -o DIR", args: "build job.toml -o %o", other: "--single", target: "/job-cards.pdf", input: "shop.toml"},
	{name: "log -o FILE", args: "log job.toml -o %o.csv", target: ".csv", named: true, own: true, input: "job.toml"},
	{name: "fit --write", args: "fit log.csv %o.toml --write", target: ".toml", own: true},
	{name: "fit --chart FILE", args: "fit log.csv shop.toml --chart %o.svg", other: "--lang es", target: ".svg", named: true, input: "log.csv"},
	{name: "sweep -o FILE", args: "sweep job.toml --vary angle=0..20 -o %o.csv", other: "--vary strokes=1..2", target: ".csv", named: true, input: "shop.toml"},
	{name: "sweep --chart FILE", args: "sweep job.toml --vary angle=0..20 --chart %o.svg", other: "--lang es", target: ".svg", named: true, input: "job.toml"},
	{name: "schema -o FILE", args: "schema job -o %o.json", target: ".json", named: true},
	{name: "new DIR", args: "new %o", other: "--lang es", target: "/job.toml"},
}

// writeBench is a folder in which one cell of the table is tried.
type writeBench struct {
	t     *testing.T
	w     writing
	dir   string
	out   string            // what %o stands for
	stead map[string]string // paths in place of names of the shelf
}

func (b *writeBench) target() string { return b.out + b.w.target }

func (b *writeBench) path(name string) string { return filepath.Join(b.dir, name) }

func newWriteBench(t *testing.T, w writing) *writeBench {
	b := &writeBench{t: t, w: w, dir: t.TempDir()}
	b.out = b.path("out")
	b.stead = map[string]string{"pdfs": b.path("pdfs")}
	for name, text := range map[string]string{"job.toml": shelfJob, "shop.toml": rackShop, "log.csv": shelfLog} {
		write(t, b.path(name), text)
		b.stead[name] = b.path(name)
	}
	return b
}

// run runs the command in the folder.
func (b *writeBench) run(more ...string) (code int, said string) {
	b.t.Helper()
	var out, errs bytes.Buffer
	code = run(append(b.words(), more...), nil, &out, &errs)
	return code, errs.String()
}

// words are the words of the command line.
func (b *writeBench) words() []string {
	var words []string
	for _, word := range strings.Fields(b.w.args) {
		if path, is := b.stead[word]; is {
			word = path
		}
		words = append(words, strings.ReplaceAll(word, "%o", b.out))
	}
	return words
}

// runOther runs it so that it makes other bytes.
func (b *writeBench) runOther() {
	b.t.Helper()
	other := strings.Fields(b.w.other)
	defer func(args string) { b.w.args = args }(b.w.args)
	b.w.args = strings.Replace(b.w.args, "schema job", "schema shop", 1)
	if code, said := b.run(other...); code != exitDone {
		b.t.Fatalf("%s: code %d, %s", b.w.name, code, said)
	}
}

// picture is all that stands in a folder: kinds, rights, and checksums or where links lead.
func picture(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := e.Info()
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		all[rel] = info.Mode().String()
		switch {
		case info.Mode().IsRegular():
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			all[rel] += fmt.Sprintf(" %x, %d names", sha256.Sum256(data), info.Sys().(*syscall.Stat_t).Nlink)
		case info.Mode()&fs.ModeSymlink != 0:
			to, err := os.Readlink(path)
			all[rel] += " to " + to
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// What becomes of the file.
const (
	unchanged = "unchanged"
	replaced  = "replaced"
	changed   = "changed in place"
	writtenTo = "written"
)

// standing is what stands at the name that a command writes to.
type standing struct {
	name  string
	set   func(*writeBench) bool // puts it there; false: it is nothing to this command
	force bool
	may   []string // what may become of the file, beside nothing
}

func nothing(b *writeBench) bool { return b.w.name != "fit --write" }

func made(b *writeBench) bool {
	if !b.w.own {
		b.runOther()
	}
	return !b.w.own
}

func edited(b *writeBench) bool {
	if !made(b) {
		return false
	}
	write(b.t, b.target(), string(content(b.t, b.target()))+"; by hand\n")
	return true
}

func readOnly(b *writeBench) bool {
	if !made(b) {
		usersOwn(b)
	}
	return os.Chmod(b.target(), 0o444) == nil
}

func foreign(b *writeBench) bool {
	write(b.t, b.target(), "somebody else's\n")
	return b.w.name != "fit --write"
}

// usersOwn puts a file that the command may change in place.
func usersOwn(b *writeBench) bool {
	if b.w.own {
		write(b.t, b.target(), b.ownText())
	}
	return b.w.own
}

// ownText is a file of the user's own of the kind that the command changes.
func (b *writeBench) ownText() string {
	switch b.w.name {
	case "fit --write":
		return rackShop
	case "log -o FILE":
		return otherLog
	}
	return "somebody else's\n"
}

// atName puts a node where the command writes.
func atName(make func(b *writeBench, path string) error) func(*writeBench) bool {
	return func(b *writeBench) bool {
		if err := os.MkdirAll(filepath.Dir(b.target()), 0o777); err != nil {
			b.t.Fatal(err)
		}
		if err := make(b, b.target()); err != nil {
			b.t.Fatal(err)
		}
		return true
	}
}

// input makes the file that is written another name of one that the command reads.
func input(link func(old, new string) error) func(*writeBench) bool {
	return func(b *writeBench) bool {
		return b.w.input != "" && atName(func(_ *writeBench, path string) error { return link(b.path(b.w.input), path) })(b)
	}
}

// ownInput moves the input to the very name, and has the command read it there.
func ownInput(b *writeBench) bool {
	if !input(os.Rename)(b) {
		return false
	}
	b.stead[b.w.input] = b.target()
	if b.w.input == "shop.toml" {
		write(b.t, b.path("job.toml"), strings.Replace(shelfJob, "shop.toml", "out"+b.w.target, 1))
	}
	return true
}

// linked makes the file another name of a file of the user's own.
func linked(link func(old, new string) error) func(*writeBench) bool {
	return atName(func(b *writeBench, path string) error {
		write(b.t, b.path("real"), b.ownText())
		return link(b.path("real"), path)
	})
}

// above puts something in the place of a folder above the file.
func above(name string, make func(path string) error) func(*writeBench) bool {
	return func(b *writeBench) bool {
		if err := make(b.path(name)); err != nil {
			b.t.Fatal(err)
		}
		b.out = filepath.Join(b.path(name), "out")
		return b.w.name != "fit --write"
	}
}

// device has the command write to the device of nothing. Charts and fit want a file's ending.
func device(b *writeBench) bool {
	for _, of := range []string{"--chart", "fit", "-o FILE"} {
		if strings.Contains(b.w.name, of) && !slices.Contains([]string{"handout -o FILE", "log -o FILE", "sweep -o FILE", "schema -o FILE"}, b.w.name) {
			return false
		}
	}
	b.w.args = strings.NewReplacer("%o"+b.w.target, os.DevNull, "%o", os.DevNull).Replace(b.w.args)
	return true
}

func socket(_ *writeBench, path string) error {
	short, err := os.MkdirTemp("", "s")
	if err != nil {
		return err
	}
	defer os.RemoveAll(short)
	l, err := net.Listen("unix", filepath.Join(short, "s"))
	if err != nil {
		return err
	}
	l.(*net.UnixListener).SetUnlinkOnClose(false)
	defer l.Close()
	return os.Rename(filepath.Join(short, "s"), path)
}

var standings = []standing{
	{name: "nothing", set: nothing, may: []string{writtenTo}},
	{name: "a file that the program made", set: made, may: []string{replaced}},
	{name: "the same, edited since", set: edited},
	{name: "the same, with --force", set: edited, force: true, may: []string{replaced}},
	{name: "the same, read-only", set: readOnly},
	{name: "somebody else's file", set: foreign},
	{name: "the same, with --force", set: foreign, force: true, may: []string{replaced}},
	{name: "the user's shop or log", set: usersOwn, may: []string{changed}},
	{name: "a file that the command reads, with --force", set: ownInput, force: true},
	{name: "a link to such a file, with --force", set: input(os.Symlink), force: true},
	{name: "a hard link of such a file, with --force", set: input(os.Link), force: true},
	{name: "a link to a file", set: linked(os.Symlink), may: []string{changed}},
	{name: "a hard link of a file", set: linked(os.Link)},
	{name: "a link to nothing, with --force", set: atName(func(b *writeBench, path string) error { return os.Symlink(b.path("gone"), path) }), force: true},
	{name: "a folder, with --force", set: func(b *writeBench) bool {
		if b.w.name == "cards -o FILE" || b.w.name == "sheet -o FILE" {
			return false // it is -o DIR then
		}
		return atName(func(_ *writeBench, path string) error { return os.Mkdir(path, 0o777) })(b)
	}, force: true},
	{name: "a pipe, with --force", set: atName(func(_ *writeBench, path string) error { return syscall.Mkfifo(path, 0o666) }), force: true},
	{name: "a socket, with --force", set: atName(socket), force: true},
	{name: "a device, with --force", set: device, force: true},
	{name: "a file for its folder, with --force", set: above("note.txt", func(path string) error { return os.WriteFile(path, nil, 0o600) }), force: true},
	{name: "a link to nothing for its folder, with --force", set: above("link", func(path string) error { return os.Symlink("gone", path) }), force: true},
}

// otherLog is a press log with a row of another job.
const otherLog = "job;location;screen;mesh;eom (um);blade;angle (deg);wet (um)\r\nT-0;back;1;156-64;12,5;70;15;45,2"

// row is what came of a cell of the table.
type row struct{ standing, command, said, bytes string }

// TestWrites tries every command on everything that can stand where it writes. Nothing but what may
// be written changes: neither a byte nor a kind nor a right, nor is anything left beside it. What is
// said, and the exit code, is a table that people can read.
func TestWrites(t *testing.T) {
	t.Parallel()
	rows := make([][]row, len(standings))
	var all sync.WaitGroup
	room := make(chan bool, 4)
	for i, s := range standings {
		rows[i] = make([]row, len(writings))
		for j, w := range writings {
			if s.force && w.own && s.name == "the same, with --force" {
				continue // the command takes no --force
			}
			all.Go(func() {
				room <- true
				defer func() { <-room }()
				rows[i][j] = s.try(newWriteBench(t, w))
			})
		}
	}
	all.Wait()
	if t.Failed() {
		return
	}
	goldenTable(t, rows)
}

// try runs the command and compares what was there with what is there.
func (s standing) try(b *writeBench) row {
	t := b.t
	if !s.set(b) {
		return row{}
	}
	before := picture(t, b.dir)
	var more []string
	if s.force && !b.w.own {
		more = append(more, "--force")
	}
	code, said := b.run(more...)
	after := picture(t, b.dir)
	target, err := filepath.Rel(b.dir, b.target())
	if err != nil {
		t.Error(err)
	}
	if before[target] != "" && strings.HasPrefix(before[target], "L") { // a link that may be followed
		target = "real"
	}
	became := unchanged
	was, is := before[target], after[target]
	switch {
	case was == "" && is != "":
		became = writtenTo
	case was != is && b.w.own:
		became = changed
	case was != is:
		became = replaced
	}
	at := fmt.Sprintf("%s, %s", b.w.name, s.name)
	if became != unchanged && !slices.Contains(s.may, became) {
		t.Errorf("%s: the file was %s\n%s", at, became, said)
	}
	if (became == unchanged) != (code != exitDone) {
		t.Errorf("%s: the file is %s, and the code is %d\n%s", at, became, code, said)
	}
	for name, was := range before {
		if is := after[name]; is != was && name != target && (code != exitDone || !keeps(name, b)) {
			t.Errorf("%s: %s was %s and is %s\n%s", at, name, was, is, said)
		}
	}
	for name, is := range after {
		if before[name] == "" && name != target && (code != exitDone || !keeps(name, b)) {
			t.Errorf("%s: %s is new: %s\n%s", at, name, is, said)
		}
	}
	return row{s.name, b.w.name, tidied(b, code, said), became}
}

// keeps tells whether a command that succeeds may also write a file: its record, its other outputs.
func keeps(name string, b *writeBench) bool {
	return b.w.name != "fit --write" && (strings.Contains(name, ".bladecard") || strings.HasPrefix(name, "out") || strings.HasPrefix(name, "pdfs"))
}

var inTemp = regexp.MustCompile(`[^ ]*/TestWrites[^/ ]*/[0-9]+/`)

// tidied is what a command said as the table has it: the first error, without the folder, with the
// exit code.
func tidied(b *writeBench, code int, said string) string {
	text := ""
	for line := range strings.Lines(said) {
		if rest, is := strings.CutPrefix(line, "error: "); is || text == "" && code != exitDone && strings.Contains(line, ": ") && !strings.HasPrefix(line, "shop: ") {
			text = strings.TrimSpace(rest)
			if is {
				break
			}
		}
	}
	text = strings.TrimPrefix(text, b.stead["job.toml"]+": ")
	text = strings.ReplaceAll(text, b.target(), "FILE")
	text = inTemp.ReplaceAllString(text, "")
	return strings.TrimSpace(fmt.Sprintf("%d %s", code, text))
}

// goldenTable compares the rows with the table in testdata. Commands of which the same is said share
// a line.
func goldenTable(t *testing.T, rows [][]row) {
	t.Helper()
	var b strings.Builder
	b.WriteString("# What stands where a command writes, and what comes of it\n\nWritten by `go test ./cmd/bladecard -run TestWrites -update`, which tries every cell and compares checksums, kinds and rights\nof all files before and after. Where it says --force, the commands that take it were given it; log and fit --write change a\nfile of the user's own, and take none. Code 0: done; 3: could not be written. Behind each refusal comes a hint of what to do.\n\n| what stands there | command | code and message | the file is |\n| --- | --- | --- | --- |\n")
	for i, s := range standings {
		var order []string
		commands := map[string][]string{}
		for _, r := range rows[i] {
			if r.command == "" {
				continue
			}
			key := r.said + " | " + r.bytes
			if commands[key] == nil {
				order = append(order, key)
			}
			commands[key] = append(commands[key], r.command)
		}
		name := s.name
		if len(order) == 0 {
			t.Errorf("%s: is tried by no command", name)
		}
		for _, key := range order {
			fmt.Fprintf(&b, "| %s | %s | %s |\n", name, strings.Join(commands[key], ", "), key)
			name = ""
		}
	}
	b.WriteString("| a full disk (`TestWritesOnAFullDisk`) | all | 3 PATH: no space left on device | unchanged |\n")
	b.WriteString("| standard output on a full disk (`TestStandardOutputIsFull`) | all that print | 3 standard output: no space left on device; what was printed is not whole |  |\n")
	golden := filepath.Join("testdata", "writes.md")
	if *update {
		write(t, golden, b.String())
		return
	}
	want := content(t, golden)
	if b.String() != string(want) {
		t.Errorf("the table differs from %s: %s", golden, firstDifference(b.String(), string(want)))
	}
}
