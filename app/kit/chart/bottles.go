package chart

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Sizes of the bottles under the lines, px at 100 % text.
const (
	bottlesHigh float32 = 46
	bottleWide  float32 = 26
	spellHigh   float32 = 8
	stopGap     float32 = 4
)

// The bottles take a part of the picture's height, up to a most.
const (
	bottlesPart float32 = 0.24
	bottlesMost float32 = 120
)

// bottlesRoom is the height of the bottles.
func (c *DeficitChart) bottlesRoom() float32 {
	return px(min(max(c.Size().Height*bottlesPart, look.Scaled(bottlesHigh)), look.Scaled(bottlesMost)))
}

// stopsRoom is the height of all that stands under the lines of a chart of the
// deficit with stops: bottles, play, names, the legend of names that have no
// room, the fields, and the mouthfuls.
func (c *DeficitChart) stopsRoom(size fyne.Size) float32 {
	h := c.bottlesRoom() + look.Scaled(spellHigh) + 3*look.Scaled(stopGap) + 2*look.Note.Pitch()
	switch {
	case c.data.OneField: // the amounts of the others stand beside it
		h += look.ControlHeight() + 2 - look.Note.Pitch()
	case c.data.Fields:
		h += look.ControlHeight() + 2
	}
	return h + float32(len(c.legend(size)))*look.Note.Pitch()
}

// StopX is the px of the middle of a stop, FieldTop that of the room for fields:
// both as drawn last.
func (c *DeficitChart) StopX(stop int) float32 {
	if stop >= len(c.data.Stops) {
		return 0
	}
	return c.columns.across.inside(c.data.Stops[stop].Minute)
}

// leastPlot is the least height of the lines, tightPlot where all of a page can only be in
// sight so, px at 100 % text.
const (
	leastPlot float32 = 84
	tightPlot float32 = 62
)

// oneFieldTakes is how much of that the one field of many breaks may take.
const oneFieldTakes float32 = 14

// LeastHeight is the height at a width below which the lines would say nothing; tight,
// where they are as low as they may be.
func (c *DeficitChart) LeastHeight(width float32, tight bool) float32 {
	plot := leastPlot
	if tight {
		plot = tightPlot
	}
	if c.data.OneField {
		plot -= oneFieldTakes
	}
	return c.stopsRoom(fyne.NewSize(width, 0)) + look.Scaled(plot)
}

// fieldWide is the width of a field under a bottle, px at 100 % text.
const fieldWide float32 = 66

// fieldWidth is that of the fields, or of what is written under them.
func (c *DeficitChart) fieldWidth() float32 {
	wide := look.Scaled(fieldWide)
	for _, s := range c.data.Stops {
		wide = max(wide, look.Note.Width(s.Mouthfuls))
	}
	return min(wide, (c.Size().Width+labelGap)/float32(max(len(c.data.Stops), 1))-labelGap)
}

// Fields places the fields under the bottles, in a width each: under their stops, and
// beside each other where those stand close. One field alone, the first, stands under
// the selected stop.
func (c *DeficitChart) Fields(place func(stop int, x, width float32)) {
	if c.data.OneField {
		if i := c.data.Selected; i >= 0 && i < len(c.data.Stops) {
			c.placeAmounts(c.columns.across, c.Size().Width)
			place(0, c.labels[i].x, c.labels[i].width)
		}
		return
	}
	wide := c.fieldWidth()
	list := make([]label, 0, len(c.data.Stops))
	for _, s := range c.data.Stops {
		list = append(list, label{at: c.columns.across.inside(s.Minute), width: wide})
	}
	spread(list, 0, c.Size().Width)
	for i, l := range list {
		place(i, l.x, wide)
	}
}

// placeAmounts finds the places of the amounts under the stops, that of the selected
// one as wide as its field, and what is written of each: the amount, or its number
// alone, whose unit stands in the field, where the whole has no room beside the others.
// Where the numbers have none either, only the field has its place, and nothing is written.
func (c *DeficitChart) placeAmounts(across scale, width float32) (written func(BreakStop) string) {
	wide := min(look.Scaled(fieldWide), width)
	for _, written := range []func(BreakStop) string{amountOf, numberOf} {
		c.labels = c.labels[:0]
		for i, s := range c.data.Stops {
			l := label{at: across.inside(s.Minute), width: look.Note.Width(written(s))}
			if i == c.data.Selected {
				l.width = wide
			}
			c.labels = append(c.labels, l)
		}
		if spread(c.labels, 0, width) {
			return written
		}
	}
	for i := range c.labels {
		c.labels[i] = label{at: c.labels[i].at}
		if i == c.data.Selected {
			c.labels[i].width = wide
			c.labels[i].x = min(max(c.labels[i].at-wide/2, 0), width-wide)
		}
	}
	return func(BreakStop) string { return "" }
}

func amountOf(s BreakStop) string { return s.Amount }
func numberOf(s BreakStop) string { return s.Number }

// FieldTop is the px at which the room for fields begins.
func (c *DeficitChart) FieldTop() float32 { return c.stopsLow }

