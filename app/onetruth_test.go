package app

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/testsheet"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// shows is all that is drawn at a place.
func (h hands) shows(at desk.Place) string {
	h.t.Helper()
	h.program().Open(at)
	return strings.Join(apptest.Texts(h.w.Content()), "\n")
}

// TestOneTruth walks the places that show the rate and the deficit of a test, by
// both methods of a practice: all take the same figure with the same range, and
// the deficit is what the scale says.
func TestOneTruth(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h, ctx := hands{t: t, s: s, w: w}, context.Background()
	d := h.program().Desk()
	list, err := d.Store.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	rates := map[bool]map[record.ID]float64{}
	for _, uncorrected := range []bool{false, true} {
		p := d.Practice()
		p.Settings.FieldMethod = uncorrected
		if _, err := d.Store.SavePractice(ctx, p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		d.PracticeChanged()
		rates[uncorrected] = map[record.ID]float64{}
		for _, line := range list {
			h.oneTruth(line.ID, uncorrected, rates[uncorrected])
		}
	}
	if len(rates[true]) < 10 {
		t.Fatalf("only %d tests were walked", len(rates[true]))
	}
	for id, uncorrected := range rates[true] {
		if corrected := rates[false][id]; !(corrected > 0 && corrected < uncorrected) {
			t.Errorf("%s: %g L/h corrected, %g by the field method", id, corrected, uncorrected)
		}
	}
}

// oneTruth walks the places of one athlete.
func (h hands) oneTruth(id record.ID, uncorrected bool, rates map[record.ID]float64) {
	t, d := h.t, h.program().Desk()
	t.Helper()
	a, err := d.Store.LoadAthlete(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	tests, err := d.AllFindings(context.Background(), a)
	if err != nil {
		t.Fatal(err)
	}
	last := tests
	tests = slices.DeleteFunc(slices.Clone(tests), func(f consult.Findings) bool { return !f.Sweat.Fluid.Rate.Ranged })
	if len(tests) == 0 {
		return
	}
	by := amount.Writer{Words: d.Words, US: d.US(), Hidden: care.Of(a, d.Now()).MassHidden}
	newest := tests[0]
	for _, f := range tests {
		if f.Test.Session.Date > newest.Test.Session.Date {
			newest = f
		}
		rates[f.Test.ID] = f.Sweat.Fluid.Rate.Value
		h.oneRate(f, a, uncorrected)
		shown := h.shows(desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: f.Test.ID, Part: testsheet.PartFindings})
		for what, figure := range map[string]string{
			"rate": by.Found(f.Sweat.Fluid.Rate), "range of the rate": by.Range(f.Sweat.Fluid.Rate), "deficit": by.Amount(math.Abs(f.Sweat.Fluid.Deficit.Value), quantity.Litre),
		} {
			if !strings.Contains(shown, figure) {
				t.Errorf("%s, %s: the sheet does not show the %s, %s", a.Name, f.Test.Session.Date, what, figure)
			}
		}
	}
	rate := by.Found(newest.Sweat.Fluid.Rate)
	places := []desk.Place{{Screen: desk.Overview, Athlete: a.ID}}
	if last[0].Test.ID == newest.Test.ID { // the roster shows the last sheet, open or not
		places = append(places, desk.Place{Screen: desk.Athletes})
	}
	for _, at := range places {
		if shown := h.shows(at); !strings.Contains(shown, rate) {
			t.Errorf("%s: %s does not show %s", a.Name, at.Screen, rate)
		}
	}
}

// oneRate holds what package consult hands to plans, climate and pages against the
// sheet's own figure.
func (h hands) oneRate(f consult.Findings, a record.Athlete, uncorrected bool) {
	t, d := h.t, h.program().Desk()
	t.Helper()
	name, rate, fluid := a.Name+", "+string(f.Test.Session.Date), f.Sweat.Fluid.Rate, f.Sweat.Fluid
	same := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%s: %s is %g, on the sheet %g", name, what, got, want)
		}
	}
	same("the deficit in % by the scale", fluid.DeficitShare.Value, -fluid.MassChange.Value)
	if c, ok := consult.ClimateTest(f, a, d.Now(), d.Calculate()); ok {
		same("the rate in the estimate", float64(c.Rate), rate.Value)
		same("its uncertainty there", float64(c.U), rate.U)
	}
	bar := handout.TestBar(f, false, d.Words)
	same("the loss on the page", float64(bar.Loss), fluid.Loss.Value)
	same("its low end on the page", bar.LossRange.Low, fluid.Loss.Range.Low)
	same("the deficit on the page", float64(bar.Deficit.Percent), fluid.DeficitShare.Value)
	beside := f.OtherLosses()
	drunk := fluid.Loss.Value + beside.Breath + beside.Urine - beside.Food - fluid.Deficit.Value
	if sum := fluid.Drunk.Value; math.Abs(drunk-sum) > 0.03*math.Max(sum, 0.1) {
		t.Errorf("%s: the balance leaves %g kg of drinks, %g L were drunk", name, drunk, sum)
	}
	if uncorrected != (fluid.Bias > 0) || uncorrected != (beside.Breath == 0) {
		t.Errorf("%s: bias %g, breath %g", name, fluid.Bias, beside.Breath)
	}
	h.samePlan(f, a)
}

