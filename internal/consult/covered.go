package consult

import (
	"fmt"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// agreedOpen is the copy of a plan that was agreed while body mass was seen and is
// hidden now, or hidden in another class: what is shown of it may not come from that
// calculation.
func agreedOpen(p record.Plan, a record.Athlete, kept []record.Frozen) (was frozen.Plan, open bool) {
	was, err := frozen.ReadPlan(kept)
	return was, err == nil && care.Of(a, p.CreatedAt).MassHidden && (!was.Basis.Body.Hidden || !sameClass(was.Athlete, a))
}

// covered opens a plan that was agreed while body mass was seen for eyes from which
// it is hidden: its tests as they then were are calculated again with the class of
// the mass ([care.HiddenMass]), in the session, by the products and the aim of then.
// What was agreed to drink and eat stays. c is what [calculatedAnew] made of the copy,
// failed why it could not; now is the plan by the present records, err why those give
// none: they take the place of a copy that holds no tests.
func covered(was frozen.Plan, c Case, failed error, now Case, err error) (Case, error) {
	switch {
	case failed == nil && err == nil:
		if c.Basis.Plan != now.Basis.Plan || !now.sameItems(was.Menu) {
			c.Since = since(c, now)
		}
		return c, nil
	case failed == nil:
		c.Since = Since{Changed: true, Gone: true}
		return c, nil
	case err != nil:
		return Case{}, err
	}
	now.Anew = true
	return now, nil
}

// calculatedAnew calculates with what was kept of an agreed plan, as it is seen now.
func calculatedAnew(was frozen.Plan, p record.Plan, a record.Athlete, tests []Findings, today time.Time, d Setup) (Case, error) {
	then := was.Athlete.Over(a)
	then.Mouthful, then.UsualMass = was.Athlete.Mouthful, a.UsualMass
	d = d.With(was.Products)
	list := slices.Clone(tests)
	for _, kept := range was.Findings {
		list = append([]Findings{Find(kept.Test, then, reasonsFor(kept.Test.ID, tests), d)}, list...)
	}
	b, err := BasisFor(p, then, list, today, d)
	if err != nil {
		return Case{}, fmt.Errorf("calculate plan %s again with a hidden mass: %w", p.ID, err)
	}
	c, err := OpenCase(p, then, b, d)
	if err != nil {
		return Case{}, err
	}
	basis := c.Planner.Basis()
	basis.Tested = was.Basis.Tested
	planner, err := plan.New(basis, was.Session, was.Menu, was.Aim)
	if err != nil {
		return Case{}, fmt.Errorf("calculate plan %s again with a hidden mass: %w", p.ID, err)
	}
	c.Athlete, c.Care = a, care.Of(a, p.CreatedAt)
	c.Athlete.Mouthful = was.Athlete.Mouthful
	c.Planner = c.known(planner, was.Background)
	return c, nil
}

// reasonsFor are the reasons given on a test's sheet.
func reasonsFor(id record.ID, tests []Findings) []record.RawText {
	i := slices.IndexFunc(tests, func(f Findings) bool { return f.Test.ID == id })
	if i < 0 {
		return nil
	}
	return tests[i].reasons
}
