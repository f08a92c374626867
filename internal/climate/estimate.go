package climate

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Grade is a word read off the share of a range that no test has shown.
type Grade int

// The grades, best first.
const (
	// Tested: under 0.60 of the variance is what no test has shown.
	Tested Grade = iota
	// Near: under 0.80.
	Near
	// Far: more, or no test at all.
	Far
)

// Code names the grade in the catalogue of texts.
func (g Grade) Code() string {
	return [...]string{"tested", "near", "far"}[min(max(g, Tested), Far)]
}

// gradeOf reads the word off a share.
func gradeOf(share float64) Grade {
	switch {
	case share < evidence.TestedShare:
		return Tested
	case share < evidence.NearShare:
		return Near
	}
	return Far
}

// Codes that stand beside an estimate.
const (
	TestFirst          = "test-first"           // no test: test before planning, drink to thirst, weigh
	PracticeStart      = "practice-start"       // no test: the start is that of the practice's own tests
	CheckInputs        = "check-inputs"         // a test far from what was to be expected
	TestsDisagree      = "tests-disagree"       // they widen the range
	PlanInWater        = "in-water"             // not estimated
	MeasuredInWater    = "measured-in-water"    // the own test of this session is all that is known
	NoEstimate         = "no-estimate"          // of this body; weigh there
	OwnTestOnly        = "own-test-only"        // of this body; in just this session
	LimitUnsure        = "need-under-150"       // cool: weigh; the limit is unsure
	PlanNothingLeaves  = "nothing-evaporates"   // Emax ≤ 0
	PlanUncompensable  = "uncompensable"        // w > wmax
	AirExtrapolated    = "air-extrapolated"     // air past the body over 3 m/s
	EffortExtrapolated = "effort-extrapolated"  // metabolic rate over 450 W/m²
	RangeAlone         = "range-only"           // middle above 3 L/h, or far
	AboveTested        = "above-tested"         // more sweat called for than at any test: the range first
	StateNotTested     = "state-not-tested"     // the range holds acclimatisation, the middle hardly
	SodiumNotPredicted = "sodium-not-predicted" // concentration is not estimated
	CeilingIsLowEnd    = "ceiling-is-low-end"   // of drinking
)

// Athlete is whose estimate it is.
type Athlete struct {
	Body Body
	// Start is where the athlete stands before a test; zero for [UsualStart].
	Start Start
}

// Basis is what a plan can be based on.
type Basis struct {
	Grade Grade
	// Rate is the sweat rate in L/h, breath not included: a middle (a median)
	// with its 95 % range. Its low end is the ceiling of drinking. Unknown in water.
	Rate figure.Figure
	// NotTested is the share of the range that no test has shown, 0 to 1; the
	// rest is from day to day.
	NotTested float64
	// RangeOnly: the middle of the rate is not to be shown.
	RangeOnly bool
	// Breath is the water that leaves with the breath, L/h.
	Breath figure.Figure
	// From are the tests behind the rate, counted from 0, the weightiest first.
	From []int
	// Coverage of every test, in their order.
	Coverage []Coverage
	Refused  []Refusal
	// Start is where the estimate began; Wider how far tests that disagree widen
	// the range (1 not at all).
	Start   Start
	Wider   float64
	Balance Balance
	Codes   []string
	Advice  []Advice
}

// Estimate says what to expect of a planned session: one rule for any number
// of tests. The heat balance gives a first figure, the tests bend it, the more
// the more alike they are, and what no test has shown stays in the range.
// Sodium concentration is not predicted. It returns an [evidence.Problem] for
// a plan that cannot be.
func (s *TestSet) Estimate(plan Session) (Basis, error) {
	b, d, o, err := s.expect(plan)
	if err != nil || plan.Effort.Motion == InWater {
		return b, err
	}
	b.Rate.Why = s.why(&d, o)
	b.Breath, b.Refused = breathFigure(b.Balance, plan.Effort), s.refused
	b.Coverage = s.cover(&d, o, plan)
	b.From = s.weightiest(o)
	b.note(s, &d, plan)
	b.Advice = advise(b, s, plan)
	return b, nil
}

// Expect is [TestSet.Estimate] for a picture of many sessions: the rate without its why,
// the grade and whether the middle may be shown; nothing of single tests.
func (s *TestSet) Expect(plan Session) (Basis, error) {
	b, _, _, err := s.expect(plan)
	return b, err
}

// expect works out what Estimate and Expect have in common. In water there is no rate.
func (s *TestSet) expect(plan Session) (b Basis, d demand, o outcome, err error) {
	if plan.Effort.Motion == InWater {
		return Basis{Grade: Far, NotTested: 1, RangeOnly: true, Start: s.start, Codes: []string{PlanInWater}}, d, o, nil
	}
	x, err := s.limits.calculate(s.body, plan)
	if err != nil {
		return b, d, o, fmt.Errorf("estimate a sweat rate: %w", err)
	}
	d = demandOf(x, plan)
	o = s.outcome(&d)
	b = Basis{Grade: gradeOf(o.share()), NotTested: o.share(), Start: s.start, Wider: o.wider, Balance: x}
	if len(s.used) == 0 {
		b.Grade = Far
	}
	b.Rate = s.rate(&d, o)
	b.RangeOnly = b.rangeOnly()
	return b, d, o, nil
}