// samePlan plans the same session again: breath and gas exchange are those of the
// test, and the low end reaches down for what the field method left in.
func (h hands) samePlan(f consult.Findings, a record.Athlete) {
	t, d := h.t, h.program().Desk()
	t.Helper()
	b, err := consult.BasisOf(a, []consult.Findings{f}, d.Now(), d.Calculate())
	if err != nil {
		return // no air is written down: there is no plan
	}
	if got, want := b.Plan.BreathLH()*f.Minutes/60, f.OtherLosses().Breath; math.Abs(got-want) > 0.01 {
		t.Errorf("%s, %s: breath and gas exchange of the plan are %g kg, of the test %g", a.Name, f.Test.Session.Date, got, want)
	}
	if rate := b.Plan.SweatRate; f.Sweat.Fluid.Bias > 0 && rate.Low > rate.Value*(1-f.Sweat.Fluid.Bias/f.Sweat.Fluid.Rate.Value) {
		t.Errorf("%s, %s: the low end planned is %g L/h of %g", a.Name, f.Test.Session.Date, rate.Low, rate.Value)
	}
	places, err := climate.LoadPlaces()
	must(t, err)
	// The same session on a trip today: the same rate with the same range. A stop
	// begins at midnight, a plan now: the test is half a day younger there.
	const halfDay = 2e-4
	there, err := consult.NewTraveller(a, []consult.Findings{f}, nil, places, d.Now(), d.Calculate()).Plan(record.Stop{
		Meta: record.Meta{ID: "stop-1"}, From: d.Today(), Until: d.Today(), Place: "Here", Air: f.Test.Air,
		Minutes: record.Num(f.Minutes, quantity.Minute), Effort: f.Test.Session.Effort,
	})
	if err != nil && !there.Calculation.Climate.Rate.Ranged {
		t.Errorf("%s, %s: on a trip in the same air: %v", a.Name, f.Test.Session.Date, err)
		return
	}
	away, rate := there.Calculation.Climate.Rate, b.Plan.SweatRate
	for what, x := range map[string][2]float64{"rate": {away.Value, rate.Value}, "low end": {away.Range.Low, rate.Low}, "high end": {away.Range.High, rate.High}} {
		if math.Abs(x[0]-x[1]) > halfDay*x[1] {
			t.Errorf("%s, %s: the %s on a trip is %g L/h, of the plan %g", a.Name, f.Test.Session.Date, what, x[0], x[1])
		}
	}
}
