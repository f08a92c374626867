// Command empty opens a window with nothing in it. It is what the program's
// start and size are compared with.
package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
)

func main() {
	w := app.NewWithID("desk.ebbwell.empty").NewWindow("empty")
	w.Resize(fyne.NewSize(1180, 760))
	w.ShowAndRun()
}
