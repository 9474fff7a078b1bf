package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/gob"
	"fmt"

	"github.com/go-pdf/fpdf"

	"bladecard/render/canvas"
)

// picture puts a picture into the document, once, and returns the name that the library has for it.
func (c *pdfCanvas) picture(p *canvas.Picture) string {
	sum := sha256.Sum256(p.Data)
	name := fmt.Sprintf("%x", sum)
	if c.doc.GetImageInfo(name) == nil {
		info := c.doc.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: p.Format}, bytes.NewReader(p.Data))
		if err := rank(info, binary.BigEndian.Uint32(sum[:])); err != nil {
			c.doc.SetError(err)
		}
	}
	return name
}

// rank gives pictures of one width an order. The library writes pictures by their widths, and those of one width in
// the order of a map, which is another one in each run. It cuts a width to whole pixels where it writes it, so that a
// fraction of a pixel tells them apart. The fields are those that its own encoding has, the width the fourth.
func rank(info *fpdf.ImageInfoType, by uint32) error {
	if info == nil {
		return nil // the library has an error of its own
	}
	data, err := info.GobEncode()
	if err != nil {
		return err
	}
	var width float64
	fields := []any{new([]byte), new([]byte), new(int), &width, new(float64), new(string), new([]byte), new(int), new(string), new(string), new([]int), new(float64), new(float64)}
	in, out := gob.NewDecoder(bytes.NewReader(data)), new(bytes.Buffer)
	enc := gob.NewEncoder(out)
	for _, field := range fields {
		if err := in.Decode(field); err != nil {
			return fmt.Errorf("picture: %w", err)
		}
		if field == any(&width) {
			width += float64(by) / (1 << 33)
		}
		if err := enc.Encode(field); err != nil {
			return fmt.Errorf("picture: %w", err)
		}
	}
	return info.GobDecode(out.Bytes())
}
