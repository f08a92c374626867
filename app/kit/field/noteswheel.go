package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// notesWheel lies over a text and takes the wheel: it moves the text while one writes in
// it and more of it is there, and else the page, so that the page does not stop under
// the pointer. Both go as far as other programs do.
type notesWheel struct {
	widget.BaseWidget
	notes *Notes
}

var _ fyne.Scrollable = (*notesWheel)(nil)

func newNotesWheel(n *Notes) *notesWheel {
	w := &notesWheel{notes: n}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled scrolls the text, or the nearest page around it.
func (w *notesWheel) Scrolled(e *fyne.ScrollEvent) {
	if w.notes.inner.scrolled(look.WheelStep(e)) {
		return
	}
	on := canvasOf(w.notes)
	if on == nil {
		return
	}
	root := on.Content()
	if top := on.Overlays().Top(); top != nil {
		root = top
	}
	if steps, _, ok := pathTo(root, w.notes); ok && len(steps) > 0 {
		steps[0].scroll.Scrolled(e)
	}
}

// CreateRenderer draws nothing.
func (w *notesWheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}
