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

// The room a screen has in a window of 1180 x 760 and of 1600 x 1000.
func small() fyne.Size { return fyne.NewSize(1000, 704) }
func large() fyne.Size { return fyne.NewSize(1420, 944) }

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"overview-small-light-100",
		"overview-due-light-100",
		"overview-hidden-light-100",
	}}
}

// longNamed is an athlete with names of sixty letters everywhere.
func longNamed() record.Athlete {
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	long := strings.Repeat("Anneliese-Wilhelmina ", 3)
	return record.Athlete{
		Meta: meta(), Name: long, Born: "1988-09-30", Sport: "a sport of many words that nobody has put into a table yet", Position: strings.Repeat("left wing and ", 5),
		Note: strings.Repeat("What was said takes more than a line. ", 6),
		Flags: []record.Flag{
			{Meta: meta(), Kind: record.FlagKidney, Note: strings.Repeat("since childhood ", 6), Physician: "Dr " + long}, {Meta: meta(), Kind: record.FlagSickleCell},
		},
		Consents: []record.Consent{{Meta: meta(), Purpose: record.ConsentCoach, Given: "2025-09-30", Until: "2026-05-30", GivenBy: "for " + long}},
	}
}

func TestOverviewPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	long := apptest.Save(t, d, longNamed())
	sheet := record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: long.ID, State: record.TestOpen, Session: record.Session{Place: strings.Repeat("Upper Weirside Community Ground ", 3)}}
	if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	minor := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Tamsin Lowmere", Born: "2010-06-01", Sport: "netball"})
	adult := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Corvin Haleway", Born: "2000-06-01", Sport: "rowing"})
	light, dark, text := golden.Mode{Percent: 100}, golden.Mode{Dark: true, Percent: 100}, golden.Mode{Percent: 150}
	for _, p := range []struct {
		name string
		id   record.ID
		mode golden.Mode
		size fyne.Size
	}{
		{"small", apptest.AthleteNamed(t, d, "Ravka").ID, light, small()}, {"small", apptest.AthleteNamed(t, d, "Ravka").ID, dark, small()},
		{"small", apptest.AthleteNamed(t, d, "Ravka").ID, text, small()},
		{"large", apptest.AthleteNamed(t, d, "Ravka").ID, light, large()}, {"large", apptest.AthleteNamed(t, d, "Dorian").ID, dark, large()},
		{"hidden", apptest.AthleteNamed(t, d, "Mirel").ID, light, small()}, {"gain", gainFirst(t, d), light, small()},
		{"due", apptest.AthleteNamed(t, d, "Kester").ID, light, small()}, {"long", long.ID, light, small()},
		{"empty", adult.ID, light, small()}, {"empty", adult.ID, dark, small()}, {"minor", minor.ID, light, small()}, {"basis-gone", basisGone(t, d), light, small()},
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

// basisGone takes the test away that Odo's newest plan would rest on; where he
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
