package page

import (
	"fmt"
	"io"
	"regexp"
	"time"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// Meta is what a document says of itself.
type Meta struct {
	Title, Author, Subject string
	Language               string    // "en", "en-GB"; empty: not stated
	Date                   time.Time // of creation; zero: 1 January 2000
}

var (
	epoch   = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	langTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)
)

// Write draws the sheets, a page each, and writes the PDF. Nothing is written if anything is
// wrong; the error names the face and the box.
func Write(w io.Writer, m Meta, sheets []Sheet) error {
	return WriteEach(w, m, func(yield func(Sheet, error) bool) {
		for _, s := range sheets {
			if !yield(s, nil) {
				return
			}
		}
	})
}

// WriteEach is Write for sheets that are laid out one after the other. Each is drawn before the next
// is taken.
func WriteEach(w io.Writer, m Meta, sheets Sheets) error {
	doc, err := newDocument(m)
	if err != nil {
		return err
	}
	pages := 0
	for s, err := range sheets {
		pages++
		if err == nil {
			err = checkSheet(s)
		}
		if err == nil {
			err = drawSheet(doc, s)
		}
		if err != nil {
			return fmt.Errorf("page %d: %w", pages, err)
		}
	}
	if pages == 0 {
		return fmt.Errorf("document %q has no page", m.Title)
	}
	var out taken
	if err := guard(fmt.Sprintf("document %q", m.Title), func() error { return doc.Output(&out) }); err != nil {
		return err
	}
	faces := map[canvas.Face]*embedded{}
	for _, f := range faceOrder {
		used := &doc.used[faceIndex(f)]
		if *used == (runeSet{}) {
			continue
		}
		if faces[f], err = embed(f, used); err != nil {
			return err
		}
	}
	return pack(w, out, faces)
}

// taken takes what is written without a copy where it comes at once.
type taken []byte

func (t *taken) Write(b []byte) (int, error) {
	if *t == nil {
		*t = b
	} else {
		*t = append(*t, b...)
	}
	return len(b), nil
}

// checkSheet finds what a page cannot hold, before anything of it is drawn.
func checkSheet(s Sheet) error {
	if !(s.W >= 10 && s.W <= farMM/2 && s.H >= 10 && s.H <= farMM/2) {
		return fmt.Errorf("size is %v x %v mm; 10 to %d mm is accepted", s.W, s.H, farMM/2)
	}
	for _, k := range s.Marks {
		if err := checkNumbers("crop mark", k.X1, k.Y1, k.X2, k.Y2); err != nil {
			return err
		}
	}
	for _, b := range s.Notes {
		if err := checkBox(b); err != nil {
			return fmt.Errorf("%s: %w", b.Name, err)
		}
	}
	for _, p := range s.Cards {
		if err := checkNumbers("place", p.Trim.X, p.Trim.Y, p.Trim.W, p.Trim.H); err != nil {
			return fmt.Errorf("face %q: %w", p.Face.Name, err)
		}
		for _, b := range p.Face.Boxes {
			if err := checkBox(b); err != nil {
				return fmt.Errorf("face %q: box %q: %w", p.Face.Name, b.Name, err)
			}
		}
	}
	return nil
}

// newDocument starts a document with pinned dates and sorted catalogue.
func newDocument(m Meta) (*document, error) {
	for _, s := range []*string{&m.Title, &m.Author, &m.Subject} {
		clean, err := Clean(*s)
		if err != nil {
			return nil, fmt.Errorf("document properties: %w", err)
		}
		*s = clean
	}
	if m.Language != "" && !langTag.MatchString(m.Language) {
		return nil, fmt.Errorf("document language is %q; a language tag such as en or en-GB is accepted", m.Language)
	}
	if m.Date.IsZero() {
		m.Date = epoch
	}
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.SetCatalogSort(true)
	pdf.SetCompression(false) // see pack
	pdf.SetCreationDate(m.Date.UTC())
	pdf.SetModificationDate(m.Date.UTC())
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetProducer("bladecard", true)
	pdf.SetTitle(m.Title, true)
	pdf.SetAuthor(m.Author, true)
	pdf.SetSubject(m.Subject, true)
	pdf.SetLang(m.Language)
	pdf.SetLineJoinStyle("round")
	return &document{Fpdf: pdf}, pdf.Error()
}

// drawSheet draws one page. A turned page is drawn upright inside half a turn.
func drawSheet(doc *document, s Sheet) error {
	c := &pdfCanvas{doc: doc, content: content{highMM: s.H, out: doc.room[:0]}}
	err := guard("sheet", func() error {
		doc.AddPageFormat("P", fpdf.SizeType{Wd: s.W, Ht: s.H})
		for _, k := range s.Marks {
			var p canvas.Path
			p.Move(k.X1, k.Y1)
			p.Line(k.X2, k.Y2)
			c.Draw(p, nil, canvas.Pen{Color: canvas.Black, WidthMM: markPenMM})
		}
		return doc.Error()
	})
	if err != nil {
		return err
	}
	if s.Turned {
		c.out = append(c.out, "q -1 0 0 -1 "...)
		c.fine(s.W * perMM)
		c.fine(s.H * perMM)
		c.op("cm")
	}
	for _, p := range s.Cards {
		at := p.Trim
		if s.Turned {
			at.X, at.Y = s.W-at.Right(), s.H-at.Bottom()
		}
		on := At(c, at.X, at.Y)
		err := guard(fmt.Sprintf("face %q", p.Face.Name), func() error {
			for _, b := range p.Face.Boxes {
				b.draw(on)
				if err := doc.Error(); err != nil {
					return fmt.Errorf("box %q: %w", b.Name, err)
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return guard("sheet notes", func() error {
		for _, b := range s.Notes {
			b.draw(c)
		}
		if s.Turned {
			c.op("Q")
		}
		c.flush()
		doc.room = c.out
		return doc.Error()
	})
}

// guard turns a panic of the library into an error that says where.
func guard(where string, do func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%s: the PDF library gave up: %v", where, p)
		}
	}()
	if err := do(); err != nil {
		return fmt.Errorf("%s: %w", where, err)
	}
	return nil
}
