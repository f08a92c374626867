package trip

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// The bar of ink of a row with a warning, px: how wide it is, and how far left of
// the row it stands, in the room that a sheet leaves beside its content.
const (
	rowBar    float32 = 3
	rowBarOut float32 = 11
)

// rowFrame is a row with a bar of ink at its left while a warning stands in it.
type rowFrame struct {
	widget.BaseWidget
	content fyne.CanvasObject
	warned  bool
}

var (
	_ look.Flowing = (*rowFrame)(nil)
	_ look.Holder  = (*rowFrame)(nil)
)

func newRowFrame(content fyne.CanvasObject) *rowFrame {
	f := &rowFrame{content: content}
	f.ExtendBaseWidget(f)
	return f
}

// warn draws the bar, or takes it away.
func (f *rowFrame) warn(on bool) {
	if f.warned != on {
		f.warned = on
		f.Refresh()
	}
}

// Parts returns the row.
func (f *rowFrame) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{f.content} }

// HeightFor returns the height at a width.
func (f *rowFrame) HeightFor(width float32) float32 { return look.HeightFor(f.content, width) }

// CreateRenderer draws the row and its bar.
func (f *rowFrame) CreateRenderer() fyne.WidgetRenderer {
	r := &rowFrameRenderer{f: f, bar: canvas.NewRectangle(nil)}
	r.Layout(f.Size())
	return r
}

type rowFrameRenderer struct {
	f   *rowFrame
	bar *canvas.Rectangle
}

func (r *rowFrameRenderer) Layout(size fyne.Size) {
	r.bar.FillColor = look.PaletteNow().Ink
	r.bar.Hidden = !r.f.warned
	r.bar.Move(fyne.NewPos(-rowBarOut, 0))
	r.bar.Resize(fyne.NewSize(rowBar, size.Height))
	r.f.content.Resize(size)
}

func (r *rowFrameRenderer) MinSize() fyne.Size { return r.f.content.MinSize() }

func (r *rowFrameRenderer) Refresh() {
	r.Layout(r.f.Size())
	r.bar.Refresh()
	r.f.content.Refresh()
}

func (r *rowFrameRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.bar, r.f.content}
}

func (r *rowFrameRenderer) Destroy() {}

// rowsFrame is the rows of a crew: all of them, or as many as most px hold, and the
// others by scrolling.
type rowsFrame struct {
	widget.BaseWidget
	table  fyne.CanvasObject
	scroll *look.Scroll
	// most is the height there is, px; zero for as much as the rows need.
	most float32
}

var (
	_ look.Flowing = (*rowsFrame)(nil)
	_ look.Holder  = (*rowsFrame)(nil)
)

func newRowsFrame(table fyne.CanvasObject) *rowsFrame {
	f := &rowsFrame{table: table}
	f.scroll = look.NewScroll(look.Pad(0, scrollOut, 0, rowBarOut, table)) // the bars of warnings stand in its room
	f.ExtendBaseWidget(f)
	return f
}

// natural is the height of all rows at a width.
func (f *rowsFrame) natural(width float32) float32 { return look.HeightFor(f.table, width) }

// HeightFor returns the height at a width.
func (f *rowsFrame) HeightFor(width float32) float32 {
	if f.most > 0 {
		return f.most
	}
	return f.natural(width)
}

// Parts returns the rows, or what scrolls them.
func (f *rowsFrame) Parts() []fyne.CanvasObject {
	if f.most > 0 {
		return []fyne.CanvasObject{f.scroll}
	}
	return []fyne.CanvasObject{f.table}
}

// CreateRenderer places the rows.
func (f *rowsFrame) CreateRenderer() fyne.WidgetRenderer { return &rowsFrameRenderer{f} }

type rowsFrameRenderer struct{ f *rowsFrame }

func (r *rowsFrameRenderer) Layout(size fyne.Size) {
	if r.f.most <= 0 {
		r.f.table.Move(fyne.Position{})
		r.f.table.Resize(size)
		return
	}
	r.f.scroll.Move(fyne.NewPos(-rowBarOut, 0))
	r.f.scroll.Resize(fyne.NewSize(size.Width+rowBarOut+scrollOut, size.Height))
}

// scrollOut is how far the bar of the scroll stands right of the rows, px.
const scrollOut float32 = 12

func (r *rowsFrameRenderer) MinSize() fyne.Size { return leastOf(r.f) }

func (r *rowsFrameRenderer) Refresh() {
	r.Layout(r.f.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *rowsFrameRenderer) Objects() []fyne.CanvasObject { return r.f.Parts() }
func (r *rowsFrameRenderer) Destroy()                     {}
