package chart

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// pen hands out the objects of a drawing in the order they are drawn. Drawing
// again hands out the same objects in the same order, so that they are moved
// and not made; only where the sort of object differs is one made anew.
type pen struct {
	objects []fyne.CanvasObject
	next    int
	ink     inks
	short   map[shortKey]string
}

// inks are the colours of a drawing, mixed once for a theme.
type inks struct {
	look.Palette
	// pale is for what is provisional or may fall out.
	pale [6]color.Color
	// area is the ground of a range, column that of a chance to drink, rest
	// what was not replaced, band the advice.
	area, column, rest, band, clear color.Color
}

func newInks(p look.Palette) inks {
	k := inks{Palette: p, clear: color.Transparent}
	for s := look.Nothing; s <= look.Salt; s++ {
		k.pale[s] = look.Mix(p.Sheet, p.Hue(s), 0.45)
	}
	k.area = look.Mix(p.Sheet, p.Loss, 0.17)
	k.column = see(p.Hairline, 0x90)
	k.rest = look.Mix(p.Sheet, p.Loss, 0.30)
	k.band = look.Mix(p.Sheet, p.Ink3, 0.26)
	if p.Dark {
		k.area = look.Mix(p.Sheet, p.Loss, 0.24)
		k.column = see(p.Ink, 0x1C)
		k.rest = look.Mix(p.Sheet, p.Loss, 0.42)
	}
	return k
}

// see is a colour that lets through what is under it.
func see(c color.Color, alpha uint8) color.Color {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	n.A = alpha
	return n
}

// hue is the colour of a substance, pale for what is provisional.
func (k inks) hue(s look.Substance, pale bool) color.Color {
	if pale {
		return k.pale[s]
	}
	return k.Hue(s)
}

// begin starts a drawing over.
func (p *pen) begin() { p.next = 0 }

// drawn lists the objects of the last drawing.
func (p *pen) drawn() []fyne.CanvasObject { return p.objects[:p.next] }

// slot is the object that comes next; nil at the end.
func (p *pen) slot() fyne.CanvasObject {
	if p.next < len(p.objects) {
		return p.objects[p.next]
	}
	return nil
}

// put keeps a new object in the next place.
func (p *pen) put(o fyne.CanvasObject) {
	if p.next < len(p.objects) {
		p.objects[p.next] = o
	} else {
		p.objects = append(p.objects, o)
	}
}

// rect draws a filled rectangle on whole px.
func (p *pen) rect(x, y, w, h float32, fill color.Color) {
	p.round(x, y, w, h, 0, fill)
}

// round draws a filled rectangle with round corners.
func (p *pen) round(x, y, w, h, radius float32, fill color.Color) {
	o, ok := p.slot().(*canvas.Rectangle)
	if !ok {
		o = canvas.NewRectangle(fill)
		p.put(o)
	}
	p.next++
	left, up := px(x), px(y)
	if w <= 0 || h <= 0 {
		fill = color.Transparent // a graphics card would draw a hair
	}
	o.FillColor, o.CornerRadius = fill, radius
	o.Move(fyne.NewPos(left, up))
	o.Resize(fyne.NewSize(max(px(x+w)-left, 0), max(px(y+h)-up, 0)))
}

// board draws a large rounded box with an edge: plain rectangles with a small round
// piece at each corner, as [look.Ground].
func (p *pen) board(size fyne.Size, radius, thick float32, edge, fill color.Color) {
	w, h, r := px(size.Width), px(size.Height), radius
	for i := range 4 {
		x, y := r+float32(i%2)*(w-2*r), r+float32(i/2)*(h-2*r)
		p.dot(x, y, r, edge, nil)
		p.dot(x, y, r-thick, fill, nil)
	}
	p.rect(r, thick, w-2*r, r-thick, fill)
	p.rect(thick, r, w-2*thick, h-2*r, fill)
	p.rect(r, h-r, w-2*r, r-thick, fill)
	p.rect(r, 0, w-2*r, thick, edge)
	p.rect(r, h-thick, w-2*r, thick, edge)
	p.rect(0, r, thick, h-2*r, edge)
	p.rect(w-thick, r, thick, h-2*r, edge)
}

// edged draws a pale area within an edge of ink 3, 1 px, so that it can be told from
// the sheet (WCAG 2.2, success criterion 1.4.11).
func (p *pen) edged(x, y, w, h float32, fill color.Color) {
	c := p.ink.Ink3
	if w <= 0 || h <= 0 {
		c = p.ink.clear
	}
	left, up, right, down := px(x), px(y), px(x+w), px(y+h)
	p.rect(left, up, right-left, 1, c)
	p.rect(left, down-1, right-left, 1, c)
	p.rect(left, up, 1, down-up, c)
	p.rect(right-1, up, 1, down-up, c)
	p.rect(left+1, up+1, right-left-2, down-up-2, fill)
}

// line draws a line of any slope.
func (p *pen) line(x1, y1, x2, y2, width float32, c color.Color) {
	o, ok := p.slot().(*canvas.Line)
	if !ok {
		o = canvas.NewLine(c)
		p.put(o)
	}
	p.next++
	o.StrokeColor, o.StrokeWidth = c, width
	o.Position1, o.Position2 = fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
}