// nameOff is how far from its stop a name may stand, px at 100 % text.
const nameOff float32 = 14

// named reports whether the names of the stops have room under them.
func (c *DeficitChart) named(size fyne.Size) bool {
	across := c.time(size)
	c.labels = c.labels[:0]
	for _, s := range c.data.Stops {
		c.labels = append(c.labels, label{at: across.inside(s.Minute), width: look.Note.Width(s.Name)})
	}
	if !spread(c.labels, 0, size.Width) {
		return false
	}
	for _, l := range c.labels {
		if abs(l.x+l.width/2-l.at) > look.Scaled(nameOff) {
			return false
		}
	}
	return true
}

// legend are the lines that say what the numbers stand for, where the names have
// no room; none elsewhere, or where the stops have no names. Stops that are called
// the same are named once.
func (c *DeficitChart) legend(size fyne.Size) []string {
	if c.named(size) {
		return nil
	}
	var order []string
	numbers := map[string][]string{}
	for i, s := range c.data.Stops {
		if s.Name == "" {
			continue
		}
		if numbers[s.Name] == nil {
			order = append(order, s.Name)
		}
		numbers[s.Name] = append(numbers[s.Name], strconv.Itoa(i+1))
	}
	for i, name := range order {
		order[i] = strings.ReplaceAll(strings.Join(numbers[name], c.data.Comma)+" "+name, " ", "\u00a0")
	}
	return look.Wrap(strings.Join(order, c.data.Dot), look.Note, size.Width)
}

// ground is the px of the line that the bottles stand on.
func (c *DeficitChart) ground(at plot) float32 {
	return px(at.y.end + c.bottlesRoom() + look.Scaled(stopGap))
}

// paintStopColumns draws a column through lines and bottles for each stop, its sides
// dashed where it may not happen.
func (c *DeficitChart) paintStopColumns(at plot) {
	k, ground, wide := c.pen.ink, c.ground(at), c.bottleWidth(at)
	for _, s := range c.data.Stops {
		x := at.x.inside(s.Minute)
		if s.Maybe {
			c.pen.dashed(x-wide/2, at.y.start, x-wide/2, ground, 1, k.Ink3)
			c.pen.dashed(x+wide/2, at.y.start, x+wide/2, ground, 1, k.Ink3)
			continue
		}
		c.pen.rect(x-wide/2, at.y.start, wide, ground-at.y.start, k.column)
	}
}

// paintBottles draws the bottle of each stop on the line of time, the play between, and
// the names below.
func (c *DeficitChart) paintBottles(at plot, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	ground, wide := c.ground(at), c.bottleWidth(at)
	up := scale{from: 0, to: max(d.StopMax, 1e-9), start: ground - 2, end: ground - c.bottlesRoom() + look.Scaled(14)}
	for _, s := range d.Stops {
		up.to = max(up.to, drunk(s.Parts))
	}
	c.columns.across, c.columns.up = at.x, up
	for _, s := range d.Stops {
		c.paintBottle(s, at.x.inside(s.Minute), wide, up)
	}
	c.pen.rect(at.x.start, ground, at.x.end-at.x.start, 1, k.Ink)
	for _, s := range d.Spells {
		x1, x2 := at.x.inside(s.From), at.x.inside(s.To)
		c.pen.rect(x1, ground+1, max(x2-x1, 0), look.Scaled(spellHigh), k.Sunk)
	}
	c.paintHandle(at, wide, up)
	c.paintAside(at, ground, size)
	c.paintStopNames(at, ground+look.Scaled(spellHigh+stopGap), size)
}

// paintHandle draws two small triangles beside the top of the selected bottle: its
// height can be dragged.
func (c *DeficitChart) paintHandle(at plot, wide float32, up scale) {
	d := &c.data
	if d.Selected < 0 || d.Selected >= len(d.Stops) || c.OnDragged == nil {
		return
	}
	s := d.Stops[d.Selected]
	x, top := at.x.inside(s.Minute)-wide/2-8, min(up.at(drunk(s.Parts)), up.start-12)
	c.pen.triangle(x, top-7, 4, -5)
	c.pen.triangle(x, top+2, 4, 5)
}

// paintAside writes what the breaks do not carry at the right of the bottles, on the
// ground they stand on.
func (c *DeficitChart) paintAside(at plot, ground float32, size fyne.Size) {
	x := at.x.end + look.Scaled(12)
	lines := c.aside.lines(c.data.Aside, size.Width-x)
	room := int((ground - at.y.start) / look.Note.Pitch() / 2)
	if len(lines) > room {
		lines = lines[:0]
	}
	y := ground - float32(len(lines))*look.Note.Pitch()
	for _, line := range lines {
		c.pen.text(line, x, y, size.Width-x, look.Note, c.pen.ink.Ink, left)
		y += look.Note.Pitch()
	}
}

