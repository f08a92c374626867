package squad

import (
	"fmt"
	"image/color"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// rowView is one row: its cells, and below them what belongs to it. A click opens
// it.
type rowView struct {
	widget.BaseWidget
	name   string
	tapped func()
	// cells stand on lines of a pitch, in boxes of a height.
	cells      []cell
	pitch, box float32
	below      fyne.CanvasObject
	flag, open bool
	// said is what the row says, to see whether it has to be built anew.
	said string
}

var (
	_ look.Flowing = (*rowView)(nil)
	_ look.Holder  = (*rowView)(nil)
)

func newRowView(name string, tapped func()) *rowView {
	r := &rowView{name: name, tapped: tapped}
	r.ExtendBaseWidget(r)
	return r
}

// Name is how tests and drivers find the row.
func (r *rowView) Name() string { return r.name }

// Text is what the row says.
func (r *rowView) Text() string { return r.said }

// Tapped opens the row.
func (r *rowView) Tapped(*fyne.PointEvent) {
	if r.tapped != nil {
		r.tapped()
	}
}

// Parts returns the cells and what is below them.
func (r *rowView) Parts() []fyne.CanvasObject {
	list := make([]fyne.CanvasObject, 0, len(r.cells)+1)
	for _, c := range r.cells {
		list = append(list, c.object)
	}
	if r.below != nil {
		list = append(list, r.below)
	}
	return list
}

// linesHeight is the height of the cells.
func (r *rowView) linesHeight(g grid) float32 {
	h := 2 * look.Scaled(linePx)
	for _, c := range r.cells {
		if g.shows(c.col) {
			h = max(h, c.foot(g, r.pitch, r.box))
		}
	}
	return h + 2*rowPadY
}

// belowAt is where what is below the cells begins, and its width.
func (r *rowView) belowAt(g grid, width float32) (x, w float32) {
	x = g.x[colName]
	return x, max(0, width-x-rowPadX)
}

// HeightFor returns the height at a width.
func (r *rowView) HeightFor(width float32) float32 {
	g := gridFor(width)
	h := r.linesHeight(g)
	if r.below != nil {
		_, w := r.belowAt(g, width)
		h += look.HeightFor(r.below, w) + rowPadY + 3
	}
	return h + 1
}

// CreateRenderer draws ground, frame and cells.
func (r *rowView) CreateRenderer() fyne.WidgetRenderer {
	d := &rowRenderer{r: r, rule: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil), frame: look.NewOutline()}
	d.set(r.Size())
	return d
}

type rowRenderer struct {
	r         *rowView
	rule, bar *canvas.Rectangle
	frame     *look.Outline
}

// flagBar is the bar of a red flag, in px.
const flagBar float32 = 8

func (d *rowRenderer) set(size fyne.Size) {
	p, r := look.PaletteNow(), d.r
	d.rule.FillColor, d.bar.FillColor = p.Hairline, p.Ink
	d.rule.Move(fyne.NewPos(0, size.Height-1))
	d.rule.Resize(fyne.NewSize(size.Width, 1))
	d.bar.Hidden = !r.flag
	d.bar.Resize(fyne.NewSize(flagBar, size.Height))
	switch {
	case r.flag:
		d.frame.Paint(p.Sunk, p.Ink, 2, 0)
	default:
		d.frame.Paint(color.Transparent, color.Transparent, 0, 0)
	}
	d.frame.Place(fyne.Position{}, size)
}

func (d *rowRenderer) Layout(size fyne.Size) {
	d.set(size)
	g := gridFor(size.Width)
	for _, c := range d.r.cells {
		look.ShowIf(c.object, g.shows(c.col))
		if g.shows(c.col) {
			c.place(g, rowPadY, d.r.pitch, d.r.box)
		}
	}
	if d.r.below != nil {
		x, w := d.r.belowAt(g, size.Width)
		d.r.below.Move(fyne.NewPos(x, d.r.linesHeight(g)))
		d.r.below.Resize(fyne.NewSize(w, look.HeightFor(d.r.below, w)))
	}
}

func (d *rowRenderer) MinSize() fyne.Size {
	w := d.r.Size().Width
	if w <= 0 {
		w = look.Scaled(narrowPx)
	}
	return fyne.NewSize(look.Scaled(560), d.r.HeightFor(w))
}

func (d *rowRenderer) Refresh() {
	d.Layout(d.r.Size())
	canvas.Refresh(d.r)
}

func (d *rowRenderer) Objects() []fyne.CanvasObject {
	return d.frame.With(append([]fyne.CanvasObject{d.bar, d.rule}, d.r.Parts()...)...)
}

func (d *rowRenderer) Destroy() {}

// nameOfRow is the name of the i-th row's control.
func nameOfRow(i int) string { return "squad.row." + strconv.Itoa(i+1) }

