package testsheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/look"
)

// Sizes of a form, in px at 100 % text: the column of words, the least width
// of a column of fields, the gaps.
const (
	formLabel  float32 = 112
	formColumn float32 = 300
	formGapX   float32 = 28
	formGapY   float32 = 8
)

// form is words with fields beside them, in two columns where there is room
// and in one where there is not. Cells are read row by row.
type form struct {
	widget.BaseWidget
	cells []formCell
}

// formCell is one field with its words; wide ones have a row of their own.
type formCell struct {
	label *look.Label
	field fyne.CanvasObject
	wide  bool
}

var (
	_ look.Flowing = (*form)(nil)
	_ look.Holder  = (*form)(nil)
)

// newForm makes a form.
func newForm(cells ...formCell) *form {
	f := &form{cells: cells}
	f.ExtendBaseWidget(f)
	return f
}

// cell is a field with its words.
func cell(words string, field fyne.CanvasObject) formCell {
	return formCell{label: look.NewLabel(words, look.Body, look.Ink2).Shorten(), field: field}
}

// wideCell is a field with its words that has a row of its own.
func wideCell(words string, field fyne.CanvasObject) formCell {
	c := cell(words, field)
	c.wide = true
	return c
}

// Parts returns words and fields in reading order.
func (f *form) Parts() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, c := range f.cells {
		list = append(list, c.label, c.field)
	}
	return list
}

// HeightFor returns the height at a width.
func (f *form) HeightFor(width float32) float32 { return f.arrange(width, func(formCell, spot) {}) }

// spot is where a cell stands.
type spot struct{ x, y, width, height float32 }

// arrange places the visible cells at a width and returns the height.
func (f *form) arrange(width float32, place func(formCell, spot)) float32 {
	columns, column := 1, width
	if half := (width - formGapX) / 2; half >= look.Scaled(formColumn) {
		columns, column = 2, half
	}
	y, height, at := float32(0), float32(0), 0
	line := func() {
		if height > 0 {
			y += height + formGapY
		}
		height, at = 0, 0
	}
	var row []formCell
	var spots []spot
	flush := func() {
		for i, c := range row {
			spots[i].height = height
			place(c, spots[i])
		}
		row, spots = nil, nil
		line()
	}
	for _, c := range f.cells {
		if !c.field.Visible() {
			continue
		}
		w := column
		if c.wide {
			w = width
		}
		if at == columns || c.wide && at > 0 {
			flush()
		}
		row, spots = append(row, c), append(spots, spot{x: float32(at) * (column + formGapX), y: y, width: w})
		height = max(height, look.HeightFor(c.field, w-look.Scaled(formLabel)))
		at++
		if c.wide {
			flush()
		}
	}
	flush()
	return max(0, y-formGapY)
}

// CreateRenderer places words and fields.
func (f *form) CreateRenderer() fyne.WidgetRenderer { return &formRenderer{f} }

type formRenderer struct{ f *form }

// Layout sets the words on the baseline of their field.
func (r *formRenderer) Layout(size fyne.Size) {
	label := look.Scaled(formLabel)
	for _, c := range r.f.cells {
		if c.field.Visible() {
			c.label.Show()
		} else {
			c.label.Hide()
		}
	}
	r.f.arrange(size.Width, func(c formCell, s spot) {
		c.field.Move(fyne.NewPos(s.x+label, s.y))
		c.field.Resize(fyne.NewSize(s.width-label, look.HeightFor(c.field, s.width-label)))
		top := s.y
		if base, ok := look.BaselineOf(c.field); ok {
			top += base - c.label.Baseline()
		}
		c.label.Move(fyne.NewPos(s.x, top))
		c.label.Resize(fyne.NewSize(label-8, look.Body.Height()))
	})
}

func (r *formRenderer) MinSize() fyne.Size {
	width := look.Scaled(formColumn)
	if w := r.f.Size().Width; w > 0 {
		return fyne.NewSize(width, r.f.HeightFor(w))
	}
	return fyne.NewSize(width, r.f.HeightFor(width))
}

func (r *formRenderer) Refresh() {
	r.Layout(r.f.Size())
	for _, o := range r.f.Parts() {
		o.Refresh()
	}
}

func (r *formRenderer) Objects() []fyne.CanvasObject { return r.f.Parts() }
func (r *formRenderer) Destroy()                     {}

// rowNote is what is wrong or odd in a line of a table, below it.
type rowNote struct {
	text *look.Paragraph
	box  *fyne.Container
}

func newRowNote() *rowNote {
	n := &rowNote{text: look.NewParagraph("", look.Note, look.Ink)}
	n.box = look.Pad(3, 0, 7, 0, n.text)
	n.box.Hide()
	return n
}

// set shows a sentence, or nothing.
func (n *rowNote) set(text string) {
	n.text.SetText(text)
	showIf(n.box, text != "")
}

// panel is a white sheet with a heading, a note at its right that may be
// empty, and what stands below.
func panel(title, note string, body ...fyne.CanvasObject) *look.Sheet {
	head := look.HBox(12, look.Grow(look.NewLabel(title, look.Strong, look.Ink).Shorten()), look.NewLabel(note, look.Note, look.Ink2))
	return look.NewSheet(look.VBox(10, append([]fyne.CanvasObject{head}, body...)...))
}

// small keeps a field from growing over its column.
func small(o fyne.CanvasObject) fyne.CanvasObject {
	if box, ok := o.(interface{ SetBox(px float32) }); ok { // its note may be wider
		box.SetBox(smallBox)
		return o
	}
	return look.MaxWidth(smallBox, o)
}

// smallBox is the width of a number's box, in px at 100 % text.
const smallBox float32 = 124
