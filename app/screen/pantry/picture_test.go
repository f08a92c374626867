package pantry

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

type sheetOf = bind.Sheet[form]

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"list-small-light-100",
		"edit-small-light-100",
		"mix-light-100",
	}}
}

// sizes are the content of a window of 1180 x 760 and of 1600 x 1000.
func sizes() map[string]fyne.Size {
	return map[string]fyne.Size{"small": golden.SmallRoom(), "large": golden.LargeRoom()}
}

// looks are the modes pictures of screens are kept in.
func looks() []golden.Mode {
	return []golden.Mode{{Percent: 100}, {Dark: true, Percent: 100}}
}

// shoot keeps a picture of the screen in a mode; ready prepares it.
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

// stocked is the invented practice with three products of its own.
func stocked(t *testing.T) *desk.Desk {
	t.Helper()
	d, _ := apptest.Demo(t)
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	for _, p := range []record.Product{
		{Name: "Isotonic, blackcurrant", Form: "drink", PortionName: "bottle", PortionMass: g(512), Density: record.Num(1.0243, quantity.GramPerMillilitre), Source: "label, May 2026",
			Per100: record.Composition{Available: g(6.25), Sodium: record.Num(51, quantity.Milligram), Glucose: g(3.4), Fructose: g(2.7), Energy: record.Num(25, quantity.Kilocalorie)}},
		{Name: "Oat and date square, from the kitchen of the squad, wrapped in paper", Form: "solid", PortionName: "square", PortionMass: g(45), Source: "recipe of the squad's cook, weighed in March and again in April 2026",
			Per100: record.Composition{Available: g(58), Fibre: g(6.1)}},
		{Name: "Energy gel, twin", Form: "gel", Replaces: "generic.gel", PortionName: "gel", PortionMass: g(40), Source: "label",
			Per100: record.Composition{Available: g(62.5), Sodium: record.Num(120, quantity.Milligram), Maltodextrin: g(34.7), Fructose: g(27.8)}},
	} {
		p.ID = record.NewID()
		if _, err := d.Store.SaveProduct(context.Background(), p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	return d
}

func TestPicturesOfTheList(t *testing.T) {
	d := stocked(t)
	for name, size := range sizes() {
		for _, m := range looks() {
			shoot(t, "list-"+name+"-"+m.String(), m, size, d, desk.Place{Screen: desk.Pantry}, nil)
		}
	}
	shoot(t, "list-large-text", golden.Mode{Percent: 150}, sizes()["small"], d, desk.Place{Screen: desk.Pantry}, nil)
	shoot(t, "list-generic", golden.Mode{Percent: 100}, sizes()["small"], d, desk.Place{Screen: desk.Pantry}, func(_ *View, w fyne.Window) {
		apptest.Type(t, w, "pantry.search", "sports drink 6")
	})
	shoot(t, "list-none", golden.Mode{Percent: 100}, sizes()["small"], d, desk.Place{Screen: desk.Pantry}, func(_ *View, w fyne.Window) {
		apptest.Type(t, w, "pantry.search", "no such thing")
	})
	empty, _ := apptest.Desk(t)
	shoot(t, "list-no-own", golden.Mode{Percent: 100}, sizes()["small"], empty, desk.Place{Screen: desk.Pantry}, func(v *View, _ fyne.Window) {
		v.list.show.Choose(string(ShowOwn))
		v.list.show.OnChosen(string(ShowOwn))
	})
}

func TestPicturesOfTheEditor(t *testing.T) {
	d := stocked(t)
	list, err := d.Store.Products(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range list {
		place := desk.Place{Screen: desk.Pantry, Record: p.ID}
		switch {
		case p.Form == "drink":
			for name, size := range sizes() {
				for _, m := range looks() {
					shoot(t, "edit-"+name+"-"+m.String(), m, size, d, place, nil)
				}
			}
		case strings.HasPrefix(p.Name, "Oat"):
			shoot(t, "edit-long-names", golden.Mode{Percent: 100}, sizes()["small"], d, place, nil)
			shoot(t, "edit-large-text", golden.Mode{Percent: 150}, sizes()["small"], d, place, nil)
		}
	}
	shoot(t, "edit-new", golden.Mode{Percent: 100}, sizes()["small"], d, desk.Place{Screen: desk.Pantry, New: true}, nil)
	shoot(t, "edit-errors", golden.Mode{Percent: 100}, sizes()["small"], d, desk.Place{Screen: desk.Pantry, New: true}, func(_ *View, w fyne.Window) {
		apptest.Type(t, w, "pantry.edit.name", "Typed wrongly")
		apptest.Type(t, w, "pantry.edit.available", "six")
		apptest.Type(t, w, "pantry.edit.salt", "-1")
		apptest.Type(t, w, "pantry.edit.glucose", "300")
		apptest.Leave(w)
	})
}

func TestPictureOfMakingUp(t *testing.T) {
	d := stocked(t)
	for _, m := range looks() {
		shoot(t, "mix-"+m.String(), m, sizes()["small"], d, desk.Place{Screen: desk.Pantry}, func(v *View, w fyne.Window) {
			apptest.Type(t, w, "pantry.search", "maltodextrin")
			v.askPowder()
			apptest.Type(t, w, "pantry.mix.1.grams", "40")
			apptest.Type(t, w, "pantry.mix.2.what", "fructose")
			apptest.Press(w, fyne.KeyReturn)
			apptest.Type(t, w, "pantry.mix.2.grams", "32")
			apptest.Leave(w)
		})
	}
}
