package consult

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"ebbwell/internal/record"
)

// ErrTestGone means: a plan rests on a test that is not there any more.
var ErrTestGone = errors.New("a test the plan rests on is gone")

// PlanBasisOf writes down what a plan rests on, so that [BasisFor] opens it
// again. stop is the stop of a trip the plan is for; empty for none. An
// estimate names every test that was asked, because a late value of any of them
// may change it: first the one whose session it is again, then the nearest.
func PlanBasisOf(b Basis, stop record.ID) record.PlanBasis {
	out := record.PlanBasis{Kind: b.Kind, StopID: stop, Air: b.Air}
	var ids []string
	add := func(id record.ID) {
		if id != "" && !slices.Contains(ids, string(id)) {
			ids = append(ids, string(id))
		}
	}
	estimate := b.Kind == record.BasisEstimate && b.Calculation != nil
	if b.Calculation != nil {
		out.UsedToHeat = b.Calculation.Outing.Session.UsedToHeat
	}
	if estimate {
		add(b.Calculation.Outing.Like)
	}
	for _, f := range b.Tests {
		add(f.Test.ID)
	}
	if estimate {
		for _, f := range b.Calculation.Tests {
			add(f.Test.ID)
		}
	}
	if len(ids) > 0 {
		out.TestID, out.PoolIDs = record.ID(ids[0]), strings.Join(ids[1:], " ")
	}
	return out
}

// BasisFor opens the basis of a plan as it is kept: the test or the pool it
// names as measured, or, in an air that is not the tests' own, what these same
// tests say about it. Tests that came later change nothing. It returns
// [ErrTestGone] when a test or a pool names a test that is not among tests,
// [ErrNoBasis] when there is no rate to plan on, and the errors of [Calculate].
func BasisFor(p record.Plan, a record.Athlete, tests []Findings, today time.Time, d Desk) (Basis, error) {
	named, whole := namedTests(p.Basis, tests)
	effort := p.Target.Effort
	if p.Basis.Kind != record.BasisEstimate {
		effort = record.Number{} // a test holds for its own effort
		if !whole || len(named) == 0 {
			return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, ErrTestGone)
		}
		if asMeasured(p.Basis, named[0].Test.Air) {
			return BasisOf(a, named)
		}
	}
	r, err := Calculate(outingOf(p, a, named, effort), a, named, today, d)
	if err != nil {
		return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, err)
	}
	b, ok := r.Basis(a, today)
	if !ok {
		return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, ErrNoBasis)
	}
	return b, nil
}

// namedTests are the tests a basis names, in its order; whole is false when
// one of them is missing.
func namedTests(b record.PlanBasis, tests []Findings) (named []Findings, whole bool) {
	whole = true
	for _, id := range append([]string{string(b.TestID)}, strings.Fields(b.PoolIDs)...) {
		i := slices.IndexFunc(tests, func(f Findings) bool { return string(f.Test.ID) == id })
		switch {
		case id == "":
		case i < 0:
			whole = false
		default:
			named = append(named, tests[i])
		}
	}
	return named, whole
}

// asMeasured reports whether a plan takes its tests as they were measured: it
// is in their own air, the same or none written down, and nobody asked what
// they say about a stop of a trip or a body as used to heat as it will be.
func asMeasured(b record.PlanBasis, test record.Air) bool {
	return b.StopID == "" && b.UsedToHeat == "" && (!b.Air.Temperature.Known() || SameAir(b.Air, test))
}

// SameAir reports whether two airs say the same.
func SameAir(a, b record.Air) bool {
	return a.Temperature.Same(b.Temperature) && a.Humidity.Same(b.Humidity) && a.Wind.Same(b.Wind) && a.Sun == b.Sun &&
		a.Altitude.Same(b.Altitude) && a.Wbgt.Same(b.Wbgt) && a.Clothing == b.Clothing
}

// outingOf is the session of a plan in its air: that of the test named first,
// at another effort where one is given that is not the test's, by a body as
// used to heat as the plan says.
func outingOf(p record.Plan, a record.Athlete, named []Findings, effort record.Number) Outing {
	minutes := p.Target.Minutes.Or(0)
	o := Outing{Air: p.Basis.Air, Minutes: minutes, Session: record.Session{Sport: p.Target.Sport, Effort: p.Target.Effort}}
	if like := likeSession(named, &p); like != nil {
		o.Session, o.Like = sessionLike(*like, effort, a, minutes), like.Test.ID
	}
	if o.Session.Sport == "" {
		o.Session.Sport = a.Sport
	}
	o.Session.UsedToHeat = p.Basis.UsedToHeat
	return o
}

// OutingFor is a plan's session, at the plan's effort, in another air.
func OutingFor(p record.Plan, a record.Athlete, tests []Findings, air record.Air) Outing {
	o := outingOf(p, a, tests, p.Target.Effort)
	o.Air = air
	return o
}
