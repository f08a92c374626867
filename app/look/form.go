package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Sizes of a form, in px at 100 % text.
const (
	formLabel  float32 = 132
	formColumn float32 = 264
	formGapX   float32 = 28
	formGapY   float32 = 8
)

// Entry is one field of a [Form] with its words; wide ones have a row of their
// own.
type Entry struct {
	label *Label
	field fyne.CanvasObject
	wide  bool
}

// NewEntry makes a field with its words.
func NewEntry(words string, field fyne.CanvasObject) Entry {
	return Entry{label: NewLabel(words, Body, Ink2).Shorten(), field: field}
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
}

var (
	_ Flowing = (*Form)(nil)
	_ Holder  = (*Form)(nil)
)

// NewForm makes a form.
func NewForm(entries ...Entry) *Form {
	f := &Form{entries: entries}
	f.ExtendBaseWidget(f)
	return f
}

// Parts returns words and fields in reading order.
func (f *Form) Parts() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, e := range f.entries {
		list = append(list, e.label, e.field)
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

// formRow is a row of one or two entries.
type formRow struct {
	entries       []Entry
	width, height float32
}

// rows parts the visible entries into rows at a width.
func (f *Form) rows(width float32) []formRow {
	most, column := 1, width
	if half := (width - formGapX) / 2; half >= Scaled(formColumn) {
		most, column = 2, half
	}
	var list []formRow
	var row formRow
	flush := func() {
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
		row.height = max(row.height, HeightFor(e.field, row.width-Scaled(formLabel)))
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
		if e.field.Visible() {
			e.label.Show()
		} else {
			e.label.Hide()
		}
	}
	label, y := Scaled(formLabel), float32(0)
	for _, row := range r.form.rows(size.Width) {
		for i, e := range row.entries {
			x := float32(i) * (row.width + formGapX)
			e.field.Move(fyne.NewPos(x+label, y))
			e.field.Resize(fyne.NewSize(row.width-label, HeightFor(e.field, row.width-label)))
			top := y
			if base, ok := BaselineOf(e.field); ok {
				top += base - e.label.Baseline()
			}
			e.label.Move(fyne.NewPos(x, round(top)))
			e.label.Resize(fyne.NewSize(label-8, Body.Height()))
		}
		y += row.height + formGapY
	}
}

func (r *formRenderer) MinSize() fyne.Size {
	width := Scaled(formColumn)
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
