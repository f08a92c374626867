package climate

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// testAt is a test of the sample at a temperature in the shade with a factor
// over the balance.
func testAt(t *testing.T, air, k float64) Test {
	t.Helper()
	b, s := sample(t, air, SunShade)
	x := must[Balance](t)(Calculate(b, s))
	return Test{Session: s, Rate: quantity.LitresPerHour(k * float64(x.Base()) * Onset(s.Minutes) / 1000), U: 0.05}
}

// TestKindsOfBasis: what an estimate rests on, best first.
func TestKindsOfBasis(t *testing.T) {
	b, _ := sample(t, 25, SunShade)
	like, like2, cool, wild := testAt(t, 25, 1.2), testAt(t, 26, 1.1), testAt(t, 15, 1.2), testAt(t, 25, 2.5)
	water := like
	water.Session.Effort.Motion = InWater
	floor := like
	floor.Rate, floor.Session.Weather.Sun, floor.Session.Weather.Temperature = 0.3, SunNone, 12
	floor.Session.Effort = must[Effort](t)(CyclingEffort(b, 100, 10))
	plan := like.Session
	far := plan
	far.Weather.Temperature, far.Weather.Sun = 36, SunHigh
	for _, c := range []struct {
		name  string
		tests []Test
		plan  Session
		kind  BasisKind
		grade Grade
		from  []int
		codes []string
	}{
		{"no test", nil, plan, GroupValues, Far, nil, []string{TestFirst}},
		{"one like test", []Test{cool, like}, plan, OneTest, Tested, []int{1}, nil},
		{"two like tests", []Test{cool, like, like2}, plan, PooledTests, Tested, []int{1, 2}, nil},
		{"far", []Test{cool, like}, far, Estimated, Far, []int{1, 0}, []string{SodiumNotPredicted, AirExtrapolated, EffortExtrapolated}},
		{"a factor outside 0.5-2", []Test{wild}, far, GroupValues, Far, nil, []string{TestFirst, CheckInputs}},
		{"a factor outside beside a good test", []Test{wild, cool}, far, Estimated, Far, []int{1}, []string{CheckInputs}},
		{"a test on the floor", []Test{floor}, far, Uncalibrated, Far, nil, []string{TestFirst}},
		{"a test in water", []Test{water}, plan, GroupValues, Far, nil, []string{TestFirst}},
		{"a plan in water", []Test{like}, water.Session, NoBasis, Far, nil, []string{PlanInWater}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Estimate(Athlete{Body: b}, c.tests, c.plan)
			if err != nil {
				t.Fatal(err)
			}
			if got.Kind != c.kind || got.Grade != c.grade || !slices.Equal(got.From, c.from) {
				t.Errorf("%s, %s, from %v; want %s, %s, from %v", got.Kind, got.Grade.Code(), got.From, c.kind, c.grade.Code(), c.from)
			}
			for _, code := range c.codes {
				if !slices.Contains(got.Codes, code) {
					t.Errorf("code %s is missing from %v", code, got.Codes)
				}
			}
			got.checkWords(t)
		})
	}
}

// checkWords holds what must be said of a rate against its kind.
func (b Basis) checkWords(t *testing.T) {
	t.Helper()
	measured := b.Kind == OneTest || b.Kind == PooledTests
	if b.Rate.Known == (b.Kind == NoBasis) {
		t.Errorf("%s: rate known %v", b.Kind, b.Rate.Known)
	}
	if b.Rate.Known && b.Rate.Estimate == measured {
		t.Errorf("%s: called an estimate %v", b.Kind, b.Rate.Estimate)
	}
	if b.Grade == Far && !b.RangeOnly {
		t.Error("far, and one number alone may be shown")
	}
}

