package climate

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// BasisKind is what a rate rests on, best first.
type BasisKind string

// The kinds of basis.
const (
	// OneTest: one test made in like conditions, as measured.
	OneTest BasisKind = "test"
	// PooledTests: several tests made in like conditions, their mean.
	PooledTests BasisKind = "pool"
	// Estimated: the heat balance, calibrated to the athlete's tests.
	Estimated BasisKind = "estimate"
	// Uncalibrated: the heat balance alone; there are tests, and none of
	// them can calibrate it.
	Uncalibrated BasisKind = "uncalibrated"
	// GroupValues: a published group, because there is no test.
	GroupValues BasisKind = "group"
	// NoBasis: nothing can be said (exercise in water).
	NoBasis BasisKind = "none"
)

// Codes that stand beside a basis.
const (
	TestFirst          = "test-first"           // no test: test before planning
	CheckInputs        = "check-inputs"         // a factor outside 0.5-2
	PlanInWater        = "in-water"             // not calculated
	PlanOnFloor        = "on-the-floor"         // the balance asks for hardly any sweat
	PlanNeedLow        = "need-under-150"       // so little that the range is wide
	PlanNothingLeaves  = "nothing-evaporates"   // Emax ≤ 0
	PlanUncompensable  = "uncompensable"        // w > wmax
	AirExtrapolated    = "air-extrapolated"     // air past the body over 3 m/s
	EffortExtrapolated = "effort-extrapolated"  // metabolic rate over 450 W/m²
	RangeAlone         = "range-only"           // above 3 L/h, or on the floor
	SodiumNotPredicted = "sodium-not-predicted" // concentration is not estimated
	CeilingIsLowEnd    = "ceiling-is-low-end"   // of drinking
)

// Athlete is whose estimate it is.
type Athlete struct {
	Body Body
	// Sport is a sport of [evidence.Groups]; empty takes the group of many.
	Sport string
}

// Basis is what a plan can rest on.
type Basis struct {
	Kind BasisKind
	// Grade of the best test; Far without one.
	Grade Grade
	// Rate is the sweat rate in L/h, breath not included. Its low end is the
	// ceiling of drinking. Unknown for NoBasis.
	Rate figure.Figure
	// RangeOnly: the middle of the rate is not to be shown. It is also true
	// of every rate that is Far.
	RangeOnly bool
	// Breath is the water that leaves with the breath, L/h.
	Breath figure.Figure
	// From are the tests behind the rate, counted from 0, the best first.
	From []int
	// Coverage of every test.
	Coverage    []Coverage
	Calibration Calibration
	Balance     Balance
	Codes       []string
	Advice      []Advice
}

// Estimate finds what a planned session can rest on, best first: tests in like
// conditions as they were measured; the heat balance calibrated to the tests;
// the balance alone where no test can calibrate it; a published group where
// there is no test, or where the tests' factor is outside 0.5-2 and their
// inputs must be checked first.
//
// Every rate has its 95 % range with the day-to-day spread in it, and all but a
// test in like conditions are called an estimate. Sodium concentration is not
// predicted. It returns an [evidence.Problem] for an athlete or a plan that
// cannot be; a test that cannot be is refused and the others go on.
func Estimate(a Athlete, tests []Test, plan Session) (Basis, error) {
	if plan.Effort.Motion == InWater {
		return Basis{Kind: NoBasis, Grade: Far, RangeOnly: true, Codes: []string{PlanInWater, TestFirst}}, nil
	}
	known := limits(evidence.Limits())
	x, err := known.calculate(a.Body, plan)
	if err != nil {
		return Basis{}, fmt.Errorf("estimate a sweat rate: %w", err)
	}
	calculated := calculateTests(known, a.Body, tests)
	basis := Basis{Grade: Far, Balance: x, Breath: breathFigure(x, plan.Effort),
		Coverage: coverAll(calculated, plan, x), Calibration: calibrate(calculated)}
	basis.choose(a, calculated, plan)
	basis.note(plan)
	basis.Advice = advise(basis, tests, plan)
	return basis, nil
}

// choose takes the best basis there is.
func (b *Basis) choose(a Athlete, tests []calculatedTest, plan Session) {
	if like := b.ranked(func(c Coverage) bool { return c.Grade == Tested && c.Err == nil }); len(like) > 0 {
		b.Kind, b.Grade, b.From = OneTest, Tested, like
		if len(like) > 1 {
			b.Kind = PooledTests
		}
		b.Rate = b.pooled(a.Body, tests, like, plan)
		return
	}
	used := b.ranked(func(c Coverage) bool { return slices.Contains(b.Calibration.Used, c.Test) })
	switch {
	case len(used) > 0:
		b.Kind, b.From = Estimated, used
		b.Grade = b.Coverage[used[0]].Grade
		b.Rate = b.Calibration.transfer(a.Body, plan, b.Balance)
	case b.Calibration.reliesOnBalance():
		b.Kind = Uncalibrated
		b.Rate = b.Calibration.transfer(a.Body, plan, b.Balance)
		b.Codes = append(b.Codes, TestFirst)
	default:
		b.Kind = GroupValues
		b.Rate = groupRate(a.Sport)
		b.Codes = append(b.Codes, TestFirst)
	}
}

// reliesOnBalance reports whether the balance may stand alone: there were
// tests, none calibrates, and none contradicts it.
func (c Calibration) reliesOnBalance() bool {
	usable := false
	for _, r := range c.Refused {
		switch r.Code {
		case RefusedFactor:
			return false
		case RefusedFloor, RefusedNeed, RefusedCapacity:
			usable = true
		}
	}
	return usable
}

