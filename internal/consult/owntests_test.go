package consult

import (
	"errors"
	"math"
	"slices"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// ownCase is an athlete whom no heat balance holds for: the session of one test.
type ownCase struct {
	name, sport, activity       string
	before, after, drunk, hours float64
	flag                        record.FlagKind
	born                        record.Date
	code                        string
}

// ownCases are sessions as practices meet them: below a spinal cord injury, and in water.
func ownCases() []ownCase {
	const adult, minor = "1999-01-02", "2013-01-02"
	return []ownCase{
		{"wheelchair, 0.1 L of 0.1 drunk", "gym", "", 68, 67.9, 0.1, 1, record.FlagSpinalInjury, adult, climate.OwnTestOnly},
		{"wheelchair, nothing drunk", "gym", "", 68, 67.7, 0, 1, record.FlagSpinalInjury, adult, climate.OwnTestOnly},
		{"wheelchair, two hours of tennis", "tennis", "", 68, 67.3, 0.5, 2, record.FlagSpinalInjury, adult, climate.OwnTestOnly},
		{"squad, two hours", "swimming", "swim-fast", 70, 69.4, 0.5, 2, "", adult, climate.MeasuredInWater},
		{"squad, nothing drunk", "swimming", "swim-fast", 70, 69.2, 0, 2, "", adult, climate.MeasuredInWater},
		{"hard, two and a half hours", "swimming", "swim-fast", 80, 78.6, 0.6, 2.5, "", adult, climate.MeasuredInWater},
		{"warm water", "swimming", "swim-fast", 72, 70.9, 0.6, 1.5, "", adult, climate.MeasuredInWater},
		{"a minor", "swimming", "swim-fast", 48, 47.7, 0.3, 1.5, "", minor, climate.MeasuredInWater},
		{"past low sodium", "swimming", "swim-fast", 60, 59.8, 0.8, 2, record.FlagHyponatraemia, adult, climate.MeasuredInWater},
		{"as heavy as before", "swimming", "swim-fast", 60, 60, 0.3, 1, "", adult, climate.MeasuredInWater},
		{"the swim of a triathlon", "triathlon", "swim", 70, 69.6, 0, 0.75, "", adult, climate.MeasuredInWater},
	}
}

// sheet is its test, with the athlete and how both are worked out.
func (c ownCase) sheet(t testing.TB) (record.Test, record.Athlete, Setup) {
	t.Helper()
	sheet, a := caseSheet()
	a.Sport, a.Born, a.UsualMass = c.sport, c.born, record.Num(c.before, quantity.Kilogram)
	a.Guardian, a.Assent, a.MassHiddenSettled, a.MassHidden = "named", "2026-01-01", true, c.born != "1999-01-02"
	if c.flag != "" {
		a.Flags = []record.Flag{{Kind: c.flag}}
	}
	s := &sheet.Session
	s.Sport, s.Activity, s.Start, s.End = c.sport, c.activity, "12:00", record.ClockAt(12*60+60*c.hours)
	sheet.Air.Sun, sheet.Air.Wind = record.SunNone, record.Num(0.5, quantity.MetrePerSecond)
	sheet.Weighings[0].Mass, sheet.Weighings[1].Mass = record.Num(c.before, quantity.Kilogram), record.Num(c.after, quantity.Kilogram)
	sheet.Bottles = sheet.Bottles[:1]
	sheet.Bottles[0].After = record.Num(1000-1000*c.drunk, quantity.Gram)
	sheet.Feeling.Stomach = record.Num(2, quantity.None)
	d := testSetup(t)
	var err error
	if d.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	return sheet, a, d
}

// Where no heat balance holds, a plan for the session of the test goes by what was
// measured in it, no more and no less, says so, and none of its steps passes the low end
// or what was drunk without gaining.
func TestOwnTestIsWhatIsPlannedOn(t *testing.T) {
	for _, one := range ownCases() {
		t.Run(one.name, func(t *testing.T) {
			sheet, a, d := one.sheet(t)
			f := Find(sheet, a, nil, d)
			b, err := BasisOf(a, []Findings{f}, day(), d)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "planned, L/h", b.Rate.Value, f.Sweat.Fluid.Rate.Value, 1e-9)
			if b.Kind != record.BasisTest || b.Rate.Range.Low >= f.Sweat.Fluid.Rate.Value || b.Calculation.HeatCurve(a, 10, 38, 4, d) != nil {
				t.Errorf("based on %s, %+v, with a curve or without room below", b.Kind, b.Rate.Range)
			}
			p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, day())
			if err != nil {
				t.Fatal(err)
			}
			c, err := OpenCase(p, a, b, d)
			if err != nil {
				t.Fatal(err)
			}
			if got := c.OwnTests(); got != one.code {
				t.Errorf("says %q, want %q", got, one.code)
			}
			limit := max(b.Rate.Range.Low*one.hours, min(one.drunk, f.Sweat.Fluid.Loss.Value+0.2*one.hours))
			proposedWithin(t, c, p.Options[1:], limit)
			again, err := BasisFor(p, a, []Findings{f}, day(), d)
			if err != nil || again.Plan != b.Plan {
				t.Errorf("opened again: %v, %+v", err, again.Plan)
			}
		})
	}
}

