package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestWrongInputIsToldInTheShopsLanguage: whatever is wrong with a command line or with the files that it names, a
// Spanish shop is told in Spanish, without --lang.
func TestWrongInputIsToldInTheShopsLanguage(t *testing.T) {
	dir := t.TempDir()
	const screen = "[[location]]\nname = \"frente\"\n[[location.screen]]\n"
	for name, text := range map[string]string{
		"shop.toml":       "name = \"Taller\"\nlanguage = \"es\"\n",
		"job.toml":        "title = \"Bolsas\"\n" + screen,
		"odd/shop.toml":   "language = \"es\"\nnombre = \"x\"\n",
		"odd/job.toml":    "title = \"Bolsas\"\n" + screen,
		"open/shop.toml":  "language = \"es\"\nname = \"x\n",
		"open/job.toml":   "title = \"Bolsas\"\n" + screen,
		"none/shop.toml":  "language = \"es\"\n[[blade]]\nlayup = \"70\"\ncount = 0\n",
		"none/job.toml":   "title = \"Bolsas\"\n" + screen,
		"logo/shop.toml":  "language = \"es\"\nname = \"x\"\nlogo = \"logo.png\"\n",
		"logo/logo.png":   "no image",
		"logo/job.toml":   "title = \"Bolsas\"\n" + screen,
		"self.toml":       "title = \"Bolsas\"\nshop = \"self.toml\"\n" + screen,
		"wide.toml":       "title = \"Bolsas\"\n[[location]]\nwidth = \"3 m\"\nheight = \"3 m\"\n[[location.screen]]\nmesh = \"156-64\"\n",
		"a/same.toml":     "title = \"Bolsas\"\n" + screen,
		"b/same.toml":     "title = \"Bolsas\"\n" + screen,
		"few.csv":         "mesh,eom (um),blade,angle (deg),cured (um)\n156-64,20,70,15,30\n",
		"head.csv":        "mesh;eom;blade (mm);angle (deg);angle (deg);other\n",
		"cells.csv":       "mesh;eom (um);blade;angle (deg);cured (um);strokes;date\n156-64;x;70;95;30;1,5;1/2/2026\n156-64;20;71;15;30;1;\n156-64;20\n999-64;20;70;15;3,5,5;1;\n;;;;30;;\n",
		"commas.csv":      "mesh,eom (um),blade,angle (deg),before (g),after (g),area (cm2)\n156-64,20,70,15,5,4,10\n156-64,20,70,15,\"5,5\",6,10\n156-64,20,70,15,5,5,10,5\n",
		"quote.csv":       "mesh,eom (um),blade,angle (deg),cured (um)\n156-64,20,70\",15,30\n",
		"open.csv":        "mesh,eom (um),blade,angle (deg),cured (um)\n\"156-64,20,70,15,30\n",
		"empty.csv":       "",
		"wide.csv":        "mesh,eom (um),blade,angle (deg)\n",
		"orders/head.csv": "job;titel;screen.ink;job\n1;x;plastisol;2\n",
		"orders/none.csv": "job;title\n",
		"orders/no.csv":   "screen.ink\nplastisol\n",
		"orders/bad.csv":  "template;like;job;title;location.name;screen.ink;screen.mesh\n;;;;;;\n;;;;frente;plastisol;\n;x;1;a;frente;tinta;99\n;;2;b;;;\n;;1;a;;;\n;;3;c;;;;de sobra\nt;;;;;;\nt;;;;;;\n",
		"orders/two.csv":  "job;title;quantity\n1;a;5\n1;a;6\nA-1;x;1\na 1;y;1\n",
		"orders/open.csv": "job;title\n\"1;a\n",
		"note.txt":        "x",
		"edited.pdf":      "x",
		"folder/keep":     "",
		"mal\x01o.toml":   "title = \"x\"\n",
	} {
		write(t, filepath.Join(dir, filepath.FromSlash(name)), text)
	}
	for name, to := range map[string]string{"dead.pdf": "gone", "link.pdf": "note.txt"} {
		if err := os.Symlink(to, filepath.Join(dir, name)); err != nil {
			t.Skip(err)
		}
	}
	t.Chdir(dir)
	for _, args := range []string{
		"shwo job.toml", "--json show", "show --jsn job.toml", "show --nothing-like-it job.toml", "show --json=x job.toml", "show --shop", "show --shop= job.toml", "show", "show gone.toml", "show folder",
		"show --csv --json job.toml", "show self.toml", "show wide.toml", "show shop.toml", "show note.txt", "show - -",
		"show odd/job.toml", "check odd/shop.toml", "show open/job.toml", "show none/job.toml", "check logo/shop.toml", "check logo/job.toml",
		"check", "check --fix --json job.toml", "check folder", "check --shop job.toml job.toml",
		"cards", "cards job.toml", "cards job.toml -o out.csv", "cards job.toml -o note.txt", "cards job.toml a/same.toml -o out.pdf", "cards job.toml -o out --size b7", "cards job.toml -o out --paper a9",
		"cards job.toml -o out --flip up", "cards job.toml -o out --back-right 9", "cards job.toml -o out --charts -", "cards job.toml -o dead.pdf", "cards job.toml -o link.pdf", "cards job.toml -o edited.pdf",
		"sheet job.toml", "handout", "handout -o x.pdf a b", "handout none/shop.toml -o x.pdf", "handout -o x.pdf --level none", "sweep job.toml --vary angle=0..4 -o job.toml", "schema job -o folder", "schema job -o folder/",
		"build", "build -o out", "build job.toml", "build job.toml -o -", "build job.toml -o x.pdf", "build --quiet --json job.toml -o out", "build folder -o out", "build a/same.toml b/same.toml -o out2", "build job.toml -o note.txt", "build gone -o out", "build odd -o out4",
		"log", "log job.toml -o note.txt", "log job.toml -o wide.csv", "fit", "fit few.csv", "fit gone.csv", "fit head.csv", "fit cells.csv", "fit commas.csv", "fit quote.csv", "fit open.csv", "fit empty.csv", "fit wide.csv", "fit few.csv --date x", "fit few.csv --chart x.txt",
		"trial a b", "trial --days 0", "trial --hours 1 --prints-per-hour 1", "trial --press none", "trial --ink none", "trial --days 99", "day", "day folder", "day job.toml --due 2027", "day job.toml --due 2027-05-21..2027-05-20", "day job.toml --due 2027-05-21", "day job.toml odd/job.toml",
		"correct", "correct job.toml", "correct job.toml --seen nothing", "correct job.toml --seen too-thn", "correct job.toml --measured 38", "correct job.toml --measured x", "correct job.toml --measured=9999999um", "correct job.toml --measured 30um --screen 9", "correct job.toml --measured 30um --location 9", "correct job.toml --screen x --measured 30um",
		"sweep", "sweep job.toml", "sweep job.toml --vary x=1..2", "sweep job.toml --vary angle=x", "sweep job.toml --vary angle=0..40:1e-9", "sweep job.toml --vary angle=500,600", "sweep job.toml --vary angle=5 --chart x.svg", "sweep job.toml --vary angle=0..40 --vary angle=0..4 --vary load=1..2", "sweep job.toml --vary angle=0..40 --screen 7",
		"schema", "schema x", "completion", "completion x", "version x", "new a b", "new --from gone.csv", "new x --from orders/head.csv", "new x --from orders/none.csv", "new x --from orders/no.csv", "new x --from orders/bad.csv", "new x --from orders/two.csv", "new x --from orders/open.csv", "new note.txt", "new",
	} {
		t.Run(args, func(t *testing.T) {
			var out, errs bytes.Buffer
			if code := run(strings.Fields(args), strings.NewReader("x"), &out, &errs); code == exitDone {
				t.Fatalf("it ends with 0: %s", errs.String())
			}
			if errs.Len() == 0 {
				t.Fatal("it says nothing")
			}
			for _, line := range strings.Split(errs.String(), "\n") {
				if found := leftEnglish(line); found != "" && !strings.HasPrefix(line, "sugerencia: se usa así") {
					t.Errorf("%q in %s", found, line)
				}
			}
		})
	}
}
