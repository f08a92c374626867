package apptest

import (
	"net/url"
	"testing"

	"fyne.io/fyne/v2"
)

// Opener stands for the system's way to open a file.
type Opener struct {
	fyne.App
	// Paths are the files that were opened, in order.
	Paths []string
	// Err is what opening comes to.
	Err error
}

// Opens puts an opener in the system's place until the test ends.
func Opens(t testing.TB) *Opener {
	t.Helper()
	o := &Opener{App: fyne.CurrentApp()}
	fyne.SetCurrentApp(o)
	t.Cleanup(func() { fyne.SetCurrentApp(o.App) })
	return o
}

// OpenURL notes the file.
func (o *Opener) OpenURL(at *url.URL) error {
	o.Paths = append(o.Paths, at.Path)
	return o.Err
}
