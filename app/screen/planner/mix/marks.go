package mix

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// limitMark is the line at which a slider stops, small, for a legend.
type limitMark struct {
	widget.BaseWidget
	box *look.Outline
}

var _ look.Based = (*limitMark)(nil)

func newLimitMark() *limitMark {
	m := &limitMark{box: look.NewOutline()}
	m.ExtendBaseWidget(m)
	return m
}

// Baseline puts the mark on the line.
func (m *limitMark) Baseline() float32 { return look.Scaled(10) }

// CreateRenderer draws the mark.
func (m *limitMark) CreateRenderer() fyne.WidgetRenderer {
	r := &limitMarkRenderer{m}
	r.paint()
	return r
}

type limitMarkRenderer struct{ m *limitMark }

func (r *limitMarkRenderer) paint() {
	p := look.PaletteNow()
	r.m.box.Paint(p.Ink, p.Ink, 0, 0)
}

func (r *limitMarkRenderer) Layout(fyne.Size) { r.m.box.Place(fyne.Position{}, r.MinSize()) }

func (r *limitMarkRenderer) MinSize() fyne.Size { return fyne.NewSize(2, look.Scaled(12)) }

func (r *limitMarkRenderer) Refresh() {
	r.paint()
	r.Layout(r.m.Size())
}

func (r *limitMarkRenderer) Objects() []fyne.CanvasObject { return r.m.box.With() }
func (r *limitMarkRenderer) Destroy()                     {}
