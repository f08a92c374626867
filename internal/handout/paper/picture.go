package paper

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// The scales a picture can be drawn at, pixels a millimetre.
const (
	MinScale = 0.5
	MaxScale = 24
)

// Picture draws a page, counted from 0, at a scale in pixels a millimetre. It
// returns an error for a page that is not there or a scale outside [MinScale]
// to [MaxScale].
func (d Document) Picture(page int, scale float64) (*image.RGBA, error) {
	if page < 0 || page >= len(d.Pages) {
		return nil, fmt.Errorf("draw page %d: the document has %d", page+1, len(d.Pages))
	}
	if !(scale >= MinScale && scale <= MaxScale) {
		return nil, fmt.Errorf("draw page %d: a scale of %g pixels a millimetre is outside %g to %g", page+1, scale, float64(MinScale), float64(MaxScale))
	}
	w, h := int(math.Round(d.Size.Width*scale)), int(math.Round(d.Size.Height*scale))
	b := &brush{img: image.NewRGBA(image.Rect(0, 0, w, h)), scale: scale, faces: d.faces}
	draw.Draw(b.img, b.img.Bounds(), image.White, image.Point{}, draw.Src)
	for _, m := range d.Pages[page].Marks {
		if err := b.mark(m); err != nil {
			return nil, fmt.Errorf("draw page %d: %w", page+1, err)
		}
	}
	return b.img, nil
}

// PNG is [Document.Picture] as a PNG file.
func (d Document) PNG(page int, scale float64) ([]byte, error) {
	img, err := d.Picture(page, scale)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		return nil, fmt.Errorf("write page %d as PNG: %w", page+1, err)
	}
	return out.Bytes(), nil
}

// brush draws marks on a picture.
type brush struct {
	img   *image.RGBA
	scale float64
	faces *Faces
	shape vector.Rasterizer
}

func (b *brush) mark(m Mark) error {
	switch m := m.(type) {
	case Text:
		return b.text(m)
	case Line:
		b.line(m)
	case Box:
		b.box(m)
	case Check:
		b.box(m.box())
	case Hatch:
		for _, l := range m.lines() {
			b.line(l)
		}
	}
	return nil
}

// text draws letter by letter. The baseline is put on a whole pixel, so that
// small text stays crisp.
func (b *brush) text(m Text) error {
	x, y := m.X*b.scale, math.Round(m.Y*b.scale)
	em := fixed.Int26_6(math.Round(m.Size * b.scale * 64))
	for _, r := range m.Text {
		g, _ := b.faces.lookUp(m.Weight, r)
		segments, err := b.faces.fonts[m.Weight].LoadGlyph(&b.faces.buf, g.index, em, nil)
		if err != nil {
			return fmt.Errorf("draw the letter %q: %w", r, err)
		}
		b.outline(segments, x, y, m.Ink)
		x += g.width * m.Size * b.scale
	}
	return nil
}

// outline fills a glyph whose origin is (x, y).
func (b *brush) outline(segments sfnt.Segments, x, y float64, ink Ink) {
	if len(segments) == 0 {
		return
	}
	bounds := segments.Bounds()
	left := math.Floor(x + float64(bounds.Min.X)/64)
	top := math.Floor(y + float64(bounds.Min.Y)/64)
	right := math.Ceil(x + float64(bounds.Max.X)/64)
	bottom := math.Ceil(y + float64(bounds.Max.Y)/64)
	b.shape.Reset(int(right-left), int(bottom-top))
	at := func(p fixed.Point26_6) (float32, float32) {
		return float32(x + float64(p.X)/64 - left), float32(y + float64(p.Y)/64 - top)
	}
	for _, s := range segments {
		x0, y0 := at(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			b.shape.ClosePath()
			b.shape.MoveTo(x0, y0)
		case sfnt.SegmentOpLineTo:
			b.shape.LineTo(x0, y0)
		case sfnt.SegmentOpQuadTo:
			x1, y1 := at(s.Args[1])
			b.shape.QuadTo(x0, y0, x1, y1)
		case sfnt.SegmentOpCubeTo:
			x1, y1 := at(s.Args[1])
			x2, y2 := at(s.Args[2])
			b.shape.CubeTo(x0, y0, x1, y1, x2, y2)
		}
	}
	b.shape.ClosePath()
	b.fill(image.Rect(int(left), int(top), int(right), int(bottom)), ink)
}

// fill paints the shape at a place.
func (b *brush) fill(at image.Rectangle, ink Ink) {
	r, g, bl := ink.RGB()
	b.shape.Draw(b.img, at, image.NewUniform(color.RGBA{r, g, bl, 0xFF}), image.Point{})
}

// plain paints a rectangle of whole pixels.
func (b *brush) plain(at image.Rectangle, ink Ink) {
	r, g, bl := ink.RGB()
	draw.Draw(b.img, at, image.NewUniform(color.RGBA{r, g, bl, 0xFF}), image.Point{}, draw.Src)
}

// thick is a line's width in whole pixels, at least one.
func (b *brush) thick(mm float64) int { return max(1, int(math.Round(mm*b.scale))) }

// pixel is the nearest whole pixel.
func (b *brush) pixel(mm float64) int { return int(math.Round(mm * b.scale)) }
