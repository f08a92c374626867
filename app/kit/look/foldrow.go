package look

import "fyne.io/fyne/v2"

// Fold says how rows of inputs stand where they are too narrow for one line: which objects
// stand on the first, the others below them.
type Fold struct {
	// Below is the width below which they fold, px at 100 % text.
	Below float32
	// First are the places of the objects of the first line.
	First []int
}

// FoldHeader is the [HeaderRow] above rows that fold.
func FoldHeader(gap float32, columns []Column, fold Fold) *fyne.Container {
	var titles []fyne.CanvasObject
	for _, c := range columns {
		titles = append(titles, NewLabel(c.Title, Note, Ink2).Shorten())
	}
	return VBox(0, Pad(4, tablePad, 6, tablePad, folded(gap, columns, fold, titles)), NewRule())
}

// FoldRow is a [FieldRow] that folds.
func FoldRow(gap float32, columns []Column, fold Fold, objects ...fyne.CanvasObject) *fyne.Container {
	return VBox(0, Pad(4, tablePad, 4, tablePad, folded(gap, columns, fold, objects)), NewRule())
}

func folded(gap float32, list []Column, fold Fold, objects []fyne.CanvasObject) *fyne.Container {
	f := &foldRow{fold: fold, wide: columns{gap: gap}, first: columns{gap: gap}, second: columns{gap: gap}}
	for i, c := range list {
		f.wide.tracks = append(f.wide.tracks, c.track())
		if f.leads(i) {
			f.first.tracks = append(f.first.tracks, c.track())
		} else {
			f.second.tracks = append(f.second.tracks, c.track())
		}
	}
	return &fyne.Container{Layout: f, Objects: objects}
}

// foldRow sets objects in one line, or in two.
type foldRow struct {
	fold                Fold
	wide, first, second columns
	width               float32
}

// betweenLines is the room between the two lines, px.
const betweenLines float32 = 6

// leads reports whether an object stands on the first line.
func (f *foldRow) leads(at int) bool {
	for _, i := range f.fold.First {
		if i == at {
			return true
		}
	}
	return false
}

func (f *foldRow) narrow(width float32) bool { return width < Scaled(f.fold.Below) }

// lines parts the objects.
func (f *foldRow) lines(objects []fyne.CanvasObject) (first, second []fyne.CanvasObject) {
	for i, o := range objects {
		if f.leads(i) {
			first = append(first, o)
		} else {
			second = append(second, o)
		}
	}
	return first, second
}

func (f *foldRow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.width = size.Width
	if !f.narrow(size.Width) {
		f.wide.Layout(objects, size)
		return
	}
	first, second := f.lines(objects)
	above := f.first.heightFor(first, size.Width)
	f.first.Layout(first, fyne.NewSize(size.Width, above))
	f.second.Layout(second, fyne.NewSize(size.Width, f.second.heightFor(second, size.Width)))
	for _, o := range second {
		o.Move(o.Position().AddXY(0, above+betweenLines))
	}
}

func (f *foldRow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(Scaled(200), f.heightFor(objects, f.width))
}

func (f *foldRow) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	if !f.narrow(width) {
		return f.wide.heightFor(objects, width)
	}
	first, second := f.lines(objects)
	return f.first.heightFor(first, width) + betweenLines + f.second.heightFor(second, width)
}
