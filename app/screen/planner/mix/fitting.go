package mix

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// fitting holds content that scrolls only where it is higher than its room: a scroll
// within the page's own would catch the wheel, and clicks beside the page.
type fitting struct {
	widget.BaseWidget
	content fyne.CanvasObject
	scroll  *look.Scroll
	scrolls bool
}

var _ look.Holder = (*fitting)(nil)

func newFitting(content fyne.CanvasObject) *fitting {
	f := &fitting{content: content, scroll: look.NewScroll(content)}
	f.ExtendBaseWidget(f)
	return f
}

// height is what the content needs at a width.
func (f *fitting) height(width float32) float32 { return look.HeightFor(f.content, width) }

// Parts returns the content, or the scroll around it.
func (f *fitting) Parts() []fyne.CanvasObject {
	if f.scrolls {
		return []fyne.CanvasObject{f.scroll}
	}
	return []fyne.CanvasObject{f.content}
}

// CreateRenderer places the content.
func (f *fitting) CreateRenderer() fyne.WidgetRenderer { return &fittingRenderer{f} }

type fittingRenderer struct{ f *fitting }

func (r *fittingRenderer) Layout(size fyne.Size) {
	f := r.f
	was := f.scrolls
	f.scrolls = f.height(size.Width) > size.Height+1
	one := f.Parts()[0]
	one.Move(fyne.Position{})
	one.Resize(size)
	if f.scrolls {
		f.scroll.Refresh()
	}
	if was != f.scrolls {
		canvas.Refresh(f)
	}
}

func (r *fittingRenderer) MinSize() fyne.Size { return r.f.scroll.MinSize() }

func (r *fittingRenderer) Refresh() { r.Layout(r.f.Size()) }

func (r *fittingRenderer) Objects() []fyne.CanvasObject { return r.f.Parts() }
func (r *fittingRenderer) Destroy()                     {}
