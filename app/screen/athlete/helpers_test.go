package athlete

import (
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// tap opens a part of an overview by its name.
func tap(t *testing.T, o fyne.CanvasObject, name string) {
	t.Helper()
	apptest.Click(t, apptest.Window(t, o, 1000, 704, false, 100), name)
}
