package field

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// The border of the focus is seen with the keyboard, not after a click, and again
// once a key is used.
func TestRingIsForTheKeyboard(t *testing.T) {
	test.NewTempApp(t)
	h := NewHost(nil)
	b := NewButton(h, "b", "Press", Outline, nil)
	other := NewButton(h, "other", "Press", Outline, nil)
	w := test.NewTempWindow(t, container.NewWithoutLayout(b, other))
	b.Focus()
	if !b.ringed() {
		t.Error("no border with the keyboard")
	}
	w.Canvas().Focus(other)
	test.Tap(b)
	if !b.Focused() || b.ringed() {
		t.Errorf("after a click: focused %v, border %v", b.Focused(), b.ringed())
	}
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if !b.ringed() {
		t.Error("no border once a key is used")
	}
}
