package athlete

import (
	"context"
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// tap opens a part of an overview by its name.
func tap(t *testing.T, o fyne.CanvasObject, name string) {
	t.Helper()
	apptest.Click(t, apptest.Window(t, o, 1000, 704, false, 100), name)
}

// byHand is a runner whose work a test lets go on.
type byHand struct {
	work func() error
	done func(error)
}

// Run keeps the work.
func (r *byHand) Run(work func(ctx context.Context) error, done func(error)) (stop func()) {
	ctx, stop := context.WithCancel(context.Background())
	r.work, r.done = func() error { return work(ctx) }, done
	return stop
}

// goOn does the work and takes it in.
func (r *byHand) goOn() { r.done(r.work()) }

// withTests adds closed tests to an athlete until there are so many.
func withTests(t testing.TB, d *desk.Desk, a record.Athlete, n int) {
	t.Helper()
	ctx := context.Background()
	sheets, err := d.Store.SheetsOf(ctx, a.ID)
	if err != nil || len(sheets) == 0 {
		t.Fatal(len(sheets), err)
	}
	like := sheets[len(sheets)-1].Test
	for i := len(sheets); i < n; i++ {
		if err := addTest(ctx, d, a, like, i); err != nil {
			t.Fatal(err)
		}
	}
}

// addTest closes a test like another, so many weeks before it.
func addTest(ctx context.Context, d *desk.Desk, a record.Athlete, like record.Test, weeks int) error {
	t := like.Clone()
	t.Meta, t.State, t.ClosedAt, t.ClosedBy = record.Meta{ID: record.NewID()}, record.TestOpen, nil, ""
	t.Session.Date = like.Session.Date.AddDays(-7 * weeks)
	for i := range t.Weighings {
		t.Weighings[i].Meta = record.Meta{ID: record.NewID()}
	}
	for i := range t.Bottles {
		t.Bottles[i].Meta = record.Meta{ID: record.NewID()}
		for j := range t.Bottles[i].Refills {
			t.Bottles[i].Refills[j].Meta = record.Meta{ID: record.NewID()}
		}
	}
	for i := range t.Foods {
		t.Foods[i].Meta = record.Meta{ID: record.NewID()}
	}
	for i := range t.Patches {
		t.Patches[i].Meta = record.Meta{ID: record.NewID()}
	}
	found := consult.Find(t, a, nil, d.Calculate())
	inputs, results, err := consult.FreezeTest(found, a, nil, d.Calculate())
	if err != nil {
		return err
	}
	_, err = d.Store.CloseTest(ctx, t, store.Freezing{Inputs: inputs, Results: results, Evidence: "bench", Line: consult.LineOf(found)}, store.Edit{})
	return err
}
