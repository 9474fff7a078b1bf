package page

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"image/draw"
	_ "image/jpeg" // with PNG the two formats of a logo
	"image/png"
	"math"

	"bladecard/render/canvas"

	"github.com/go-pdf/fpdf"
)

// The largest image that is taken: a logo, not a poster.
const (
	MaxImageBytes  = 4 << 20
	maxImagePixels = 16_000_000
)

// Picture is an image that was read and found fit to print.
type Picture struct {
	data   []byte
	format string // png, jpeg
	wide   float64
	high   float64
}

// ReadPicture takes the bytes of a PNG or JPEG file.
func ReadPicture(data []byte) (*Picture, error) {
	if len(data) > MaxImageBytes {
		return nil, fmt.Errorf("the image has %d bytes; at most %d are accepted", len(data), MaxImageBytes)
	}
	head, format, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("the image cannot be read: %w; PNG and JPEG are accepted", err)
	}
	if head.Width < 1 || head.Height < 1 || head.Width > maxImagePixels/head.Height {
		return nil, fmt.Errorf("the image has %d by %d pixels; 1 to %d pixels in all are accepted", head.Width, head.Height, maxImagePixels)
	}
	whole, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("the image is damaged: %w", err)
	}
	p := &Picture{data: bytes.Clone(data), format: format, wide: float64(head.Width), high: float64(head.Height)}
	switch whole.(type) {
	case *image.YCbCr, *image.Gray:
		if format == "jpeg" {
			return p, nil // goes into a PDF as it is
		}
	}
	p.format = "png"
	p.data, err = plainPNG(whole)
	return p, err
}

// plainPNG writes a picture in the one kind of PNG that the PDF library surely takes: 8 bits a
// channel, not interlaced, none of what else a PNG may carry.
func plainPNG(whole image.Image) ([]byte, error) {
	plain := image.NewNRGBA(image.Rect(0, 0, whole.Bounds().Dx(), whole.Bounds().Dy()))
	draw.Draw(plain, plain.Rect, whole, whole.Bounds().Min, draw.Src)
	var out bytes.Buffer
	if err := png.Encode(&out, plain); err != nil {
		return nil, fmt.Errorf("the image cannot be read: %w", err)
	}
	return out.Bytes(), nil
}

// Image is a box with a picture, as large as r takes it without a change of its proportions, at
// r's top right corner.
func Image(name string, r Rect, p *Picture) Box {
	scale := math.Min(r.W/p.wide, r.H/p.high)
	w, h := p.wide*scale, p.high*scale
	return Box{Name: name, Kind: KindImage, Rect: Rect{X: r.Right() - w, Y: r.Y, W: w, H: h}, Picture: p}
}

// imager is a canvas that takes pictures.
type imager interface {
	image(x, y, w, h float64, p *Picture)
}

// drawImage draws the picture on a canvas that takes pictures; on another, an outlined box.
func (b Box) drawImage(c canvas.Canvas) {
	if i, ok := c.(imager); ok {
		i.image(b.X, b.Y, b.W, b.H, b.Picture)
		return
	}
	c.Draw(rectPath(b.Rect), nil, canvas.Pen{Color: canvas.Black, WidthMM: 0.2})
}

func (c *pdfCanvas) image(x, y, w, h float64, p *Picture) {
	kind := map[string]string{"png": "PNG", "jpeg": "JPG"}[p.format]
	name := fmt.Sprintf("%x", sha256.Sum256(p.data))
	opt := fpdf.ImageOptions{ImageType: kind}
	if c.doc.GetImageInfo(name) == nil {
		c.doc.RegisterImageOptionsReader(name, opt, bytes.NewReader(p.data))
	}
	c.flush()
	c.doc.ImageOptions(name, x, y, w, h, false, opt, 0, "")
}
