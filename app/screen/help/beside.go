package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// leastBeside is the least width that screens are made for, in px: where a window has
// as much beside the panel, the panel covers nothing.
const leastBeside float32 = 1180

// Beside holds what a window shows and a panel at its right. In a wide window the
// rest makes room for the panel, in others the panel covers its right part.
func Beside(main fyne.CanvasObject, p *Panel) *fyne.Container {
	return &fyne.Container{Layout: beside{p}, Objects: []fyne.CanvasObject{main, p}}
}

type beside struct{ panel *Panel }

func (l beside) Layout(o []fyne.CanvasObject, size fyne.Size) {
	panel, main := panelWidth(size), size.Width
	if l.panel.Visible() && size.Width-panel >= leastBeside {
		main -= panel
	}
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(main, size.Height))
	o[1].Move(fyne.NewPos(size.Width-panel, 0))
	o[1].Resize(fyne.NewSize(panel, size.Height))
}

func (beside) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// panelWidth is how wide a panel is in a window.
func panelWidth(window fyne.Size) float32 { return min(look.Scaled(width), window.Width) }

// Over is a panel over a dialog. A click beside it closes it.
type Over struct {
	widget.BaseWidget
	panel *Panel
	on    fyne.Canvas
}

var _ look.Holder = (*Over)(nil)

// ShowOver shows a panel over all that a window shows.
func ShowOver(on fyne.Canvas, p *Panel) *Over {
	o := &Over{panel: p, on: on}
	o.ExtendBaseWidget(o)
	on.Overlays().Add(o)
	on.Focus(p)
	return o
}

// Close takes the panel away.
func (o *Over) Close() { o.on.Overlays().Remove(o) }

// Tapped closes the panel: the click was beside it.
func (o *Over) Tapped(*fyne.PointEvent) { o.panel.OnClose() }

// Parts returns the panel.
func (o *Over) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{o.panel} }

// CreateRenderer draws the panel.
func (o *Over) CreateRenderer() fyne.WidgetRenderer { return &overRenderer{o} }

type overRenderer struct{ o *Over }

func (r *overRenderer) Layout(size fyne.Size) {
	panel := panelWidth(size)
	r.o.panel.Move(fyne.NewPos(size.Width-panel, 0))
	r.o.panel.Resize(fyne.NewSize(panel, size.Height))
}

func (*overRenderer) MinSize() fyne.Size { return fyne.Size{} }

func (r *overRenderer) Refresh() {
	r.Layout(r.o.Size())
	r.o.panel.Refresh()
	canvas.Refresh(r.o)
}

func (r *overRenderer) Objects() []fyne.CanvasObject { return r.o.Parts() }
func (*overRenderer) Destroy()                       {}
