package athlete

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"overview-small-light-100",
		"overview-due-light-100",
		"overview-hidden-light-100",
	}}
}

func TestOverviewPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	long := apptest.Save(t, d, apptest.LongNamed())
	sheet := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: long.ID, State: record.TestOpen, Session: record.Session{Place: strings.Repeat("Upper Weirside Community Ground ", 3)}}
	if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	minor := apptest.Save(t, d, apptest.Newcomer("Tamsin Lowmere", "2010-06-01", "netball"))
	adult := apptest.Save(t, d, apptest.Newcomer("Corvin Haleway", "2000-06-01", "rowing"))
	light, dark, text := golden.Light(), golden.Dark(), golden.LargeText()
	for _, p := range []struct {
		name string
		id   record.ID
		mode golden.Mode
		size fyne.Size
	}{
		{"small", apptest.AthleteNamed(t, d, "Ravka").ID, light, golden.SmallRoom()}, {"small", apptest.AthleteNamed(t, d, "Ravka").ID, dark, golden.SmallRoom()},
		{"small", apptest.AthleteNamed(t, d, "Ravka").ID, text, golden.SmallRoom()},
		{"large", apptest.AthleteNamed(t, d, "Ravka").ID, light, golden.LargeRoom()}, {"large", apptest.AthleteNamed(t, d, "Dorian").ID, dark, golden.LargeRoom()},
		{"hidden", apptest.AthleteNamed(t, d, "Mirel").ID, light, golden.SmallRoom()}, {"gain", gainFirst(t, d), light, golden.SmallRoom()},
		{"due", apptest.AthleteNamed(t, d, "Kester").ID, light, golden.SmallRoom()}, {"long", long.ID, light, golden.SmallRoom()},
		{"empty", adult.ID, light, golden.SmallRoom()}, {"empty", adult.ID, dark, golden.SmallRoom()}, {"minor", minor.ID, light, golden.SmallRoom()}, {"basis-gone", basisGone(t, d), light, golden.SmallRoom()},
	} {
		golden.Use(t, p.mode)
		v, err := NewOverview(d, p.id)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), p.size)
		album().Screen(t, "overview-"+p.name+"-"+p.mode.String(), w)
	}
}

// gainFirst leaves Ilse with the test in which she grew heavier as her last.
func gainFirst(t *testing.T, d *desk.Desk) record.ID {
	t.Helper()
	a := apptest.AthleteNamed(t, d, "Ilse")
	drop(t, d, a, 0)
	return a.ID
}

// basisGone takes the test away that Odo's newest plan would be based on; where he
// has none, that of Kester.
func basisGone(t *testing.T, d *desk.Desk) record.ID {
	t.Helper()
	a := apptest.AthleteNamed(t, d, "Sefa")
	plans, err := d.Store.Plans(context.Background(), a.ID)
	if err != nil || len(plans) == 0 {
		t.Fatalf("%d plans, %v", len(plans), err)
	}
	p := plans[0]
	p.State, p.Agreement.Review = record.PlanAgreed, "2026-06-01"
	if _, err := d.Store.AgreePlan(context.Background(), p, store.Freezing{Inputs: []byte("{}"), Results: []byte("[]"), Evidence: "1"}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if err := d.Store.Delete(context.Background(), record.Ref{Kind: record.KindTest, ID: p.Basis.TestID}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	return a.ID
}

// drop deletes one of an athlete's tests, counted from the newest.
func drop(t *testing.T, d *desk.Desk, a record.Athlete, i int) {
	t.Helper()
	tests, err := d.Store.Tests(context.Background(), a.ID)
	if err == nil {
		err = d.Store.Delete(context.Background(), record.Ref{Kind: record.KindTest, ID: tests[i].ID}, store.Edit{})
	}
	if err != nil {
		t.Fatal(err)
	}
}
