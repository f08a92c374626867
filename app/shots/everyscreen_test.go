package shots

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// TestEveryScreen opens every screen, and every dialog that opens over one.
//
// As it opens, the keyboard is on an input, on the way that led there, or on nothing,
// whatever had it before: never on a button, so that no key closes or removes what was not
// chosen. All that can be used is reached with Tab once, and nobody is led back: within what
// scrolls together the next control is never both above the one before and not to its right;
// Next is reached before Back. And it can be painted.
func TestEveryScreen(t *testing.T) {
	o := openAll(t, apptest.Words(t), false)
	o.app.Settings().SetTheme(look.NewTheme(false, 100).Still())
	o.w.Resize(fyne.NewSize(1180, 760))
	pressed, reached := 0, 0
	for _, s := range o.list {
		away := s.open(o.program, o.w)
		switch on := o.w.Canvas().Focused().(type) {
		case *field.Button, *field.Link:
			t.Errorf("%s opens on %q", s.name, on.(interface{ Name() string }).Name())
		}
		closed, err := openDialog(o.w, s.name, o.program.Desk().Store.Dir())
		if err != nil {
			t.Fatal(err)
		}
		layOutAgain(o.w)
		root := o.w.Content()
		if top := o.w.Canvas().Overlays().Top(); top != nil {
			root = top
		}
		painted(t, s.name, o.w.Canvas())
		reached += walkByTab(t, s.name, o.w.Canvas(), root)
		closed()
		if onLastButton(o.w) {
			pressed++
		}
		away()
		s.toggleHelp(o.program)
	}
	if reached < 10*len(o.list) || pressed < len(o.list)/2 {
		t.Errorf("%d controls on %d screens, %d of which had a button to come from: the test cannot fail", reached, len(o.list), pressed)
	}
}

// onLastButton puts the keyboard on the last button of a window: the next screen opens from there.
func onLastButton(w fyne.Window) bool {
	w.Content().Refresh()
	for _, spot := range field.Names(w.Content()) {
		if b, ok := spot.Object.(*field.Button); ok && !spot.Disabled {
			b.Focus()
		}
	}
	_, ok := w.Canvas().Focused().(*field.Button)
	return ok
}

// painted paints a window; one of a single colour shows nothing.
func painted(t *testing.T, screen string, on fyne.Canvas) {
	t.Helper()
	picture := on.Capture()
	first, b := picture.At(0, 0), picture.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y += 3 {
		for x := b.Min.X; x < b.Max.X; x += 3 {
			if picture.At(x, y) != first {
				return
			}
		}
	}
	t.Errorf("%s is painted in one colour", screen)
}
