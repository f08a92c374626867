package athlete

import (
	"context"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// The overview of an athlete with several tests, from the records to the screen.
func BenchmarkOverview(b *testing.B) {
	d, _ := apptest.Demo(b)
	id := apptest.AthleteNamed(b, d, "Ravka").ID
	for b.Loop() {
		if _, err := NewOverview(d, id); err != nil {
			b.Fatal(err)
		}
	}
}

// The overview of an athlete with 500 closed tests, opened and drawn; its
// baseline is the same with the tests of the invented practice.
func BenchmarkHistory500(b *testing.B) {
	d, _ := apptest.Demo(b)
	a := apptest.AthleteNamed(b, d, "Ravka")
	withTests(b, d, a, 500)
	drawOverview(b, d, a.ID)
}

func BenchmarkHistoryBaseline(b *testing.B) {
	d, _ := apptest.Demo(b)
	drawOverview(b, d, apptest.AthleteNamed(b, d, "Ravka").ID)
}

// drawOverview opens and draws the overview again and again.
func drawOverview(b *testing.B, d *desk.Desk, id record.ID) {
	b.Helper()
	for b.Loop() {
		v, err := NewOverview(d, id)
		if err != nil {
			b.Fatal(err)
		}
		w := apptest.Window(b, v.Body(), 1100, 700, false, 100)
		w.Canvas().Capture()
	}
}

// withTests adds closed tests to an athlete until there are so many.
func withTests(b *testing.B, d *desk.Desk, a record.Athlete, n int) {
	b.Helper()
	ctx := context.Background()
	sheets, err := d.Store.SheetsOf(ctx, a.ID)
	if err != nil || len(sheets) == 0 {
		b.Fatal(len(sheets), err)
	}
	like := sheets[len(sheets)-1].Test
	for i := len(sheets); i < n; i++ {
		if err := addTest(ctx, d, a, like, i); err != nil {
			b.Fatal(err)
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
