// Command empty opens a window with nothing in it. It is what the program's
// start, size and pictures are compared with.
package main

import (
	"flag"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

func main() {
	width := flag.Float64("width", 1180, "of the window, in px")
	height := flag.Float64("height", 760, "of the window, in px")
	paints := flag.Bool("paints", false, "paint the window anew at every movement of the mouse")
	flag.Parse()
	w := app.NewWithID("desk.ebbwell.empty").NewWindow("empty")
	w.Resize(fyne.NewSize(float32(*width), float32(*height)))
	if *paints {
		n := &nothing{}
		n.ExtendBaseWidget(n)
		w.SetPadded(false)
		w.SetContent(n)
	}
	w.ShowAndRun()
}

// nothing is a widget without anything to draw that asks for a picture of the window at
// every movement of the mouse.
type nothing struct{ widget.BaseWidget }

var _ desktop.Hoverable = (*nothing)(nil)

// CreateRenderer draws nothing.
func (n *nothing) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(nil))
}

// MouseIn is a movement too.
func (n *nothing) MouseIn(*desktop.MouseEvent) { canvas.Refresh(n) }

// MouseMoved asks for a picture.
func (n *nothing) MouseMoved(*desktop.MouseEvent) { canvas.Refresh(n) }

// MouseOut asks for none.
func (n *nothing) MouseOut() {}
