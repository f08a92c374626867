package shots

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ebbwell/app"
	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/words"
)

// opened is the program with the invented practice in a window of 1366 x 768, and the
// places to look at there.
type opened struct {
	app     fyne.App
	w       fyne.Window
	program *app.Program
	list    []shot
}

// openAll opens it in the words of a language; tour: with the tour in its rail.
func openAll(t *testing.T, texts *words.Words, tour bool) opened {
	t.Helper()
	o := opened{app: test.NewTempApp(t), w: test.NewTempWindow(t, nil)}
	o.w.SetPadded(false)
	o.w.Resize(fyne.NewSize(1366, 768))
	shell := app.NewShell(o.app, o.w, texts, app.Options{Dir: apptest.DemoDir(t, texts, Now), Tour: tour, Now: Now, Beside: desk.Inline{}, After: never})
	shell.Start()
	t.Cleanup(func() {
		if err := shell.Close(); err != nil {
			t.Error(err)
		}
	})
	o.program = shell.Program()
	var err error
	if o.list, err = places(o.program.Desk()); err != nil {
		t.Fatal(err)
	}
	return o
}
