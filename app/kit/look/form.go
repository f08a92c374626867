package look

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Sizes of a form, in px at 100 % text; the first two are the usual ones, see
// [Form.Measured].
const (
	formLabel  float32 = 132
	formColumn float32 = 264
	formGapX   float32 = 28
	formGapY   float32 = 8
	// formWordsGap parts the words from the field.
	formWordsGap float32 = 8
)

// Entry is one field of a [Form] with its words, which take two lines where one is
// too short for them; wide ones have a row of their own.
type Entry struct {
	words       string
	label, more *Label
	field       fyne.CanvasObject
	wide        bool
}

// NewEntry makes a field with its words; a screen reader says them too.
func NewEntry(words string, field fyne.CanvasObject) Entry {
	Speak(words, field)
	e := Entry{words: words, label: NewLabel(words, Body, Ink2).Shorten(), more: NewLabel("", Body, Ink2).Shorten(), field: field}
	e.more.Hide()
	return e
}

// lines are the words in one line or two. A word is never broken: it is shortened.
func (e Entry) lines(room float32) []string {
	if Body.Width(e.words) <= room {
		return []string{e.words}
	}
	for _, word := range strings.Fields(e.words) {
		if Body.Width(word) > room {
			return []string{e.words}
		}
	}
	first := Wrap(e.words, Body, room)[0]
	return []string{first, strings.TrimSpace(e.words[len(first):])}
}

// above is how far a field stands below the top of its row, so that two lines of words
// stand beside the middle of its first line.
func (e Entry) above(room float32) float32 {
	if base, ok := BaselineOf(e.field); ok && len(e.lines(room)) > 1 {
		return max(0, round(Body.Height()/2)+e.label.Baseline()-base)
	}
	return 0
}

// Speak gives the words beside a field to what a screen reader says of it, unless it
// has words of its own; a field may stand in a box.
func Speak(words string, o fyne.CanvasObject) {
	if s, ok := o.(interface {
		Spoken() string
		SetSpoken(text string)
	}); ok {
		if s.Spoken() == "" {
			s.SetSpoken(words)
		}
		return
	}
	if box, ok := o.(*fyne.Container); ok {
		for _, child := range box.Objects {
			Speak(words, child)
		}
	}
}

// Wide gives the field a row of its own and returns the entry.
func (e Entry) Wide() Entry {
	e.wide = true
	return e
}

// Form is words with fields beside them, in two columns where there is room and
// in one where there is not, read row by row. A hidden field takes its words
// with it.
type Form struct {
	widget.BaseWidget
	entries []Entry
	// label is the width of the words, column the least width of a column; most
	// is how many columns there may be.
	label, column float32
	most          int
}

var (
	_ Flowing = (*Form)(nil)
	_ Holder  = (*Form)(nil)
)

// NewForm makes a form.
func NewForm(entries ...Entry) *Form {
	f := &Form{entries: entries, label: formLabel, column: formColumn, most: 2}
	f.ExtendBaseWidget(f)
	return f
}

// Measured sets other measures and returns the form: the width of the words and
// the least width of a column, in px at 100 % text, and how many columns there
// may be; 0 is as many as have room.
func (f *Form) Measured(label, column float32, most int) *Form {
	f.label, f.column, f.most = label, column, most
	return f
}

// Parts returns words and fields in reading order.
func (f *Form) Parts() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, e := range f.entries {
		list = append(list, e.label, e.more, e.field)
	}
	return list
}

// HeightFor returns the height at a width.
func (f *Form) HeightFor(width float32) float32 {
	height := float32(0)
	for _, r := range f.rows(width) {
		height += r.height + formGapY
	}
	return max(0, height-formGapY)
}

// columns are how many there are at a width, and how wide each is.
func (f *Form) columns(width float32) (n int, column float32) {
	n = max(1, int((width+formGapX)/(Scaled(f.column)+formGapX)))
	if f.most > 0 {
		n = min(n, f.most)
	}
	return n, (width - formGapX*float32(n-1)) / float32(n)
}

// room is the width of the words, without the gap behind them.
func (f *Form) room() float32 { return Scaled(f.label) - formWordsGap }

// formRow is a row of entries, each in a column of that width; the fields stand below
// the top of it where words take two lines.
type formRow struct {
	entries              []Entry
	width, height, above float32
}

// rows parts the visible entries into rows at a width.
func (f *Form) rows(width float32) []formRow {
	most, column := f.columns(width)
	var list []formRow
	var row formRow
	flush := func() {
		for _, e := range row.entries {
			words := float32(len(e.lines(f.room()))) * Body.Height()
			row.height = max(row.height, words, row.above+HeightFor(e.field, row.width-Scaled(f.label)))
		}
		if len(row.entries) > 0 {
			list = append(list, row)
		}
		row = formRow{width: column}
	}
	flush()
	for _, e := range f.entries {
		if !e.field.Visible() {
			continue
		}
		if e.wide || len(row.entries) == most {
			flush()
		}
		if e.wide {
			row.width = width
		}
		row.entries = append(row.entries, e)
		row.above = max(row.above, e.above(f.room()))
		if e.wide {
			flush()
		}
	}
	flush()
	return list
}

// CreateRenderer places words and fields.
func (f *Form) CreateRenderer() fyne.WidgetRenderer { return &formRenderer{f} }

type formRenderer struct{ form *Form }

// Layout sets the words on the baseline of their field.
func (r *formRenderer) Layout(size fyne.Size) {
	for _, e := range r.form.entries {
		ShowIf(e.label, e.field.Visible())
		ShowIf(e.more, e.field.Visible() && len(e.lines(r.form.room())) > 1)
	}
	label, room, y := Scaled(r.form.label), r.form.room(), float32(0)
	for _, row := range r.form.rows(size.Width) {
		for i, e := range row.entries {
			x := float32(i) * (row.width + formGapX)
			lines, at := e.lines(room), y+row.above
			e.field.Move(fyne.NewPos(x+label, at))
			e.field.Resize(fyne.NewSize(row.width-label, HeightFor(e.field, row.width-label)))
			top := at
			if base, ok := BaselineOf(e.field); ok {
				top += base - e.label.Baseline()
			}
			if len(lines) > 1 {
				top = max(y, top-round(Body.Height()/2))
				e.more.SetText(lines[1])
				e.more.Move(fyne.NewPos(x, round(top+Body.Height())))
				e.more.Resize(fyne.NewSize(room, Body.Height()))
			}
			e.label.SetText(lines[0])
			e.label.Move(fyne.NewPos(x, round(top)))
			e.label.Resize(fyne.NewSize(room, Body.Height()))
		}
		y += row.height + formGapY
	}
}

func (r *formRenderer) MinSize() fyne.Size {
	width := Scaled(r.form.column)
	if w := r.form.Size().Width; w > 0 {
		return fyne.NewSize(width, r.form.HeightFor(w))
	}
	return fyne.NewSize(width, r.form.HeightFor(width))
}

func (r *formRenderer) Refresh() {
	r.Layout(r.form.Size())
	for _, o := range r.form.Parts() {
		o.Refresh()
	}
}

func (r *formRenderer) Objects() []fyne.CanvasObject { return r.form.Parts() }
func (r *formRenderer) Destroy()                     {}
