package consult

import (
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What is done there is what was done in the test, so that a rating is not
// held against a measured power.
func TestSessionAwayIsTheTests(t *testing.T) {
	sheet, a := caseSheet()
	a.Sport = "road-cycling"
	sheet.Session.Power, sheet.Session.Played = record.Num(200, quantity.Watt), record.Num(84, quantity.Minute)
	d := testSetup(t)
	found := []Findings{Find(sheet, a, nil, d)}
	at := func(effort record.Number) record.Session {
		s := record.Stop{Effort: effort}
		return stopSession(s, a, nil, likeSession(pointers(found), nil), 50)
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
	s, err := planStop(open, a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if got := HeatStateOf(s.Calculation.Outing.Session.UsedToHeat, a); got != climate.Acclimatised || s.Length != 0 {
		t.Errorf("open dates: %q, %d days", got, s.Length)
	}
	a.Acclimatised = record.AcclimatisedNo
	for heatDay, want := range map[float64]climate.HeatState{0: climate.Trained, 3: climate.Trained, 15: climate.Acclimatised} {
		dated := stop("Chennai", 7)
		dated.HeatDay = record.Num(heatDay, quantity.None)
		s, err := planStop(dated, a, tests, &p, cities(t), day(), d)
		if err != nil {
			t.Fatal(err)
		}
		if got := HeatStateOf(s.Calculation.Outing.Session.UsedToHeat, a); got != want {
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
	s, err := planStop(stop("Chennai", 7), a, append(tests, Find(bare, a, nil, d)), &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Calculation.Tests) != 1 || len(s.Calculation.Left) != 1 || s.Case.Basis.Plan.Body.MassKg != 80 {
		t.Errorf("%d compared, %d left, %v kg", len(s.Calculation.Tests), len(s.Calculation.Left), s.Case.Basis.Plan.Body.MassKg)
	}
}

func TestOtherDays(t *testing.T) {
	a, tests, p, d := tripCase(t)
	s, err := planStop(stop("Madrid", 7), a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	cool, ok1 := s.OnAnotherDay(-5)
	hot, ok2 := s.OnAnotherDay(5)
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
	for high, want := range map[float64]bool{2.9: false, 3.04: false, 3.06: true} { // shown to a tenth
		x := s.Taken
		x.At.Deficit.High = high
		if got := x.PastHarm(); got != want {
			t.Errorf("a deficit of up to %g %% is past harm: %t", high, got)
		}
	}
	take, ok := s.LongestBreak()
	if !ok || take.ML <= 0 || take.Mouthfuls <= 0 {
		t.Errorf("the longest break: %+v", take)
	}
}

// The curve rises with the heat and passes through what the rule says of the
// session itself.
func TestHeatCurve(t *testing.T) {
	a, tests, p, d := tripCase(t)
	air := tests[0].Test.Air
	r, err := Calculate(OutingFor(p, a, tests, air), a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	if own := r.HeatCurve(a, air.Temperature.Or(0), air.Temperature.Or(0), 1, d); len(own) != 1 || own[0].Rate.Rate.Range != r.Climate.Rate.Range {
		t.Errorf("the curve passes beside the rate: %+v", own)
	}
	curve := r.HeatCurve(a, 10, 38, 2, d)
	if len(curve) != 15 {
		t.Fatalf("%d points", len(curve))
	}
	for i, c := range curve {
		r := c.Rate.Rate
		if !(r.Range.Low <= r.Value && r.Value <= r.Range.High) {
			t.Errorf("%v °C: %v outside %v", c.Temperature, r.Value, r.Range)
		}
		if i > 0 && r.Value < curve[i-1].Rate.Rate.Value {
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

// A session of another length keeps the rates that were agreed, unless the low
// end of a short one, in which sweating only begins, stops them; it is never drunk
// in half the time.
func TestOtherLengthKeepsTheRates(t *testing.T) {
	a, tests, p, d := tripCase(t)
	at := stop("", 0)
	at.Air = tests[0].Test.Air
	drinking := func(minutes float64) StopPlan {
		at.Minutes = record.Num(minutes, quantity.Minute)
		s, err := planStop(at, a, tests, &p, cities(t), day(), d)
		if err != nil || !s.Planned {
			t.Fatal(err, s.Trouble)
		}
		return s
	}
	home := drinking(105).At
	const rounded = 0.02 // L: what breaks carry comes in steps of 5 mL
	for _, minutes := range []float64{30, 60, 90, 150} {
		s := drinking(minutes)
		q := s.At
		if q.Fluid.RateLH > home.Fluid.RateLH+rounded/(minutes/60) || !s.Cut && q.Fluid.RateLH < home.Fluid.RateLH-3*0.05/(minutes/60) {
			t.Errorf("%v min: %v L/h, at home %v", minutes, q.Fluid.RateLH, home.Fluid.RateLH)
		}
		if q.Guards.Stops() {
			t.Errorf("%v min: %v", minutes, q.Guards.Codes())
		}
	}
}
