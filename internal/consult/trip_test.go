package consult

import (
	"errors"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func cities(t *testing.T) climate.Places {
	t.Helper()
	p, err := climate.LoadPlaces()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tripCase is the common-practice athlete with a test in the sun and a plan.
func tripCase(t *testing.T) (record.Athlete, []Findings, record.Plan, Desk) {
	t.Helper()
	sheet, a := caseSheet()
	sheet.Air.Sun, sheet.Air.Wind = record.SunNone, record.Num(0.5, quantity.MetrePerSecond)
	d := testDesk(t)
	var err error
	if d.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	found := []Findings{Find(sheet, a, nil, d)}
	b, err := BasisOf(a, found)
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
	s, err := PlanStop(stop("Chennai", 7), a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if !s.Air.FromTable || s.Air.Air.Temperature.Or(0) < 33 || s.Air.Air.Temperature.Or(0) > 39 {
		t.Errorf("the air of a July afternoon there: %v", s.Air.Air.Temperature.Or(0))
	}
	r := s.Reckoning
	if r.Climate.Kind != climate.Estimated || !r.Climate.Rate.Estimate || !r.Climate.Rate.Ranged {
		t.Fatalf("the basis is %q: %+v", r.Climate.Kind, r.Climate.Rate)
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
	got, err := PlanStop(s, a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if got.Reckoning.Climate.Kind != climate.OneTest || got.Case.Basis.Kind != record.BasisTest {
		t.Errorf("the same air gives %q", got.Reckoning.Climate.Kind)
	}
	if got.Mix != got.Home {
		t.Error("the plan changes in its own air")
	}
}

func TestTripRefusals(t *testing.T) {
	a, tests, p, d := tripCase(t)
	backwards := stop("Chennai", 7)
	backwards.Until = "2026-07-01"
	if _, err := PlanStop(backwards, a, tests, &p, cities(t), day(), d); !errors.Is(err, ErrStopEnds) {
		t.Errorf("a stop that ends before it begins: %v", err)
	}
	var unknown climate.UnknownPlaceError
	if _, err := PlanStop(stop("Nowhere on Sea", 7), a, tests, &p, cities(t), day(), d); !errors.As(err, &unknown) {
		t.Errorf("an unknown city: %v", err)
	}
	dark := stop("Chennai", 7)
	dark.Air.Sun = ""
	if _, err := PlanStop(dark, a, tests, &p, cities(t), day(), d); !errors.Is(err, ErrNoAir) {
		t.Errorf("no word about the sun: %v", err)
	}
	odd := stop("", 0)
	odd.Air.Temperature, odd.Air.Humidity = record.Num(90, quantity.DegreeCelsius), record.Num(50, quantity.PerCent)
	if _, err := PlanStop(odd, a, tests, &p, cities(t), day(), d); len(climate.Problems(err)) == 0 {
		t.Errorf("90 °C: %v", err)
	}
}

// Without a test there are only group values, wide, and no number alone.
func TestNoTestAtAll(t *testing.T) {
	a, _, p, d := tripCase(t)
	s, err := PlanStop(stop("Chennai", 7), a, nil, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if s.Reckoning.Climate.Kind != climate.GroupValues || !s.Reckoning.Climate.RangeOnly {
		t.Errorf("the basis is %q, range only %v", s.Reckoning.Climate.Kind, s.Reckoning.Climate.RangeOnly)
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

// What is done there is what was done in the test, so that a rating is not
// held against a measured power.
func TestSessionAwayIsTheTests(t *testing.T) {
	sheet, a := caseSheet()
	a.Sport = "road-cycling"
	sheet.Session.Power, sheet.Session.Played = record.Num(200, quantity.Watt), record.Num(84, quantity.Minute)
	d := testDesk(t)
	found := []Findings{Find(sheet, a, nil, d)}
	at := func(effort record.Number) record.Session {
		s := record.Stop{Effort: effort}
		return stopSession(s, a, nil, likeSession(found, nil), 50)
	}
	for _, effort := range []record.Number{{}, record.Num(8, quantity.None)} {
		if got := at(effort); got.Power.Or(0) != 200 || got.Effort.Or(0) != 8 || got.Played.Or(0) != 40 {
			t.Errorf("effort %v: power %v, played %v of 50", effort.Or(-1), got.Power.Or(0), got.Played.Or(0))
		}
	}
	if got := at(record.Num(5, quantity.None)); got.Power.Known() || got.Effort.Or(0) != 5 || got.Played.Known() {
		t.Errorf("an easier session keeps %+v", got)
	}
	if got := stopSession(record.Stop{Effort: record.Num(6, quantity.None)}, a, nil, nil, 50); got.Sport != "road-cycling" || got.Effort.Or(0) != 6 {
		t.Errorf("without a test: %+v", got)
	}
}

// With open dates the profile says whether the athlete is used to heat.
func TestHeatStateOfAStop(t *testing.T) {
	a, tests, p, d := tripCase(t)
	a.Acclimatised = record.AcclimatisedYes
	open := stop("Chennai", 7)
	open.From, open.Until = "", ""
	s, err := PlanStop(open, a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if got := HeatStateOf(s.Reckoning.Outing.Session.UsedToHeat, a); got != climate.Acclimatised || s.Length != 0 {
		t.Errorf("open dates: %q, %d days", got, s.Length)
	}
	a.Acclimatised = record.AcclimatisedNo
	for heatDay, want := range map[float64]climate.HeatState{0: climate.Trained, 3: climate.Trained, 15: climate.Acclimatised} {
		dated := stop("Chennai", 7)
		dated.HeatDay = record.Num(heatDay, quantity.None)
		s, err := PlanStop(dated, a, tests, &p, cities(t), day(), d)
		if err != nil {
			t.Fatal(err)
		}
		if got := HeatStateOf(s.Reckoning.Outing.Session.UsedToHeat, a); got != want {
			t.Errorf("day %v: %q, want %q", heatDay, got, want)
		}
	}
}

// A newer test without air cannot be compared, yet it weighed the athlete.
func TestTestWithoutAirIsLeft(t *testing.T) {
	a, tests, p, d := tripCase(t)
	bare := tests[0].Test.Clone()
	bare.ID, bare.Session.Date, bare.Air = "bare", "2026-05-20", record.Air{}
	bare.Weighings[0].Mass, bare.Weighings[1].Mass = record.Num(80, quantity.Kilogram), record.Num(78, quantity.Kilogram)
	s, err := PlanStop(stop("Chennai", 7), a, append(tests, Find(bare, a, nil, d)), &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Reckoning.Tests) != 1 || len(s.Reckoning.Left) != 1 || s.Case.Basis.Plan.Body.MassKg != 80 {
		t.Errorf("%d compared, %d left, %v kg", len(s.Reckoning.Tests), len(s.Reckoning.Left), s.Case.Basis.Plan.Body.MassKg)
	}
}

func TestOtherDays(t *testing.T) {
	a, tests, p, d := tripCase(t)
	s, err := PlanStop(stop("Madrid", 7), a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	cool, ok1 := s.OnAnotherDay(-5, a, tests, day(), d)
	hot, ok2 := s.OnAnotherDay(5, a, tests, day(), d)
	if !ok1 || !ok2 {
		t.Fatal("nothing is said about other days")
	}
	if !(cool.At.Ceiling.FluidL < s.At.Ceiling.FluidL) || !(hot.At.LossL.Value > s.At.LossL.Value) {
		t.Errorf("ceilings %v, %v; losses %v, %v", cool.At.Ceiling.FluidL, s.At.Ceiling.FluidL, s.At.LossL.Value, hot.At.LossL.Value)
	}
	if cool.At.Guards.Stops() || cool.At.Fluid.DrunkL > cool.At.Ceiling.FluidL {
		t.Errorf("on a cooler day %v L under %v L", cool.At.Fluid.DrunkL, cool.At.Ceiling.FluidL)
	}
	if t0 := *s.Air.Air.Temperature.Value; *cool.Air.Temperature.Value != t0-5 || *hot.Air.Temperature.Value != t0+5 {
		t.Errorf("%v and %v °C about %v", *cool.Air.Temperature.Value, *hot.Air.Temperature.Value, t0)
	}
	if h := *cool.Air.Humidity.Value; h > 98 || h < *s.Air.Air.Humidity.Value {
		t.Errorf("cooler air is %v %% humid", h)
	}
	passes, outruns := s.HighEnd()
	if want := s.At.Deficit.High > s.Case.Limit(); passes != want || outruns && !passes {
		t.Errorf("passes %v, outruns %v at a deficit of up to %v %%", passes, outruns, s.At.Deficit.High)
	}
	take, ok := s.LongestBreak()
	if !ok || take.ML <= 0 || take.Mouthfuls <= 0 {
		t.Errorf("the longest break: %+v", take)
	}
}

// The curve rises with the heat and carries the test's own range where the
// test holds.
func TestHeatCurve(t *testing.T) {
	a, tests, p, d := tripCase(t)
	air := tests[0].Test.Air
	r, err := Reckon(OutingFor(p, a, tests, air), a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	curve := r.HeatCurve(a, 10, 40, 2, d)
	if len(curve) != 16 {
		t.Fatalf("%d points", len(curve))
	}
	for i, c := range curve {
		r := c.Rate.Rate
		if !(r.Range.Low <= r.Value && r.Value <= r.Range.High) {
			t.Errorf("%v °C: %v outside %v", c.Temperature, r.Value, r.Range)
		}
		measured := c.Rate.Kind == climate.OneTest
		if like := c.Temperature >= 22 && c.Temperature <= 30; measured && !like {
			t.Errorf("%v °C rests on %q", c.Temperature, c.Rate.Kind)
		}
		if i > 0 && c.Rate.Kind == climate.Estimated && curve[i-1].Rate.Kind == climate.Estimated && r.Value < curve[i-1].Rate.Rate.Value {
			t.Errorf("falls at %v °C", c.Temperature)
		}
	}
}

// Added salt goes into the drink, so it comes down with it; foods stay.
func TestUnderTakesSaltAlong(t *testing.T) {
	c, _ := newCase(t)
	var mix plan.Mix
	mix[plan.Water], mix[plan.Salt], mix[plan.Food1] = 6000, 4, 1
	got := Under(c.Planner, mix)
	part := got[plan.Water] / mix[plan.Water]
	if got[plan.Salt] > mix[plan.Salt]*part+0.1 || got[plan.Salt] < mix[plan.Salt]*part-0.5 {
		t.Errorf("%v g of salt in %v mL instead of %v g in %v mL", got[plan.Salt], got[plan.Water], mix[plan.Salt], mix[plan.Water])
	}
	if got[plan.Food1] != mix[plan.Food1] {
		t.Error("food was taken away")
	}
}

// A session of another length keeps the rates that were agreed; it is never
// drunk in half the time.
func TestOtherLengthKeepsTheRates(t *testing.T) {
	a, tests, p, d := tripCase(t)
	at := stop("", 0)
	at.Air = tests[0].Test.Air
	drinking := func(minutes float64) plan.Prediction {
		at.Minutes = record.Num(minutes, quantity.Minute)
		s, err := PlanStop(at, a, tests, &p, cities(t), day(), d)
		if err != nil || !s.Planned {
			t.Fatal(err, s.Trouble)
		}
		return s.At
	}
	home := drinking(105)
	for _, minutes := range []float64{30, 60, 90, 150} {
		q := drinking(minutes)
		if q.Fluid.RateLH > home.Fluid.RateLH+1e-9 || q.Fluid.RateLH < home.Fluid.RateLH-3*0.05/(minutes/60) {
			t.Errorf("%v min: %v L/h, at home %v", minutes, q.Fluid.RateLH, home.Fluid.RateLH)
		}
		if q.Guards.Stops() {
			t.Errorf("%v min: %v", minutes, q.Guards.Codes())
		}
	}
}
