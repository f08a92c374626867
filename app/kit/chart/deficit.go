package chart

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Point is a place on a line: minutes from the start, and the change of body
// mass there in the unit of the ticks, negative for a deficit.
type Point struct {
	Minute, Change float64
}

// DrinkChance is a moment to drink, shown as a pale column.
type DrinkChance struct {
	// Minute is its middle, Minutes its length.
	Minute, Minutes float64
	// Name and Amount stand below it.
	Name, Amount string
}

// EndLabel names the end of a line: "−2.1 %", "this plan".
type EndLabel struct {
	Figure, Name string
}

// DeficitData is what a [DeficitChart] shows.
type DeficitData struct {
	// Minutes is the length of the session.
	Minutes float64
	Plan    []Point
	Habit   []Point
	// Range is the 95 % range at each point of Plan.
	Range []Span
	// Limit is drawn dashed when LimitText is not empty.
	Limit     float64
	LimitText string
	Chances   []DrinkChance
	// Lowest is the foot of the picture, where it lies below the last level.
	Lowest float64
	// Ticks are the levels, the first at the top. Times are labelled below
	// where there are no chances.
	Ticks, Times      []Tick
	PlanEnd, HabitEnd EndLabel
	// Stops, where there are any, stand as bottles under the lines, on the same
	// line of time, with Spells of play between them; StopMax is the end of
	// their scale, in the unit of their parts.
	Stops   []BreakStop
	Spells  []Spell
	StopMax float64
	// Fields keeps room for a field under each stop; OneField for one under the
	// selected stop alone, where there are too many for a field each.
	Fields   bool
	OneField bool
	// Selected is the stop whose bottle has the grip; none below zero.
	Selected int
	// Comma and Dot part the numbers and the names of the key below the bottles.
	Comma, Dot string
	// Aside stands beside the bottles at the right: what the breaks do not carry.
	Aside   string
	Summary string
}

// DeficitChart draws the deficit over the session: the plan with its range,
// the habit thin beside it, the limit dashed, the chances to drink as columns.
type DeficitChart struct {
	base
	data DeficitData
	// labels are the names below, kept so that drawing makes none anew.
	labels []label
	// nameless: there was room for the amounts alone.
	nameless bool
	// OnDragged is told to what height, in the unit of the parts, the bottle of a
	// stop is dragged, OnReleased when it is let go; nil where they stand still.
	OnDragged  func(stop int, to float64)
	OnReleased func()
	// OnSelected is told the stop that is clicked.
	OnSelected func(stop int)
	columns    breakColumns
	aside      wrapped
	// stopsLow is the px at which the room for fields begins.
	stopsLow float32
}

// NewDeficitChart makes an empty chart.
func NewDeficitChart() *DeficitChart {
	c := &DeficitChart{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(360), look.Scaled(170)) }, c.paint)
	return c
}

// Set shows other data. The slices are copied.
func (c *DeficitChart) Set(d DeficitData) {
	kept := c.data
	c.data = d
	c.data.Plan = append(kept.Plan[:0], d.Plan...)
	c.data.Habit = append(kept.Habit[:0], d.Habit...)
	c.data.Range = append(kept.Range[:0], d.Range...)
	c.data.Chances = append(kept.Chances[:0], d.Chances...)
	c.data.Ticks = append(kept.Ticks[:0], d.Ticks...)
	c.data.Times = append(kept.Times[:0], d.Times...)
	c.data.Spells = append(kept.Spells[:0], d.Spells...)
	c.data.Stops = copyStops(kept.Stops, d.Stops)
	c.shown(d.Summary)
}

// plot is where the lines are drawn.
type plot struct {
	x, y scale
}

// time is the line of time, with room for the labels at its ends.
func (c *DeficitChart) time(size fyne.Size) scale {
	d := &c.data
	var ticks float32
	for _, t := range d.Ticks {
		ticks = max(ticks, look.Note.Width(t.Text))
	}
	ends := look.NoteStrong.Width("−00.0 %") + look.Scaled(20)
	names := max(look.Note.Width(d.PlanEnd.Name), look.Note.Width(d.HabitEnd.Name))
	side := min(ends+max(names, look.Scaled(48)), size.Width*0.4)
	return scale{from: 0, to: max(d.Minutes, 1), start: px(ticks + look.Scaled(12)), end: px(size.Width - side)}
}

// plot leaves room for the labels around it.
func (c *DeficitChart) plot(size fyne.Size) plot {
	d := &c.data
	high, low := c.extent()
	line := look.Note.Pitch()
	foot := 2*line + look.Scaled(10)
	if len(d.Stops) > 0 {
		foot = c.stopsRoom(size)
	}
	return plot{
		x: c.time(size),
		y: scale{from: high, to: low, start: px(line / 2), end: px(size.Height - foot)},
	}
}

