package png

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"bladecard/render/canvas"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// mostPixels bounds an image, so that a slip of the resolution does not eat the memory.
const mostPixels = 60_000_000

// Write writes what draw draws as a PNG image of w by h mm at a resolution in dots per inch.
func Write(out io.Writer, w, h, dpi float64, paint func(canvas.Canvas) error) error {
	if !(dpi >= 36 && dpi <= 1200) {
		return fmt.Errorf("resolution %g dpi is out of range; 36 to 1200 is accepted", dpi)
	}
	scale := dpi / 25.4
	pw, ph := int(math.Ceil(w*scale)), int(math.Ceil(h*scale))
	if pw < 1 || ph < 1 || pw*ph > mostPixels {
		return fmt.Errorf("an image of %d by %d pixels; 1 to %d pixels are accepted", pw, ph, mostPixels)
	}
	img := image.NewRGBA(image.Rect(0, 0, pw, ph))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	p := &pixels{img: img, scale: scale, raster: raster.NewRasterizer(pw, ph)}
	p.raster.UseNonZeroWinding = true
	if err := paint(p); err != nil {
		return err
	}
	if p.err != nil {
		return p.err
	}
	return png.Encode(out, img)
}

type pixels struct {
	img    *image.RGBA
	scale  float64 // pixels per mm
	raster *raster.Rasterizer
	err    error
}

func (p *pixels) point(q canvas.Point) fixed.Point26_6 {
	return fixed.Point26_6{X: fixed.Int26_6(math.Round(q.X * p.scale * 64)), Y: fixed.Int26_6(math.Round(q.Y * p.scale * 64))}
}

func (p *pixels) paint(c canvas.Color) {
	painter := raster.NewRGBAPainter(p.img)
	painter.SetColor(color.RGBA{c.R, c.G, c.B, 255})
	p.raster.Rasterize(painter)
	p.raster.Clear()
}

// Draw fills, then strokes.
func (p *pixels) Draw(path canvas.Path, fill *canvas.Color, pen canvas.Pen) {
	if fill != nil {
		for _, run := range flatten(path) {
			p.raster.AddPath(p.run(run.points, true))
		}
		p.paint(*fill)
	}
	if pen.WidthMM <= 0 {
		return
	}
	width := fixed.Int26_6(math.Max(32, math.Round(pen.WidthMM*p.scale*64))) // never thinner than half a pixel
	for _, run := range flatten(path) {
		points := run.points
		if run.closed {
			points = append(points[:len(points):len(points)], points[0])
		}
		for _, piece := range dashes(points, pen.DashMM) {
			p.raster.AddStroke(p.run(piece, false), width, raster.ButtCapper, raster.RoundJoiner)
		}
	}
	p.paint(pen.Color)
}

func (p *pixels) run(points []canvas.Point, closed bool) raster.Path {
	var out raster.Path
	out.Start(p.point(points[0]))
	for _, q := range points[1:] {
		out.Add1(p.point(q))
	}
	if closed {
		out.Add1(p.point(points[0]))
	}
	return out
}

// Text fills the outlines of the document's font.
func (p *pixels) Text(x, y float64, text string, f canvas.Font, c canvas.Color, angleDeg float64) {
	outline, err := canvas.Outline(text, f)
	if err != nil && p.err == nil {
		p.err = err
		return
	}
	sin, cos := math.Sincos(-angleDeg * math.Pi / 180)
	place := func(q canvas.Point) canvas.Point {
		return canvas.Point{X: x + q.X*cos - q.Y*sin, Y: y + q.X*sin + q.Y*cos}
	}
	for i, piece := range outline.Pieces {
		piece.A, piece.B, piece.P = place(piece.A), place(piece.B), place(piece.P)
		outline.Pieces[i] = piece
	}
	p.Draw(outline, &c, canvas.Pen{})
}

// TextWidth is that of the document's font.
func (p *pixels) TextWidth(text string, f canvas.Font) float64 { return canvas.Width(text, f) }
