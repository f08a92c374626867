package trip

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"stop-light",
		"edit-light",
		"packing-one-light",
		"agree-light",
		"list-light-100",
	}}
}

// shoot opens a trip in a mode, does something, and keeps the picture.
func shoot(t *testing.T, d *desk.Desk, place desk.Place, name string, m golden.Mode, size fyne.Size, do func(v *View, w fyne.Window)) {
	t.Helper()
	golden.Use(t, m)
	v, err := New(d, place)
	if err != nil {
		t.Fatal(err)
	}
	w := golden.Open(t, v.Body(), size)
	if do != nil {
		do(v, w)
	}
	golden.LayOutAgain(w.Canvas())
	album().Screen(t, name, w)
}

func light() golden.Mode { return golden.Mode{Percent: 100} }
func dark() golden.Mode  { return golden.Mode{Dark: true, Percent: 100} }

func TestPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	trip := demoTrip(t, d)
	hot := string(trip.Stops[1].ID)
	at := func(part string) desk.Place { return desk.Place{Record: trip.ID, Part: part} }
	down := func(v *View, _ fyne.Window) { v.ui.stop.body.scroll.ScrollTo(560) }
	shoot(t, d, at(hot), "stop-light", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(hot), "stop-dark", dark(), golden.SmallRoom(), nil)
	shoot(t, d, at(hot), "stop-down-light", light(), golden.SmallRoom(), down)
	shoot(t, d, at(hot), "stop-large-light", light(), golden.LargeRoom(), nil)
	shoot(t, d, at(hot), "stop-large-dark", dark(), golden.LargeRoom(), nil)
	shoot(t, d, at(hot), "stop-150", golden.Mode{Percent: 150}, golden.SmallRoom(), nil)
	shoot(t, d, at(string(trip.Stops[0].ID)), "stop-held", light(), golden.LargeRoom(), nil)
	shoot(t, d, at(PartEdit), "edit-light", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(PartEdit), "edit-dark", dark(), golden.LargeRoom(), nil)
	shoot(t, d, at(PartPacking), "packing-one-light", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(hot), "why-light", light(), golden.LargeRoom(), func(_ *View, w fyne.Window) { apptest.Click(t, w, "trip.row.1.why") })
	shoot(t, d, at(hot), "agree-light", light(), golden.SmallRoom(), func(v *View, _ fyne.Window) { v.askAgree() })
	shoot(t, d, at(hot), "print-dark", dark(), golden.SmallRoom(), func(v *View, w fyne.Window) {
		v.Print()
		apptest.Type(t, w, "trip.print.path", "/home/somebody/Documents")
	})
}

