package testsheet

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
)

// BenchmarkKeystroke is one digit typed into a bottle: calculated anew, shown in
// the balance, handed over for saving.
func BenchmarkKeystroke(b *testing.B) {
	d, _ := apptest.Desk(b)
	a := apptest.Athlete(b, d)
	golden.Use(b, golden.Mode{Percent: 100})
	v, err := New(d, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true, Part: PartBottles})
	if err != nil {
		b.Fatal(err)
	}
	w := golden.Open(b, v.Body(), sized(1180, 760))
	apptest.Type(b, w, "testsheet.bottle.1.before", "71")
	f := w.Canvas().Focused()
	b.ResetTimer()
	for range b.N {
		f.TypedRune('2')
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	}
	b.StopTimer()
	apptest.Leave(w)
}
