package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Room in a dialog, in px.
const (
	dialogPad    float32 = 24
	dialogGap    float32 = 16
	dialogMargin float32 = 24
)

// CreateRenderer draws a veil over the window and the sheet in its middle.
func (d *Dialog) CreateRenderer() fyne.WidgetRenderer {
	r := &dialogRenderer{d}
	r.paint()
	return r
}

type dialogRenderer struct{ d *Dialog }

func (r *dialogRenderer) paint() {
	p, parts := look.PaletteNow(), r.d.parts
	c := color.NRGBAModel.Convert(p.Paper).(color.NRGBA)
	c.A = 0xC8
	parts.veil.FillColor = c
	parts.sheet.Paint(p.Sheet, p.Edge, 1, look.SheetRadius)
}

// Layout centres the sheet a little above the middle; content scrolls when the
// window is too low for it.
func (r *dialogRenderer) Layout(size fyne.Size) {
	d := r.d
	width := d.q.Width
	if width == 0 {
		width = 460
	}
	width = min(look.Scaled(width), size.Width-2*dialogMargin)
	inner := width - 2*dialogPad
	head, foot := look.HeightFor(d.parts.head, inner), d.parts.actions.MinSize().Height
	body := float32(0)
	if d.parts.content != nil {
		body = look.HeightFor(d.q.Content, inner) + dialogGap
	}
	fixed := head + foot + dialogGap + 2*dialogPad
	body = min(body, max(size.Height-2*dialogMargin-fixed, 0))
	x, y := whole((size.Width-width)/2), whole((size.Height-fixed-body)*0.42)
	d.parts.veil.Resize(size)
	d.parts.sheet.Place(fyne.NewPos(x, y), fyne.NewSize(width, fixed+body))
	d.parts.head.Move(fyne.NewPos(x+dialogPad, y+dialogPad))
	d.parts.head.Resize(fyne.NewSize(inner, head))
	if d.parts.content != nil {
		d.parts.content.Move(fyne.NewPos(x+dialogPad-ringRoom, y+dialogPad+head+dialogGap))
		d.parts.content.Resize(fyne.NewSize(ringRoom+inner+barRoom, body-dialogGap))
	}
	d.parts.actions.Move(fyne.NewPos(x+dialogPad, y+fixed+body-dialogPad-foot))
	d.parts.actions.Resize(fyne.NewSize(inner, foot))
}

// barRoom is where the bar of what scrolls stands, beside the content, and ringRoom what the
// focus border of a tick stands out on the other side, px.
const (
	barRoom  float32 = 12
	ringRoom         = checkRing + 1
)

// whole cuts to whole px.
func whole(x float32) float32 { return float32(int(x)) }

// MinSize changes with the height of the content, so that the window lays the
// dialog out again when a note appears in it. The width is nobody's business.
func (r *dialogRenderer) MinSize() fyne.Size {
	if r.d.parts.content == nil {
		return fyne.Size{}
	}
	return fyne.NewSize(0, look.HeightFor(r.d.q.Content, r.d.parts.content.Size().Width-barRoom-ringRoom))
}

func (r *dialogRenderer) Refresh() {
	r.paint()
	r.Layout(r.d.Size())
	canvas.Refresh(r.d)
}

func (r *dialogRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.d.parts.veil}, r.d.parts.sheet.With(r.d.Parts()...)...)
}

func (r *dialogRenderer) Destroy() {}
