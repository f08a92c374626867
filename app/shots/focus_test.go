package shots

import (
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
)

// TestFocusOnOpening: as a screen opens, the keyboard is on an input, on the way that
// led there, or on nothing, whatever had it before: never on a button, so that no key
// closes or removes what was not chosen.
func TestFocusOnOpening(t *testing.T) {
	texts := apptest.Words(t)
	o := openAll(t, texts, false)
	pressed := 0
	for _, s := range o.list {
		away := s.open(o.program, o.w)
		switch on := o.w.Canvas().Focused().(type) {
		case *field.Button, *field.Link:
			t.Errorf("%s opens on %q", s.name, on.(interface{ Name() string }).Name())
		}
		o.w.Content().Refresh()
		for _, spot := range field.Names(o.w.Content()) { // the next screen opens from the last button of this one
			if b, ok := spot.Object.(*field.Button); ok && !spot.Disabled {
				b.Focus()
			}
		}
		if _, ok := o.w.Canvas().Focused().(*field.Button); ok {
			pressed++
		}
		away()
	}
	if pressed < len(o.list)/2 {
		t.Errorf("only %d of %d screens had a button to come from: the test cannot fail", pressed, len(o.list))
	}
}
