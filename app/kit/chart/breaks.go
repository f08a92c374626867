package chart

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Spell is a time of play.
type Spell struct {
	From, To float64
	Name     string
}

// BreakStop is a chance to drink on the line of time.
type BreakStop struct {
	Minute float64
	Parts  []Part
	// Amount and Mouthfuls stand beside the column, Name and Note below the
	// line.
	Amount, Mouthfuls, Name, Note string
	// Number is the amount without its unit, for where that has no room.
	Number string
	// Maybe makes it pale: it may fall out.
	Maybe bool
}

// BreakData is what a [BreakTimeline] shows.
type BreakData struct {
	// Minutes is the end of the line.
	Minutes float64
	Spells  []Spell
	Stops   []BreakStop
	Ticks   []Tick
	// Max is the least height of the scale, in the unit of the parts.
	Max     float64
	Summary string
}

// BreakTimeline draws a session on a line of time with what is taken at each
// chance.
type BreakTimeline struct {
	base
	data   BreakData
	labels []label
	// OnDragged is told to what height, in the unit of the parts, the column of a stop
	// is dragged, OnReleased when it is let go; nil where columns stand still.
	OnDragged  func(stop int, to float64)
	OnReleased func()
	columns    breakColumns
}

// NewBreakTimeline makes an empty line.
func NewBreakTimeline() *BreakTimeline {
	c := &BreakTimeline{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(480), look.Scaled(214)) }, c.paint)
	return c
}

// Set shows other data. The slices are copied.
func (c *BreakTimeline) Set(d BreakData) {
	kept := c.data
	c.data = d
	c.data.Spells = append(kept.Spells[:0], d.Spells...)
	c.data.Ticks = append(kept.Ticks[:0], d.Ticks...)
	c.data.Stops = copyStops(kept.Stops, d.Stops)
	c.shown(d.Summary)
}

// copyStops copies stops and their parts into the memory of those kept.
func copyStops(kept, from []BreakStop) []BreakStop {
	into := kept[:0]
	for i, s := range from {
		var parts []Part
		if i < cap(kept) {
			parts = kept[:i+1][i].Parts[:0]
		}
		s.Parts = append(parts, s.Parts...)
		into = append(into, s)
	}
	return into
}

func (c *BreakTimeline) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Stops)+len(d.Spells) == 0 {
		c.say(size)
		return
	}
	box := look.Scaled(18)
	below := look.Note.Pitch() + look.Scaled(10) + look.Body.Height() + look.Note.Height()
	line := px(size.Height - below - box/2 - look.Scaled(4))
	at := scale{from: 0, to: max(d.Minutes, 1), start: look.Scaled(20), end: size.Width - look.Scaled(24)}
	c.pen.rect(at.start, line-1, at.end-at.start, 2, k.Ink)
	for _, t := range d.Ticks {
		c.pen.rect(at.at(t.At), line-4, 1, 8, k.Ink)
	}
	for _, s := range d.Spells {
		x1, x2 := px(at.inside(s.From)), px(at.inside(s.To))
		c.pen.round(x1, line-box/2, x2-x1, box, 2, k.Hairline)
		c.pen.round(x1+1, line-box/2+1, max(x2-x1-2, 0), box-2, 1, k.Sunk)
		c.pen.text(s.Name, x1+3, line-look.Note.Height()/2, max(x2-x1-6, 0), look.Note, k.Ink2, centre)
	}
	c.pen.ticks(d.Ticks, at, line+box/2+look.Scaled(3), size.Width)
	c.paintStops(at, line-box/2-look.Scaled(10))
	c.paintNames(at, line+box/2+look.Scaled(7)+look.Note.Pitch(), size)
}

// paintStops draws the columns on their ground and what they come to at their
// right, as far as the next column.
func (c *BreakTimeline) paintStops(at scale, ground float32) {
	d, k := &c.data, c.pen.ink
	bar := c.barWidth(at)
	up := scale{from: 0, to: max(length(d.Max), 1e-9), start: ground, end: look.Scaled(4)}
	for _, s := range d.Stops {
		up.to = max(up.to, total(s.Parts))
	}
	c.columns.across, c.columns.up = at, up
	most := c.mostFit(at, bar)
	for i, s := range d.Stops {
		x, from := at.inside(s.Minute)-bar/2, 0.0
		for _, part := range s.Parts {
			to := from + length(part.Value)
			c.pen.rect(x, up.at(to), bar, up.at(from)-up.at(to), k.hue(part.Of, s.Maybe))
			from = to
		}
		room := c.roomBeside(i, at, bar)
		amount, mouthfuls := s.Amount, s.Mouthfuls
		// Half an amount misleads: it is there whole or not at all.
		if !most || look.Strong.Width(amount) > room {
			amount = ""
		}
		if !most || look.Note.Width(mouthfuls) > room {
			mouthfuls = ""
		}
		two := look.Strong.Height() + look.Note.Height()
		c.pen.text(amount, x+bar+8, ground-two, max(room, 0), look.Strong, k.Ink, left)
		c.pen.text(mouthfuls, x+bar+8, ground-look.Note.Height(), max(room, 0), look.Note, k.Ink2, left)
	}
}

// roomBeside is the room at the right of a column, as far as the next one.
func (c *BreakTimeline) roomBeside(i int, at scale, bar float32) float32 {
	middle := at.inside(c.data.Stops[i].Minute)
	if i+1 < len(c.data.Stops) {
		return at.inside(c.data.Stops[i+1].Minute) - middle - bar - 12
	}
	return at.end + look.Scaled(24) - middle - bar/2 - 8
}

// mostFit reports whether there is room for most of the amounts: a few among
// many columns would look as if the others had none.
func (c *BreakTimeline) mostFit(at scale, bar float32) bool {
	fit := 0
	for i, s := range c.data.Stops {
		if look.Strong.Width(s.Amount) <= c.roomBeside(i, at, bar) {
			fit++
		}
	}
	return 2*fit >= len(c.data.Stops)
}

// barWidth is the width of the columns: less where they stand close.
func (c *BreakTimeline) barWidth(at scale) float32 {
	bar := look.Scaled(28)
	for i := 1; i < len(c.data.Stops); i++ {
		apart := at.inside(c.data.Stops[i].Minute) - at.inside(c.data.Stops[i-1].Minute)
		bar = min(bar, max(apart*0.6, 3))
	}
	return bar
}

// paintNames writes the names of the chances below the line. Where they do not all
// fit, their numbers stand there, as many as the row in the table beside the chart; where
// those do not fit either, they are left to the table.
func (c *BreakTimeline) paintNames(at scale, y float32, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	placed, numbered := false, false
	for _, numbered = range [2]bool{false, true} {
		c.labels = c.labels[:0]
		for i, s := range d.Stops {
			w := max(look.Body.Width(s.Name), look.Note.Width(s.Note))
			if numbered {
				w = look.Body.Width(strconv.Itoa(i + 1))
			}
			c.labels = append(c.labels, label{at: at.inside(s.Minute), width: w})
		}
		if placed = spread(c.labels, 0, size.Width); placed {
			break
		}
	}
	for i, s := range d.Stops {
		l := label{}
		switch {
		case !placed:
			s.Name, s.Note = "", ""
		case numbered:
			l, s.Name, s.Note = c.labels[i], strconv.Itoa(i+1), ""
		default:
			l = c.labels[i]
		}
		c.pen.text(s.Name, l.x, y, l.width, look.Body, k.Ink, centre)
		c.pen.text(s.Note, l.x, y+look.Body.Height(), l.width, look.Note, k.Ink2, centre)
	}
}