// squad is a trip of several athletes, one with a long name, with gels and a
// powder in their plans, and long names of everything.
func squad(t *testing.T, d *desk.Desk) record.Trip {
	t.Helper()
	long := strings.Repeat("Anneliese-Wilhelmina ", 3)[:60]
	change(t, d, "Kester", func(a *record.Athlete) { a.Name = long })
	trip := demoTrip(t, d)
	trip.Name = strings.Repeat("A journey of many stops ", 3)[:60]
	for _, name := range []string{long, "Ilse", "Mirel", "Dorian"} {
		addTraveller(&trip, apptest.AthleteNamed(t, d, name).ID)
	}
	for i := range trip.Stops {
		trip.Stops[i].Place = strings.Repeat("Long place name by the sea ", 3)[:60]
	}
	for range 2 {
		addStop(&trip)
	}
	trip.Supplies = []record.Supply{{Meta: record.Meta{ID: record.NewID()}, ProductID: "generic.drink-6", Name: "Sports drink", Lot: "LOT 2026-07-11/4711-B", Source: "hold"}}
	kept, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

func TestPicturesLongNames(t *testing.T) {
	d, _ := apptest.Demo(t)
	trip := squad(t, d)
	kester := apptest.AthleteNamed(t, d, "Anneliese").ID
	at := func(part string) desk.Place { return desk.Place{Record: trip.ID, Part: part, Athlete: kester} }
	shoot(t, d, at(string(trip.Stops[1].ID)), "long-stop", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(PartEdit), "long-edit", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(PartPacking), "long-packing", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(PartPacking), "packing-large-dark", dark(), golden.LargeRoom(), nil)
	shoot(t, d, at(PartEdit), "edit-150", golden.Mode{Percent: 150}, golden.SmallRoom(), nil)
}

func TestPicturesOfTrouble(t *testing.T) {
	d, _ := apptest.Demo(t)
	trip := demoTrip(t, d)
	mirel := apptest.AthleteNamed(t, d, "Mirel")
	addTraveller(&trip, mirel.ID)
	trip.Stops[0].Until = "2026-07-01"
	trip.Stops[2].City, trip.Stops[2].Air.Humidity = "Lima Peru Chile", record.Num(130, quantity.PerCent)
	kept, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	at := func(part string, who record.ID) desk.Place {
		return desk.Place{Record: kept.ID, Part: part, Athlete: who}
	}
	shoot(t, d, at(string(kept.Stops[1].ID), mirel.ID), "hidden-light", light(), golden.LargeRoom(), nil)
	shoot(t, d, at(string(kept.Stops[1].ID), mirel.ID), "hidden-why", light(), golden.SmallRoom(), func(_ *View, w fyne.Window) { apptest.Click(t, w, "trip.row.1.why") })
	shoot(t, d, at(string(kept.Stops[2].ID), ""), "error-city", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(PartEdit, ""), "error-dates", light(), golden.SmallRoom(), nil)
	shoot(t, d, at(string(kept.Stops[0].ID), ""), "error-dates-stop", dark(), golden.SmallRoom(), nil)
}

func TestPicturesEmpty(t *testing.T) {
	d, _ := apptest.Desk(t)
	shoot(t, d, desk.Place{New: true}, "empty", light(), golden.SmallRoom(), nil)
	shoot(t, d, desk.Place{New: true}, "empty-packing", light(), golden.SmallRoom(), func(v *View, _ fyne.Window) { v.ShowPart(PartPacking) })
	shoot(t, d, desk.Place{New: true}, "nobody", light(), golden.SmallRoom(), func(v *View, _ fyne.Window) {
		v.b.Pick("stop", func(s *sheet) {
			addStop(&s.Record)
			s.Record.Stops[0].City, s.Record.Stops[0].From, s.Record.Stops[0].Until = "Chennai", "2026-07-11", "2026-07-17"
		})
		v.ShowPart(string(v.now().Stops[0].ID))
	})
	a := apptest.Athlete(t, d)
	shoot(t, d, desk.Place{New: true, Athlete: a.ID}, "no-test", light(), golden.SmallRoom(), func(v *View, _ fyne.Window) {
		v.b.Pick("stop", func(s *sheet) {
			addStop(&s.Record)
			one := &s.Record.Stops[0]
			one.City, one.From, one.Until, one.Air.Sun = "Chennai", "2026-07-11", "2026-07-24", record.SunHigh
			one.Minutes, one.TimeOfDay = record.Num(90, quantity.Minute), consult.Afternoon
		})
		v.ShowPart(string(v.now().Stops[0].ID))
	})
}

func TestPicturesOfList(t *testing.T) {
	d, _ := apptest.Demo(t)
	for name, stops := range map[string][]record.Stop{
		"A camp last winter": {{From: "2026-01-10", Until: "2026-01-20"}}, "To be planned": nil,
		strings.Repeat("A journey of many stops ", 3)[:60]: {{Place: strings.Repeat("Long place name ", 4)[:60], From: "2026-05-10", Until: "2026-05-30"}},
	} {
		trip := record.Trip{Meta: record.Meta{ID: record.NewID()}, Name: name}
		for _, s := range stops {
			s.Meta, s.TripID = record.Meta{ID: record.NewID()}, trip.ID
			trip.Stops = append(trip.Stops, s)
		}
		if name != "To be planned" {
			for _, who := range []string{"Ravka", "Kester", "Ilse"} {
				addTraveller(&trip, apptest.AthleteNamed(t, d, who).ID)
			}
		}
		if _, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	for _, m := range []golden.Mode{light(), dark()} {
		golden.Use(t, m)
		v, err := NewList(d)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), golden.SmallRoom())
		album().Screen(t, "list-"+m.String(), w)
	}
}

func TestEmptyListAndOpening(t *testing.T) {
	d, went := apptest.Desk(t)
	golden.Use(t, light())
	v, err := NewList(d)
	if err != nil {
		t.Fatal(err)
	}
	w := golden.Open(t, v.Body(), golden.SmallRoom())
	album().Screen(t, "list-empty", w)
	apptest.Click(t, w, "trips.first")
	if len(*went) != 1 || !(*went)[0].New || (*went)[0].Screen != desk.Trip {
		t.Errorf("went to %+v", *went)
	}
	d, went = apptest.Demo(t)
	if v, err = NewList(d); err != nil {
		t.Fatal(err)
	}
	apptest.Window(t, v.Body(), 1000, 704, false, 100)
	v.table.OnOpened(0)
	if len(*went) != 1 || (*went)[0].Record != demoTrip(t, d).ID {
		t.Errorf("opened %+v", *went)
	}
}
