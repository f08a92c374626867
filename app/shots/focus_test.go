package shots

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"golang.org/x/text/language"

	"ebbwell/app"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/words"
)

// TestFocusOnOpening: as a screen opens, the keyboard is on an input, on the way that
// led there, or on nothing, whatever had it before: never on a button, so that no key
// closes or removes what was not chosen.
func TestFocusOnOpening(t *testing.T) {
	texts, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	a, w := test.NewTempApp(t), test.NewTempWindow(t, nil)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1366, 768))
	shell := app.NewShell(a, w, texts, app.Options{Demo: true, Now: Now, Beside: desk.Inline{}, After: never})
	shell.Start()
	t.Cleanup(func() {
		if err := shell.Close(); err != nil {
			t.Error(err)
		}
	})
	list, err := places(shell.Program().Desk())
	if err != nil {
		t.Fatal(err)
	}
	pressed := 0
	for _, s := range list {
		away := s.open(shell.Program(), w)
		switch on := w.Canvas().Focused().(type) {
		case *field.Button, *field.Link:
			t.Errorf("%s opens on %q", s.name, on.(interface{ Name() string }).Name())
		}
		w.Content().Refresh()
		for _, spot := range field.Names(w.Content()) { // the next screen opens from the last button of this one
			if b, ok := spot.Object.(*field.Button); ok && !spot.Disabled {
				b.Focus()
			}
		}
		if _, ok := w.Canvas().Focused().(*field.Button); ok {
			pressed++
		}
		away()
	}
	if pressed < len(list)/2 {
		t.Errorf("only %d of %d screens had a button to come from: the test cannot fail", pressed, len(list))
	}
}
