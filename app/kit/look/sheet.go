package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Sheet is a white panel with rounded corners and a hairline around it.
type Sheet struct {
	widget.BaseWidget
	content fyne.CanvasObject
}

var (
	_ Flowing = (*Sheet)(nil)
	_ Holder  = (*Sheet)(nil)
)

// NewSheet makes a panel around content.
func NewSheet(content fyne.CanvasObject) *Sheet {
	s := &Sheet{content: content}
	s.ExtendBaseWidget(s)
	return s
}

// SetContent puts something else on the sheet.
func (s *Sheet) SetContent(content fyne.CanvasObject) {
	s.content = content
	s.Refresh()
}

// Parts returns the content.
func (s *Sheet) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.content} }

// HeightFor returns the height at a width.
func (s *Sheet) HeightFor(width float32) float32 {
	return HeightFor(s.content, width-2*SheetPadX) + 2*SheetPadY
}

// CreateRenderer draws ground, hairline and content.
func (s *Sheet) CreateRenderer() fyne.WidgetRenderer {
	r := &sheetRenderer{sheet: s, ground: NewGround()}
	r.apply()
	r.ground.Place(fyne.Position{}, s.Size()) // one that was out of sight long is made anew, and not laid out
	return r
}

type sheetRenderer struct {
	sheet  *Sheet
	ground *Ground
}

func (r *sheetRenderer) apply() {
	p := PaletteNow()
	r.ground.Paint(p.Sheet, p.Hairline, 1, SheetRadius)
}

func (r *sheetRenderer) Layout(size fyne.Size) {
	r.ground.Place(fyne.Position{}, size)
	r.sheet.content.Move(fyne.NewPos(SheetPadX, SheetPadY))
	r.sheet.content.Resize(size.SubtractWidthHeight(2*SheetPadX, 2*SheetPadY))
}

func (r *sheetRenderer) MinSize() fyne.Size {
	size := r.sheet.content.MinSize()
	if w := r.sheet.Size().Width; w > 2*SheetPadX {
		size.Height = HeightFor(r.sheet.content, w-2*SheetPadX)
	}
	return size.AddWidthHeight(2*SheetPadX, 2*SheetPadY)
}

func (r *sheetRenderer) Refresh() {
	r.apply()
	r.Layout(r.sheet.Size())
	canvas.Refresh(r.sheet)
}

func (r *sheetRenderer) Objects() []fyne.CanvasObject {
	return r.ground.With(r.sheet.content)
}

func (r *sheetRenderer) Destroy() {}
