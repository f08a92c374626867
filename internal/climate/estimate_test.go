package climate

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// testAt is a test of the sample at a temperature in the shade whose rate is k
// times the usual one of the rule.
func testAt(t *testing.T, air, k float64) Test {
	t.Helper()
	b, s := sample(t, air, SunShade)
	f := must[Basis](t)(Estimate(Athlete{Body: b}, nil, s)).Rate
	return Test{Session: s, Rate: quantity.LitresPerHour(k * f.Value), U: 0.05}
}

// TestWordsAndCodes: what an estimate is called, and what stands beside it.
func TestWordsAndCodes(t *testing.T) {
	b, _ := sample(t, 25, SunShade)
	like, like2, cool, wild := testAt(t, 25, 1.2), testAt(t, 30, 1.1), testAt(t, 15, 1.2), testAt(t, 25, 4)
	water := like
	water.Session.Effort.Motion = InWater
	plan := like.Session
	hot := plan
	hot.Weather.Temperature, hot.Weather.Sun = 36, SunHigh
	acclimatised := plan
	acclimatised.State = Acclimatised
	cold := plan
	cold.Weather.Temperature = 6
	for _, c := range []struct {
		name      string
		tests     []Test
		plan      Session
		grade     Grade
		from      []int
		codes     []string
		rangeOnly bool
	}{
		{"no test", nil, plan, Far, []int{}, []string{TestFirst, RangeAlone, SodiumNotPredicted}, true},
		{"one alike", []Test{cool, like}, plan, Tested, []int{1, 0}, nil, false},
		{"two alike", []Test{cool, like, like2}, plan, Tested, []int{2, 1, 0}, nil, false},
		{"much hotter", []Test{cool, like}, hot, Near, []int{1, 0}, []string{SodiumNotPredicted, AirExtrapolated, EffortExtrapolated, AboveTested, RangeAlone}, true},
		{"four times the usual", []Test{wild}, plan, Tested, []int{0}, []string{CheckInputs, RangeAlone, TestsDisagree}, true},
		{"acclimatised since", []Test{like}, acclimatised, Near, []int{0}, []string{StateNotTested, SodiumNotPredicted}, false},
		{"cold", []Test{like}, cold, Far, []int{0}, []string{LimitUnsure}, true},
		{"a test in water", []Test{water}, plan, Far, []int{}, []string{TestFirst}, true},
		{"a plan in water", []Test{like}, water.Session, Far, nil, []string{PlanInWater}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := must[Basis](t)(Estimate(Athlete{Body: b}, c.tests, c.plan))
			if got.Grade != c.grade || !slices.Equal(got.From, c.from) || got.RangeOnly != c.rangeOnly {
				t.Errorf("%s (%.2f not tested), from %v, range only %v; want %s, %v, %v", got.Grade.Code(), got.NotTested, got.From, got.RangeOnly, c.grade.Code(), c.from, c.rangeOnly)
			}
			for _, code := range c.codes {
				if !slices.Contains(got.Codes, code) {
					t.Errorf("code %s is missing from %v", code, got.Codes)
				}
			}
			if water := c.plan.Effort.Motion == InWater; got.Rate.Known == water || got.Rate.Estimate != (!water && c.grade != Tested) {
				t.Errorf("rate %+v", got.Rate)
			}
		})
	}
}

// TestImpossibleTestsAreRefused and the others go on.
func TestImpossibleTestsAreRefused(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	test := func(change func(*Test)) Test {
		one := Test{Session: s, Rate: 1.1, U: 0.05}
		change(&one)
		return one
	}
	tests := []Test{
		test(func(*Test) {}),
		test(func(one *Test) { one.Session.Effort.Motion = InWater }),
		test(func(one *Test) { one.Session.Weather.Humidity = -5 }),
		test(func(one *Test) { one.Rate = quantity.LitresPerHour(math.NaN()) }),
		test(func(one *Test) { one.Rate = 0 }),
		test(func(one *Test) { one.Session.Weather.Temperature, one.Session.Weather.Humidity = 38, 95 }),
	}
	got := must[Basis](t)(Estimate(Athlete{Body: b}, tests, s))
	if !slices.Equal(got.From, []int{0, 5}) || len(got.Refused) != 4 || len(got.Coverage) != 6 {
		t.Fatalf("from %v, refused %v", got.From, got.Refused)
	}
	for i, r := range got.Refused {
		if r.Test != i+1 || r.Err == nil || got.Coverage[r.Test].Err == nil || got.Coverage[r.Test].Grade != Far {
			t.Errorf("refused %+v, coverage %+v", r, got.Coverage[r.Test])
		}
	}
}

