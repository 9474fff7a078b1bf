package figure

import (
	"cmp"
	"fmt"
	"math"

	"bladecard/render/canvas"
)

// Dial shows the blade at its angle, seen along its edge: the screen level, the stroke to the
// right, the blade leaning into the stroke, so that its printing face and the mesh ahead of it
// close on the ink. The ring is a protractor about the edge, a tick every 5 degrees, with the
// allowed range in black, which a light wedge joins to the edge. Every text may be empty.
type Dial struct {
	LowDeg, SetDeg, HighDeg float64 // from vertical, 0 to 80

	ScreenLabel string // the angle to the screen
	// Scale writes an angle at the two ends of the ring, where there is room; nil writes none.
	Scale func(deg float64) string

	SizePT float64 // of the texts; 0: SmallestPT
}

// check refuses angles that are none, or not in order.
func (d Dial) check() error {
	if !(d.LowDeg >= 0 && d.LowDeg <= d.SetDeg && d.SetDeg <= d.HighDeg && d.HighDeg <= 80) {
		return fmt.Errorf("dial: angle %v in the range %v to %v; accepted are 0 to 80 degrees, the angle within its range",
			d.SetDeg, d.LowDeg, d.HighDeg)
	}
	return nil
}

// Sizes of the dial, mm or shares of its radius.
const (
	ringOfR   = 0.19 // width of the ring
	pointerMM = 2.6  // of the set mark outside the ring
	bladeOfR  = 0.25 // thickness of the rubber
	jawOfR    = 0.06 // of the holder, on each side
	leastRMM  = 8
	rimMM     = 0.5 // for the pens, all round
)

// dialPlace is where the parts of a dial stand.
type dialPlace struct {
	edge canvas.Point // the blade's edge on the screen
	r    float64      // outside of the ring
	area Rect         // of the drawing without the texts
}

// most is the end of the ring, degrees from vertical: a multiple of 15.
func (d Dial) most() float64 { return math.Max(45, 15*math.Ceil((d.HighDeg+3)/15)) }

// Draw draws the dial inside r, the angle to the screen in a row below it, or beside it where that leaves the
// drawing larger.
func (d Dial) Draw(c canvas.Canvas, r Rect) error {
	if err := cmp.Or(r.check("dial"), d.check()); err != nil {
		return err
	}
	f := canvas.Font{SizePT: typeSize(d.SizePT)}
	gap := 0.4 * em(f)
	var screen block
	var area, beside Rect
	radius := 0.0
	for _, share := range []float64{1, 0.5} {
		screen = newBlock(c, d.ScreenLabel, f, share*r.W, 0)
		beside = Rect{r.X, r.Y, r.W - (screen.w + gap), r.H}
		if area = (Rect{r.X, r.Y, r.W, r.H - screen.h}); screen.h <= beside.H && d.radius(beside) > d.radius(area) {
			area = beside
		}
		if radius = d.radius(area); radius >= leastRMM {
			break
		}
	}
	if !(radius >= leastRMM) || screen.w > r.W {
		return noRoom("dial", r, fmt.Sprintf("the texts leave a radius of %.1f mm, least is %d", radius, leastRMM))
	}
	p := d.place(area, radius)
	d.drawRing(c, p)
	d.drawScreen(c, p)
	d.drawBlade(c, p)
	scale := p
	if area.W == beside.W {
		screen.draw(c, p.screenEnd(d)+gap, area.Bottom()-screen.h, screen.w, 0)
		scale.area.W, scale.area.H = r.Right()-area.X, area.H-screen.h
	} else {
		screen.draw(c, r.X, r.Bottom()-screen.h, r.W, 0.5)
	}
	d.drawScale(c, scale, f)
	d.drawStroke(c, p)
	return nil
}

// reach is how far the drawing reaches left and right of the edge, for a radius of 1.
func (d Dial) reach() (left, right float64) {
	return bladeOfR + 2*jawOfR, math.Max(0.62, math.Sin(d.most()*math.Pi/180))
}

