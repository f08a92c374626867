package figures

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// titled is a title with its unit behind it, where there is room for the whole
// of both.
type titled struct {
	widget.BaseWidget
	title, unit *look.Label
}

var _ look.Based = (*titled)(nil)

func newTitled(title, unit string) *titled {
	t := &titled{title: look.NewLabel(title, look.Strong, look.Ink), unit: look.NewLabel(unit, look.Note, look.Ink2)}
	t.ExtendBaseWidget(t)
	return t
}

// Baseline is that of the title.
func (t *titled) Baseline() float32 { return look.Strong.Baseline() }

// CreateRenderer places both.
func (t *titled) CreateRenderer() fyne.WidgetRenderer { return &titledRenderer{t} }

type titledRenderer struct{ t *titled }

func (r *titledRenderer) Layout(size fyne.Size) {
	t := r.t
	title, unit := t.title.MinSize(), t.unit.MinSize()
	t.title.Resize(title)
	t.unit.Move(fyne.NewPos(title.Width+8, look.Strong.Baseline()-look.Note.Baseline()))
	t.unit.Resize(unit)
	look.ShowIf(t.unit, title.Width+8+unit.Width <= size.Width)
}

func (r *titledRenderer) MinSize() fyne.Size { return r.t.title.MinSize() }

func (r *titledRenderer) Refresh() {
	r.Layout(r.t.Size())
	r.t.title.Refresh()
	r.t.unit.Refresh()
}

func (r *titledRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.title, r.t.unit}
}

func (r *titledRenderer) Destroy() {}
