package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"slices"
	"sync"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
	"github.com/klauspost/compress/zlib"
)

// The PDF library parses a font anew for every document, which takes longer than all the rest of a
// card. So the document's two faces are put in by pack, and what a document needs of a face is kept
// for the next one that needs the same: most do, since a face always holds the runes of plain
// English, and others only where they are used.

// embedded is a face as a document holds it: the six objects of a composite font (ISO 32000-1,
// 9.7), whose character codes are the runes themselves.
type embedded struct {
	name               string // of the font, with the tag of a subset
	widths, descriptor string
	toUnicode          []byte // this and the next two deflated
	glyphs             []byte // CIDToGIDMap
	program            []byte
	programSize        int // before it was deflated
}

// fontObjects is how many objects a face takes.
const fontObjects = 6

// resource is the name of a face on a page.
func resource(f canvas.Face) string {
	if f == canvas.Bold {
		return "B"
	}
	return "R"
}

// faceName is the name of the font's face.
func faceName(f canvas.Face) string {
	if f == canvas.Bold {
		return "DejaVuSansCondensed-Bold"
	}
	return "DejaVuSansCondensed"
}

// runeSet is the runes of a face that a document uses.
type runeSet [tableEnd]bool

// embed is what a document needs of a face for the runes that it uses.
func embed(f canvas.Face, used *runeSet) (*embedded, error) {
	var runes []rune
	for r := range rune(tableEnd) {
		if r >= ' ' && r <= '~' || used[r] {
			runes = append(runes, r)
		}
	}
	key := resource(f) + string(runes)
	kept.Lock()
	e := kept.faces[key]
	kept.Unlock()
	if e != nil {
		return e, nil
	}
	e, err := newEmbedded(f, runes)
	if err != nil {
		return nil, err
	}
	kept.Lock()
	if len(kept.faces) >= mostKept {
		clear(kept.faces)
	}
	kept.faces[key] = e
	kept.Unlock()
	return e, nil
}

// mostKept bounds the faces that are kept, of some 40 kB each.
const mostKept = 64

var kept = struct {
	sync.Mutex
	faces map[string]*embedded
}{faces: map[string]*embedded{}}

func newEmbedded(f canvas.Face, runes []rune) (*embedded, error) {
	set := fonts()
	if set.err != nil {
		return nil, set.err
	}
	var program []byte
	if err := guard("fonts", func() error {
		program = fpdf.UTF8CutFont(bytes.Clone(set.ttf[faceIndex(f)]), string(runes))
		return nil
	}); err != nil {
		return nil, err
	}
	t, err := tablesOf(program)
	if err != nil {
		return nil, err
	}
	index, err := cmapFormat4(t["cmap"])
	if err != nil {
		return nil, err
	}
	e := &embedded{name: subsetTag(runes) + "+" + faceName(f)}
	e.widths = widthsOf(f, runes)
	e.descriptor = descriptorOf(t)
	e.programSize = len(program)
	e.program = deflate(program)
	e.toUnicode = deflate([]byte(toUnicode(runes)))
	e.glyphs = deflate(glyphMap(index, runes))
	return e, nil
}

// subsetTag is the six capitals that tell subsets of a font apart (ISO 32000-1, 9.6.4).
func subsetTag(runes []rune) string {
	sum := sha256.Sum256([]byte(string(runes)))
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag)
}

// widthsOf is the W array: runs of runes that follow each other, each with its widths.
func widthsOf(f canvas.Face, runes []rune) string {
	set := fonts()
	var out bytes.Buffer
	for i, r := range runes {
		if i == 0 || runes[i-1] != r-1 {
			if i > 0 {
				out.WriteString("] ")
			}
			fmt.Fprintf(&out, "%d [", r)
		}
		g, _ := set.glyph(f, r)
		fmt.Fprintf(&out, "%d ", g.width)
	}
	out.WriteByte(']')
	return out.String()
}

// descriptorOf is what a FontDescriptor says of the face, in 1/1000 of the type size. The font
// states no stem width; 80 is from memory and only a hint for printers without the font.
func descriptorOf(t tables) string {
	be := binary.BigEndian
	em := float64(be.Uint16(t["head"][18:]))
	mille := func(table string, at int) int {
		return int(float64(int16(be.Uint16(t[table][at:]))) * 1000 / em)
	}
	return fmt.Sprintf("/Flags 4 /FontBBox [%d %d %d %d] /ItalicAngle 0 /Ascent %d /Descent %d /CapHeight 729 /StemV 80",
		mille("head", 36), mille("head", 38), mille("head", 40), mille("head", 42), mille("hhea", 4), mille("hhea", 6))
}

// toUnicode is the map from character codes to text: each to itself. A range may not go beyond
// 256 codes that differ in the last byte only.
func toUnicode(runes []rune) string {
	var blocks []rune
	for _, r := range runes {
		if b := r >> 8; !slices.Contains(blocks, b) {
			blocks = append(blocks, b)
		}
	}
	var out bytes.Buffer
	out.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	fmt.Fprintf(&out, "%d beginbfrange\n", len(blocks))
	for _, b := range blocks {
		fmt.Fprintf(&out, "<%02X00> <%02XFF> <%02X00>\n", b, b, b)
	}
	out.WriteString("endbfrange\nendcmap\nCMapName currentdict /CMap defineresource pop\nend\nend")
	return out.String()
}

// glyphMap is the glyph of each rune, two bytes each, up to the last one.
func glyphMap(index map[rune]int, runes []rune) []byte {
	out := make([]byte, 2*(runes[len(runes)-1]+1))
	for _, r := range runes {
		binary.BigEndian.PutUint16(out[2*r:], uint16(index[r]))
	}
	return out
}

// deflate packs what is kept: once, so as small as it gets.
func deflate(data []byte) []byte {
	var out bytes.Buffer
	z, err := zlib.NewWriterLevel(&out, zlib.BestCompression)
	if err == nil {
		_, err = z.Write(data)
	}
	if err == nil {
		err = z.Close()
	}
	if err != nil {
		panic("page: " + err.Error()) // the level is one of the library's, and memory takes every byte
	}
	return out.Bytes()
}

// write writes the objects of the face, numbered from n on; place is told of each as it starts.
func (e *embedded) write(out *bytes.Buffer, n int, place func()) {
	object := func(format string, args ...any) {
		place()
		fmt.Fprintf(out, "%d 0 obj\n", n)
		fmt.Fprintf(out, format, args...)
		out.WriteString("\nendobj\n")
		n++
	}
	stream := func(data []byte, more string) {
		place()
		fmt.Fprintf(out, "%d 0 obj\n<</Filter /FlateDecode /Length %d%s>>\nstream\n", n, len(data), more)
		out.Write(data)
		out.WriteString("\nendstream\nendobj\n")
		n++
	}
	first := n
	object("<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>", e.name, first+1, first+3)
	object("<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> /FontDescriptor %d 0 R /DW %d /W [%s] /CIDToGIDMap %d 0 R>>",
		e.name, first+2, missingWidth, e.widths, first+4)
	object("<</Type /FontDescriptor /FontName /%s %s /FontFile2 %d 0 R>>", e.name, e.descriptor, first+5)
	stream(e.toUnicode, "")
	stream(e.glyphs, "")
	stream(e.program, fmt.Sprintf(" /Length1 %d", e.programSize))
}
