package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// popupPad is the room above and below the rows of a list, in px.
const popupPad float32 = 4

// popupRow is the height of a row.
func popupRow() float32 { return look.ControlHeight() - 2 }

// CreateRenderer draws the list.
func (l *popupList) CreateRenderer() fyne.WidgetRenderer {
	r := &popupListRenderer{l: l, ground: look.NewOutline(), at: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil)}
	r.hover, r.thumb = canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	for range popupRows {
		r.texts = append(r.texts, canvas.NewText("", nil))
		r.notes = append(r.notes, canvas.NewText("", nil))
	}
	r.set()
	return r
}

type popupListRenderer struct {
	l                     *popupList
	ground                *look.Outline
	at, bar, hover, thumb *canvas.Rectangle
	texts, notes          []*canvas.Text
}

func (r *popupListRenderer) set() {
	l, p, size := r.l, look.PaletteNow(), r.l.Size()
	r.ground.Paint(p.Sheet, p.Edge, 1, look.ControlRadius)
	r.ground.Place(fyne.Position{}, size)
	for i := range r.texts {
		var o Option
		if i < l.shown() {
			o = l.options[l.first+i]
		}
		r.setRow(i, o, size.Width, p)
	}
	r.setHighlights(p, size)
}

// setRow draws one option.
func (r *popupListRenderer) setRow(i int, o Option, width float32, p look.Palette) {
	h := popupRow()
	y := popupPad + float32(i)*h + float32(int((h-look.Body.Height())/2))
	note, right := look.Note.Width(o.Note), width-listPad
	if len(r.l.options) > r.l.most() {
		right -= 5 // clear of the thumb
	}
	look.Write(r.texts[i], look.Body, p.Ink, look.Ellipsis(o.Text, look.Body, right-listPad-note), fyne.NewPos(listPad, y), right-listPad)
	look.Write(r.notes[i], look.Note, p.Ink2, o.Note, fyne.NewPos(right-note, y+look.Body.Baseline()-look.Note.Baseline()), note)
}

// listPad is the room beside the options, in px: they stand under the words in
// the field.
const listPad = boxPad

// setHighlights draws the option at hand, the one pointed at, and how far the
// list goes on.
func (r *popupListRenderer) setHighlights(p look.Palette, size fyne.Size) {
	l, h := r.l, popupRow()
	row := func(i int) float32 { return popupPad + float32(i-l.first)*h }
	inSight := func(i int) bool { return i >= l.first && i < l.first+l.shown() }
	r.at.FillColor, r.bar.FillColor, r.hover.FillColor = p.Sunk, p.Ink, look.Mix(p.Sheet, p.Sunk, 0.55)
	r.at.Move(fyne.NewPos(1, row(l.at)))
	r.at.Resize(fyne.NewSize(size.Width-2, h))
	r.bar.Move(fyne.NewPos(1, row(l.at)))
	r.bar.Resize(fyne.NewSize(3, h))
	r.hover.Move(fyne.NewPos(1, row(l.hovered)))
	r.hover.Resize(fyne.NewSize(size.Width-2, h))
	show(r.at, inSight(l.at))
	show(r.bar, inSight(l.at))
	show(r.hover, inSight(l.hovered) && l.hovered != l.at)
	more := len(l.options) > l.most()
	show(r.thumb, more)
	if more {
		whole, n := size.Height-2*popupPad, float32(len(l.options))
		r.thumb.FillColor, r.thumb.CornerRadius = p.Edge, 1.5
		r.thumb.Move(fyne.NewPos(size.Width-6, popupPad+whole*float32(l.first)/n))
		r.thumb.Resize(fyne.NewSize(3, whole*float32(l.most())/n))
	}
}

func (r *popupListRenderer) Layout(fyne.Size) { r.set() }

func (r *popupListRenderer) MinSize() fyne.Size {
	w := float32(0)
	for _, o := range r.l.options {
		x := look.Body.Width(o.Text)
		if o.Note != "" {
			x += 16 + look.Note.Width(o.Note)
		}
		w = max(w, x)
	}
	return fyne.NewSize(min(w, look.Scaled(420))+2*listPad+6, float32(r.l.shown())*popupRow()+2*popupPad)
}

func (r *popupListRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.l)
}

func (r *popupListRenderer) Objects() []fyne.CanvasObject {
	list := r.ground.With(r.hover, r.at, r.bar, r.thumb)
	for i := range r.texts {
		list = append(list, r.texts[i], r.notes[i])
	}
	return list
}

func (r *popupListRenderer) Destroy() {}