// proposedWithin holds options to a limit, L.
func proposedWithin(t *testing.T, c Case, options []record.Option, limit float64) {
	t.Helper()
	for _, o := range options {
		q := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
		if taken := q.Fluid.DrunkL + q.Fluid.FoodWaterL; taken > limit+1e-9 || c.Over(c.MixOf(o)) {
			t.Errorf("%s: %.2f L of %.2f", o.Kind, taken, limit)
		}
	}
}

// In another air, at another effort and in another session there is no rate, and nothing
// to plan on; the calculation says why.
func TestOwnTestIsCarriedNowhere(t *testing.T) {
	for _, one := range ownCases() {
		sheet, a, d := one.sheet(t)
		tests := []Findings{Find(sheet, a, nil, d)}
		warmer, harder := Again(tests[0]), Again(tests[0])
		warmer.Air.Temperature = record.Num(*sheet.Air.Temperature.Value+1, quantity.DegreeCelsius)
		harder.Session.Effort = record.Num(9, quantity.None)
		want := climate.NoEstimate
		if one.code == climate.MeasuredInWater {
			want = climate.PlanInWater
		}
		for _, o := range []Outing{warmer, harder} {
			r, err := Calculate(o, a, tests, day(), d)
			if err != nil || r.Climate.Rate.Known || !slices.Contains(r.Climate.Codes, want) || r.OwnTests() != "" {
				t.Errorf("%s: %v, %+v, %v", one.name, err, r.Climate.Rate, r.Climate.Codes)
			}
			if _, ok := r.Basis(a, day()); ok {
				t.Errorf("%s: a plan is based on %+v", one.name, r.Climate.Rate)
			}
		}
	}
}

// Two tests of just that session count together; one in other air does not.
func TestOwnTestsOfOneSession(t *testing.T) {
	one := ownCases()[3]
	sheet, a, d := one.sheet(t)
	second, other := sheet.Clone(), sheet.Clone()
	second.ID, second.Weighings[1].Mass = "t2", record.Num(69.2, quantity.Kilogram)
	other.ID, other.Air.Temperature = "t3", record.Num(31, quantity.DegreeCelsius)
	tests := []Findings{Find(sheet, a, nil, d), Find(second, a, nil, d), Find(other, a, nil, d)}
	b, err := BasisOf(a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	lower, higher := tests[0].Sweat.Fluid.Rate.Value, tests[1].Sweat.Fluid.Rate.Value
	if b.Kind != record.BasisPool || len(b.Tests) != 2 || b.Rate.Value <= lower || b.Rate.Value >= higher {
		t.Errorf("%s of %d tests: %v between %v and %v", b.Kind, len(b.Tests), b.Rate.Value, lower, higher)
	}
}

// Water in suit and hair is mass that stays: a test in water is as unsure as one with the
// kit on, 0.10 kg over its two hours; one on land is as it was weighed.
func TestWaterStaysInTheSuit(t *testing.T) {
	sheet, a, d := ownCases()[3].sheet(t)
	f := Find(sheet, a, nil, d)
	r, err := Calculate(Again(f), a, []Findings{f}, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	u := f.Sweat.Fluid.Rate.U
	near(t, "in water, L/h", float64(r.dried(true)[0].U), math.Sqrt(u*u+0.05*0.05), 1e-9)
	near(t, "on land, L/h", float64(r.dried(false)[0].U), u, 1e-9)
}

// A gain in mass, of water swallowed or of a suit that was not weighed before, is a red
// flag in water too, and no plan begins from it.
func TestGainInWaterBeginsNoPlan(t *testing.T) {
	one := ownCases()[3]
	one.after, one.drunk = 70.3, 0.9
	sheet, a, d := one.sheet(t)
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if _, err = NewPlan(a, b, d, Names{}, day()); !errors.Is(err, ErrBlocked) {
		t.Errorf("a plan begins from a gain: %v", err)
	}
}

// What an agreed plan said of its own test stays said by its copy.
func TestOwnTestStaysSaid(t *testing.T) {
	sheet, a, d := ownCases()[3].sheet(t)
	c := caseOf(t, sheet, a, d)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	agreed, _ := c.AsAgreed([]record.Frozen{{Inputs: inputs, Results: results}})
	agreed.Basis.Calculation = nil
	if got := agreed.OwnTests(); agreed.Anew || got != climate.MeasuredInWater {
		t.Errorf("the copy says %q", got)
	}
}

// A trip of such an athlete has no figure in other air, and in its own that of the test.
func TestNoEstimateForASpinalCordInjury(t *testing.T) {
	sheet, a, d := ownCases()[2].sheet(t)
	tests := []Findings{Find(sheet, a, nil, d)}
	away := stop("Chennai", 7)
	away.Effort = sheet.Session.Effort
	away.Minutes = record.Num(120, quantity.Minute)
	there, err := planStop(away, a, tests, nil, cities(t), day(), d)
	if err != nil || !there.Unlike() || there.Calculation.Climate.Rate.Known {
		t.Errorf("away: %v, %+v", err, there.Calculation.Climate.Rate)
	}
	home := away
	home.Place, home.City, home.Air = "Home", "", sheet.Air
	if there, err = planStop(home, a, tests, nil, cities(t), day(), d); err != nil || there.Unlike() {
		t.Errorf("at home: %v, %v", err, there.Calculation.Climate.Codes)
	}
	near(t, "at home, L/h", there.Calculation.Climate.Rate.Value, tests[0].Sweat.Fluid.Rate.Value, 1e-9)
}