// extent is from the highest to the lowest level: the ticks, and the habit where it
// goes beyond. What moves never moves it.
func (c *DeficitChart) extent() (high, low float64) {
	d := &c.data
	for _, t := range d.Ticks {
		high, low = max(high, t.At), min(low, t.At)
	}
	for _, p := range d.Habit {
		high, low = reach(high, low, p.Change)
	}
	high, low = reach(high, low, d.Lowest)
	if high-low < 1e-9 {
		low = high - 1
	}
	return high, low
}

// reach takes a value into a range, but for what is no number or absurd.
func reach(high, low, x float64) (float64, float64) {
	if math.IsNaN(x) || math.Abs(x) > 1e6 {
		return high, low
	}
	return max(high, x), min(low, x)
}

func (c *DeficitChart) paint(size fyne.Size) {
	at := c.plot(size)
	if len(c.data.Plan) == 0 && len(c.data.Habit) == 0 {
		c.say(size)
		return
	}
	if len(c.data.Stops) > 0 {
		c.paintStopColumns(at)
	} else {
		c.paintChanceColumns(at)
	}
	c.paintLevels(at)
	c.paintRange(at)
	if len(c.data.Stops) > 0 {
		c.paintBottles(at, size)
	} else {
		c.paintChances(at)
	}
	c.paintLine(c.data.Habit, at, 1.25, false)
	c.paintLine(c.data.Plan, at, 3, true)
	c.paintLimit(at)
	c.paintEnds(at, size)
}

// paintRange fills the range, one quadrilateral a segment. Neighbours overlap
// a little, so that no seam shows between them.
func (c *DeficitChart) paintRange(at plot) {
	d := &c.data
	n := min(len(d.Plan), len(d.Range))
	for i := 1; i < n; i++ {
		x1, x2 := at.x.inside(d.Plan[i-1].Minute), at.x.inside(d.Plan[i].Minute)
		c.pen.quad(x1, at.y.inside(d.Range[i-1].High), at.y.inside(d.Range[i-1].Low),
			x2+0.4, at.y.inside(d.Range[i].High), at.y.inside(d.Range[i].Low), c.pen.ink.area)
	}
}

// paintLevels draws the ticks with their hairlines.
func (c *DeficitChart) paintLevels(at plot) {
	half := look.Note.Height() / 2
	for _, t := range c.data.Ticks {
		y := px(at.y.at(t.At))
		c.pen.rect(at.x.start, y, at.x.end-at.x.start, 1, c.pen.ink.Hairline)
		c.pen.text(t.Text, 0, y-half, at.x.start-look.Scaled(10), look.Note, c.pen.ink.Ink2, right)
	}
}

// paintChanceColumns draws a column for each chance.
func (c *DeficitChart) paintChanceColumns(at plot) {
	for _, ch := range c.data.Chances {
		width := max(at.x.at(ch.Minutes)-at.x.start, look.Scaled(8))
		middle := at.x.inside(ch.Minute)
		c.pen.rect(middle-width/2, at.y.start, width, at.y.end+look.Scaled(4)-at.y.start, c.pen.ink.column)
	}
}

// paintChances names the chances below; without chances the times stand there.
func (c *DeficitChart) paintChances(at plot) {
	d := &c.data
	low := at.y.end + look.Scaled(8)
	placed := c.placeLabels(at)
	for i, ch := range d.Chances {
		l := c.labels[i]
		if !placed {
			ch.Amount = ""
		}
		if !placed || c.nameless {
			ch.Name = ""
		}
		c.pen.text(ch.Name, l.x, low, l.width, look.Note, c.pen.ink.Ink2, centre)
		c.pen.text(ch.Amount, l.x, low+look.Note.Pitch(), l.width, look.Note, c.pen.ink.Ink, centre)
	}
	if len(d.Chances) > 0 && placed {
		return
	}
	for _, t := range d.Times {
		c.pen.rect(at.x.at(t.At), at.y.end, 1, look.Scaled(4), c.pen.ink.Ink3)
	}
	c.pen.ticks(d.Times, at.x, low, at.x.end+look.Scaled(24))
}

