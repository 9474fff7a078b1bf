package pdf

import (
	"bytes"
	"fmt"
	"io"
	"iter"
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
	Duplex                 Duplex
}

// Page is one page to draw.
type Page struct {
	Name   string  // for error texts: what is on it
	W, H   float64 // mm
	Turned bool    // the whole drawing is turned by half a turn
	Draw   func(canvas.Canvas)
}

var (
	epoch   = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	langTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)
)

// Write draws the pages, each before the next is taken, and writes the PDF. Nothing is written if
// anything is wrong; the error names the page. An error that comes in place of a page ends it.
func Write(w io.Writer, m Meta, pages iter.Seq2[Page, error]) error {
	doc, err := newDocument(m)
	if err != nil {
		return err
	}
	c := &pdfCanvas{doc: doc, loaded: map[typeface]bool{}}
	n := 0
	for p, err := range pages {
		n++
		if err == nil {
			if err = guard(func() error { return c.page(p) }); err != nil {
				err = fmt.Errorf("%s: %w", p.Name, err)
			}
		}
		if err != nil {
			return fmt.Errorf("page %d: %w", n, err)
		}
	}
	if n == 0 {
		return fmt.Errorf("document %q has no page", m.Title)
	}
	var out bytes.Buffer
	if err := guard(func() error { return doc.Output(&out) }); err != nil {
		return fmt.Errorf("document %q: %w", m.Title, err)
	}
	whole, err := withPreferences(out.Bytes(), m.Duplex)
	if err != nil {
		return err
	}
	_, err = w.Write(whole)
	return err
}

// newDocument starts a document with pinned dates and a sorted catalogue, measured in points.
func newDocument(m Meta) (*fpdf.Fpdf, error) {
	for _, s := range []*string{&m.Title, &m.Author, &m.Subject} {
		clean, err := canvas.Clean(*s)
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
	doc := fpdf.New("P", "pt", "A4", "")
	doc.SetCatalogSort(true)
	doc.SetCreationDate(m.Date.UTC())
	doc.SetModificationDate(m.Date.UTC())
	doc.SetAutoPageBreak(false, 0)
	doc.SetMargins(0, 0, 0)
	doc.SetProducer("bladecard", true)
	doc.SetTitle(m.Title, true)
	doc.SetAuthor(m.Author, true)
	doc.SetSubject(m.Subject, true)
	doc.SetLang(m.Language)
	doc.SetLineJoinStyle("round")
	return doc, doc.Error()
}

// guard turns a panic of the library into an error.
func guard(do func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the PDF library gave up: %v", p)
		}
	}()
	return do()
}
