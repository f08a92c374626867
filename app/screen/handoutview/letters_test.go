package handoutview

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// A page with letters that cannot be printed says so beside it, when it is saved, and
// asks before it is sent to the printer.
func TestLettersThatCannotBePrinted(t *testing.T) {
	for name, letter := range map[string]string{"Ravka 王": "王", "Ελένη Ravka": ""} {
		d, _ := apptest.Demo(t)
		a := apptest.AthleteNamed(t, d, "Ravka")
		a.Name = name
		if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		v, w := open(t, d, name)
		sent := 0
		v.toPrinter = func(context.Context, string) error { sent++; return nil }
		if told := strings.Contains(strings.Join(v.remarks(), " "), "can’t be printed: 王"); told != (letter != "") {
			t.Errorf("%s: it is told beside the page: %v", name, told)
		}
		v.Print()
		if told := strings.Contains(strings.Join(apptest.Texts(w.Canvas().Overlays().Top()), " "), "Letters that can’t be printed: "+look.Note.Shown("王")); told != (letter != "") {
			t.Errorf("%s: it is told when the page is saved: %v", name, told)
		}
		apptest.Click(t, w, "handoutview.ask.no")
		v.SendToPrinter()
		if asked := w.Canvas().Overlays().Top() != nil; asked != (letter != "") || sent != 0 && letter != "" {
			t.Errorf("%s: asked %v, sent %d", name, asked, sent)
		}
		if letter != "" {
			apptest.Click(t, w, "handoutview.letters.yes")
		}
		if sent != 1 {
			t.Errorf("%s: sent %d times", name, sent)
		}
	}
}
