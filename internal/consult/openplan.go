package consult

import (
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/record"
)

// OpenPlan opens a plan for a screen or a page; kept are its copies, newest first.
// A draft is calculated with the present records, one that was begun from an agreed
// plan with the products frozen in that. An agreed or replaced plan opens as it was
// agreed, also where the tests it is based on cannot be calculated with any more:
// Since of the case then says so. It returns the errors of [BasisFor] and
// [OpenCase] where there is no copy to fall back on.
func OpenPlan(p record.Plan, a record.Athlete, tests []Findings, kept []record.Frozen, today time.Time, d Setup) (Case, error) {
	if p.State == record.PlanDraft || p.State == "" {
		b, err := BasisFor(p, a, tests, today, d)
		if err != nil {
			return Case{}, err
		}
		return OpenCase(p, a, b, d.withProductsFor(p, kept))
	}
	b, err := BasisFor(p, a, tests, today, d)
	var c Case
	if err == nil {
		c, err = OpenCase(p, a, b, d.besides(kept))
	}
	if was, open := agreedOpen(p, a, kept); open {
		anew, failed := calculatedAnew(was, p, a, tests, today, d)
		return covered(was, anew, failed, c, err)
	}
	if err == nil {
		c, _ = c.AsAgreed(kept)
		return c, nil
	}
	return openKept(p, a, kept, err)
}

// openKept opens a plan by its newest copy alone; err is why the present records
// give nothing.
func openKept(p record.Plan, a record.Athlete, kept []record.Frozen, err error) (Case, error) {
	c := Case{Plan: p, Athlete: a, Care: care.Of(a, p.CreatedAt)}
	was, planner, unread := thaw(kept, c.Care.MassHidden)
	if unread != nil || was.Kind == "" {
		return Case{}, err
	}
	then := Case{Plan: p}
	if _, unread := then.fillSlots(Setup{Pantry: pantryOf(was.Products)}); unread != nil {
		return Case{}, err
	}
	c = asKept(was, c, planner)
	c.Since = Since{Changed: true, Gone: true}
	return c, nil
}

// withProductsFor is the desk with the products frozen in the agreed plan that a
// draft was begun from, where it was: its copy is then that plan's.
func (d Setup) withProductsFor(p record.Plan, kept []record.Frozen) Setup {
	was, err := frozen.ReadPlan(kept)
	if err != nil || was.Plan.ID == p.ID {
		return d
	}
	return d.With(was.Products)
}

// WithFrozen is the desk with the products frozen in an agreed plan; kept are its
// copies, newest first.
func (d Setup) WithFrozen(kept []record.Frozen) Setup {
	was, err := frozen.ReadPlan(kept)
	if err != nil {
		return d
	}
	return d.With(was.Products)
}

// With is the desk whose pantry has some products as they were kept, in the place
// of what became of them.
func (d Setup) With(products []frozen.Product) Setup {
	d.Pantry = d.Pantry.with(products, true)
	return d
}

// besides is the desk whose pantry also has the products frozen in a plan that are
// there no more.
func (d Setup) besides(kept []record.Frozen) Setup {
	was, err := frozen.ReadPlan(kept)
	if err != nil {
		return d
	}
	d.Pantry = d.Pantry.with(was.Products, false)
	return d
}

// with is the pantry with more products; one it has is replaced or stays.
func (p *Pantry) with(products []frozen.Product, replace bool) *Pantry {
	out := &Pantry{list: p.Products(), place: map[record.ID]int{}}
	for id, at := range p.place {
		out.place[id] = at
	}
	for _, one := range products {
		at, there := out.place[one.Named]
		switch {
		case !there:
			out.place[one.Named] = len(out.list)
			out.list = append(out.list, one.Product)
		case replace:
			out.list[at] = one.Product
		}
	}
	return out
}
