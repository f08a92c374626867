package mix

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// bandMark is the pale outlined band of the advice, small, for a legend; or the
// line at which a slider stops.
type bandMark struct {
	widget.BaseWidget
	box  *look.Outline
	line bool
}

var _ look.Based = (*bandMark)(nil)

func newBandMark() *bandMark {
	m := &bandMark{box: look.NewOutline()}
	m.ExtendBaseWidget(m)
	return m
}

// newLimitMark is the line at which a slider stops.
func newLimitMark() *bandMark {
	m := newBandMark()
	m.line = true
	return m
}

// Baseline puts the mark on the line.
func (m *bandMark) Baseline() float32 { return look.Scaled(10) }

// CreateRenderer draws the mark.
func (m *bandMark) CreateRenderer() fyne.WidgetRenderer {
	r := &bandMarkRenderer{m}
	r.paint()
	return r
}

type bandMarkRenderer struct{ m *bandMark }

// paint takes the inks of the theme: the mark stands for bands of every hue.
func (r *bandMarkRenderer) paint() {
	p := look.PaletteNow()
	if r.m.line {
		r.m.box.Paint(p.Ink, p.Ink, 0, 0)
		return
	}
	r.m.box.Paint(p.Pale(p.Ink3), p.Ink3, 1, 2)
}

func (r *bandMarkRenderer) Layout(fyne.Size) { r.m.box.Place(fyne.Position{}, r.MinSize()) }

func (r *bandMarkRenderer) MinSize() fyne.Size {
	if r.m.line {
		return fyne.NewSize(2, look.Scaled(12))
	}
	return fyne.NewSize(look.Scaled(14), look.Scaled(10))
}

func (r *bandMarkRenderer) Refresh() {
	r.paint()
	r.Layout(r.m.Size())
}

func (r *bandMarkRenderer) Objects() []fyne.CanvasObject { return r.m.box.With() }
func (r *bandMarkRenderer) Destroy()                     {}
