package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Barred sets something that has to be settled on sunk ground with a bar of ink at
// its left: a [Caution] whose content is more than a sentence.
type Barred struct {
	widget.BaseWidget
	content fyne.CanvasObject
}

var (
	_ Flowing = (*Barred)(nil)
	_ Holder  = (*Barred)(nil)
)

// NewBarred makes a barred panel around content.
func NewBarred(content fyne.CanvasObject) *Barred {
	b := &Barred{content: Pad(8, cautionPadX, 8, cautionBar+cautionPadX, content)}
	b.ExtendBaseWidget(b)
	return b
}

// Parts returns the content.
func (b *Barred) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{b.content} }

// HeightFor returns the height at a width.
func (b *Barred) HeightFor(width float32) float32 { return HeightFor(b.content, width) }

// CreateRenderer draws ground and bar.
func (b *Barred) CreateRenderer() fyne.WidgetRenderer {
	r := &barredRenderer{b: b, ground: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil)}
	r.Layout(b.Size())
	return r
}

type barredRenderer struct {
	b           *Barred
	ground, bar *canvas.Rectangle
}

func (r *barredRenderer) Layout(size fyne.Size) {
	p := PaletteNow()
	r.ground.FillColor, r.bar.FillColor = p.Sunk, p.Ink
	r.ground.Resize(size)
	r.bar.Resize(fyne.NewSize(cautionBar, size.Height))
	r.b.content.Move(fyne.NewPos(0, 0))
	r.b.content.Resize(size)
}

func (r *barredRenderer) MinSize() fyne.Size { return r.b.content.MinSize() }

func (r *barredRenderer) Refresh() {
	r.Layout(r.b.Size())
	canvas.Refresh(r.b)
}

func (r *barredRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.bar, r.b.content}
}

func (r *barredRenderer) Destroy() {}