// thinnest is the least height of an upright side, px: the graphics card draws
// nonsense where two corners of a polygon coincide.
const thinnest = 0.5

// quad fills the area between two upright sides.
func (p *pen) quad(x1, top1, bottom1, x2, top2, bottom2 float32, fill color.Color) {
	o, ok := p.slot().(*canvas.ArbitraryPolygon)
	if !ok || len(o.Points) != 4 {
		o = canvas.NewArbitraryPolygon(make([]fyne.Position, 4), fill)
		p.put(o)
	}
	p.next++
	bottom1, bottom2 = max(bottom1, top1+thinnest), max(bottom2, top2+thinnest)
	top, bottom := min(top1, top2), max(bottom1, bottom2)
	o.FillColor = fill
	o.Points[0] = fyne.NewPos(0, top1-top)
	o.Points[1] = fyne.NewPos(x2-x1, top2-top)
	o.Points[2] = fyne.NewPos(x2-x1, bottom2-top)
	o.Points[3] = fyne.NewPos(0, bottom1-top)
	o.Move(fyne.NewPos(x1, top))
	o.Resize(fyne.NewSize(max(x2-x1, 0), max(bottom-top, 0)))
}

// habit draws the filled triangle of the habit, its tip at (x, y).
func (p *pen) habit(x, y float32) {
	const width, height = 10, 8
	o, ok := p.slot().(*canvas.ArbitraryPolygon)
	if !ok || len(o.Points) != 3 {
		o = canvas.NewArbitraryPolygon([]fyne.Position{{X: width / 2, Y: 0}, {X: width, Y: height}, {X: 0, Y: height}}, p.ink.Ink2)
		p.put(o)
	}
	p.next++
	o.FillColor = p.ink.Ink2
	o.Points[0], o.Points[1], o.Points[2] = fyne.NewPos(width/2, 0), fyne.NewPos(width, height), fyne.NewPos(0, height)
	o.Move(fyne.NewPos(px(x)-width/2, px(y)))
	o.Resize(fyne.NewSize(width, height))
}

// triangle draws a filled triangle with its side of twice half at y and its tip so
// many px below, above for less than nothing.
func (p *pen) triangle(x, y, half, tip float32) {
	o, ok := p.slot().(*canvas.ArbitraryPolygon)
	if !ok || len(o.Points) != 3 {
		o = canvas.NewArbitraryPolygon(make([]fyne.Position, 3), p.ink.Ink)
		p.put(o)
	}
	p.next++
	o.FillColor = p.ink.Ink
	top := min(y, y+tip)
	o.Points[0], o.Points[1], o.Points[2] = fyne.NewPos(0, y-top), fyne.NewPos(2*half, y-top), fyne.NewPos(half, y+tip-top)
	o.Move(fyne.NewPos(px(x)-half, px(top)))
	o.Resize(fyne.NewSize(2*half, max(tip, -tip)))
}

// dot draws a circle; stroke nil for none.
func (p *pen) dot(x, y, radius float32, fill, stroke color.Color) {
	o, ok := p.slot().(*canvas.Circle)
	if !ok {
		o = canvas.NewCircle(fill)
		p.put(o)
	}
	p.next++
	o.FillColor, o.StrokeColor, o.StrokeWidth = fill, stroke, 0
	if stroke != nil {
		o.StrokeWidth = 1.5
	}
	o.Move(fyne.NewPos(x-radius, y-radius))
	o.Resize(fyne.NewSquareSize(2 * radius))
}

// dashed draws an upright or level dashed line as pieces of rectangles. Their
// number depends on the length alone.
func (p *pen) dashed(x1, y1, x2, y2, width float32, c color.Color) {
	const dash, gap = 5, 4
	length := max(x2-x1, y2-y1)
	n := max(int(math.Ceil(float64(length/(dash+gap)))), 1)
	p.pieces(x1, y1, x2, y2, width, n, c)
}

// pieces draws a dashed line of n dashes, with gaps nearly as long.
func (p *pen) pieces(x1, y1, x2, y2, width float32, n int, c color.Color) {
	step := max(x2-x1, y2-y1) / (float32(n) - 0.44)
	for i := range n {
		at := float32(i) * step
		if x2 > x1 {
			p.rect(x1+at, y1-width/2, step*0.56, width, c)
		} else {
			p.rect(x1-width/2, y1+at, width, step*0.56, c)
		}
	}
}

// dashedBox draws the dashed box of an estimate. It has as many dashes as it is
// told, however large it is, so that a box that grows makes nothing anew.
func (p *pen) dashedBox(x, y, w, h float32, across, down int) {
	left, up, right, low := px(x), px(y), px(x+w), px(y+h)
	for _, at := range [2]float32{up, low} {
		p.pieces(left, at+0.5, right, at+0.5, 1, across, p.ink.Ink)
	}
	for _, at := range [2]float32{left, right} {
		p.pieces(at+0.5, up, at+0.5, max(low, up+1), 1, down, p.ink.Ink)
	}
}

// px is the nearest whole px.
func px(x float32) float32 { return float32(math.Round(float64(x))) }

// ceil is the next whole px.
func ceil(x float32) float32 { return float32(math.Ceil(float64(x))) }
