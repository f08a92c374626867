package athlete

import (
	"runtime"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/cputime"
	"ebbwell/internal/record"
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
// The first time nothing is known of the tests: the screen stands, then the others are
// read beside the window, then what they say is set in and drawn. Again, what was read of
// closed tests is kept, as it is when one comes back to the athlete, and asked beside.
func BenchmarkHistory500(b *testing.B) {
	few, _ := apptest.Demo(b)
	fewOf := apptest.AthleteNamed(b, few, "Ravka")
	many, _ := apptest.Demo(b)
	manyOf := apptest.AthleteNamed(b, many, "Ravka")
	withTests(b, many, manyOf, 500)
	drawOverview(b, few, fewOf.ID) // fonts
	var first, beside, setIn, again, againSetIn, small time.Duration
	for b.Loop() {
		small += drawOverview(b, few, fewOf.ID).took
		d, err := desk.New(many.Store, many.Words, many.Now)
		if err != nil {
			b.Fatal(err)
		}
		by := &byHand{}
		d.Beside = by
		shown := drawOverview(b, d, manyOf.ID)
		first += shown.took
		beside += taking(func() { err = by.work() })
		if err != nil {
			b.Fatal(err)
		}
		setIn += by.setIn(shown)
		shown = drawOverview(b, d, manyOf.ID)
		again += shown.took
		if err := by.work(); err != nil {
			b.Fatal(err)
		}
		againSetIn += by.setIn(shown)
	}
	n := float64(b.N) * 1e6
	b.ReportMetric(0, "ns/op") // of them together: says nothing
	b.ReportMetric(float64(first)/n, "ms-first")
	b.ReportMetric(float64(beside)/n, "ms-beside")
	b.ReportMetric(float64(setIn)/n, "ms-set-in")
	b.ReportMetric(float64(again)/n, "ms-again")
	b.ReportMetric(float64(againSetIn)/n, "ms-again-set-in")
	b.ReportMetric(float64(small)/n, "ms-small")
}

// setIn takes in what was done beside, and draws the window again.
func (r *byHand) setIn(x drawn) time.Duration {
	return taking(func() {
		r.done(nil)
		x.window.Canvas().Capture()
	})
}

// drawn is an overview in a window, drawn once, and the processor time of it.
type drawn struct {
	window fyne.Window
	took   time.Duration
}

// drawOverview opens and draws the overview.
func drawOverview(b *testing.B, d *desk.Desk, id record.ID) (x drawn) {
	b.Helper()
	x.took = taking(func() {
		v, err := NewOverview(d, id)
		if err != nil {
			b.Fatal(err)
		}
		x.window = apptest.Window(b, v.Body(), 1100, 700, false, 100)
		x.window.Canvas().Capture()
	})
	return x
}

// taking is the processor time of f, without that of tidying up after others.
func taking(f func()) time.Duration {
	runtime.GC()
	begun := cputime.Used()
	f()
	return cputime.Used() - begun
}