// Tapped selects the stop whose column is clicked.
func (c *DeficitChart) Tapped(e *fyne.PointEvent) {
	if c.OnSelected == nil || len(c.data.Stops) == 0 || e.Position.X < c.columns.across.start-selectNear || e.Position.X > c.columns.across.end+selectNear {
		return
	}
	c.OnSelected(c.columns.nearest(c.data.Stops, e.Position.X))
}

// selectNear is how far beside the line of time a click still selects, px.
const selectNear float32 = 20

// bottleWidth is the width of a bottle: less where they stand close.
func (c *DeficitChart) bottleWidth(at plot) float32 {
	wide := look.Scaled(bottleWide)
	for i := 1; i < len(c.data.Stops); i++ {
		apart := at.x.inside(c.data.Stops[i].Minute) - at.x.inside(c.data.Stops[i-1].Minute)
		wide = min(wide, max(apart*0.7, 4))
	}
	return px(wide)
}

// paintBottle draws what is drunk as a filled bottle with a cap, and food as a
// block beside it.
func (c *DeficitChart) paintBottle(s BreakStop, x, wide float32, up scale) {
	k, from := c.pen.ink, 0.0
	high := drunk(s.Parts)
	edge := k.Ink
	if s.Maybe {
		edge = k.Ink3
	}
	if high > 0 {
		top := min(up.at(high), up.start-2)
		c.pen.rect(x-wide/5, top-6, 2*wide/5, 4, edge)
		c.pen.round(x-wide/2, top-3, wide, up.start+3-top, 3, edge)
		c.pen.round(x-wide/2+1, top-2, wide-2, up.start+1-top, 2, k.Sheet)
	}
	food := 0.0
	for _, part := range s.Parts {
		if part.Of == look.Food {
			food += length(part.Value)
			continue
		}
		to := from + length(part.Value)
		c.pen.rect(x-wide/2+2, up.at(to), wide-4, up.at(from)-up.at(to), k.hue(part.Of, s.Maybe))
		from = to
	}
	if food > 0 {
		left, top := px(x+wide/2+3), px(up.start-look.Scaled(16))
		c.pen.round(left, top, look.Scaled(9), look.Scaled(16), 2, k.Ink3)
		c.pen.round(left+1, top+1, look.Scaled(9)-2, look.Scaled(16)-2, 1, k.hue(look.Food, s.Maybe))
	}
}

// paintStopNames writes the names of the stops, or their numbers where the names
// have no room, and what is drunk there; the room for fields is between.
func (c *DeficitChart) paintStopNames(at plot, y float32, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	named := c.named(size)
	line := look.Note.Pitch()
	c.stopsLow = y + line
	c.labels = c.labels[:0]
	for i, s := range d.Stops {
		if !named {
			s.Name = strconv.Itoa(i + 1)
		}
		c.labels = append(c.labels, label{at: at.x.inside(s.Minute), width: look.Note.Width(s.Name)})
	}
	placed := spread(c.labels, 0, size.Width)
	for i, s := range d.Stops {
		l := c.labels[i]
		if !named {
			s.Name = strconv.Itoa(i + 1)
		}
		if !placed {
			s.Name, l = "", label{}
		}
		c.pen.text(s.Name, l.x, y, l.width, look.Note, k.Ink2, centre)
	}
	if d.OneField {
		c.paintAmounts(at, c.stopsLow+(look.ControlHeight()-look.Note.Height())/2, size)
	} else {
		low := c.stopsLow
		if d.Fields {
			low += look.ControlHeight() + 1
		}
		c.paintTaken(at, low, size)
	}
	legend := c.legend(size)
	for i, text := range legend {
		c.pen.text(text, 0, size.Height-float32(len(legend)-i)*line, size.Width, look.Note, k.Ink2, left)
	}
}

// paintAmounts writes what is drunk at each stop but the selected one, beside its field.
func (c *DeficitChart) paintAmounts(at plot, y float32, size fyne.Size) {
	written := c.placeAmounts(at.x, size.Width)
	for i, s := range c.data.Stops {
		text, l := written(s), c.labels[i]
		if i == c.data.Selected {
			text = ""
		}
		c.pen.text(text, l.x, y, l.width, look.Note, c.pen.ink.Ink, centre)
	}
}

// paintTaken writes what is drunk at each stop: mouthfuls under the fields, the
// amount where there are none. Where not all have room, none is written.
func (c *DeficitChart) paintTaken(at plot, y float32, size fyne.Size) {
	d := &c.data
	of := func(s BreakStop) string {
		if d.Fields {
			return s.Mouthfuls
		}
		return s.Amount
	}
	c.labels = c.labels[:0]
	for _, s := range d.Stops {
		width := look.Note.Width(of(s))
		if d.Fields {
			width = c.fieldWidth()
		}
		c.labels = append(c.labels, label{at: at.x.inside(s.Minute), width: width})
	}
	placed := spread(c.labels, 0, size.Width)
	for i, s := range d.Stops {
		text, l := of(s), c.labels[i]
		if !placed {
			text, l = "", label{}
		}
		c.pen.text(text, l.x, y, l.width, look.Note, c.pen.ink.Ink, centre)
	}
}
