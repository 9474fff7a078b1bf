package pdf

import (
	"bytes"
	"fmt"
	"strings"
)

// Duplex is how the printer should turn the paper over.
type Duplex string

// The ways to turn the paper over; the empty one leaves it to the person who prints.
const (
	FlipLongEdge  Duplex = "DuplexFlipLongEdge"
	FlipShortEdge Duplex = "DuplexFlipShortEdge"
)

// withPreferences appends viewer preferences (ISO 32000-1, 12.2): print at actual size, turn the
// paper over as duplex says, show the title instead of the file's name. The library has no call
// for them, so that they come as an incremental update (7.5.6): the catalog once more with the
// preferences in it, and a table of places that leads on to the first one.
func withPreferences(doc []byte, duplex Duplex) ([]byte, error) {
	var table, size, root, info int
	if _, err := fmt.Sscanf(from(doc, "startxref\n"), "startxref\n%d", &table); err != nil || table < 0 || table >= len(doc) {
		return nil, fmt.Errorf("the PDF library wrote the place of its table as %d: %v", table, err)
	}
	if _, err := fmt.Sscanf(from(doc, "trailer\n"), "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R", &size, &root, &info); err != nil {
		return nil, fmt.Errorf("the PDF library wrote another trailer: %w", err)
	}
	head := fmt.Sprintf("\n%d 0 obj\n<<\n", root)
	entries, found := strings.CutPrefix(from(doc[:table], head), head)
	if !found {
		return nil, fmt.Errorf("the PDF library wrote no catalog %d before its table", root)
	}
	preferences := "/PrintScaling /None /DisplayDocTitle true"
	if duplex != "" {
		preferences += " /Duplex /" + string(duplex)
	}
	out := bytes.NewBuffer(doc)
	place := out.Len()
	fmt.Fprintf(out, "%d 0 obj\n<<\n/Version /1.7\n/ViewerPreferences <<%s>>\n%s", root, preferences, entries)
	table2 := out.Len()
	fmt.Fprintf(out, "xref\n%d 1\n%010d 00000 n \n", root, place)
	fmt.Fprintf(out, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n/Prev %d\n>>\nstartxref\n%d\n%%%%EOF\n", size, root, info, table, table2)
	return out.Bytes(), nil
}

// from is the document from the last place of a text on; empty if there is none.
func from(doc []byte, text string) string {
	at := bytes.LastIndex(doc, []byte(text))
	if at < 0 {
		return ""
	}
	return string(doc[at:])
}
