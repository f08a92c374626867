package look

import "fyne.io/fyne/v2"

// The room around what stands on a screen, in px.
const (
	SheetGap float32 = 14 // between sheets
	TopPad   float32 = 16
	FootPad  float32 = 20
	BarRoom  float32 = 10 // keeps content off the bar of a scroll
)

// PageScroll scrolls what fills a screen. Its bar stands in the margin of the window, so
// that the sheets end where the head does; put it in [InMargin].
func PageScroll(o fyne.CanvasObject) *Scroll { return NewScroll(Pad(0, BarRoom, 0, 0, o)) }

// InMargin lets a [PageScroll] reach into the margin of the window by the room of its bar.
func InMargin(o fyne.CanvasObject) fyne.CanvasObject { return Pad(0, -BarRoom, 0, 0, o) }