// radius is the largest that the area takes.
func (d Dial) radius(area Rect) float64 {
	l, r := d.reach()
	byW := (area.W - pointerMM - 2*rimMM) / (l + r)
	byH := area.H - pointerMM - 2*rimMM
	return math.Min(byW, byH)
}

// place stands the dial in the middle of the area, on its lower side.
func (d Dial) place(area Rect, radius float64) dialPlace {
	l, r := d.reach()
	w := (l+r)*radius + pointerMM
	x := area.X + (area.W-w)/2 + l*radius
	return dialPlace{edge: canvas.Point{X: x, Y: area.Bottom() - rimMM}, r: radius, area: area}
}

// at is the point at an angle from vertical and a distance from the edge.
func (p dialPlace) at(deg, dist float64) canvas.Point {
	return behind(p.edge, deg, 0, dist)
}

// sector is the piece of the ring between two angles.
func (p dialPlace) sector(from, to, inner, outer float64) canvas.Path {
	path, b, turn := polyline(p.at(from, outer)), p.at(to, inner), (to-from)*math.Pi/180
	arc(&path, p.edge, outer, outer, (from-90)*math.Pi/180, turn)
	path.Line(b.X, b.Y)
	arc(&path, p.edge, inner, inner, (to-90)*math.Pi/180, -turn)
	path.Close()
	return path
}

// inner is the inside of the ring.
func (p dialPlace) inner() float64 { return p.r * (1 - ringOfR) }

// drawRing draws the protractor: a tick every 5 degrees, the allowed range black, a pointer
// and a white line at the set angle.
func (d Dial) drawRing(c canvas.Canvas, p dialPlace) {
	inner, outline := p.inner(), math.Min(0.35, 0.02*p.r)
	if d.HighDeg > d.LowDeg {
		tint := canvas.Gray(222)
		c.Draw(p.sector(d.LowDeg, d.HighDeg, 0, inner), &tint, canvas.Pen{})
	}
	c.Draw(p.sector(0, d.most(), inner, p.r), &canvas.White, ink(outline))
	var ticks canvas.Path
	for a := 5.0; a < d.most(); a += 5 {
		length := (p.r - inner) * 0.4
		if math.Mod(a, 15) == 0 {
			length = (p.r - inner) * 0.75
		}
		u, v := p.at(a, p.r-length), p.at(a, p.r)
		ticks.Move(u.X, u.Y)
		ticks.Line(v.X, v.Y)
	}
	c.Draw(ticks, nil, ink(outline))
	if d.HighDeg > d.LowDeg {
		c.Draw(p.sector(d.LowDeg, d.HighDeg, inner, p.r), &canvas.Black, ink(outline))
	}
	c.Draw(polyline(p.at(0, 0), p.at(0, inner)), nil, ink(0.2, 1.2, 0.8))

	set := polyline(p.at(d.SetDeg, inner), p.at(d.SetDeg, p.r))
	c.Draw(set, nil, ink(0.9))
	if d.HighDeg > d.LowDeg {
		c.Draw(set, nil, canvas.Pen{Color: canvas.White, WidthMM: 0.45})
	}
	c.Draw(polygon(p.pointer(d)...), &canvas.Black, canvas.Pen{})
}

// pointer is the corners of the set mark: its tip on the ring, the lower and the upper one outside of it.
func (p dialPlace) pointer(d Dial) []canvas.Point {
	half := pointerMM / 2 / p.r * 180 / math.Pi
	return []canvas.Point{p.at(d.SetDeg, p.r), p.at(d.SetDeg+half, p.r+pointerMM), p.at(d.SetDeg-half, p.r+pointerMM)}
}

