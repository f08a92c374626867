package desk_test

import (
	"context"
	"reflect"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// What was read of closed tests is what one reads without having read them before,
// whatever becomes of tests, athlete and method in between.
func TestFindingsReadAgain(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := context.Background()
	a := apptest.AthleteNamed(t, d, "Ravka")
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	all := func(d *desk.Desk) []consult.Findings {
		t.Helper()
		now, err := d.Store.LoadAthlete(ctx, a.ID)
		must(err)
		list, err := d.AllFindings(ctx, now)
		must(err)
		return list
	}
	same := func(after string) []consult.Findings {
		t.Helper()
		fresh, err := desk.New(d.Store, d.Words, d.Now)
		must(err)
		got, want := all(d), all(fresh)
		if len(got) == 0 || len(got) != len(want) {
			t.Fatalf("%s: %d tests, %d read afresh", after, len(got), len(want))
		}
		for i := range got {
			if got[i].Kept != want[i].Kept || !reflect.DeepEqual(got[i].Test, want[i].Test) || !reflect.DeepEqual(got[i].Sweat, want[i].Sweat) || !reflect.DeepEqual(got[i].Care, want[i].Care) {
				t.Errorf("%s: test %d says %+v, read afresh %+v", after, i, got[i].Sweat.Fluid.Rate, want[i].Sweat.Fluid.Rate)
			}
		}
		return got
	}
	same("first")
	closed := record.ID("")
	for _, f := range same("again") {
		if f.Kept == consult.KeptFigures {
			closed = f.Test.ID
		}
	}
	test, err := d.Store.ReopenTest(ctx, closed, "another note")
	must(err)
	same("opened for correction")
	test.Session.Date = test.Session.Date.AddDays(-1)
	_, err = d.Store.SaveTest(ctx, test, store.Edit{})
	must(err)
	same("corrected")
	now, err := d.Store.LoadAthlete(ctx, a.ID)
	must(err)
	now.MassHidden = !now.MassHidden
	_, err = d.Store.SaveAthlete(ctx, now, store.Edit{})
	must(err)
	same("mass hidden, or shown")
	practice := d.Practice()
	practice.Settings.FieldMethod = !practice.Settings.FieldMethod
	_, err = d.Store.SavePractice(ctx, practice, store.Edit{})
	must(err)
	d.PracticeChanged()
	same("by the other method")
}
