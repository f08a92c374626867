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
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
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
		_ = o // its paragraphs are below
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

// demoTrip is the one trip of the invented practice, brought to one traveller and three
// stops that no season changes: mild at home, hot and humid, hot and dry.
func demoTrip(t testing.TB, d *desk.Desk) record.Trip {
	t.Helper()
	list, err := d.Store.Trips(context.Background())
	if err != nil || len(list) != 1 {
		t.Fatalf("%d trips: %v", len(list), err)
	}
	trip := list[0]
	if trip.Stops[0].Place == "Home" {
		return trip
	}
	trip.Travellers, trip.HoursAwake = nil, record.Number{}
	addTraveller(&trip, apptest.AthleteNamed(t, d, "Ravka").ID)
	for i, s := range []record.Stop{
		{From: "2026-07-02", Until: "2026-07-10", Place: "Home", Air: record.Air{
			Temperature: record.Num(22, quantity.DegreeCelsius), Humidity: record.Num(60, quantity.PerCent), Wind: record.Num(1.5, quantity.MetrePerSecond), Sun: record.SunPart}},
		{From: "2026-07-11", Until: "2026-07-17", Place: "Camp on the coast", City: "Chennai", Air: record.Air{Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond)}, SessionsADay: record.Num(2, quantity.None)},
		{From: "2026-07-18", Until: "2026-07-25", Place: "Tournament", City: "Madrid", Air: record.Air{Sun: record.SunHigh, Wind: record.Num(2, quantity.MetrePerSecond)}},
	} {
		s.Meta, s.TripID, s.Order, s.TimeOfDay = trip.Stops[i].Meta, trip.ID, i, "afternoon"
		s.Minutes, s.Effort, s.Air.Clothing = record.Num(95, quantity.Minute), record.Num(8, quantity.None), "shirt-shorts"
		trip.Stops[i] = s
	}
	kept, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

// packedAll is the packing list of everybody together, and what it lacks.
func packedAll(v *View) (list climate.PackingList, lacking []string) {
	made := packAll(context.Background(), v.packJobs(everybody))
	for _, one := range made {
		lacking = append(lacking, v.lackingOf(one)...)
	}
	return sumOf(made), lacking
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