// TestEachRefusalHasItsCode: why a test does not calibrate.
func TestEachRefusalHasItsCode(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	test := func(change func(*Test)) Test {
		one := Test{Session: s, Rate: 1.1, U: 0.05}
		change(&one)
		return one
	}
	cycling := func(watts quantity.Watts) func(*Test) {
		return func(one *Test) {
			one.Session.Weather.Temperature = 15
			one.Session.Effort = must[Effort](t)(CyclingEffort(b, watts, 10))
			one.Rate = 0.3
		}
	}
	tests := []Test{
		test(func(*Test) {}),
		test(func(one *Test) { one.Rate = 3.5 }),
		test(func(one *Test) { one.Rate = 0.3 }),
		test(cycling(150)),
		test(cycling(200)),
		test(func(one *Test) { one.Session.Effort.Motion = InWater }),
		test(func(one *Test) { one.Session.Weather.Humidity = -5 }),
		test(func(one *Test) { one.Rate = quantity.LitresPerHour(math.NaN()) }),
		test(func(one *Test) { one.Session.Weather.Temperature, one.Session.Weather.Humidity = 41, 95 }),
	}
	want := []Refusal{{1, RefusedFactor, 0, nil}, {2, RefusedFactor, 0, nil}, {3, RefusedFloor, 0, nil}, {4, RefusedNeed, 0, nil},
		{5, RefusedInWater, 0, nil}, {6, RefusedImpossible, 0, nil}, {7, RefusedImpossible, 0, nil}, {8, RefusedCapacity, 0, nil}}
	c := must[Calibration](t)(Calibrate(b, tests))
	if !slices.Equal(c.Used, []int{0}) || len(c.Refused) != len(want) {
		t.Fatalf("used %v, refused %+v", c.Used, c.Refused)
	}
	for i, r := range c.Refused {
		if r.Test != want[i].Test || r.Code != want[i].Code {
			t.Errorf("test %d refused as %s, want test %d as %s", r.Test, r.Code, want[i].Test, want[i].Code)
		}
	}
}

// TestSlopeIsEarned: three tests over 100 W/m² earn a slope, drawn towards 1;
// fewer or closer ones do not.
func TestSlopeIsEarned(t *testing.T) {
	at := func(need, logBase, logFactor float64) point {
		return point{logBase: logBase, logFactor: logFactor, need: need}
	}
	for _, c := range []struct {
		name   string
		points []point
		want   float64
		earned bool
	}{
		{"two", []point{at(200, 6, 0), at(400, 7, 0)}, 1, false},
		{"three close together", []point{at(300, 6.5, 0), at(340, 6.6, 0), at(390, 6.7, 0)}, 1, false},
		{"three on a slope of 1", []point{at(200, 6, 0.1), at(300, 6.5, 0.1), at(400, 7, 0.1)}, 1, true},
		// Sxx = 0.5, b = 1.4: (1.4·0.5/0.0121 + 16)/(0.5/0.0121 + 16)
		{"three on a slope of 1.4", []point{at(200, 6, -0.2), at(300, 6.5, 0), at(400, 7, 0.2)}, (0.7/0.0121 + 16) / (0.5/0.0121 + 16), true},
		{"steeper than may be", []point{at(200, 6, -1), at(300, 6.5, 0), at(400, 7, 1)}, 1.5, true},
		{"flatter than may be", []point{at(200, 6, 1), at(300, 6.5, 0), at(400, 7, -1)}, 0.5, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, earned := slope(c.points)
			if math.Abs(got-c.want) > 1e-9 || earned != c.earned {
				t.Errorf("%g, %v; want %g, %v", got, earned, c.want, c.earned)
			}
		})
	}
}

// TestEarnedSlopeIsUsed: the transfer with a slope recomputes and bends.
func TestEarnedSlopeIsUsed(t *testing.T) {
	b, plan := sample(t, 34, SunShade)
	tests := []Test{testAt(t, 12, 0.8), testAt(t, 20, 1), testAt(t, 28, 1.2)}
	c := must[Calibration](t)(Calibrate(b, tests))
	if !c.Earned || c.Slope <= 1 {
		t.Fatalf("slope %g, earned %v", c.Slope, c.Earned)
	}
	bent, err := c.Transfer(b, plan)
	if err != nil {
		t.Fatal(err)
	}
	c.Earned = false
	straight, err := c.Transfer(b, plan)
	if err != nil {
		t.Fatal(err)
	}
	if bent.Value <= straight.Value {
		t.Errorf("%g with a slope over 1, %g without, above the tests", bent.Value, straight.Value)
	}
	if fault := faultOf(bent); fault != "" {
		t.Error(fault)
	}
}

// TestAboveThreeLitresOnlyARange: no middle is to be shown.
func TestAboveThreeLitresOnlyARange(t *testing.T) {
	b, s := sample(t, 34, SunHigh)
	big := Body{105, 1.95}
	s.Effort = must[Effort](t)(RunningEffort(big, 4, 0, false))
	got, err := Estimate(Athlete{Body: big}, []Test{{Session: s, Rate: 3.4, U: 0.05}}, s)
	if err != nil {
		t.Fatal(err)
	}
	if got.Grade != Tested || !got.RangeOnly || !slices.Contains(got.Codes, RangeAlone) {
		t.Errorf("3.4 L/h: %s, range only %v, %v", got.Grade.Code(), got.RangeOnly, got.Codes)
	}
	one, err := Estimate(Athlete{Body: b}, []Test{testAt(t, 25, 1)}, testAt(t, 25, 1).Session)
	if err != nil {
		t.Fatal(err)
	}
	if one.RangeOnly {
		t.Error("a like test under 3 L/h must show its value")
	}
}

