package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// StepColumn is a step with what is drunk and eaten in it.
type StepColumn struct {
	Name, Note string
	// Now marks the step in force.
	Now   bool
	Parts []Part
	// Figure is the deficit at the end, FigureNote its name.
	Figure, FigureNote string
	// Second and SecondNote are the carbohydrate, Third the volume.
	Second, SecondNote, Third string
	// Change and ChangeNote say what is different from the step before,
	// SecondChange the same of the carbohydrate.
	Change, ChangeNote, SecondChange string
}

// StepColumnsData is what a [StepColumns] shows.
type StepColumnsData struct {
	Columns []StepColumn
	// Max is the least height of the scale, in the unit of the parts.
	Max     float64
	Summary string
}

// StepColumns draws habit, steps and aim as columns by substance, with their
// figures beside them.
type StepColumns struct {
	base
	data StepColumnsData
}

// NewStepColumns makes an empty picture.
func NewStepColumns() *StepColumns {
	c := &StepColumns{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(170)*float32(max(len(c.data.Columns), 1)), look.Scaled(210))
	}, c.paint)
	return c
}

// Set shows other data. Columns and parts are copied.
func (c *StepColumns) Set(d StepColumnsData) {
	kept := c.data
	c.data = d
	c.data.Columns = kept.Columns[:0]
	for i, col := range d.Columns {
		var parts []Part
		if i < cap(kept.Columns) {
			parts = kept.Columns[:i+1][i].Parts[:0]
		}
		col.Parts = append(parts, col.Parts...)
		c.data.Columns = append(c.data.Columns, col)
	}
	c.shownHigher(d.Summary, len(kept.Columns) != len(d.Columns))
}

func (c *StepColumns) paint(size fyne.Size) {
	d := &c.data
	if len(d.Columns) == 0 {
		c.say(size)
		return
	}
	most := max(length(d.Max), 1e-9)
	for _, col := range d.Columns {
		most = max(most, total(col.Parts))
	}
	ground := size.Height - look.Body.Height() - look.Note.Height() - look.Scaled(10)
	at := scale{from: 0, to: most, start: ground, end: look.Scaled(4)}
	gap := look.Scaled(32)
	each := (size.Width - gap*float32(len(d.Columns)-1)) / float32(len(d.Columns))
	for i, col := range d.Columns {
		c.column(col, float32(i)*(each+gap), each, at)
	}
}

// column draws one step.
func (c *StepColumns) column(col StepColumn, x, width float32, at scale) {
	k := c.pen.ink
	bar := min(look.Scaled(64), width*0.3)
	inset := min(look.Scaled(12), width*0.05)
	from := 0.0
	for _, part := range col.Parts {
		to := from + length(part.Value)
		c.pen.rect(x+inset, at.at(to), bar, at.at(from)-at.at(to), k.hue(part.Of, false))
		from = to
	}
	c.pen.rect(x, at.start, width, 1.4, k.Ink2)
	c.figures(col, x+inset, x+inset+bar+look.Scaled(14), x+width, at.start)
	name := look.Body
	if col.Now {
		name = look.Strong
	}
	y := at.start + look.Scaled(7)
	c.pen.text(col.Name, x+inset, y, width-inset, name, k.Ink, left)
	c.pen.text(col.Note, x+inset, y+look.Body.Height()+1, width-inset, look.Note, k.Ink2, left)
}

// figures stand beside a column from the ground up; what changed stands in a
// second column of text, or, where there is no room for one, behind the figure
// that changed and behind the date.
func (c *StepColumns) figures(col StepColumn, edge, x, end, ground float32) {
	k := c.pen.ink
	width, gap := end-x, look.Scaled(6)
	third := ground - look.Body.Height() - look.Scaled(2)
	second := third - gap - look.Body.Height() - look.Note.Height()
	first := second - gap - look.Second.Height() - look.Note.Height()
	own := max(look.Second.Width(col.Figure), look.Note.Width(col.FigureNote), look.Note.Width(col.SecondNote)) + look.Scaled(14)
	changed := widest(look.Body, col.Change, col.SecondChange)
	other := x + max(own, width*0.5)
	wide := other+max(changed, look.Note.Width(col.ChangeNote)) <= end
	if !wide {
		own = width
	}
	c.pen.text(col.Figure, x, first, own, look.Second, k.Ink, left)
	c.pen.text(col.FigureNote, x, first+look.Second.Height(), own, look.Note, k.Ink2, left)
	c.pen.text(col.Second, x, second, own, look.Body, k.Ink, left)
	c.pen.text(col.SecondNote, x, second+look.Body.Height(), own, look.Note, k.Ink2, left)
	c.pen.text(col.Third, x, third, own, look.Body, k.Ink, left)
	if wide {
		drop := look.Second.Baseline() - look.Body.Baseline()
		c.pen.text(col.Change, other, first+drop, end-other, look.Body, k.Ink, left)
		c.pen.text(col.ChangeNote, other, first+look.Second.Height(), end-other, look.Note, k.Ink2, left)
		c.pen.text(col.SecondChange, other, second, end-other, look.Body, k.Ink, left)
		return
	}
	drop := look.Body.Baseline() - look.Note.Baseline()
	behind := x + max(look.Body.Width(col.Second), look.Body.Width(col.Third)) + look.Scaled(10)
	c.pen.text(col.Change, behind, third+drop, end-behind, look.Note, k.Ink2, left)
	date, note := edge+look.Note.Width(col.Note)+look.Scaled(10), col.ChangeNote
	if look.Note.Width(note) > end-date { // the list below says it whole
		note = ""
	}
	c.pen.text(note, date, ground+look.Scaled(8)+look.Body.Height(), max(end-date, 0), look.Note, k.Ink2, left)
	c.pen.text(col.SecondChange, behind, second+drop, end-behind, look.Note, k.Ink2, left)
}
