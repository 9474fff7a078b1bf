package canvas

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	_ "image/jpeg" // with PNG the two formats of a logo
	"image/png"
)

// The largest image that is taken: a logo, not a poster.
const (
	MaxImageBytes  = 4 << 20
	maxImagePixels = 16_000_000
)

// Picture is an image that was read and found fit to print.
type Picture struct {
	Data       []byte // of the file; do not change it
	Format     string // png, jpeg
	Wide, High int    // pixels
}

// Pictures is a canvas that takes pictures.
type Pictures interface {
	Picture(x, y, w, h float64, p *Picture)
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
	p := &Picture{Data: bytes.Clone(data), Format: format, Wide: head.Width, High: head.Height}
	switch whole.(type) {
	case *image.YCbCr, *image.Gray:
		if format == "jpeg" {
			return p, nil // goes into a PDF as it is
		}
	}
	p.Format = "png"
	p.Data, err = plainPNG(whole)
	return p, err
}

// plainPNG writes a picture in the one kind of PNG that a PDF library surely takes: 8 bits a
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