// closedRow is the i-th row while another is at the scale.
func (v *View) closedRow(i int) *rowView {
	r := v.rows[i]
	w := newRowView(nameOfRow(i), func() { v.openRowAt(i, "") })
	w.pitch, w.box = look.Scaled(linePx), look.Scaled(linePx)
	var said []string
	text := func(col column, line int, s string, style look.Style, tone look.Tone, right bool) {
		if s == "" {
			return
		}
		said = append(said, s)
		l := look.NewLabel(s, style, tone).Shorten()
		if right {
			l = l.Right()
		}
		w.cells = append(w.cells, cell{object: l, col: col, line: line})
	}
	v.nameCells(r, text)
	text(colBefore, 0, v.massWords(r, record.Before), look.Body, look.Ink, true)
	v.bottleCells(r, w, text)
	after := look.Body
	if r.Flagged {
		after = look.Strong
	}
	if r.Hidden {
		after = look.Note
	}
	text(colAfter, 0, v.massWords(r, record.After), after, look.Ink, true)
	text(colUrine, 0, v.urineWords(r.Sheet.Test), look.Body, look.Ink, false)
	first, second, due := v.patchWords(r)
	patch := look.Body
	if due {
		patch = look.Strong
	}
	text(colPatch, 0, first, patch, look.Ink, false)
	text(colPatch, 1, second, look.Body, look.Ink, false)
	symptoms := look.Body
	if r.Flagged {
		symptoms = look.Strong
	}
	if words := v.symptomWords(r); words != "" {
		said = append(said, words)
		w.cells = append(w.cells, cell{object: look.NewParagraph(words, symptoms, look.Ink), col: colSymptoms})
	}
	loss, under := v.lossWords(r)
	text(colLoss, 0, loss, look.Strong, look.Ink, false)
	text(colLoss, 1, under, look.Note, look.Ink2, false)
	state, missing := v.stateWords(r)
	text(colState, 0, state, look.Strong, look.Ink, false)
	if missing != "" {
		said = append(said, missing)
		w.cells = append(w.cells, cell{object: look.NewParagraph(missing, look.Note, look.Ink2), col: colState, line: 1})
	}
	if r.Flagged && !r.Flag.Told() {
		w.flag, w.below = true, v.flagBelow(i)
		title, lines := v.flagWords(r)
		said = append(said, title, strings.Join(lines, " "))
	}
	w.said = strings.Join(said, "\n") + fmt.Sprint(w.flag)
	return w
}

// textCell writes a text into a column.
type textCell = func(col column, line int, s string, style look.Style, tone look.Tone, right bool)

// nameCells are number and name, with what is known below them.
func (v *View) nameCells(r squad.Row, text textCell) {
	text(colNumber, 0, r.Number(), look.Note, look.Ink2, false)
	text(colName, 0, r.Sheet.Athlete.Name, look.Strong, look.Ink, false)
	text(colName, 1, v.underName(r), look.Note, look.Ink2, false)
}

// underName is age and position, or what is the athlete's own in this session.
func (v *View) underName(r squad.Row) string {
	s := r.Sheet.Test.Session
	switch {
	case squad.OwnTimes(v.doc.Now().session, r.Sheet.Test) && s.End != "":
		return v.say("squad.own.times", string(s.Start), string(s.End))
	case squad.OwnTimes(v.doc.Now().session, r.Sheet.Test):
		return v.say("squad.own.from", string(s.Start))
	case len(r.Own) > 0:
		return v.say("squad.own.other")
	}
	var list []string
	if years, ok := r.Sheet.Athlete.Age(v.desk.Now()); ok {
		list = append(list, v.desk.Words.Number(float64(years), 0))
	}
	if r.Hidden {
		list = append(list, v.say("squad.hidden"))
	} else if r.Sheet.Athlete.Position != "" {
		list = append(list, r.Sheet.Athlete.Position)
	}
	return v.desk.Words.Commas(list)
}

// bottleCells are the bottles, a line each.
func (v *View) bottleCells(r squad.Row, w *rowView, text textCell) {
	by := v.speaker(false).By
	for i, b := range r.Sheet.Test.Bottles {
		of := look.Drink
		if b.ProductID == waterID {
			of = look.Water
		}
		w.cells = append(w.cells, cell{object: look.NewSwatch(of), col: colSwatch, line: i})
		number := func(col column, n record.Number) {
			if n.Known() {
				text(col, i, by.Number(*n.Value, quantity.Gram), look.Body, look.Ink, true)
			}
		}
		number(colBottle, b.Before)
		number(colBottleAfter, b.After)
		refill := v.amountsText(b)
		switch b.Use {
		case record.UseShared:
			refill = v.say("squad.shared")
		case record.UsePoured:
			refill = v.say("squad.poured")
		}
		text(colRefill, i, refill, look.Body, look.Ink, true)
		if drunk, ok := r.Drunk(i); ok {
			text(colDrunk, i, by.Number(drunk, quantity.Millilitre), look.Body, look.Ink, true)
		}
	}
}

// amountsText are refills and what was poured away as they are typed; a dash for
// none once the bottle was weighed again.
func (v *View) amountsText(b record.Bottle) string {
	text := squad.AmountsOf(b, func(grams float64) string { return v.desk.Words.Number(grams, 0) })
	if text == "" && b.After.Known() {
		return v.say("squad.dash")
	}
	return text
}
