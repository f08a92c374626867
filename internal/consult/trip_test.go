package consult

import (
	"errors"
	"slices"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

func cities(t testing.TB) climate.Places {
	t.Helper()
	p, err := climate.LoadPlaces()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tripCase is the common-practice athlete with a test in the sun and a plan.
func tripCase(t testing.TB) (record.Athlete, []Findings, record.Plan, Setup) {
	t.Helper()
	sheet, a := caseSheet()
	sheet.Air.Sun, sheet.Air.Wind = record.SunNone, record.Num(0.5, quantity.MetrePerSecond)
	d := testSetup(t)
	var err error
	if d.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	found := []Findings{Find(sheet, a, nil, d)}
	b, err := BasisOf(a, found, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, day())
	if err != nil {
		t.Fatal(err)
	}
	o, _ := OptionOf(p, record.OptionAim)
	p.Agreement.OptionID = o.ID
	return a, found, p, d
}

func stop(city string, month int) record.Stop {
	return record.Stop{
		Meta: record.Meta{ID: "s"}, From: "2026-07-11", Until: "2026-07-17", Place: city, City: city, Month: month, TimeOfDay: Afternoon,
		Air: record.Air{Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond)}, SessionsADay: record.Num(2, quantity.None),
		Effort: record.Num(8, quantity.None),
	}
}

func TestHotStopIsAnEstimate(t *testing.T) {
	a, tests, p, d := tripCase(t)
	s, err := planStop(stop("Chennai", 7), a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if !s.Air.FromTable || s.Air.Air.Temperature.Or(0) < 33 || s.Air.Air.Temperature.Or(0) > 39 {
		t.Errorf("the air of a July afternoon there: %v", s.Air.Air.Temperature.Or(0))
	}
	r := s.Calculation
	if r.Climate.Grade == climate.Tested || !r.Climate.Rate.Estimate || !r.Climate.Rate.Ranged {
		t.Fatalf("%s: %+v", r.Climate.Grade.Code(), r.Climate.Rate)
	}
	if !r.CautionKnown || r.Caution.Level < climate.Reduce {
		t.Errorf("the heat caution is %v", r.Caution.Level)
	}
	if !s.Planned || s.At.Guards.Stops() {
		t.Errorf("planned %v, guards %v", s.Planned, s.At.Guards.Codes())
	}
	if s.Case.Basis.Kind != record.BasisEstimate || s.At.Fluid.DrunkL > s.At.Ceiling.FluidL {
		t.Errorf("drinks %v L under %v L", s.At.Fluid.DrunkL, s.At.Ceiling.FluidL)
	}
	if len(s.Days) != 7 || s.Days[0].Day != 1 {
		t.Errorf("%d days", len(s.Days))
	}
	list, err := PackTrip([]StopPlan{s}, nil, 0.15, d)
	if err != nil {
		t.Fatal(err)
	}
	if list.SafeWater <= 0 || list.Bottles <= 0 {
		t.Errorf("packed %+v", list)
	}
}

func TestSameAirStaysATest(t *testing.T) {
	a, tests, p, d := tripCase(t)
	s := stop("", 0)
	s.Place, s.Air = "Home", tests[0].Test.Air
	s.Minutes = record.Num(105, quantity.Minute)
	got, err := planStop(s, a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if got.Calculation.Climate.Grade != climate.Tested || got.Case.Basis.Kind != record.BasisTest {
		t.Errorf("the same air gives %q", got.Calculation.Climate.Grade.Code())
	}
	if at, ok := InForce(p); !ok || got.Cut || got.Mix != got.Case.Carried(at) {
		t.Error("the plan changes in its own air")
	}
}

// TestTooUncertainToDrinkBy: an estimate whose high end is more than three times
// its low end says to weigh there; what was measured never does.
func TestTooUncertainToDrinkBy(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		estimate  bool
		want      bool
	}{{0.5, 1.5, true, false}, {0.5, 1.51, true, true}, {0, 0.4, true, true}, {0.5, 1.6, false, false}} {
		var s StopPlan
		s.Calculation.Climate.Rate = figure.Figure{Known: true, Ranged: true, Estimate: c.estimate, Range: quantity.Range{Low: c.low, High: c.high}}
		if got := s.TooUncertain(); got != c.want {
			t.Errorf("%+v: %t", c, got)
		}
	}
}

// TestUrineOfTheHabit: what the test had of urine and stool is told with the
// habit, and not where the usual habit is the one to begin at.
func TestUrineOfTheHabit(t *testing.T) {
	f := Findings{Test: record.Test{Meta: record.Meta{ID: "t"}}}
	f.Sweat.Balance = []sweat.Line{{ID: sweat.LineUrine, Kilograms: -0.2}, {ID: sweat.LineRespiratory, Kilograms: -0.1}}
	c := Case{Basis: Basis{Tests: []Findings{f}}}
	if got := c.HabitUrine(); got != 0 {
		t.Errorf("a plan from no test has %g L", got)
	}
	c.Plan.Basis.TestID = "t"
	near(t, "urine, L", c.HabitUrine(), 0.2, 1e-12)
	c.Plan.UsualHabit = true
	near(t, "urine with the usual habit, L", c.HabitUrine(), 0, 0)
}

func TestTripRefusals(t *testing.T) {
	a, tests, p, d := tripCase(t)
	backwards := stop("Chennai", 7)
	backwards.Until = "2026-07-01"
	if _, err := planStop(backwards, a, tests, &p, cities(t), day(), d); !errors.Is(err, ErrStopEnds) {
		t.Errorf("a stop that ends before it begins: %v", err)
	}
	var unknown climate.UnknownPlaceError
	if _, err := planStop(stop("Nowhere on Sea", 7), a, tests, &p, cities(t), day(), d); !errors.As(err, &unknown) {
		t.Errorf("an unknown city: %v", err)
	}
	typed := stop("Nowhere on Sea", 7)
	typed.Air.Temperature, typed.Air.Humidity = record.Num(30, quantity.DegreeCelsius), record.Num(60, quantity.PerCent)
	if there, err := planStop(typed, a, tests, &p, cities(t), day(), d); err != nil || there.Air.FromTable || !there.Calculation.Climate.Rate.Ranged {
		t.Errorf("an unknown city with its air typed: %v", err)
	}
	dark := stop("Chennai", 7)
	dark.Air.Sun = ""
	if _, err := planStop(dark, a, tests, &p, cities(t), day(), d); !errors.Is(err, ErrNoAir) {
		t.Errorf("no word about the sun: %v", err)
	}
	odd := stop("", 0)
	odd.Air.Temperature, odd.Air.Humidity = record.Num(90, quantity.DegreeCelsius), record.Num(50, quantity.PerCent)
	if _, err := planStop(odd, a, tests, &p, cities(t), day(), d); len(climate.Problems(err)) == 0 {
		t.Errorf("90 °C: %v", err)
	}
}

// Without a test there is a wide range alone, and no amount is planned.
func TestNoTestAtAll(t *testing.T) {
	a, _, p, d := tripCase(t)
	s, err := planStop(stop("Chennai", 7), a, nil, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Calculation.Climate; got.Grade != climate.Far || !got.RangeOnly || !got.Rate.Ranged || s.Planned {
		t.Errorf("%s, range only %v, planned %v", got.Grade.Code(), got.RangeOnly, s.Planned)
	}
}

// The practice's own start counts for an athlete without a test, is said, and is
// not asked for where there is one.
func TestPracticeStartForTheUntested(t *testing.T) {
	a, tests, p, d := tripCase(t)
	asked := ""
	usual, err := planStop(stop("Chennai", 7), a, nil, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	d.Start = func(sport string) climate.Start {
		asked = sport
		return climate.Start{Offset: 0.1, SD: 0.2}
	}
	own, err := planStop(stop("Chennai", 7), a, nil, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if asked != a.Sport || own.Calculation.Climate.Rate.Value >= usual.Calculation.Climate.Rate.Value || !slices.Contains(own.Calculation.Climate.Codes, climate.PracticeStart) {
		t.Errorf("asked for %q: %+v", asked, own.Calculation.Climate.Codes)
	}
	asked = ""
	if _, err := planStop(stop("Chennai", 7), a, tests, &p, cities(t), day(), d); err != nil || asked != "" {
		t.Errorf("asked for %q beside a test, %v", asked, err)
	}
}

// A mix above the ceiling comes down under it, whatever it was.
func TestUnderTheCeiling(t *testing.T) {
	c, _ := newCase(t)
	for _, water := range []float64{0, 1000, 3000, 9000} {
		var mix plan.Mix
		mix[plan.Water], mix[plan.Drink1] = water, 800
		got := Under(c.Planner, mix)
		q := c.Planner.Evaluate(plan.Expected, got)
		if q.Guards.Stops() {
			t.Errorf("%v mL of water: still %v", water, q.Guards.Codes())
		}
		if got[plan.Water] > mix[plan.Water] || got[plan.Drink1] > mix[plan.Drink1] {
			t.Errorf("%v became %v", mix, got)
		}
	}
}

func TestAirOfAStop(t *testing.T) {
	places := cities(t)
	s := stop("Chennai", 7)
	table, err := AirOf(s, places)
	if err != nil {
		t.Fatal(err)
	}
	now, err := climate.NewAir(quantity.Celsius(*table.Air.Temperature.Value), quantity.Percent(*table.Air.Humidity.Value))
	if err != nil {
		t.Fatal(err)
	}
	s.Air.Temperature = record.Num(30, quantity.DegreeCelsius)
	typed, err := AirOf(s, places)
	if err != nil {
		t.Fatal(err)
	}
	then, err := climate.NewAir(30, quantity.Percent(*typed.Air.Humidity.Value))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "vapour at a typed temperature", float64(then.Vapour), float64(now.Vapour), 0.05)
	if !typed.FromTable || *typed.Air.Temperature.Value != 30 {
		t.Errorf("typed %v, from the table %v", typed.Air.Temperature.Or(0), typed.FromTable)
	}
	s.Air.Humidity = record.Num(70, quantity.PerCent)
	if whole, err := AirOf(s, places); err != nil || whole.FromTable || whole.Air.Altitude.Or(-1) != table.Air.Altitude.Or(-2) {
		t.Errorf("all typed: %v, from the table %v, altitude %v", err, whole.FromTable, whole.Air.Altitude.Or(-1))
	}
	hot := stop("Chennai", 7)
	hot.TimeOfDay = HotDay
	if h, err := AirOf(hot, places); err != nil || quantity.Round(*h.Air.Temperature.Value-*table.Air.Temperature.Value, 1) != 5 {
		t.Errorf("a hot day: %v, %v", h.Air.Temperature.Or(0), err)
	}
	byDate := stop("Chennai", 0)
	if m, err := AirOf(byDate, places); err != nil || m.Month != 7 || *m.Air.Temperature.Value != *table.Air.Temperature.Value {
		t.Errorf("the month of the dates: %d, %v", m.Month, err)
	}
	byDate.From = ""
	if _, err := AirOf(byDate, places); len(climate.Problems(err)) != 1 {
		t.Errorf("neither month nor dates: %v", err)
	}
}
