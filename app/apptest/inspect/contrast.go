package inspect

import (
	"fmt"
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// The least contrast of text, and of large text and shapes with a message.
const (
	leastText  = 4.5
	leastShape = 3
)

func alpha(c color.Color) uint8      { return color.NRGBAModel.Convert(c).(color.NRGBA).A }
func seenThrough(c color.Color) bool { return c == nil || alpha(c) == 0 }
func solid(c color.Color) bool       { return c != nil && alpha(c) == 255 }

// under is the colour at a point before an object is painted.
func (s *sight) under(order int, ground color.Color, x, y float32) color.Color {
	for _, d := range s.drawn[:order] {
		if c := fill(d.object); !seenThrough(c) && covers(d, x, y) {
			n := color.NRGBAModel.Convert(c).(color.NRGBA)
			ground = look.Mix(ground, color.NRGBA{R: n.R, G: n.G, B: n.B, A: 255}, float64(n.A)/255)
		}
	}
	return ground
}

// faint tells of texts that cannot be told from their ground. WCAG 2.2, 1.4.3, lets
// what cannot be used now be fainter; it is read all the same, so it is held to this.
func (s *sight) faint(lines []line, ground color.Color) []Finding {
	var list []Finding
	for _, l := range lines {
		least := leastText
		// large text: 18 pt, or 14 pt bold, at 96 dots an inch
		if size := l.text.TextSize; size >= 24 || size >= 18.66 && l.text.TextStyle.Bold {
			least = leastShape
		}
		in := l.ink.and(l.clip)
		worst := math.Inf(1)
		for _, part := range []float32{0.02, 0.5, 0.98} {
			at := s.under(l.order, ground, in.left+part*in.width(), (in.top+in.bottom)/2)
			worst = min(worst, golden.Contrast(l.text.Color, at))
		}
		if worst < least {
			list = append(list, Finding{Faint, fmt.Sprintf("%s, %.1f:1", strings.TrimSpace(l.text.Text), worst), l.of})
		}
	}
	return list
}

// roles are the colours that carry a message, by name.
func roles() map[color.Color]string {
	p := look.PaletteNow()
	return map[color.Color]string{
		p.Water: "water", p.Drink: "drink", p.Food: "food", p.Loss: "loss", p.Salt: "salt",
		p.Ink: "ink", p.Ink2: "ink 2", p.Ink3: "ink 3", p.Edge: "edge",
	}
}

// faintShapes tells of shapes with a message that cannot be told from their
// ground. A shape upon one of its own colour belongs to it; one with an edge that can
// be told from the ground is told by that.
func (s *sight) faintShapes(ground color.Color) []Finding {
	var list []Finding
	named := roles()
	for i, d := range s.drawn {
		c, x, y, ok := shape(d)
		role, carries := named[c]
		if !ok || !carries || d.off || !covers(d, x, y) && d.clip.and(d.place) != d.place {
			continue // its middle is out of sight
		}
		at := s.under(i, ground, x, y)
		if got := golden.Contrast(c, at); got < leastShape && got > 1.01 && !outlined(d.object, at) && !s.edged(i, ground, x, y) {
			list = append(list, Finding{FaintShape, fmt.Sprintf("%s on %s, %.1f:1", role, hex(at), got), d.of})
		}
	}
	return list
}

// edgeMost is how far the edge of a shape lies outside it, px.
const edgeMost = 2

// edged reports whether a shape lies upon an edge, seen above and below it or at both
// sides, that can be told from what is around it.
func (s *sight) edged(i int, ground color.Color, x, y float32) bool {
	in := s.drawn[i].place
	near := func(a, b float32) bool { return a > 0 && a <= edgeMost && b > 0 && b <= edgeMost }
	for j := i - 1; j >= 0; j-- {
		d := s.drawn[j]
		c := fill(d.object)
		if seenThrough(c) || !covers(d, x, y) {
			continue
		}
		out := d.place
		if !solid(c) || !near(in.top-out.top, out.bottom-in.bottom) && !near(in.left-out.left, out.right-in.right) {
			return false
		}
		return golden.Contrast(c, s.under(j, ground, x, y)) >= leastShape
	}
	return false
}

// outlined reports that an object has an edge that can be told from a ground.
func outlined(o fyne.CanvasObject, ground color.Color) bool {
	edge, width := color.Color(nil), float32(0)
	switch o := o.(type) {
	case *canvas.Rectangle:
		edge, width = o.StrokeColor, o.StrokeWidth
	case *canvas.Circle:
		edge, width = o.StrokeColor, o.StrokeWidth
	}
	return width >= 1 && !seenThrough(edge) && golden.Contrast(edge, ground) >= leastShape
}

// shape is the colour of a shape and a point of it; ok is false for what is no
// shape.
func shape(d drawn) (c color.Color, x, y float32, ok bool) {
	x, y = (d.place.left+d.place.right)/2, (d.place.top+d.place.bottom)/2
	switch o := d.object.(type) {
	case *canvas.Rectangle:
		if seenThrough(o.FillColor) && o.StrokeWidth > 0 {
			return o.StrokeColor, d.place.left, y, true
		}
		return o.FillColor, x, y, true
	case *canvas.ArbitraryPolygon:
		return o.FillColor, x, y, true
	case *canvas.Circle:
		return o.FillColor, x, y, true
	case *canvas.Line:
		return o.StrokeColor, x, y, true
	}
	return nil, 0, 0, false
}

func hex(c color.Color) string {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return fmt.Sprintf("%02X%02X%02X", n.R, n.G, n.B)
}