// Moved is the rate of a test, counted from 0, as it would have been in another
// session of the same person, L/h: rate·exp(g - g_i), with g what the heat balance
// expects of both. It is false for a test or a session that cannot be, or in water.
func (s *TestSet) Moved(test int, to Session) (quantity.LitresPerHour, bool) {
	i := slices.Index(s.used, test)
	if i < 0 || to.Effort.Motion == InWater {
		return 0, false
	}
	x, err := s.limits.calculate(s.body, to)
	if err != nil {
		return 0, false
	}
	rate := float64(s.tests[test].Rate) * math.Exp(demandOf(x, to).log-s.demands[i].log)
	return quantity.LitresPerHour(rate), true
}

// rate is the figure of a rate, with its range. Where it is tested, and
// not above the tested heat, it is not called an estimate.
func (s *TestSet) rate(d *demand, o outcome) figure.Figure {
	low, middle, high := o.ends()
	f := figure.Figure{Known: true, Value: middle, Unit: quantity.LitrePerHour, Estimate: gradeOf(o.share()) != Tested || s.above(d), U: middle * o.sd(), Ranged: true,
		Range: quantity.Range{Low: low, High: high}}
	return f
}

// why is how a rate comes about, from what every test adds to it.
func (s *TestSet) why(d *demand, o outcome) figure.Why {
	var formula strings.Builder
	formula.WriteString("first*exp(start")
	inputs := make([]figure.Input, 0, 2+3*len(o.weights))
	inputs = append(inputs, figure.Input{Symbol: "first", Value: math.Exp(d.log), Unit: quantity.LitrePerHour}, figure.Input{Symbol: "start", Value: s.start.Offset})
	for i, w := range o.weights {
		t := s.tests[s.used[i]]
		n := strconv.Itoa(i + 1)
		formula.WriteString("+weight" + n + "*(ln(rate" + n + "/first" + n + ")-start)")
		inputs = append(inputs, figure.Input{Symbol: "weight" + n, Value: w},
			figure.Input{Symbol: "rate" + n, Value: float64(t.Rate), Unit: quantity.LitrePerHour, U: float64(t.U)},
			figure.Input{Symbol: "first" + n, Value: math.Exp(s.demands[i].log), Unit: quantity.LitrePerHour})
	}
	formula.WriteString(")")
	return figure.Why{Formula: formula.String(), Inputs: inputs, Budget: shares(figure.Share{Source: "estimate.day-to-day", Part: 1 - o.share()},
		figure.Share{Source: "estimate.not-tested", Part: o.share()}), Sources: []string{"climate.rule.start.offset", "climate.rule.start.sd", "climate.estimate.latent", "climate.estimate.onset",
		"climate.estimate.core", "day-to-day.rate.cv"}}
}

// weightiest lists the tests that count, the weightiest first.
func (s *TestSet) weightiest(o outcome) []int {
	order := make([]int, len(s.used))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(o.weights[b], o.weights[a]) })
	for i, at := range order {
		order[i] = s.used[at]
	}
	return order
}

// note adds the codes that stand beside the rate.
func (b *Basis) note(s *TestSet, d *demand, plan Session) {
	add := func(yes bool, code string) {
		if yes {
			b.Codes = append(b.Codes, code)
		}
	}
	none := len(s.used) == 0
	add(none, TestFirst)
	add(none && s.start != UsualStart(), PracticeStart)
	add(slices.ContainsFunc(b.Coverage, func(c Coverage) bool { return c.Odd }), CheckInputs)
	add(!none && b.Wider > 1, TestsDisagree)
	add(b.Balance.Need < evidence.LimitUnsureNeed, LimitUnsure)
	add(b.Balance.Capacity <= 0, PlanNothingLeaves)
	add(b.Balance.Capacity > 0 && b.Balance.Uncompensable(), PlanUncompensable)
	add(b.Balance.AirPast > evidence.AirSpeedMax, AirExtrapolated)
	add(plan.Effort.Metabolic.Value > evidence.SkinMetabolicMax, EffortExtrapolated)
	b.RangeOnly = b.rangeOnly()
	add(b.RangeOnly, RangeAlone)
	add(!none && s.above(d), AboveTested)
	add(!none && s.otherState(plan.State), StateNotTested)
	add(b.Grade != Tested, SodiumNotPredicted)
	add(true, CeilingIsLowEnd)
}

// rangeOnly reports whether the middle of the rate is not to be shown.
func (b *Basis) rangeOnly() bool { return b.Rate.Value > evidence.RangeOnlyAbove || b.Grade == Far }

// above reports whether a session calls for clearly more sweat than every test;
// so it does where there is none.
func (s *TestSet) above(plan *demand) bool {
	return !slices.ContainsFunc(s.demands, func(d demand) bool { return plan.log <= d.log+evidence.AboveTested })
}

// otherState reports whether no test was made as acclimatised as the plan is.
func (s *TestSet) otherState(plan HeatState) bool {
	return !slices.ContainsFunc(s.used, func(i int) bool { return s.tests[i].Session.State.rank() == plan.rank() })
}
