package consult

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"

	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// FrozenAthlete is what of the athlete a calculation used.
type FrozenAthlete struct {
	ID        record.ID
	Born      record.Date
	Sex       record.Sex
	Height    record.Number
	UsualMass record.Number
	Sport     string
	Usual     record.Number
}

// FrozenPlan is what is kept of an agreed plan beside its record.
type FrozenPlan struct {
	Plan    record.Plan
	Athlete FrozenAthlete
	Basis   plan.Basis
	Rate    figure.Figure
	Tests   []record.ID
	Session plan.Session
	Menu    plan.Menu
	Aim     plan.Aim
}

// Outcome is one option of an agreed plan as predicted.
type Outcome struct {
	Option     record.ID
	Prediction plan.Prediction
}

func frozenAthlete(a record.Athlete) FrozenAthlete {
	return FrozenAthlete{
		ID: a.ID, Born: a.Born, Sex: a.Sex, Height: a.Height, UsualMass: a.UsualMass, Sport: a.Sport, Usual: a.UsualDrinking,
	}
}

// FreezePlan writes down what a plan was calculated from and what is predicted
// for each of its options.
func (c Case) FreezePlan() (inputs, results []byte, err error) {
	in := FrozenPlan{
		Plan: c.Plan, Athlete: frozenAthlete(c.Athlete), Basis: c.Basis.Plan, Rate: c.Basis.Rate,
		Session: c.Planner.Session(), Menu: c.Planner.Menu(), Aim: c.Planner.Aim(),
	}
	for _, f := range c.Basis.Tests {
		in.Tests = append(in.Tests, f.Test.ID)
	}
	var out []Outcome
	for _, o := range c.Plan.Options {
		out = append(out, Outcome{Option: o.ID, Prediction: c.Planner.Evaluate(plan.Expected, c.MixOf(o))})
	}
	if inputs, err = json.Marshal(in); err != nil {
		return nil, nil, fmt.Errorf("freeze plan %s: %w", c.Plan.ID, err)
	}
	if results, err = json.Marshal(out); err != nil {
		return nil, nil, fmt.Errorf("freeze the outcomes of plan %s: %w", c.Plan.ID, err)
	}
	return inputs, results, nil
}

// AsAgreed returns the case with the calculation that was kept when its plan was
// agreed in the place of the present one; kept are the copies, newest first.
// Changed reports whether the present records would give another: a test or a
// product was corrected since. Where there is no copy, or the newest cannot be
// read because another version wrote it otherwise, the case stays as it is and
// says so by Anew.
func (c Case) AsAgreed(kept []record.Frozen) (agreed Case, changed bool) {
	was, planner, err := thaw(kept, c.Care.MassHidden)
	if err != nil {
		c.Anew = true
		return c, false
	}
	changed = !reflect.DeepEqual(was.Basis, c.Basis.Plan) || !reflect.DeepEqual(was.Menu, c.Planner.Menu())
	c.Planner, c.Basis.Plan, c.Basis.Rate = planner.At(PlanChances(c.Plan)), was.Basis, was.Rate
	return c, changed
}

// thaw reads the newest copy and makes its planner, for eyes from which body mass
// is hidden or not, as it is now.
func thaw(kept []record.Frozen, hidden bool) (was FrozenPlan, planner *plan.Planner, err error) {
	if len(kept) == 0 {
		return was, nil, errors.New("no copy was kept")
	}
	if err := json.Unmarshal(kept[0].Inputs, &was); err != nil {
		return was, nil, fmt.Errorf("read the copy kept of plan %s: %w", kept[0].Record, err)
	}
	basis := was.Basis
	basis.Body.Hidden = hidden
	if planner, err = plan.New(basis, was.Session, was.Menu, was.Aim); err != nil {
		return was, nil, fmt.Errorf("calculate with the copy kept of plan %s: %w", kept[0].Record, err)
	}
	return was, planner, nil
}
