package chart

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// HeatPoint is a test: sweat rate against heat, with its range.
type HeatPoint struct {
	Heat, Rate float64
	Range      Span
	// Name is the day of the test; Short is what is written where that has no room, empty
	// for nothing.
	Name, Short string
	// As is the rate as it was measured, drawn as a ring below the dot where Ringed.
	As     float64
	Ringed bool
}

// HeatBand is the range the tests lead one to expect at a heat.
type HeatBand struct {
	Heat, Middle float64
	Range        Span
	// RangeOnly: the middle is not drawn.
	RangeOnly bool
}

// HeatData is what a [HeatScatter] shows.
type HeatData struct {
	Points []HeatPoint
	Band   []HeatBand
	// Estimates are drawn as dashed boxes; Rate is not used.
	Estimates []HeatPoint
	// Heats and Rates are the ticks; the first and last are the ends.
	Heats, Rates []Tick
	// HeatText and RateText name the axes.
	HeatText, RateText string
	Summary            string
}

// HeatScatter draws an athlete's sweat rates against the heat they were
// tested in, and estimates for heat they were not.
type HeatScatter struct {
	base
	data   HeatData
	labels []area
	// band is that of the data, with points where it leaves the picture.
	band []HeatBand
	// seen are the points that are drawn, places what they take.
	seen   []HeatPoint
	places map[spot]bool
}

// Where there are many tests, those that lie within so many px of a later one, range
// and all, are not drawn: its mark is over theirs.
const (
	manyPoints         = 100
	apart      float32 = 3
)

// spot is where a point is drawn, in steps of [apart].
type spot struct{ x, y, high, low, as int }

// choose chooses the points that are drawn.
func (c *HeatScatter) choose(at plot) {
	c.seen = c.seen[:0]
	if len(c.data.Points) <= manyPoints {
		c.seen = append(c.seen, c.data.Points...)
		return
	}
	if c.places == nil {
		c.places = map[spot]bool{}
	}
	clear(c.places)
	step := func(x float32) int { return int(x / apart) }
	for _, p := range slices.Backward(c.data.Points) {
		s := spot{x: step(at.x.inside(p.Heat)), y: step(at.y.inside(p.Rate)), high: step(at.y.inside(p.Range.High)), low: step(at.y.inside(p.Range.Low))}
		if p.Ringed {
			s.as = 1 + step(at.y.inside(p.As))
		}
		if !c.places[s] {
			c.places[s] = true
			c.seen = append(c.seen, p)
		}
	}
	slices.Reverse(c.seen)
}

// area is where a name was put.
type area struct{ x, y, w, h float32 }

func (a area) touches(b area) bool {
	return a.x < b.x+b.w && b.x < a.x+a.w && a.y < b.y+b.h && b.y < a.y+a.h
}

// NewHeatScatter makes an empty picture.
func NewHeatScatter() *HeatScatter {
	c := &HeatScatter{}
	c.start(c, func() fyne.Size {
		if c.data.RateText == "" && c.data.HeatText == "" {
			return fyne.NewSize(look.Scaled(280), look.Scaled(150))
		}
		return fyne.NewSize(look.Scaled(280), look.Scaled(200))
	}, c.paint)
	return c
}

// Set shows other data. The slices are copied.
func (c *HeatScatter) Set(d HeatData) {
	kept := c.data
	c.data = d
	c.data.Points = append(kept.Points[:0], d.Points...)
	c.data.Band = append(kept.Band[:0], d.Band...)
	c.data.Estimates = append(kept.Estimates[:0], d.Estimates...)
	c.data.Heats = append(kept.Heats[:0], d.Heats...)
	c.data.Rates = append(kept.Rates[:0], d.Rates...)
	c.shown(d.Summary)
}

func (c *HeatScatter) paint(size fyne.Size) {
	d := &c.data
	if len(d.Points)+len(d.Estimates)+len(d.Band) == 0 {
		c.say(size)
		return
	}
	at := c.plot(size)
	c.leave(at.y.from)
	for i := 1; i < len(c.band); i++ {
		a, b := c.band[i-1], c.band[i]
		c.pen.quad(px(at.x.inside(a.Heat)), px(at.y.inside(a.Range.High)), px(at.y.inside(a.Range.Low)),
			px(at.x.inside(b.Heat)), px(at.y.inside(b.Range.High)), px(at.y.inside(b.Range.Low)), c.pen.ink.area)
	}
	c.paintAxes(at, size)
	c.paintMiddle(at)
	c.labels = c.labels[:0]
	for _, e := range d.Estimates {
		w := look.Scaled(16)
		x, high, low := at.x.inside(e.Heat), at.y.inside(e.Range.High), at.y.inside(e.Range.Low)
		c.pen.dashedBox(x-w/2, high, w, max(low-high, 3), 4, 9)
		c.labels = append(c.labels, area{x - w/2, high, w, low - high})
	}
	c.choose(at)
	for _, p := range c.seen {
		c.paintPoint(p, at)
	}
	for _, e := range d.Estimates {
		c.name(e, at.x.inside(e.Heat), at.y.inside(e.Range.High), look.Scaled(8), at, size)
	}
	for _, p := range c.seen {
		c.name(p, at.x.inside(p.Heat), at.y.inside(p.Rate), look.Scaled(8), at, size)
	}
}