// TestLowNeedReachesToNothing: where hardly any heat must leave, the low end,
// which is the ceiling of drinking, falls with the need.
func TestLowNeedReachesToNothing(t *testing.T) {
	b, _ := sample(t, 25, SunShade)
	warm := testAt(t, 25, 1)
	last := math.Inf(1)
	for _, watts := range []quantity.Watts{260, 220, 200, 180, 160, 140} {
		plan := warm.Session
		plan.Weather.Temperature = 15
		plan.Effort = must[Effort](t)(CyclingEffort(b, watts, 10))
		got, err := Estimate(Athlete{Body: b}, []Test{warm}, plan)
		if err != nil {
			t.Fatal(err)
		}
		if got.Rate.Range.Low > last || got.Rate.Range.Low < 0 {
			t.Errorf("%g W: low end %g after %g", watts, got.Rate.Range.Low, last)
		}
		low := got.Balance.Need < evidence.CalibrationNeedLeast
		if low && (!got.RangeOnly || !(slices.Contains(got.Codes, PlanNeedLow) || slices.Contains(got.Codes, PlanOnFloor))) {
			t.Errorf("%g W, need %g: range only %v, %v", watts, got.Balance.Need, got.RangeOnly, got.Codes)
		}
		last = got.Rate.Range.Low
	}
	if last > 0.02 {
		t.Errorf("on the floor the low end is still %g L/h", last)
	}
}

// TestOtherEffortKindWidens: a metabolic rate found in another way does not
// cancel its error.
func TestOtherEffortKindWidens(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	tests := []Test{testAt(t, 25, 1)}
	c := must[Calibration](t)(Calibrate(b, tests))
	same, err := c.Transfer(b, s)
	if err != nil {
		t.Fatal(err)
	}
	s.Effort.Kind = ByActivity
	other, err := c.Transfer(b, s)
	if err != nil {
		t.Fatal(err)
	}
	if other.Range.Width() <= same.Range.Width() || other.Value != same.Value {
		t.Errorf("%v found in the same way, %v in another", same.Range, other.Range)
	}
	if !slices.ContainsFunc(other.Why.Budget, func(s figure.Share) bool { return s.Source == "estimate.effort" }) {
		t.Errorf("budget %v", other.Why.Budget)
	}
}

func TestAdvice(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	hot := s
	hot.Weather.Temperature = 36
	used := hot
	used.State = Acclimatised
	old := testAt(t, 25, 1)
	old.MonthsAgo = 20
	codes := func(tests []Test, plan Session) []string {
		basis, err := Estimate(Athlete{Body: b}, tests, plan)
		if err != nil {
			t.Fatal(err)
		}
		var list []string
		for _, a := range basis.Advice {
			list = append(list, a.Code)
			if (a.Code == AdviseRetestFirst && (a.FromDay != 5 || a.UntilDay != 7)) || (a.Code == AdviseRetestSecond && (a.FromDay != 10 || a.UntilDay != 14)) {
				t.Errorf("%+v", a)
			}
		}
		return list
	}
	for _, c := range []struct {
		name  string
		tests []Test
		plan  Session
		want  []string
	}{
		{"no test", nil, hot, []string{AdviseTestFirst, AdviseWeighFirst}},
		{"one like test", []Test{testAt(t, 25, 1)}, s, []string{AdviseSecondTest}},
		{"hotter", []Test{testAt(t, 25, 1)}, hot, []string{AdviseWeighFirst, AdviseRetestFirst, AdviseRetestSecond}},
		{"hotter, used to it", []Test{testAt(t, 25, 1)}, used, []string{AdviseWeighFirst}},
		{"an old test", []Test{old}, s, []string{AdviseWeighFirst, AdviseTestAgain}},
	} {
		if got := codes(c.tests, c.plan); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestGroupOfASport: a known sport has its own group, another the group of
// many.
func TestGroupOfASport(t *testing.T) {
	for sport, mean := range map[string]float64{"": 1.21, "soccer": 0.94, "endurance": 1.28, "chess": 1.21} {
		if f := groupRate(sport); f.Value != mean {
			t.Errorf("%q: mean %g, want %g", sport, f.Value, mean)
		}
	}
}
