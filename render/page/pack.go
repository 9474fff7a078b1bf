package page

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"sync"

	"bladecard/render/canvas"

	"github.com/klauspost/compress/zlib"
)

// The library can deflate a page itself, but makes a new writer of 1.2 MB for each. It is told not
// to, and pack deflates its streams afterwards with writers that are kept, of a library that takes two
// thirds of the time of Go's own and packs a little closer.

// plainStream is the start of an object that holds a stream with no filter, as the library writes it.
var plainStream = regexp.MustCompile(`^[0-9]+ 0 obj\n<</Length ([0-9]+)>>\nstream\n`)

// deflaters are the writers that are kept.
var deflaters = sync.Pool{New: func() any {
	z, err := zlib.NewWriterLevel(io.Discard, zlib.BestSpeed)
	if err != nil {
		panic("page: " + err.Error()) // the level is one of the library's
	}
	return z
}}

// packing is the room that a document is packed in; it is kept for the next one.
type packing struct{ out, small bytes.Buffer }

var rooms = sync.Pool{New: func() any { return new(packing) }}

// noFonts is the empty list of fonts in the one dictionary of resources that the library writes, and
// sizeEntry the count of objects in its trailer.
var (
	noFonts   = []byte("/Font <<\n>>\n")
	sizeEntry = regexp.MustCompile(`/Size [0-9]+\n`)
)

// pack writes a document of the library with its plain streams deflated, the faces put in and the
// table of places (ISO 32000-1, 7.5.4) made anew.
func pack(w io.Writer, raw []byte, faces map[canvas.Face]*embedded) error {
	places, table, err := placesOf(raw)
	if err != nil {
		return err
	}
	z := deflaters.Get().(*zlib.Writer)
	defer deflaters.Put(z)
	room := rooms.Get().(*packing)
	defer rooms.Put(room)
	out, small := &room.out, &room.small
	out.Reset()
	moved := make(map[int]int, len(places)) // old place to new
	order := slices.Sorted(slices.Values(places))
	out.Write(raw[:order[0]])
	for i, at := range order {
		end := table
		if i+1 < len(order) {
			end = order[i+1]
		}
		moved[at] = out.Len()
		object := raw[at:end]
		if number, _, _ := bytes.Cut(object, []byte(" ")); string(number) == resources {
			if bytes.Count(object, noFonts) != 1 {
				return fmt.Errorf("the PDF library wrote resources without an empty list of fonts")
			}
			object = bytes.Replace(object, noFonts, fontList(faces, len(places)+1), 1)
		}
		head := plainStream.FindSubmatch(object)
		if head == nil {
			out.Write(object)
			continue
		}
		size, err := strconv.Atoi(string(head[1]))
		body := object[len(head[0]):]
		if err != nil || size > len(body) {
			return fmt.Errorf("the PDF library wrote a stream of %s bytes where there are %d", head[1], len(body))
		}
		small.Reset()
		z.Reset(small)
		if _, err := z.Write(body[:size]); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		number, _, _ := bytes.Cut(object, []byte(" "))
		fmt.Fprintf(out, "%s 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n", number, small.Len())
		out.Write(small.Bytes())
		out.Write(body[size:])
	}
	at := make([]int, 0, len(places)+2*fontObjects)
	for _, old := range places {
		at = append(at, moved[old])
	}
	for _, f := range faceOrder {
		if e := faces[f]; e != nil {
			e.write(out, len(at)+1, func() { at = append(at, out.Len()) })
		}
	}
	start := out.Len()
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, place := range at {
		fmt.Fprintf(out, "%010d 00000 n \n", place)
	}
	trailer := bytes.Index(raw[table:], []byte("trailer\n"))
	end := bytes.LastIndex(raw, []byte("startxref\n"))
	if trailer < 0 || end < table+trailer {
		return fmt.Errorf("the PDF library wrote no trailer")
	}
	out.Write(sizeEntry.ReplaceAll(raw[table+trailer:end], fmt.Appendf(nil, "/Size %d\n", len(at)+1)))
	fmt.Fprintf(out, "startxref\n%d\n%%%%EOF\n", start)
	_, err = w.Write(out.Bytes())
	return err
}

// resources is the number of the object that holds the resources of all pages.
const resources = "2"

// faceOrder is the order of the faces in a document.
var faceOrder = []canvas.Face{canvas.Regular, canvas.Bold}

// fontList is the list of fonts for faces whose objects are numbered from n on.
func fontList(faces map[canvas.Face]*embedded, n int) []byte {
	out := []byte("/Font <<\n")
	for _, f := range faceOrder {
		if faces[f] != nil {
			out = fmt.Appendf(out, "/%s %d 0 R\n", resource(f), n)
			n += fontObjects
		}
	}
	return append(out, ">>\n"...)
}

// placesOf reads where the objects 1, 2, 3 ... start, and the table that says so.
func placesOf(raw []byte) (places []int, table int, err error) {
	bad := fmt.Errorf("the PDF library wrote a table of places that cannot be read")
	end := bytes.LastIndex(raw, []byte("startxref\n"))
	if end < 0 {
		return nil, 0, bad
	}
	var n int
	if _, err := fmt.Sscanf(string(raw[end:]), "startxref\n%d", &table); err != nil || table < 0 || table >= end {
		return nil, 0, bad
	}
	if _, err := fmt.Sscanf(string(raw[table:min(table+40, end)]), "xref\n0 %d\n", &n); err != nil || n < 2 {
		return nil, 0, bad
	}
	const row = 20 // bytes of an entry
	first := table + bytes.Index(raw[table:], []byte("0000000000 65535 f")) + row
	for i := range n - 1 {
		if first+row*(i+1) > end {
			return nil, 0, bad
		}
		at, err := strconv.Atoi(string(raw[first+row*i : first+row*i+10]))
		if err != nil || at <= 0 || at >= table {
			return nil, 0, bad
		}
		places = append(places, at)
	}
	return places, table, nil
}
