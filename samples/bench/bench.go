// Package bench makes up job files by the thousand, for benchmarks and for tests of whole folders.
// The same number always gives the same job, whatever the machine; nothing of it is kept in the
// repository. The jobs are invented.
package bench

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
)

// screensALocation is how many screens the generator puts on a location before it opens the next.
const screensALocation = 3

// pick returns one of the words.
func pick(r *rand.Rand, words ...string) string { return words[r.IntN(len(words))] }

// Job is the text of job file n with so many screens. shop is what its key says; empty leaves it out.
func Job(n, screens int, shop string) []byte {
	r := rand.New(rand.NewPCG(uint64(n), 0x6b6c6e))
	var b strings.Builder
	shade := pick(r, "light", "medium", "dark")
	fmt.Fprintf(&b, "job = \"B-%05d\"\ntitle = %q\ncustomer = %q\nquantity = %d\ndue = 2027-%02d-%02d\n",
		n, pick(r, "Lock-keepers' picnic", "Tidewater choir", "Orchard harvest week", "Night ferry crew", "Slate quarry open day")+" "+pick(r, "tees", "hoods", "totes", "vests"),
		pick(r, "Millrace Rowing Club", "Harbor Lantern Night", "Copper Beech School", "North Quay Market"), 24+r.IntN(400), 1+r.IntN(12), 1+r.IntN(28))
	if shop != "" {
		fmt.Fprintf(&b, "shop = %q\n", shop)
	}
	fmt.Fprintf(&b, "\n[garment]\nname = \"ring-spun tee\"\nfibre = %q\nshade = %q\n", pick(r, "cotton", "cotton", "blend", "polyester"), shade)
	inks := inksOf(pick(r, "plastisol", "plastisol", "plastisol", "low", "water"))
	for s := range screens {
		first := s%screensALocation == 0
		if first {
			place := []string{"full front", "full back", "left chest", "right sleeve"}[s/screensALocation%4]
			if s/screensALocation >= 4 {
				place = fmt.Sprintf("%s %d", place, s/screensALocation/4+1)
			}
			width, height := 20+r.IntN(12), 20+r.IntN(16)
			if strings.HasPrefix(place, "left") || strings.HasPrefix(place, "right") {
				width, height = 8+r.IntN(3), 6+r.IntN(4)
			}
			fmt.Fprintf(&b, "\n[[location]]\nname = %q\nwidth = \"%d cm\"\nheight = \"%d cm\"\n", place, width, height)
		}
		writeScreen(&b, r, inks, first && shade != "light")
	}
	return []byte(b.String())
}

// inks are the classes of one job: they share a cure, as the inks of a garment must.
type inks struct{ base, white, color string }

func inksOf(kind string) inks {
	switch kind {
	case "low":
		return inks{"blocker", "plastisol low-cure", "plastisol low-cure"}
	case "water":
		return inks{"high-solids acrylic", "high-solids acrylic", "water-based"}
	}
	return inks{"plastisol white", "plastisol white", "plastisol"}
}

func writeScreen(b *strings.Builder, r *rand.Rand, in inks, base bool) {
	fmt.Fprint(b, "\n[[location.screen]]\n")
	use, ink, mesh, color := pick(r, "solid", "solid", "detail", "halftone"), in.color, "", pick(r, "signal red", "lantern amber", "deep teal", "bottle green", "ink black")
	switch {
	case base:
		use, ink, color = "underbase", in.base, "white"
	case r.IntN(6) == 0:
		use, ink, color = "highlight", in.white, "top white"
	}
	switch use {
	case "underbase":
		mesh = pick(r, "125-70", "150-48", "")
	case "solid":
		mesh = pick(r, "150-48", "180-48", "180-48", "")
	case "detail", "highlight":
		mesh = pick(r, "180-48", "225-40", "225-40")
	default:
		mesh = pick(r, "225-40", "272-34", "")
	}
	fmt.Fprintf(b, "color = %q\nswatch = \"#%06x\"\nink = %q\nuse = %q\ncoverage = \"%d %%\"\n", color, r.IntN(1<<24), ink, use, 5+r.IntN(40))
	if mesh != "" {
		fmt.Fprintf(b, "mesh = %q\n", mesh)
	}
	switch r.IntN(12) { // some jobs ask for what is not easy, as jobs do
	case 0:
		fmt.Fprint(b, "film = \"50..65 um\"\n")
	case 1:
		fmt.Fprint(b, "blade = \"80\"\n")
	}
	switch use {
	case "halftone":
		fmt.Fprintf(b, "halftone = { lines = \"%d lpi\", angle = 22.5, smallest = \"%d %%\" }\n", 35+5*r.IntN(4), 5+r.IntN(6))
	case "solid":
		fmt.Fprintf(b, "eom = \"%d %%\"\nfeature = \"%d mm\"\n", 10+r.IntN(15), 3+r.IntN(12))
	case "detail":
		fmt.Fprintf(b, "eom = \"%d um\"\nfinest = \"0.%d mm\"\n", 6+r.IntN(10), 3+r.IntN(5))
	}
}

// Folder writes so many jobs into dir, a hundred a folder below it. A job names shop, an absolute
// path or one from the job's folder; empty leaves it out.
func Folder(dir string, jobs, screens int, shop string) error {
	for n := range jobs {
		sub := filepath.Join(dir, fmt.Sprintf("%03d", n/100))
		if err := os.MkdirAll(sub, 0o777); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(sub, fmt.Sprintf("b-%05d.toml", n)), Job(n, screens, shop), 0o666); err != nil {
			return err
		}
	}
	return nil
}
