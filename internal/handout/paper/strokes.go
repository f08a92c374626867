package paper

import (
	"image"
	"math"
)

// line draws a line: an upright or level one on whole pixels, so that
// hairlines are even; a slanting one as a thin strip.
func (b *brush) line(m Line) {
	if m.Dash > 0 {
		for _, part := range m.dashes() {
			b.line(part)
		}
		return
	}
	w := b.thick(m.Width)
	switch {
	case m.Y1 == m.Y2:
		y := b.pixel(m.Y1) - w/2
		b.plain(image.Rect(b.pixel(m.X1), y, b.pixel(m.X2), y+w), m.Ink)
	case m.X1 == m.X2:
		x := b.pixel(m.X1) - w/2
		b.plain(image.Rect(x, b.pixel(m.Y1), x+w, b.pixel(m.Y2)), m.Ink)
	default:
		b.strip(m)
	}
}

// strip fills a slanting line.
func (b *brush) strip(m Line) {
	x1, y1, x2, y2 := m.X1*b.scale, m.Y1*b.scale, m.X2*b.scale, m.Y2*b.scale
	length := math.Hypot(x2-x1, y2-y1)
	half := max(m.Width*b.scale, 0.6) / 2
	dx, dy := (y2-y1)/length*half, (x1-x2)/length*half
	left, top := math.Floor(min(x1, x2)-half), math.Floor(min(y1, y2)-half)
	right, bottom := math.Ceil(max(x1, x2)+half), math.Ceil(max(y1, y2)+half)
	b.shape.Reset(int(right-left), int(bottom-top))
	to := func(x, y float64) (float32, float32) { return float32(x - left), float32(y - top) }
	b.shape.MoveTo(to(x1+dx, y1+dy))
	b.shape.LineTo(to(x2+dx, y2+dy))
	b.shape.LineTo(to(x2-dx, y2-dy))
	b.shape.LineTo(to(x1-dx, y1-dy))
	b.shape.ClosePath()
	b.fill(image.Rect(int(left), int(top), int(right), int(bottom)), m.Ink)
}

// dashes parts a dashed line into its dashes.
func (m Line) dashes() []Line {
	length := math.Hypot(m.X2-m.X1, m.Y2-m.Y1)
	if length == 0 {
		return nil
	}
	ux, uy := (m.X2-m.X1)/length, (m.Y2-m.Y1)/length
	var list []Line
	for at := 0.0; at < length; at += 2 * m.Dash {
		end := min(at+m.Dash, length)
		list = append(list, Line{
			X1: m.X1 + ux*at, Y1: m.Y1 + uy*at, X2: m.X1 + ux*end, Y2: m.Y1 + uy*end,
			Width: m.Width, Ink: m.Ink,
		})
	}
	return list
}

// box draws a rectangle: its edges are put on whole pixels.
func (b *brush) box(m Box) {
	at := image.Rect(b.pixel(m.X), b.pixel(m.Y), b.pixel(m.X+m.W), b.pixel(m.Y+m.H))
	radius := m.Radius * b.scale
	if m.Fill != NoInk {
		if radius < 0.5 {
			b.plain(at, m.Fill)
		} else {
			b.shape.Reset(at.Dx(), at.Dy())
			b.rounded(0, radius, at)
			b.fill(at, m.Fill)
		}
	}
	if m.Stroke == NoInk {
		return
	}
	if m.Dash > 0 {
		b.edges(m)
		return
	}
	b.shape.Reset(at.Dx(), at.Dy())
	b.rounded(0, radius, at)
	inner := float64(b.thick(m.Width))
	b.rounded(inner, max(radius-inner, 0), at)
	b.fill(at, m.Stroke)
}

// edges draws the four sides of a dashed box.
func (b *brush) edges(m Box) {
	side := Line{Width: m.Width, Ink: m.Stroke, Dash: m.Dash}
	for _, s := range [4][4]float64{
		{m.X, m.Y, m.X + m.W, m.Y}, {m.X, m.Y + m.H, m.X + m.W, m.Y + m.H},
		{m.X, m.Y, m.X, m.Y + m.H}, {m.X + m.W, m.Y, m.X + m.W, m.Y + m.H},
	} {
		side.X1, side.Y1, side.X2, side.Y2 = s[0], s[1], s[2], s[3]
		b.line(side)
	}
}

// rounded adds a rectangle with round corners, inset from the edges of at. An
// inset one runs the other way round, so that it leaves a hole.
func (b *brush) rounded(inset, radius float64, at image.Rectangle) {
	l, t := float32(inset), float32(inset)
	r, btm := float32(float64(at.Dx())-inset), float32(float64(at.Dy())-inset)
	q := float32(min(radius, float64(r-l)/2, float64(btm-t)/2))
	// A quarter circle as a cubic curve: its handles are 0.5523 of the radius.
	k := q * (1 - 0.5523)
	s := &b.shape
	s.MoveTo(l+q, t)
	if inset == 0 {
		s.LineTo(r-q, t)
		s.CubeTo(r-k, t, r, t+k, r, t+q)
		s.LineTo(r, btm-q)
		s.CubeTo(r, btm-k, r-k, btm, r-q, btm)
		s.LineTo(l+q, btm)
		s.CubeTo(l+k, btm, l, btm-k, l, btm-q)
		s.LineTo(l, t+q)
		s.CubeTo(l, t+k, l+k, t, l+q, t)
	} else {
		s.CubeTo(l+k, t, l, t+k, l, t+q)
		s.LineTo(l, btm-q)
		s.CubeTo(l, btm-k, l+k, btm, l+q, btm)
		s.LineTo(r-q, btm)
		s.CubeTo(r-k, btm, r, btm-k, r, btm-q)
		s.LineTo(r, t+q)
		s.CubeTo(r, t+k, r-k, t, r-q, t)
	}
	s.ClosePath()
}
