package profile

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// Two keystrokes in the profile, with everything that follows from it, but for their
// saving.
func BenchmarkTwoKeystrokes(b *testing.B) {
	d, _ := apptest.Demo(b)
	v, err := New(d, desk.Place{Athlete: apptest.AthleteNamed(b, d, "Ilse").ID})
	if err != nil {
		b.Fatal(err)
	}
	w := apptest.Window(b, v.Body(), 1000, 704, false, 100)
	apptest.Type(b, w, "profile.position", "m")
	field := w.Canvas().Focused()
	for b.Loop() {
		field.TypedRune('a')
		field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	}
}
