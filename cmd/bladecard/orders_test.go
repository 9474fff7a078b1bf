package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// thirtyRows are orders of ten jobs in thirty rows below the template, five of the jobs with a fault each.
func thirtyRows() string {
	var b strings.Builder
	b.WriteString("template;like;job;title;quantity;due;garment.fibre;garment.shade;location.name;location.width (cm);location.height (cm);screen.color;screen.ink;screen.use;screen.mesh;screen.coverage (%)\n")
	b.WriteString("dark tee;;;;;;cotton;dark;full front;28;34;;plastisol;solid;156-64;\n")
	for i := 1; i <= 10; i++ {
		quantity, mesh, ink, width, fibre := fmt.Sprint(20*i), "", "", "", ""
		switch i {
		case 2:
			mesh = "156x64"
		case 4:
			ink = "plastisoup"
		case 5:
			quantity = "none"
		case 7:
			width = "2,8 mile"
		case 9:
			fibre = "wool"
		}
		fmt.Fprintf(&b, ";dark tee;K-%02d;Kelp club %d;%s;2027-05-%02d;%s;;;%s;;white base;plastisol white;underbase;;30\n", i, i, quantity, i, fibre, width)
		fmt.Fprintf(&b, ";dark tee;;;;;%s;;;%s;;kelp green;%s;;%s;20,5\n", fibre, width, ink, mesh)
		fmt.Fprintf(&b, ";dark tee;;;;;%s;;;%s;;sand;;;;8\n", fibre, width)
	}
	return b.String()
}

// TestOrdersIn: orders of thirty rows with five faults become the job files that have none, which check passes; each
// fault is told at its cell; a file that was edited since is left as it is; show gives the plans back as a table.
func TestOrdersIn(t *testing.T) {
	dir := t.TempDir()
	from := filepath.Join(dir, "orders.csv")
	write(t, from, thirtyRows())
	ask := func(args ...string) (code int, out, errs string) {
		var o, e bytes.Buffer
		code = run(args, nil, &o, &e)
		return code, o.String(), e.String()
	}
	code, _, errs := ask("new", dir, "--from", from)
	if code != exitJob {
		t.Errorf("exit code %d", code)
	}
	for _, want := range []string{
		"orders.csv:7:", "screen.mesh: \"156x64\" is not a mesh",
		"orders.csv:13:", "screen.ink: the ink class \"plastisoup\" is not known; did you mean",
		"orders.csv:15:", "quantity: ",
		"orders.csv:21:", "location.width: ",
		"orders.csv:27:", "garment.fibre: \"wool\" is not known",
		"5 of 10 orders written",
	} {
		if !strings.Contains(errs, want) {
			t.Errorf("new does not say %q:\n%s", want, errs)
		}
	}
	jobs, err := filepath.Glob(filepath.Join(dir, "k-*.toml"))
	if err != nil || len(jobs) != 5 {
		t.Fatalf("%d job files, %v", len(jobs), err)
	}
	if code, _, errs := ask(append([]string{"check"}, jobs...)...); code != exitDone {
		t.Errorf("check: exit code %d: %s", code, errs)
	}
	edited := append([]byte("# ours\n"), content(t, jobs[0])...)
	write(t, jobs[0], string(edited))
	if code, _, errs := ask("new", dir, "--from", from); code != exitFile || !strings.Contains(errs, filepath.Base(jobs[0])) || !strings.Contains(errs, "4 of 10 orders written") {
		t.Errorf("the second time: exit code %d: %s", code, errs)
	}
	if got := content(t, jobs[0]); !bytes.Equal(got, edited) {
		t.Errorf("the edited file is now\n%s", got)
	}
	code, table, errs := ask(append([]string{"show", "--csv"}, jobs...)...)
	if code != exitDone {
		t.Fatalf("show: exit code %d: %s", code, errs)
	}
	r := csv.NewReader(strings.NewReader(table))
	r.Comma = ';'
	rows, err := r.ReadAll()
	if err != nil || len(rows) != 1+3*len(jobs) {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	if rows[1][0] != "K-01" || rows[1][8] != "white base" || rows[3][8] != "sand" {
		t.Errorf("the rows begin with %v", rows[1:4])
	}
}

// TestOrdersRefuse: what holds no orders is an error that says what would be accepted.
func TestOrdersRefuse(t *testing.T) {
	dir := t.TempDir()
	for name, c := range map[string]struct{ text, want string }{
		"empty":           {"", "a header with the keys of a job file"},
		"header only":     {"job;title\n", "rows below the header are accepted"},
		"two of one name": {"job;title;screen.ink\nA 1;x;plastisol\nA-1;y;plastisol\n", "both give the file a-1.toml"},
	} {
		path := filepath.Join(dir, "o.csv")
		write(t, path, c.text)
		var out, errs bytes.Buffer
		if code := run([]string{"new", filepath.Join(dir, "to"), "--from", path}, nil, &out, &errs); code != exitJob || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%s: exit code %d: %s; %q is wanted", name, code, &errs, c.want)
		}
	}
}