// TestAboveThreeLitresOnlyARange: no middle is to be shown.
func TestAboveThreeLitresOnlyARange(t *testing.T) {
	b, s := sample(t, 34, SunHigh)
	big := Body{105, 1.95}
	s.Effort = must[Effort](t)(RunningEffort(big, 4, 0, false))
	got := must[Basis](t)(Estimate(Athlete{Body: big}, []Test{{Session: s, Rate: 3.9, U: 0.05}}, s))
	if got.Rate.Value <= evidence.RangeOnlyAbove || got.Grade != Tested || !got.RangeOnly || !slices.Contains(got.Codes, RangeAlone) {
		t.Errorf("%.2f L/h: %s, range only %v, %v", got.Rate.Value, got.Grade.Code(), got.RangeOnly, got.Codes)
	}
	one := must[Basis](t)(Estimate(Athlete{Body: b}, []Test{testAt(t, 25, 1)}, testAt(t, 25, 1).Session))
	if one.RangeOnly {
		t.Error("a tested rate under 3 L/h must show its middle")
	}
}

// TestPracticeStartsOnlyTheUntested: the practice's own start counts while
// there is no test, and is said.
func TestPracticeStartsOnlyTheUntested(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	own := Athlete{b, Start{Offset: 0.1, SD: 0.2, Athletes: 11}}
	usual, ours := must[Basis](t)(Estimate(Athlete{Body: b}, nil, s)), must[Basis](t)(Estimate(own, nil, s))
	if want := usual.Rate.Value * math.Exp(0.1-0.33); math.Abs(ours.Rate.Value-want) > 1e-9 || ours.Rate.U/ours.Rate.Value >= usual.Rate.U/usual.Rate.Value {
		t.Errorf("%g L/h, want %g", ours.Rate.Value, want)
	}
	if ours.Start.Athletes != 11 || usual.Start.Athletes != 0 {
		t.Errorf("behind it are %d and %d athletes", ours.Start.Athletes, usual.Start.Athletes)
	}
	if !slices.Contains(ours.Codes, PracticeStart) || slices.Contains(usual.Codes, PracticeStart) {
		t.Errorf("%v, usual %v", ours.Codes, usual.Codes)
	}
	tests := []Test{testAt(t, 25, 1)}
	if a, b := must[Basis](t)(Estimate(own, tests, s)), must[Basis](t)(Estimate(Athlete{Body: b}, tests, s)); a.Rate.Value != b.Rate.Value || a.Start != UsualStart() {
		t.Errorf("%g with the practice's start and a test, %g without", a.Rate.Value, b.Rate.Value)
	}
}

// TestCoverageSaysWhatSetsApart: the largest difference first, each with its
// size.
func TestCoverageSaysWhatSetsApart(t *testing.T) {
	b, done := sample(t, 25, SunShade)
	plan := done
	plan.Weather.Temperature, plan.Weather.Humidity, plan.Weather.Sun = 36, 48, SunHigh
	plan.State, plan.Clothing, plan.Minutes = Acclimatised, Vest(), 95
	got := must[Basis](t)(Estimate(Athlete{Body: b}, []Test{{Session: done, Rate: 1, U: 0.05, MonthsAgo: 2}}, plan)).Coverage[0]
	want := map[string]float64{ByAir: 11, BySun: 3, ByHeatState: 1, ByClothing: -0.1, ByMonths: 2, ByDuration: 35, ByEffort: 0, BySeated: 0, ByAirSpeed: 0}
	for i, d := range got.Differences {
		if size, ok := want[d.By]; ok && math.Abs(d.Size-size) > 1e-9 {
			t.Errorf("%s: %g, want %g", d.By, d.Size, size)
		}
		if i > 0 && d.Apart > got.Differences[i-1].Apart {
			t.Errorf("%s sets apart by %g after %g", d.By, d.Apart, got.Differences[i-1].Apart)
		}
	}
	if first := got.Differences[0]; first.By != ByNeed || len(got.Differences) != 11 {
		t.Errorf("first %+v of %d", first, len(got.Differences))
	}
	if got.Weight <= 0 || got.Weight >= 1 || got.Grade == Tested {
		t.Errorf("weight %g, %s", got.Weight, got.Grade.Code())
	}
}

func TestAdvice(t *testing.T) {
	b, s := sample(t, 25, SunShade)
	hot := s
	hot.Weather.Temperature = 36
	used := hot
	used.State = Acclimatised
	old := testAt(t, 25, 1)
	old.MonthsAgo = 40
	codes := func(tests []Test, plan Session) []string {
		basis := must[Basis](t)(Estimate(Athlete{Body: b}, tests, plan))
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
		{"one alike", []Test{testAt(t, 25, 1)}, s, []string{AdviseSecondTest}},
		{"hotter", []Test{testAt(t, 25, 1)}, hot, []string{AdviseWeighFirst, AdviseRetestFirst, AdviseRetestSecond}},
		{"hotter, used to it", []Test{testAt(t, 25, 1)}, used, []string{AdviseWeighFirst}},
		{"an old test", []Test{old}, s, []string{AdviseWeighFirst, AdviseTestAgain}},
	} {
		if got := codes(c.tests, c.plan); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
