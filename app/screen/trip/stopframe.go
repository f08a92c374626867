package trip

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// A squad of so many scrolls its rows while the days stay in sight, where so many px,
// at 100 % text, are left for the rows; in less room the whole stop scrolls.
const (
	squadFrom           = 5
	rowsLeast           = 170
	frameRounds         = 2
	reserve     float32 = 1
)

// stopFrame gives the parts of a stop the room there is. It scrolls as a whole, or
// the rows of a squad scroll alone.
type stopFrame struct {
	widget.BaseWidget
	scroll  *look.Scroll
	content *fyne.Container
	rows    *rowsFrame
	// squad: enough travel for their rows to scroll alone.
	squad bool
}

var _ look.Holder = (*stopFrame)(nil)

func newStopFrame(content *fyne.Container, rows *rowsFrame) *stopFrame {
	f := &stopFrame{scroll: look.PageScroll(content), content: content, rows: rows}
	f.ExtendBaseWidget(f)
	return f
}

// Parts returns what scrolls.
func (f *stopFrame) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{f.scroll} }

// room is the height for the rows in a size; zero for as much as they need.
func (f *stopFrame) room(size fyne.Size) float32 {
	if !f.squad || size.Width < 1 {
		return 0
	}
	width := size.Width
	f.rows.most = 0
	rows := f.rows.natural(width - 2*look.SheetPadX)
	left := size.Height - reserve - (look.HeightFor(f.content, width) - rows)
	if left >= rows || left < look.Scaled(rowsLeast) {
		return 0
	}
	return left
}

// CreateRenderer gives the parts their room.
func (f *stopFrame) CreateRenderer() fyne.WidgetRenderer { return &stopFrameRenderer{f} }

type stopFrameRenderer struct{ f *stopFrame }

func (r *stopFrameRenderer) Layout(size fyne.Size) {
	f := r.f
	f.rows.most = f.room(size)
	f.rows.Refresh()
	f.scroll.Resize(fyne.NewSize(size.Width+look.BarRoom, size.Height)) // its bar stands in the margin
	for range frameRounds {                                             // heights of wrapped text are known after the first
		f.scroll.Refresh()
	}
}

func (r *stopFrameRenderer) MinSize() fyne.Size { return r.f.scroll.MinSize() }

func (r *stopFrameRenderer) Refresh() { r.Layout(r.f.Size()) }

func (r *stopFrameRenderer) Objects() []fyne.CanvasObject { return r.f.Parts() }
func (r *stopFrameRenderer) Destroy()                     {}
