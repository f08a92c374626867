package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Remark is the quiet sister of a caution: a ringed stroke and a note, for a
// limit that is working as it should.
func Remark(note *Paragraph) *fyne.Container {
	return Columns(10, []Track{Fixed(18), Share(1)}, newRing(), note)
}

// newRing draws a circle with a stroke and a dot in it.
func newRing() fyne.Widget {
	ring := canvas.NewCircle(nil)
	ring.StrokeWidth = 1.5
	stroke, dot := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	box := &fyne.Container{Objects: []fyne.CanvasObject{ring, stroke, dot}}
	side := func() fyne.Size { return fyne.NewSquareSize(Scaled(17)) }
	s := newShape(box, side, func(p Palette) {
		ring.StrokeColor, stroke.FillColor, dot.FillColor = p.Ink, p.Ink, p.Ink
	})
	s.place = func(fyne.Size) {
		d := side().Width
		box.Resize(side())
		ring.Resize(fyne.NewSquareSize(d))
		stroke.Resize(fyne.NewSize(2, round(d*0.30)))
		stroke.Move(fyne.NewPos(d/2-1, round(d*0.24)))
		dot.Resize(fyne.NewSize(2, 2))
		dot.Move(fyne.NewPos(d/2-1, round(d*0.66)))
	}
	return &ringMark{s}
}

// ringMark sits a little below the baseline, as high as the line.
type ringMark struct{ *shape }

// Baseline centres the ring on the height of the letters.
func (m *ringMark) Baseline() float32 {
	h := m.min().Height
	return h/2 + Note.Size()*0.35
}
