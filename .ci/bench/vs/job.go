package main

import (
	"fmt"
	"strings"
)

// The scenario: a festival's tees, printed in ten places with screens for every use. What is
// listed here is varied from screen to screen, so that no two cards are alike.
var (
	places = []string{"full front", "full back", "left chest", "right chest", "left sleeve", "right sleeve", "neck", "front hem", "back hem", "pocket"}
	colors = []string{"harbour blue", "signal red", "kelp green", "lantern amber", "dusk violet", "rope brown", "sail cream", "slate grey", "buoy orange", "tide teal"}
	kinds  = []string{
		"ink = \"plastisol white\"\nuse = \"underbase\"\nmesh = \"150-48\"\n",
		"ink = \"plastisol\"\nuse = \"solid\"\nmesh = \"180-48\"\n",
		"ink = \"plastisol\"\nuse = \"detail\"\nmesh = \"225-40\"\nfinest = \"0.4 mm\"\n",
		"ink = \"plastisol\"\nuse = \"halftone\"\nmesh = \"225-40\"\nhalftone = { lines = \"45 lpi\", angle = 22.5, smallest = \"5 %\" }\n",
		"ink = \"plastisol white\"\nuse = \"solid\"\nmesh = \"125-70\"\n",
		"ink = \"plastisol low-cure\"\nuse = \"solid\"\nmesh = \"150-48\"\n",
		"ink = \"plastisol white\"\nuse = \"highlight\"\nmesh = \"180-48\"\n",
		"ink = \"plastisol\"\nuse = \"solid\"\n",
		"ink = \"plastisol metallic\"\nuse = \"solid\"\nmesh = \"125-70\"\n",
		"ink = \"blocker\"\nuse = \"blocker\"\nmesh = \"125-70\"\n",
	}
)

// jobFile is a job with that many screens, ten a location; the shop's file lies beside it.
func jobFile(screens int) string {
	var b strings.Builder
	b.WriteString("job = \"F-100\"\ntitle = \"Harbour festival, every print\"\ncustomer = \"Harbour festival\"\nquantity = 250\n")
	b.WriteString("due = 2027-05-20\nshop = \"shop.toml\"\npress = \"big carousel\"\n\n")
	b.WriteString("[garment]\nname = \"ring-spun tee, navy\"\nfibre = \"cotton\"\nshade = \"dark\"\n")
	for n := range screens {
		place, kind := n/10, n%10
		if kind == 0 {
			name := places[place%len(places)]
			if round := place / len(places); round > 0 {
				name = fmt.Sprintf("%s, art %d", name, round+1)
			}
			fmt.Fprintf(&b, "\n[[location]]\nname = %q\nwidth = \"%d mm\"\nheight = \"%d mm\"\n", name, 90+19*(place%10), 70+23*(place%10))
		}
		fmt.Fprintf(&b, "\n[[location.screen]]\ncolor = \"%s %d\"\nswatch = \"#%02x%02x%02x\"\n", colors[(n+place)%10], n+1, (40+n*37)%256, (90+n*59)%256, (140+n*83)%256)
		b.WriteString(kinds[kind])
		fmt.Fprintf(&b, "eom = \"%d %%\"\ncoverage = \"%d %%\"\n", 12+place, 5+(n*7)%40)
	}
	return b.String()
}
