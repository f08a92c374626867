package consult

import (
	"errors"
	"fmt"
	"time"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Basis is what a plan is based on, in full: what the planner calculates with and
// what stands beside it in words.
type Basis struct {
	Kind record.BasisKind
	// Tests it is based on, the one named first.
	Tests []Findings
	// Rate is the sweat rate to plan on, L/h, with its planned range.
	Rate figure.Figure
	// Air the session is planned for.
	Air  record.Air
	Plan plan.Basis
	// Calculation is how the tests were asked.
	Calculation *Calculation
}

// ErrNoBasis says that a plan needs a test whose sweat rate has a range.
var ErrNoBasis = errors.New("no test with a sweat rate to plan on")

// BasisOf makes the basis of a plan for the session of the first test again,
// from all the tests, on a day. It returns [ErrNoBasis] when that test's sweat
// rate has no range yet.
func BasisOf(a record.Athlete, tests []Findings, day time.Time, d Setup) (Basis, error) {
	if len(tests) == 0 || !tests[0].Sweat.Fluid.Rate.Ranged {
		return Basis{}, ErrNoBasis
	}
	r, err := Calculate(Again(tests[0]), a, tests, day, d)
	if err != nil {
		return Basis{}, fmt.Errorf("make the basis of a plan: %w", errors.Join(ErrNoBasis, err))
	}
	b, ok := r.Basis(a, day)
	if !ok {
		return Basis{}, ErrNoBasis
	}
	return b, nil
}

// First are tests with one of them named first.
func First(tests []Findings, id record.ID) []Findings {
	var list []Findings
	for _, f := range tests {
		if f.Test.ID == id {
			list = append([]Findings{f}, list...)
			continue
		}
		list = append(list, f)
	}
	return list
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