// ranked lists the tests that pass, the nearest first: by grade, then by
// distance in need, then by age.
func (b *Basis) ranked(pass func(Coverage) bool) []int {
	var list []Coverage
	for _, c := range b.Coverage {
		if pass(c) {
			list = append(list, c)
		}
	}
	slices.SortStableFunc(list, func(x, y Coverage) int {
		return cmp.Or(cmp.Compare(x.Grade, y.Grade), cmp.Compare(x.need(), y.need()))
	})
	tests := make([]int, len(list))
	for i, c := range list {
		tests[i] = c.Test
	}
	return tests
}

// note adds the codes that stand beside the rate.
func (b *Basis) note(plan Session) {
	add := func(yes bool, code string) {
		if yes {
			b.Codes = append(b.Codes, code)
		}
	}
	for _, r := range b.Calibration.Refused {
		if r.Code == RefusedFactor {
			add(!slices.Contains(b.Codes, CheckInputs), CheckInputs)
		}
	}
	calculated := b.Kind == Estimated || b.Kind == Uncalibrated
	add(calculated && b.Balance.OnFloor(), PlanOnFloor)
	add(calculated && !b.Balance.OnFloor() && b.Balance.Need < evidence.CalibrationNeedLeast, PlanNeedLow)
	add(b.Balance.Capacity <= 0, PlanNothingLeaves)
	add(b.Balance.Capacity > 0 && b.Balance.Uncompensable(), PlanUncompensable)
	add(calculated && b.Balance.AirPast > evidence.AirSpeedMax, AirExtrapolated)
	add(calculated && plan.Effort.Metabolic.Value > evidence.SkinMetabolicMax, EffortExtrapolated)
	add(b.Kind != OneTest && b.Kind != PooledTests, SodiumNotPredicted)
	add(true, CeilingIsLowEnd)
	alone := b.Rate.Value > evidence.RangeOnlyAbove || (calculated && b.Balance.Need < evidence.CalibrationNeedLeast)
	add(alone, RangeAlone)
	b.RangeOnly = alone || b.Grade == Far
}

// pooled is the geometric mean of tests in like conditions, as measured, with
// the spread of a day to come:
//
//	s² = 0.11² (1 + 1/(n + 0.134)) + (mean change of ln (SW0 f) from the tests)²
//
// Like is not same: what the balance says of the rest of the difference goes
// into the range and leaves the measured value alone.
func (b *Basis) pooled(body Body, tests []calculatedTest, like []int, plan Session) figure.Figure {
	n := float64(len(like))
	logs, errs, shift := 0.0, 0.0, 0.0
	now := math.Log(float64(b.Balance.Base()) * Onset(plan.Minutes))
	why := figure.Why{Sources: []string{"day-to-day.rate.cv", "day-to-day.tests-prior"}}
	for i, at := range like {
		t := tests[at]
		logs += math.Log(float64(t.Rate)) / n
		errs += float64(t.U/t.Rate) * float64(t.U/t.Rate) / n
		shift += (now - math.Log(float64(t.balance.Base())*Onset(t.Session.Minutes))) / n
		symbol := fmt.Sprintf("rate%d", i+1)
		why.Inputs = append(why.Inputs, figure.Input{Symbol: symbol, Value: float64(t.Rate), Unit: quantity.LitrePerHour, U: float64(t.U)})
		if i > 0 {
			why.Formula += "+"
		}
		why.Formula += "ln(" + symbol + ")"
	}
	if len(like) == 1 {
		why.Formula = "rate1"
	} else {
		why.Formula = "exp((" + why.Formula + ")/n)"
		why.Inputs = append(why.Inputs, figure.Input{Symbol: "n", Value: n})
	}
	s := max(evidence.DayToDayRateCV, math.Sqrt(errs))
	v := spread{day: s * s, tests: s * s / (n + evidence.TestsPrior), conditions: shift * shift, low: b.Balance.lowNeed(body, plan)}
	why.Budget = v.budget()
	f := figure.Figure{Known: true, Value: math.Exp(logs), Unit: quantity.LitrePerHour, Why: why}
	if len(like) == 1 {
		f.Value = float64(tests[like[0]].Rate)
	}
	return v.rangeOf(f)
}

// groupRate is a published group's sweat rate: its mean, and the 95 % range of
// a log-normal distribution of its mean and standard deviation, approximate.
func groupRate(sport string) figure.Figure {
	var group evidence.Group
	for _, g := range evidence.Groups() {
		if g.Measure != evidence.RateMeasure {
			continue
		}
		if g.Sport == sport || (g.Sport == "" && group.ID == "") {
			group = g
		}
	}
	s := math.Sqrt(math.Log(1 + group.SD*group.SD/(group.Mean*group.Mean)))
	middle := group.Mean * math.Exp(-s*s/2)
	reach := math.Exp(evidence.CoverageFactor * s)
	return figure.Figure{Known: true, Value: group.Mean, Unit: quantity.LitrePerHour, Estimate: true, Ranged: true,
		U: group.SD, Range: quantity.Range{Low: middle / reach, High: middle * reach},
		Why: figure.Why{Formula: "mean", Inputs: []figure.Input{{Symbol: "mean", Value: group.Mean, Unit: quantity.LitrePerHour, U: group.SD}},
			Budget:  []figure.Share{{Source: "group.athletes", Part: 1}},
			Sources: []string{group.ID + ".mean", group.ID + ".sd"}}}
}