// drawScale writes the angles at the ends of the ring, level with them, where there is room.
func (d Dial) drawScale(c canvas.Canvas, p dialPlace, f canvas.Font) {
	if d.Scale == nil {
		return
	}
	const gap = 1.0
	write := func(deg float64, x func(y, w float64) float64) {
		s := d.Scale(deg)
		w := c.TextWidth(s, f)
		y := math.Min(p.at(deg, (p.inner()+p.r)/2).Y+capEM*em(f)/2, p.area.Bottom()-canvas.Descent*em(f))
		if x := x(y, w); s != "" && x >= p.area.X && x+w <= p.area.Right() && y >= p.area.Y+canvas.Ascent*em(f) {
			c.Text(x, y, s, f, canvas.Black, 0)
		}
	}
	write(0, func(_, w float64) float64 { return p.edge.X - gap - w })
	write(d.most(), func(y, _ float64) float64 {
		x := p.at(d.most(), p.r).X + gap
		if at := p.pointer(d); math.Max(at[0].Y, at[1].Y) > y-capEM*em(f)-0.5 { // beside the pointer
			x = math.Max(x, at[1].X+0.5)
		}
		return x
	})
}

// drawStroke draws the arrow of the stroke just over the screen, ahead of the ink.
func (d Dial) drawStroke(c canvas.Canvas, p dialPlace) {
	from, to := p.edge.X+(arcOfR+0.06)*p.r, p.screenEnd(d)
	if d.most() > 75 { // the ring comes down to the screen
		to = p.edge.X + 0.95*p.inner()
	}
	y := p.edge.Y - 0.13*p.r
	arrow(c, canvas.Point{X: from, Y: y}, canvas.Point{X: to, Y: y}, 0.05*p.r, 0.17*p.r, false)
}

// screenEnd is the right end of the screen: past the ring where the area has the room.
func (p dialPlace) screenEnd(d Dial) float64 {
	_, r := d.reach()
	return math.Max(p.edge.X+r*p.r, math.Min(p.edge.X+1.15*p.r, p.area.Right()-rimMM))
}

// arcOfR is the radius of the arc of the angle to the screen.
const arcOfR = 0.44

// drawScreen draws the screen, the ink in the wedge ahead of the blade, and the arc of the
// angle to the screen.
func (d Dial) drawScreen(c canvas.Canvas, p dialPlace) {
	size := 0.26 * p.r
	face, front := p.at(d.SetDeg, size*0.85), canvas.Point{X: p.edge.X + size, Y: p.edge.Y}
	bead := polyline(p.edge, face)
	// Round to the front: the controls carry on along the two faces' normals.
	s, co := math.Sincos(d.SetDeg * math.Pi / 180)
	k := 0.45 * size * (1 - d.SetDeg/110)
	bead.Curve(face.X+co*k, face.Y+s*k, front.X+0.1*size, front.Y-k, front.X, front.Y)
	bead.Close()
	dark := canvas.Gray(90)
	c.Draw(bead, &dark, canvas.Pen{})

	arcLine(c, p.edge, arcOfR*p.r, 0, -(90-d.SetDeg)*math.Pi/180)
	l, _ := d.reach()
	c.Draw(segment(p.edge.X-l*p.r, p.edge.Y, p.screenEnd(d), p.edge.Y), nil, ink(0.7))
}

// drawBlade draws rubber and holder leaning to the right, the leading corner on the screen.
func (d Dial) drawBlade(c canvas.Canvas, p dialPlace) {
	t, j := bladeOfR*p.r, jawOfR*p.r
	reach := p.inner() - 0.8
	length := math.Sqrt(reach*reach - (t+j)*(t+j))
	// along: up the printing face from the edge; back: away from the stroke.
	at := func(along, back float64) canvas.Point { return behind(p.edge, d.SetDeg, back, along) }
	rubber := []canvas.Point{at(0, t), at(length*0.65, t), at(length*0.65, 0), at(0, 0)}
	c.Draw(polygon(rubber...), &canvas.White, canvas.Pen{})
	hatch(c, rubber, 45-d.SetDeg, 1.3, ink(0.15))
	c.Draw(polygon(rubber...), nil, ink(0.4))
	metal := canvas.Gray(200)
	c.Draw(polygon(at(length*0.58, t+j), at(length, t+j), at(length, -j), at(length*0.58, -j)), &metal, ink(0.4))
}
