package testday

import (
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/look/golden"
)

var update = flag.Bool("update", false, "keep new golden pictures")

func TestPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, m := range []golden.Mode{{Percent: 100}, {Dark: true, Percent: 100}, {Percent: 150}} {
		golden.Use(t, m)
		v, err := New(d)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), fyne.NewSize(1000, 704))
		golden.Check(t, "day-"+m.String(), w.Canvas().Capture(), *update)
	}
}