// placeLabels finds the places of the names below. Where they do not all fit,
// names are shortened before amounts; where not even the amounts fit, it
// reports false.
func (c *DeficitChart) placeLabels(at plot) bool {
	c.labels = c.labels[:0]
	from, to := at.x.start-look.Scaled(24), at.x.end+look.Scaled(12)
	share := (to-from+labelGap)/float32(max(len(c.data.Chances), 1)) - labelGap
	if share < look.Scaled(48) {
		share = 0
	}
	for _, most := range [3]float32{to - from, share, 0} {
		c.labels, c.nameless = c.labels[:0], most == 0
		for _, ch := range c.data.Chances {
			name := min(look.Note.Width(ch.Name), most)
			c.labels = append(c.labels, label{at: at.x.inside(ch.Minute), width: max(name, look.Note.Width(ch.Amount))})
		}
		if spread(c.labels, from, to) {
			return true
		}
	}
	return false
}

// paintLimit draws the limit set with the athlete, its name under it at the
// left, where the lines have not come down yet.
func (c *DeficitChart) paintLimit(at plot) {
	d := &c.data
	if d.LimitText == "" {
		return
	}
	y := px(at.y.inside(d.Limit))
	c.pen.dashed(at.x.start, y+0.5, at.x.end, y+0.5, 1, c.pen.ink.Ink)
	wide := min(look.Note.Width(d.LimitText), (at.x.end-at.x.start)*0.6)
	x, free := c.limitX(at, wide)
	if !free {
		c.pen.rect(x-1, y+2, wide+2, look.Note.Height(), c.pen.ink.Sheet) // no side of a column strikes it through
	}
	c.pen.text(d.LimitText, x, y+2, wide+1, look.Note, c.pen.ink.Ink2, left)
}

// limitAside is the room between the name of the limit and what stands beside it, px.
const limitAside float32 = 6

// limitX is where the name of the limit begins: at the left, or behind the first column
// after which it has room up to the next. free is false where it has none: then it
// stands at the left, upon the columns.
func (c *DeficitChart) limitX(at plot, wide float32) (x float32, free bool) {
	d, bottle := &c.data, c.bottleWidth(at)
	from := at.x.start
	for _, s := range d.Stops {
		middle := at.x.inside(s.Minute)
		if from+limitAside+wide+1 < middle-bottle/2 {
			return from + limitAside, true
		}
		from = max(from, middle+bottle/2)
	}
	if len(d.Stops) == 0 || from+limitAside+wide < at.x.end {
		return from + limitAside, true
	}
	return at.x.start + limitAside, false
}

// paintLine draws a line from point to point.
func (c *DeficitChart) paintLine(points []Point, at plot, width float32, plan bool) {
	ink := c.pen.ink.Ink2
	if plan {
		ink = c.pen.ink.Loss
	}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		c.pen.line(at.x.inside(a.Minute), at.y.inside(a.Change), at.x.inside(b.Minute), at.y.inside(b.Change), width, ink)
	}
}

// paintEnds marks and names where the lines end. Names that would touch are
// moved apart.
func (c *DeficitChart) paintEnds(at plot, size fyne.Size) {
	d := &c.data
	line := look.Note.Pitch()
	plan, habit := c.end(d.Plan, at), c.end(d.Habit, at)
	planText, habitText := plan, habit
	if len(d.Plan) > 0 && len(d.Habit) > 0 {
		if gap := line - abs(plan-habit); gap > 0 {
			up := gap / 2
			if plan > habit {
				up = -up
			}
			planText, habitText = plan-up, habit+up
		}
	}
	x := at.x.end + look.Scaled(12)
	figure := look.NoteStrong.Width("−00.0 %") + look.Scaled(4)
	if len(d.Habit) > 0 {
		c.pen.dot(at.x.inside(d.Habit[len(d.Habit)-1].Minute), habit, 4.5, c.pen.ink.Sheet, c.pen.ink.Ink2)
		c.pen.text(d.HabitEnd.Figure, x, habitText-look.Note.Height()/2, figure, look.Note, c.pen.ink.Ink2, left)
		c.pen.text(d.HabitEnd.Name, x+figure, habitText-look.Note.Height()/2, size.Width-x-figure, look.Note, c.pen.ink.Ink2, left)
	}
	if len(d.Plan) > 0 {
		c.pen.dot(at.x.inside(d.Plan[len(d.Plan)-1].Minute), plan, 5, c.pen.ink.Loss, nil)
		c.pen.text(d.PlanEnd.Figure, x, planText-look.Note.Height()/2, figure, look.NoteStrong, c.pen.ink.Ink, left)
		c.pen.text(d.PlanEnd.Name, x+figure, planText-look.Note.Height()/2, size.Width-x-figure, look.Note, c.pen.ink.Ink2, left)
	}
}

// end is the px of the last point.
func (c *DeficitChart) end(points []Point, at plot) float32 {
	if len(points) == 0 {
		return 0
	}
	return at.y.inside(points[len(points)-1].Change)
}

func abs(x float32) float32 { return max(x, -x) }
