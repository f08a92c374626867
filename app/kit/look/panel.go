package look

import "fyne.io/fyne/v2"

// NewPanel makes a white sheet with a heading, a note at its right where there
// is one, and what stands below.
func NewPanel(title string, note fyne.CanvasObject, body ...fyne.CanvasObject) *Sheet {
	head := HBox(12, Grow(NewLabel(title, Strong, Ink).Shorten()))
	if note != nil {
		head.Add(note)
	}
	return NewSheet(VBox(10, append([]fyne.CanvasObject{head}, body...)...))
}

// OnPaper sets one sheet at the top of an otherwise empty screen.
func OnPaper(o fyne.CanvasObject) fyne.CanvasObject {
	return Pad(16, 0, 20, 0, VBox(0, MaxWidth(720, NewSheet(o))))
}
