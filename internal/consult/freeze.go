package consult

import (
	"fmt"
	"reflect"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// FreezePlan writes down what a plan was calculated from and what is predicted
// for each of its options.
func (c Case) FreezePlan() (inputs, results []byte, err error) {
	in := frozen.Plan{
		Plan: c.Plan, Athlete: frozen.AthleteOf(c.Athlete), Basis: c.Basis.Plan, Rate: c.Basis.Rate,
		Session: c.Planner.Session(), Menu: c.Planner.Menu(), Aim: c.Planner.Aim(), Kind: c.Basis.Kind, Air: c.Basis.Air,
		RangeAlone: c.RangeAlone(), Place: c.Place(), OwnTests: c.OwnTests(), Heat: c.Heat(), Products: c.products(),
		Background: c.Planner.Background(),
	}
	for _, f := range c.Basis.Tests {
		in.Tests = append(in.Tests, f.Test.ID)
		in.Findings = append(in.Findings, frozen.PlanTest{Test: f.Test, Findings: frozenFindings(f)})
	}
	var out []frozen.Outcome
	for _, o := range c.Plan.Options {
		out = append(out, frozen.Outcome{Option: o.ID, Prediction: c.Planner.Evaluate(plan.Expected, c.Carried(o))})
	}
	return frozen.Write("plan "+string(c.Plan.ID), in, out)
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
	agreed = asKept(was, c, planner)
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

// asKept puts what was kept of an agreed plan in the place of the present records.
func asKept(was frozen.Plan, c Case, planner *plan.Planner) Case {
	c.Planner = c.known(planner, was.Background)
	c.Basis.Plan, c.Basis.Rate = was.Basis, was.Rate
	if was.Kind == "" { // a copy of before tests, air and products were kept
		return c
	}
	c.Athlete.Mouthful = was.Athlete.Mouthful
	c.Basis.Kind, c.Basis.Air, c.Basis.Tests = was.Kind, was.Air, nil
	for _, t := range was.Findings {
		c.Basis.Tests = append(c.Basis.Tests, thawed(t.Findings, t.Test, c.Athlete, nil))
	}
	c.said = &said{rangeAlone: was.RangeAlone, place: was.Place, ownTests: was.OwnTests, heat: was.Heat}
	then := Case{Plan: c.Plan}
	if _, err := then.fillSlots(Setup{Pantry: pantryOf(was.Products)}); err == nil {
		c.Slots = then.Slots
	}
	return c
}

// thaw reads the newest copy and makes its planner, for eyes from which body mass
// is hidden or not, as it is now.
func thaw(kept []record.Frozen, hidden bool) (was frozen.Plan, planner *plan.Planner, err error) {
	if was, err = frozen.ReadPlan(kept); err != nil {
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

// products are those in the slots of a case, under the ids the options call them
// by.
func (c Case) products() []frozen.Product {
	var list []frozen.Product
	for _, slot := range c.Slots {
		if slot.InUse && slot.Named != "" {
			list = append(list, frozen.Product{Named: slot.Named, Product: slot.Base})
		}
	}
	return list
}

// pantryOf is a pantry of products as they were kept.
func pantryOf(list []frozen.Product) *Pantry {
	p := &Pantry{place: map[record.ID]int{}}
	for _, one := range list {
		p.place[one.Named] = len(p.list)
		p.list = append(p.list, one.Product)
	}
	return p
}
