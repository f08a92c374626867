package consult

import (
	"errors"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Basis is what a plan rests on, in full: what the planner calculates with and
// what stands beside it in words.
type Basis struct {
	Kind record.BasisKind
	// Tests it rests on, the one named first.
	Tests []Findings
	// Rate is the sweat rate to plan on, L/h, with its planned range.
	Rate figure.Figure
	// Air the session is planned for.
	Air  record.Air
	Plan plan.Basis
	// Calculation is how the tests were asked; nil where they were taken as
	// they are.
	Calculation *Calculation
}

// ErrNoBasis says that a plan needs a test whose sweat rate has a range.
var ErrNoBasis = errors.New("no test with a sweat rate to plan on")

// BasisOf makes the basis of a plan from measured tests, the first named
// first. It returns [ErrNoBasis] when a test's sweat rate has no range yet.
func BasisOf(a record.Athlete, tests []Findings) (Basis, error) {
	rates := make([]figure.Figure, 0, len(tests))
	for _, f := range tests {
		rates = append(rates, f.Sweat.Fluid.Rate)
	}
	rate, ok := sweat.PlannedRate(rates)
	if !ok {
		return Basis{}, ErrNoBasis
	}
	first := tests[0]
	out := breathOfTest(first)
	b := Basis{Kind: record.BasisTest, Tests: tests, Rate: rate, Air: first.Test.Air}
	kind := plan.Test
	if len(tests) > 1 {
		b.Kind, kind = record.BasisPool, plan.Pool
	}
	b.Plan = plan.Basis{
		Kind: kind, Code: "basis." + string(b.Kind), Tests: len(tests),
		SweatRate:     plan.Between(rate.Value, rate.Range.Low, rate.Range.High),
		RespiratoryLH: out.respiratory, ExchangeLH: out.exchange,
		Sodium: sodiumOf(tests),
		Body:   bodyOf(first, a),
	}
	b.Plan.Usual = toleratedBy(a, tests)
	return b, nil
}

// toleratedBy is the drinking rate that an athlete tolerates: as it stands in the
// profile, and at least every rate drunk in a test with the stomach at 0-3.
func toleratedBy(a record.Athlete, tests []Findings) plan.Usual {
	u := plan.Usual{Known: a.UsualDrinking.Known(), LH: a.UsualDrinking.Or(0)}
	for _, f := range tests {
		rate, stomach := f.Sweat.Fluid.DrinkingRate, f.Test.Feeling.Stomach
		if rate.Known && stomach.Known() && *stomach.Value <= evidence.StepStomachGood && rate.Value > u.LH {
			u = plan.Usual{Known: true, LH: rate.Value}
		}
	}
	return u
}

// sodiumOf is the newest known concentration of the tests, with its planned
// range.
func sodiumOf(tests []Findings) plan.Ranged {
	for _, f := range tests {
		c := f.Sweat.Sodium.Concentration
		if r, ok := sweat.PlannedConcentration(c); ok && c.Known {
			return plan.Between(c.Value, r.Low, r.High)
		}
	}
	return plan.Ranged{}
}

// bodyOf is the body at the test's start.
func bodyOf(f Findings, a record.Athlete) plan.Body {
	age, _ := a.Age(TestDay(f.Test))
	return plan.Body{
		MassKg: sessionMass(f.Test, a), HeightM: a.Height.Or(0), AgeYears: float64(age), Sex: sweat.Sex(a.Sex),
	}
}

// HeatOf is how warm a session is, by its air.
func HeatOf(air record.Air) plan.Heat {
	if !air.Temperature.Known() {
		return plan.HeatUnknown
	}
	switch t := *air.Temperature.Value; {
	case t >= evidence.AirHot:
		return plan.Hot
	case t < evidence.AirCold:
		return plan.Cold
	}
	return plan.Temperate
}