// leave is the band with a point of its own where its upper edge leaves the picture, whose
// top stands for so many L/h: the edge is drawn to there, and the band lies flat beyond.
func (c *HeatScatter) leave(top float64) {
	c.band = c.band[:0]
	for i, b := range c.data.Band {
		if i > 0 {
			a := c.data.Band[i-1]
			if low, high := min(a.Range.High, b.Range.High), max(a.Range.High, b.Range.High); low < top && high > top {
				c.band = append(c.band, a.toward(b, (top-a.Range.High)/(b.Range.High-a.Range.High)))
			}
		}
		c.band = append(c.band, b)
	}
}

// toward is the point between two that lies such a part of the way.
func (b HeatBand) toward(to HeatBand, part float64) HeatBand {
	between := func(from, to float64) float64 { return from + part*(to-from) }
	return HeatBand{
		Heat: between(b.Heat, to.Heat), Middle: between(b.Middle, to.Middle), RangeOnly: b.RangeOnly || to.RangeOnly,
		Range: Span{Low: between(b.Range.Low, to.Range.Low), High: between(b.Range.High, to.Range.High)},
	}
}

// plot leaves room for ticks and the names of the axes.
func (c *HeatScatter) plot(size fyne.Size) plot {
	d := &c.data
	var ticks float32
	for _, t := range d.Rates {
		ticks = max(ticks, look.Note.Width(t.Text))
	}
	line, top, foot := look.Note.Pitch(), look.Note.Height()/2+2, look.Note.Pitch()
	if d.RateText != "" {
		top = line + look.Scaled(8)
	}
	if d.HeatText != "" {
		foot += line
	}
	at := plot{
		x: scale{from: 0, to: 1, start: px(ticks + look.Scaled(10)), end: px(size.Width - look.Scaled(12))},
		y: scale{from: 1, to: 0, start: px(top), end: px(size.Height - foot - look.Scaled(6))},
	}
	if n := len(d.Heats); n > 1 {
		at.x.from, at.x.to = d.Heats[0].At, d.Heats[n-1].At
	}
	if n := len(d.Rates); n > 1 {
		at.y.from, at.y.to = d.Rates[n-1].At, d.Rates[0].At
	}
	for _, p := range d.Points {
		at.y.from, _ = reach(at.y.from, 0, p.Range.High)
	}
	for _, p := range d.Estimates {
		at.y.from, _ = reach(at.y.from, 0, p.Range.High)
	}
	return at
}

func (c *HeatScatter) paintAxes(at plot, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	half := look.Note.Height() / 2
	above := float32(math.Inf(1))
	for _, t := range d.Rates {
		y := px(at.y.at(t.At))
		c.pen.rect(at.x.start, y, at.x.end-at.x.start, 1, k.Hairline)
		text := t.Text
		if above-y < look.Note.Height() {
			text = ""
		} else {
			above = y
		}
		c.pen.text(text, 0, y-half, at.x.start-look.Scaled(8), look.Note, k.Ink2, right)
	}
	c.pen.ticks(d.Heats, at.x, at.y.end+look.Scaled(6), size.Width)
	c.pen.text(d.RateText, at.x.start, 0, size.Width-at.x.start, look.Note, k.Ink2, left)
	c.pen.text(d.HeatText, 0, at.y.end+look.Scaled(6)+look.Note.Pitch(), at.x.end, look.Note, k.Ink2, right)
}

// paintMiddle draws the middle of the band and the edges of its range. Their pieces
// meet at whole px, so that no step is seen where they do.
func (c *HeatScatter) paintMiddle(at plot) {
	k := c.pen.ink
	for i := 1; i < len(c.band); i++ {
		a, b := c.band[i-1], c.band[i]
		x1, x2 := px(at.x.inside(a.Heat)), px(at.x.inside(b.Heat))
		edge := k.Ink3
		if max(a.Range.High, b.Range.High) > at.y.from { // the band runs off the picture
			edge = k.clear
		}
		c.pen.line(x1, px(at.y.inside(a.Range.High)), x2, px(at.y.inside(b.Range.High)), 1, edge)
		c.pen.line(x1, px(at.y.inside(a.Range.Low)), x2, px(at.y.inside(b.Range.Low)), 1, k.Ink3)
		if !a.RangeOnly && !b.RangeOnly {
			y1, y2 := px(at.y.inside(a.Middle)), px(at.y.inside(b.Middle))
			// its own ground keeps the curve off the lines behind
			c.pen.quad(x1, y1-2, y1+2, x2, y2-2, y2+2, k.area)
			c.pen.line(x1, y1, x2, y2, 2, k.Loss)
		}
	}
}

