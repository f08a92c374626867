package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// notesWheel lies over a text that nobody writes in and hands the wheel to the
// page, so that the page does not stop under the pointer.
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

// Scrolled scrolls the nearest page around the text.
func (w *notesWheel) Scrolled(e *fyne.ScrollEvent) {
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
