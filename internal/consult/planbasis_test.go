package consult

import (
	"errors"
	"reflect"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// pooled are two tests in like air, a third in other air, and their athlete.
func pooled(t *testing.T) (record.Athlete, []Findings, Setup) {
	t.Helper()
	a, found, _, d := tripCase(t)
	second := found[0].Test.Clone()
	second.ID, second.Session.Date = "t2", "2026-04-20"
	for i := range second.Weighings {
		second.Weighings[i].ID += "2"
	}
	second.Weighings[1].Mass = record.Num(70.1, quantity.Kilogram)
	third := second.Clone()
	third.ID, third.Session.Date, third.Air.Temperature = "t3", "2026-02-01", record.Num(12, quantity.DegreeCelsius)
	return a, append(found, Find(second, a, nil, d), Find(third, a, nil, d)), d
}

// opened writes a basis into a plan and opens it again.
func opened(t *testing.T, b Basis, p record.Plan, a record.Athlete, tests []Findings, d Setup) Basis {
	t.Helper()
	p.Basis = PlanBasisOf(b, "")
	got, err := BasisFor(p, a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// Soldiers' sweat is beside the estimate and never in it: whatever the
// regressions say, the basis of a plan is the same.
func TestSoldiersAreOnlyCompared(t *testing.T) {
	a, tests, d := pooled(t)
	_, _, p, _ := tripCase(t)
	hot := record.Air{Temperature: record.Num(36, quantity.DegreeCelsius), Humidity: record.Num(48, quantity.PerCent),
		Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond)}
	r, err := Calculate(OutingFor(p, a, tests[:1], hot), a, tests[:1], day(), d)
	if err != nil || !r.Soldiers.Asked || r.Soldiers.Refused == nil && r.Soldiers.Rates.Exponential == 0 {
		t.Fatalf("not compared: %+v, %v", r.Soldiers, err)
	}
	if s := r.Steps; !s.Need.Known || !s.First.Known || !s.Wettedness.Known {
		t.Errorf("the steps of the heat balance are not shown: %+v", s)
	}
	before, ok := r.Basis(a, day())
	r.Soldiers = Soldiers{Asked: true, Rates: climate.Soldiers{Exponential: 9000, Linear: -9000}}
	after, ok2 := r.Basis(a, day())
	if !ok || !ok2 || !reflect.DeepEqual(before.Plan, after.Plan) || !reflect.DeepEqual(before.Rate, after.Rate) {
		t.Errorf("soldiers moved the basis from %+v to %+v", before.Plan, after.Plan)
	}
}

// A basis that was written down opens as it was: the same kind, the same rate
// and range, the same tests; what came later does not count.
func TestBasisOpensAsItWas(t *testing.T) {
	a, tests, d := pooled(t)
	_, _, plan, _ := tripCase(t)
	measured := func(list ...Findings) Basis {
		b, err := BasisOf(a, list, day(), d)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	calculated := func(air record.Air, list []Findings) Basis {
		r, err := Calculate(OutingFor(plan, a, list, air), a, list, day(), d)
		if err != nil {
			t.Fatal(err)
		}
		b, ok := r.Basis(a, day())
		if !ok {
			t.Fatal("no basis")
		}
		return b
	}
	like := tests[0].Test.Air
	like.Temperature = record.Num(27, quantity.DegreeCelsius)
	hot := record.Air{Temperature: record.Num(36, quantity.DegreeCelsius), Humidity: record.Num(48, quantity.PerCent),
		Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond), Altitude: record.Num(200, quantity.Metre)}
	for name, c := range map[string]struct {
		basis Basis
		kind  record.BasisKind
	}{
		"one test":             {measured(tests[0]), record.BasisTest},
		"a pool":               {measured(tests[0], tests[1]), record.BasisPool},
		"a test in like air":   {calculated(like, tests[:1]), record.BasisTest},
		"a pool in like air":   {calculated(like, tests[:2]), record.BasisPool},
		"an estimate":          {calculated(hot, tests[:1]), record.BasisEstimate},
		"an estimate of three": {calculated(hot, tests), record.BasisEstimate},
	} {
		got := opened(t, c.basis, plan, a, tests, d)
		if got.Kind != c.kind || c.basis.Kind != c.kind {
			t.Errorf("%s: written as %q, opened as %q", name, c.basis.Kind, got.Kind)
		}
		if got.Plan.SweatRate != c.basis.Plan.SweatRate || got.Plan.Sodium != c.basis.Plan.Sodium || got.Plan.RespiratoryLH != c.basis.Plan.RespiratoryLH {
			t.Errorf("%s: %+v became %+v", name, c.basis.Plan, got.Plan)
		}
		if !got.Air.Same(c.basis.Air) || len(got.Tests) != len(c.basis.Tests) || !reflect.DeepEqual(got.Rate.Why.Budget, c.basis.Rate.Why.Budget) {
			t.Errorf("%s: air, tests or budget differ", name)
		}
	}
}

// An estimate opens with the session it was made for, whichever test is nearest
// there: a plan that is based on a ride of 205 W stays one.
func TestEstimateKeepsItsSession(t *testing.T) {
	a, tests, d := pooled(t)
	_, _, p, _ := tripCase(t)
	a.Sport = "road-cycling"
	for i, power := range []float64{205, 235, 260} {
		sheet := tests[i].Test
		sheet.Session.Power, sheet.Session.Effort = record.Num(power, quantity.Watt), record.Num(float64(6+i), quantity.None)
		tests[i] = Find(sheet, a, nil, d)
	}
	p.Target.Effort, p.Target.Sport = record.Num(7, quantity.None), "road-cycling"
	p.Basis = record.PlanBasis{Kind: record.BasisEstimate, TestID: "t2"}
	for _, temperature := range []float64{8, 20, 36} {
		air := tests[0].Test.Air
		air.Temperature = record.Num(temperature, quantity.DegreeCelsius)
		r, err := Calculate(OutingFor(p, a, tests, air), a, tests, day(), d)
		if err != nil {
			t.Fatal(err)
		}
		b, ok := r.Basis(a, day())
		if !ok || r.Outing.Session.Power.Or(0) != 235 {
			t.Fatalf("calculated with %v W", r.Outing.Session.Power.Or(0))
		}
		if b.Kind != record.BasisEstimate {
			continue
		}
		if got := opened(t, b, p, a, tests, d); got.Plan.SweatRate != b.Plan.SweatRate {
			t.Errorf("%v °C: %+v opens as %+v", temperature, b.Plan.SweatRate, got.Plan.SweatRate)
		}
	}
}

// With the tests named in another order, or one deleted, it says so or goes on.
func TestBasisWithoutItsTests(t *testing.T) {
	a, tests, d := pooled(t)
	_, _, plan, _ := tripCase(t)
	b, err := BasisOf(a, tests[:2], day(), d)
	if err != nil {
		t.Fatal(err)
	}
	plan.Basis = PlanBasisOf(b, "")
	if _, err := BasisFor(plan, a, tests[:1], day(), d); !errors.Is(err, ErrTestGone) {
		t.Errorf("half the pool is gone: %v", err)
	}
	if _, err := BasisFor(plan, a, nil, day(), d); !errors.Is(err, ErrTestGone) {
		t.Errorf("the whole pool is gone: %v", err)
	}
	plan.Basis = record.PlanBasis{}
	if _, err := BasisFor(plan, a, tests, day(), d); !errors.Is(err, ErrTestGone) {
		t.Errorf("nothing is named: %v", err)
	}
	hot := record.Air{Temperature: record.Num(36, quantity.DegreeCelsius), Humidity: record.Num(48, quantity.PerCent), Sun: record.SunHigh}
	plan.Basis = record.PlanBasis{Kind: record.BasisEstimate, TestID: "t", PoolIDs: "t2 t3", Air: hot}
	got, err := BasisFor(plan, a, tests[:1], day(), d)
	if err != nil || len(got.Tests) != 1 {
		t.Errorf("an estimate goes on with the tests that are left: %v, %+v", err, got.Kind)
	}
	plan.Basis.Air.Sun = ""
	if _, err := BasisFor(plan, a, tests, day(), d); !errors.Is(err, ErrNoAir) {
		t.Errorf("an estimate without sun: %v", err)
	}
	plan.Basis.Air = hot
	plan.Target.Minutes = record.Number{}
	if got, err := BasisFor(plan, a, tests, day(), d); err != nil || got.Calculation.Outing.Minutes != tests[0].Minutes {
		t.Errorf("no minutes: %v, %v", got.Calculation, err)
	}
}

// A plan begun from a pool keeps every test of it.
func TestNewPlanKeepsThePool(t *testing.T) {
	a, tests, d := pooled(t)
	b, err := BasisOf(a, tests[:2], day(), d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, day())
	if err != nil {
		t.Fatal(err)
	}
	if p.Basis.TestID != "t" || p.Basis.PoolIDs != "t2" {
		t.Errorf("kept %+v", p.Basis)
	}
	got, err := BasisFor(p, a, tests, day(), d)
	if err != nil || got.Kind != record.BasisPool || got.Plan.SweatRate != b.Plan.SweatRate {
		t.Errorf("opened %v, %v", got.Kind, err)
	}
}

// A plan for a stop opens for a body as used to heat as it will be there,
// whatever the profile says, and in the test's own air too.
func TestBasisKeepsHowUsedToHeat(t *testing.T) {
	a, tests, p, d := tripCase(t)
	sheet := tests[0].Test
	sheet.Session.UsedToHeat = record.AcclimatisedNo // on the day of the test
	tests[0] = Find(sheet, a, nil, d)
	hot, own := stop("Chennai", 7), stop("", 0)
	hot.Air.Temperature, hot.Air.Humidity = record.Num(36, quantity.DegreeCelsius), record.Num(80, quantity.PerCent)
	own.Place, own.Air = "Home", tests[0].Test.Air
	own.Minutes = record.Num(105, quantity.Minute)
	rates := map[record.Acclimatised]float64{}
	for name, s := range map[string]record.Stop{"in heat": hot, "in the test's air": own} {
		for _, profile := range []record.Acclimatised{record.AcclimatisedYes, record.AcclimatisedNo} {
			a.Acclimatised = profile
			s.HeatDay = record.Num(1, quantity.None)
			there, err := planStop(s, a, tests, &p, cities(t), day(), d)
			if err != nil {
				t.Fatal(err)
			}
			draft, err := there.Draft(StopNames{"There", "There"}, "", day(), d)
			if err != nil {
				t.Fatal(err)
			}
			if draft.Plan.Basis.UsedToHeat != there.Calculation.Outing.Session.UsedToHeat || draft.Plan.Basis.UsedToHeat == "" {
				t.Fatalf("%s: kept %q of %q", name, draft.Plan.Basis.UsedToHeat, there.Calculation.Outing.Session.UsedToHeat)
			}
			// Meanwhile the profile is corrected.
			a.Acclimatised = record.AcclimatisedYes
			b, err := BasisFor(draft.Plan, a, tests, day(), d)
			if err != nil {
				t.Fatal(err)
			}
			if b.Plan.SweatRate != draft.Basis.Plan.SweatRate || b.Kind != draft.Basis.Kind {
				t.Errorf("%s, %q by the profile: %+v opens as %+v", name, profile, draft.Basis.Plan.SweatRate, b.Plan.SweatRate)
			}
			if name == "in heat" {
				rates[profile] = b.Plan.SweatRate.High
			}
		}
	}
	if rates[record.AcclimatisedYes] == rates[record.AcclimatisedNo] {
		t.Errorf("being used to heat changes nothing: %v", rates)
	}
}

// What is asked about another climate is asked for the same body.
func TestOutingForTheSameBody(t *testing.T) {
	a, tests, p, _ := tripCase(t)
	p.Basis.UsedToHeat = record.AcclimatisedYes
	if got := OutingFor(p, a, tests, tests[0].Test.Air).Session.UsedToHeat; got != record.AcclimatisedYes {
		t.Errorf("asked for a body %q", got)
	}
}