// leastWhisker is how far a whisker comes out of its dot to be drawn, px: a shorter one
// is no longer than the dot, and would be a speck.
const leastWhisker float32 = 3

// paintPoint draws a test with its whisker.
func (c *HeatScatter) paintPoint(p HeatPoint, at plot) {
	x, y := at.x.inside(p.Heat), at.y.inside(p.Rate)
	high, low := at.y.inside(p.Range.High), at.y.inside(p.Range.Low)
	r := look.Scaled(6)
	long := max(low-high, 0)
	if y-high < r+leastWhisker && low-y < r+leastWhisker { // the tips would be specks beside the dot
		high, long = y, 0
	}
	// sheet round both keeps them off the lines behind
	c.pen.rect(x-2, high, 4, long, c.pen.ink.Sheet)
	c.pen.rect(x-1, high, 2, long, c.pen.ink.Loss)
	c.pen.dot(x, y, look.Scaled(7), c.pen.ink.Sheet, nil)
	if p.Ringed {
		as := at.y.inside(p.As)
		c.pen.line(x, y, x, as, 1, c.pen.ink.Loss)
		c.pen.dot(x, as, look.Scaled(4.5), c.pen.ink.Sheet, c.pen.ink.Loss)
		c.labels = append(c.labels, area{x - r, as - r, 2 * r, 2 * r})
	}
	c.pen.dot(x, y, look.Scaled(5.5), c.pen.ink.Loss, nil)
	c.labels = append(c.labels, area{x - r, min(high, y-r), 2 * r, max(low, y+r) - min(high, y-r)})
}

// name writes a point's name beside a place where nothing is in the way and off the lines of
// the axis, else across one, else in short; never cut. Tests too close for that are told
// apart in the list beside the chart.
func (c *HeatScatter) name(p HeatPoint, x, y, away float32, at plot, size fyne.Size) {
	names := [2]string{p.Name, p.Short}
	least := look.Note.Width(p.Name)
	if p.Short != "" {
		least = min(least, look.Note.Width(p.Short))
	}
	if _, ok := c.free(least, x, y, away, at, size, true); !ok { // then there is none for more
		names = [2]string{}
	}
	for _, s := range names {
		for _, across := range [2]bool{false, true} {
			w := look.Note.Width(s)
			if spot, ok := c.free(w, x, y, away, at, size, across); s != "" && ok {
				c.labels = append(c.labels, spot)
				c.pen.text(s, spot.x, spot.y, w, look.Note, c.pen.ink.Ink, left)
				return
			}
		}
	}
	c.pen.text("", x, y, 0, look.Note, c.pen.ink.Ink, left)
}

// free finds a place for a name of a width: at the upper left as a rule; across says that
// a line of the axis may go through it.
func (c *HeatScatter) free(w, x, y, away float32, at plot, size fyne.Size, across bool) (area, bool) {
	h := look.Note.Height()
	for _, spot := range [8]area{
		{x - away - w, y - h - 2, w, h}, {x + away, y - h - 2, w, h}, {x + away, y + 4, w, h}, {x - away - w, y + 4, w, h},
		{x + away + 4, y - h/2, w, h}, {x - away - 4 - w, y - h/2, w, h}, {x - w/2, y - h - away - 2, w, h}, {x - w/2, y + away + 4, w, h},
	} {
		if spot.x >= at.x.start && spot.x+w <= size.Width && spot.y >= 0 && spot.y+h <= at.y.end && !c.taken(spot) && (across || !c.crossed(spot, at)) {
			return spot, true
		}
	}
	return area{}, false
}

// crossed reports that a line of the axis, the curve or an edge of its band goes through
// a name.
func (c *HeatScatter) crossed(spot area, at plot) bool {
	through := func(y float32) bool { return y > spot.y+spot.h*0.15 && y < spot.y+spot.h*0.9 }
	for _, t := range c.data.Rates {
		if through(px(at.y.at(t.At))) {
			return true
		}
	}
	for i := 1; i < len(c.data.Band); i++ {
		a, b := c.data.Band[i-1], c.data.Band[i]
		if at.x.inside(b.Heat) < spot.x || at.x.inside(a.Heat) > spot.x+spot.w {
			continue
		}
		for _, of := range [3]func(HeatBand) float64{
			func(h HeatBand) float64 { return h.Range.High }, func(h HeatBand) float64 { return h.Range.Low }, func(h HeatBand) float64 { return h.Middle },
		} {
			if through(at.y.inside(of(a))) || through(at.y.inside(of(b))) {
				return true
			}
		}
	}
	return false
}

func (c *HeatScatter) taken(spot area) bool {
	for _, other := range c.labels {
		if spot.touches(other) {
			return true
		}
	}
	return false
}
