package trip

import (
	"context"
	"flag"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// texts gathers every text in sight below an object.
func texts(o fyne.CanvasObject) []string {
	if o == nil || !o.Visible() {
		return nil
	}
	var list []string
	switch o := o.(type) {
	case *look.Caution:
		title, sentence := o.Text()
		list = append(list, title, sentence)
	case interface{ Text() string }:
		list = append(list, o.Text())
	}
	switch o := o.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			list = append(list, texts(child)...)
		}
	case look.Holder:
		for _, child := range o.Parts() {
			list = append(list, texts(child)...)
		}
	case *container.Scroll:
		list = append(list, texts(o.Content)...)
	}
	return list
}

// said is everything in sight in a window, or in the dialog over it.
func said(w fyne.Window) string {
	o := w.Content()
	if top := w.Canvas().Overlays().Top(); top != nil {
		o = top
	}
	return strings.Join(texts(o), "\n")
}

// wants fails when one of the texts is not in sight.
func wants(t *testing.T, w fyne.Window, list ...string) {
	t.Helper()
	all := strings.ReplaceAll(said(w), "\u00a0", " ")
	for _, s := range list {
		if !strings.Contains(all, s) {
			t.Errorf("%q is not said; there is\n%s", s, all)
		}
	}
}

// without fails when one of the texts is in sight.
func without(t *testing.T, w fyne.Window, list ...string) {
	t.Helper()
	all := strings.ReplaceAll(said(w), "\u00a0", " ")
	for _, s := range list {
		if strings.Contains(all, s) {
			t.Errorf("%q is said: %s", s, all)
		}
	}
}

// demoTrip is the one trip of the invented practice.
func demoTrip(t testing.TB, d *desk.Desk) record.Trip {
	t.Helper()
	list, err := d.Store.Trips(context.Background())
	if err != nil || len(list) != 1 {
		t.Fatalf("%d trips: %v", len(list), err)
	}
	return list[0]
}

// open opens a trip in a window of the size a small screen leaves it.
func open(t testing.TB, d *desk.Desk, place desk.Place) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1000, 704, false, 100)
}

// kept is the trip as it is in the data file.
func kept(t testing.TB, v *View) record.Trip {
	t.Helper()
	if !v.b.FlushNow() {
		t.Fatal("not saved")
	}
	trip, err := v.desk.Store.LoadTrip(context.Background(), v.now().ID)
	if err != nil {
		t.Fatal(err)
	}
	return trip
}

// choose picks an option of a closed list by its key.
func choose(t testing.TB, w fyne.Window, name, key string) {
	t.Helper()
	c := choiceNamed(t, w, name)
	c.Choose(key)
	if c.Chosen() != key {
		t.Fatalf("%s has no %q", name, key)
	}
	c.OnChosen(key)
}
