package athlete

import (
	"context"
	"testing"
	"time"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/cputime"
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

// BenchmarkHistory500 opens and draws the overview of an athlete with 500 closed tests,
// by turns with that of one with the tests of the invented practice, in processor time.
// The first time nothing is known of the tests; then what was read of closed tests is
// kept, as it is when one comes back to the athlete.
func BenchmarkHistory500(b *testing.B) {
	few, _ := apptest.Demo(b)
	fewOf := apptest.AthleteNamed(b, few, "Ravka")
	many, _ := apptest.Demo(b)
	manyOf := apptest.AthleteNamed(b, many, "Ravka")
	withTests(b, many, manyOf, 500)
	drawOverview(b, few, fewOf.ID) // fonts
	first := drawOverview(b, many, manyOf.ID)
	var took, small time.Duration
	for b.Loop() {
		small += drawOverview(b, few, fewOf.ID)
		took += drawOverview(b, many, manyOf.ID)
	}
	n := float64(b.N)
	b.ReportMetric(0, "ns/op") // of the two together: says nothing
	b.ReportMetric(float64(first)/1e6, "ms-first")
	b.ReportMetric(float64(took)/1e6/n, "ms-again")
	b.ReportMetric(float64(small)/1e6/n, "ms-small")
}

// drawOverview opens and draws the overview and tells the processor time of it.
func drawOverview(b *testing.B, d *desk.Desk, id record.ID) time.Duration {
	b.Helper()
	begun := cputime.Used()
	v, err := NewOverview(d, id)
	if err != nil {
		b.Fatal(err)
	}
	w := apptest.Window(b, v.Body(), 1100, 700, false, 100)
	w.Canvas().Capture()
	return cputime.Used() - begun
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
