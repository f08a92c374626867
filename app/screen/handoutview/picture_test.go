package handoutview

import (
	"context"
	"flag"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"page-small-light-100",
		"card",
	}}
}

func sizes() map[string]fyne.Size {
	return map[string]fyne.Size{"small": golden.SmallRoom(), "large": golden.LargeRoom()}
}

// shoot keeps a picture of the screen in a mode.
func shoot(t *testing.T, name string, m golden.Mode, size fyne.Size, d *desk.Desk, place desk.Place, ready func(*View, fyne.Window)) {
	t.Helper()
	golden.Use(t, m)
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	w := golden.Open(t, v.Body(), size)
	if ready != nil {
		ready(v, w)
	}
	golden.LayOutAgain(w.Canvas())
	album().Screen(t, name, w)
}

func TestPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	light := golden.Mode{Percent: 100}
	at := func(begins string) desk.Place {
		return desk.Place{Screen: desk.Handout, Athlete: apptest.AthleteNamed(t, d, begins).ID}
	}
	for name, size := range sizes() {
		for _, m := range []golden.Mode{light, {Dark: true, Percent: 100}} {
			shoot(t, "page-"+name+"-"+m.String(), m, size, d, at("Dorian"), nil)
		}
	}
	small := sizes()["small"]
	shoot(t, "page-large-text", golden.Mode{Percent: 150}, small, d, at("Dorian"), nil)
	shoot(t, "page-draft", light, small, d, at("Jorun"), nil)
	shoot(t, "page-hidden", light, small, d, at("Mirel"), nil)
	shoot(t, "card", light, small, d, at("Kester"), func(v *View, _ fyne.Window) { v.ui.page.OnChosen(string(KitBagCard)) })
	shoot(t, "cards-dark", golden.Mode{Dark: true, Percent: 100}, small, d, at("Kester"), func(v *View, _ fyne.Window) { v.ui.page.OnChosen(string(KitBagCards)) })
	shoot(t, "handed-out", light, sizes()["large"], d, at("Ravka"), func(v *View, _ fyne.Window) {
		if err := v.write(context.Background(), v.choice, filepath.Join(t.TempDir(), "a.pdf")); err != nil {
			t.Fatal(err)
		}
		v.ui.prints.load()
		v.ui.prints.table.Choose(0)
		v.ui.prints.enable()
	})
	shoot(t, "error", light, small, d, at("Ravka"), func(v *View, _ fyne.Window) { v.speak("xx") })
	shoot(t, "save-dialog", light, small, d, at("Ravka"), func(v *View, w fyne.Window) {
		v.Print()
		apptest.Type(t, w, "handoutview.ask.path", "/no/such/folder/page.pdf")
		apptest.Click(t, w, "handoutview.ask.yes")
		apptest.Leave(w)
	})
	long := apptest.AthleteNamed(t, d, "Sefa")
	long.Name = "Wilhelmina-Konstantinopolitana Featherstonehaugh-Oldenmoor R"
	if _, err := d.Store.SaveAthlete(context.Background(), long, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	shoot(t, "long-names", light, small, d, desk.Place{Screen: desk.Handout, Athlete: long.ID}, nil)
	empty, _ := apptest.Desk(t)
	shoot(t, "no-plan", light, small, empty, desk.Place{Screen: desk.Handout, Athlete: apptest.Athlete(t, empty).ID}, nil)
}
