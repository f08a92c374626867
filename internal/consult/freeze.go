package consult

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// FrozenAthlete is what of the athlete a calculation used.
type FrozenAthlete struct {
	Mouthful  record.Number
	ID        record.ID
	Born      record.Date
	Sex       record.Sex
	Height    record.Number
	UsualMass record.Number
	Sport     string
	Usual     record.Number
	// FirstMass is that of the athlete; zero in copies of before there was one.
	FirstMass float64 `json:",omitempty"`
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
	// Background is what was known of the habit.
	Background plan.Background
	// Kind and Air are what it was based on, Findings the tests as they then
	// were, RangeAlone and Place what was said of an estimate, Heat what the heat
	// called for.
	Kind       record.BasisKind
	Air        record.Air
	Findings   []FrozenPlanTest
	RangeAlone bool
	Place      string
	Heat       climate.Level
	// Products are those of its options as they then were.
	Products []FrozenProduct
}

// FrozenPlanTest is a test a plan is based on, with what it said at the agreement.
type FrozenPlanTest struct {
	Test     record.Test
	Findings FrozenFindings
}

// Outcome is one option of an agreed plan as predicted.
type Outcome struct {
	Option     record.ID
	Prediction plan.Prediction
}

func frozenAthlete(a record.Athlete) FrozenAthlete {
	return FrozenAthlete{
		ID: a.ID, Born: a.Born, Sex: a.Sex, Height: a.Height, UsualMass: a.UsualMass, Sport: a.Sport, Usual: a.UsualDrinking,
		Mouthful: a.Mouthful, FirstMass: a.FirstMass,
	}
}

// FreezePlan writes down what a plan was calculated from and what is predicted
// for each of its options.
func (c Case) FreezePlan() (inputs, results []byte, err error) {
	in := FrozenPlan{
		Plan: c.Plan, Athlete: frozenAthlete(c.Athlete), Basis: c.Basis.Plan, Rate: c.Basis.Rate,
		Session: c.Planner.Session(), Menu: c.Planner.Menu(), Aim: c.Planner.Aim(), Kind: c.Basis.Kind, Air: c.Basis.Air,
		RangeAlone: c.RangeAlone(), Place: c.Place(), Heat: c.Heat(), Products: c.products(),
		Background: c.Planner.Background(),
	}
	for _, f := range c.Basis.Tests {
		in.Tests = append(in.Tests, f.Test.ID)
		in.Findings = append(in.Findings, FrozenPlanTest{Test: f.Test, Findings: frozenFindings(f)})
	}
	var out []Outcome
	for _, o := range c.Plan.Options {
		out = append(out, Outcome{Option: o.ID, Prediction: c.Planner.Evaluate(plan.Expected, c.Carried(o))})
	}
	if inputs, err = json.Marshal(in); err != nil {
		return nil, nil, fmt.Errorf("freeze plan %s: %w", c.Plan.ID, err)
	}
	if results, err = json.Marshal(out); err != nil {
		return nil, nil, fmt.Errorf("freeze the outcomes of plan %s: %w", c.Plan.ID, err)
	}
	return inputs, results, nil
}

// AsAgreed returns the case with all that was kept when its plan was agreed in the
// place of the present: calculation, tests, air, products, mouthful; kept are the
// copies, newest first. What is hidden and withheld follows the profile as it is
// now. Since of the case says whether, and by what, the present records would give
// another: a test or a product was corrected. Where there is no copy, or the newest
// cannot be read because another version wrote it otherwise, the case stays as it
// is and says so by Anew.
func (c Case) AsAgreed(kept []record.Frozen) (agreed Case, changed bool) {
	was, planner, err := thaw(kept, c.Care.MassHidden)
	if err != nil {
		c.Anew = true
		return c, false
	}
	agreed = was.in(c, planner)
	changed = !reflect.DeepEqual(was.Basis, c.Basis.Plan) || !c.sameItems(was.Menu)
	if changed {
		agreed.Since = since(agreed, c)
	}
	return agreed, changed
}

// sameItems reports whether what the options take is as it was on a menu; what is
// only offered beside it does not count.
func (c Case) sameItems(was plan.Menu) bool {
	taken, now := [plan.Slots]bool{plan.Water: true, plan.Salt: true}, c.Planner.Menu()
	for _, o := range c.Plan.Options {
		for _, it := range o.Items {
			if s, ok := c.SlotOf(it); ok {
				taken[s] = true
			}
		}
	}
	for s := range now {
		if taken[s] && !reflect.DeepEqual(was[s], now[s]) {
			return false
		}
	}
	return true
}

// in puts what was kept of an agreed plan in the place of the present records.
func (was FrozenPlan) in(c Case, planner *plan.Planner) Case {
	c.Planner = c.known(planner, was.Background)
	c.Basis.Plan, c.Basis.Rate = was.Basis, was.Rate
	if was.Kind == "" { // a copy of before tests, air and products were kept
		return c
	}
	c.Athlete.Mouthful = was.Athlete.Mouthful
	c.Basis.Kind, c.Basis.Air, c.Basis.Tests = was.Kind, was.Air, nil
	for _, t := range was.Findings {
		c.Basis.Tests = append(c.Basis.Tests, t.Findings.findings(t.Test, c.Athlete, nil))
	}
	c.said = &said{rangeAlone: was.RangeAlone, place: was.Place, heat: was.Heat}
	frozen := Case{Plan: c.Plan}
	if _, err := frozen.fillSlots(Setup{Pantry: pantryOf(was.Products)}); err == nil {
		c.Slots = frozen.Slots
	}
	return c
}

// thaw reads the newest copy and makes its planner, for eyes from which body mass
// is hidden or not, as it is now.
func thaw(kept []record.Frozen, hidden bool) (was FrozenPlan, planner *plan.Planner, err error) {
	if was, err = thawPlan(kept); err != nil {
		return was, nil, err
	}
	basis := was.Basis
	basis.Body.Hidden = hidden
	if hidden { // may have come up since it was agreed
		basis.Body.MassKg = care.HiddenMass(basis.Body.MassKg)
	}
	if planner, err = plan.New(basis, was.Session, was.Menu, was.Aim); err != nil {
		return was, nil, fmt.Errorf("calculate with the copy kept of plan %s: %w", kept[0].Record, err)
	}
	return was, planner, nil
}

// thawPlan reads the newest copy.
func thawPlan(kept []record.Frozen) (was FrozenPlan, err error) {
	if len(kept) == 0 {
		return was, errors.New("no copy was kept")
	}
	if err := json.Unmarshal(kept[0].Inputs, &was); err != nil {
		return was, fmt.Errorf("read the copy kept of plan %s: %w", kept[0].Record, err)
	}
	return was, nil
}

// products are those in the slots of a case, under the ids the options call them
// by.
func (c Case) products() []FrozenProduct {
	var list []FrozenProduct
	for _, slot := range c.Slots {
		if slot.InUse && slot.Named != "" {
			list = append(list, FrozenProduct{Named: slot.Named, Product: slot.Base})
		}
	}
	return list
}

// pantryOf is a pantry of products as they were kept.
func pantryOf(list []FrozenProduct) *Pantry {
	p := &Pantry{place: map[record.ID]int{}}
	for _, one := range list {
		p.place[one.Named] = len(p.list)
		p.list = append(p.list, one.Product)
	}
	return p
}
