package consult

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"ebbwell/internal/record"
)

// ErrTestGone means: a plan is based on a test that is not there any more.
var ErrTestGone = errors.New("a test the plan rests on is gone")

// PlanBasisOf writes down what a plan is based on, so that [BasisFor] opens it
// again. stop is the stop of a trip the plan is for; empty for none. Every test
// that was asked is named, because a late value of any of them may change it:
// first the one whose session it is again, then the weightiest.
func PlanBasisOf(b Basis, stop record.ID) record.PlanBasis {
	out := record.PlanBasis{Kind: b.Kind, StopID: stop, Air: b.Air}
	var ids []string
	add := func(id record.ID) {
		if id != "" && !slices.Contains(ids, string(id)) {
			ids = append(ids, string(id))
		}
	}
	if b.Calculation != nil {
		out.UsedToHeat = b.Calculation.Outing.Session.UsedToHeat
		add(b.Calculation.Outing.Like)
	}
	for _, f := range b.Tests {
		add(f.Test.ID)
	}
	if b.Calculation != nil {
		for _, f := range b.Calculation.Tests {
			add(f.Test.ID)
		}
	}
	if len(ids) > 0 {
		out.TestID, out.PoolIDs = record.ID(ids[0]), strings.Join(ids[1:], " ")
	}
	return out
}

// BasisFor opens the basis of a plan as it is kept: what the tests it names say
// about its session. Tests that came later change nothing, nor does the time
// that passes: the plan's day is the first of the stay, else the one it was
// made on. It returns [ErrTestGone] when the test named first is not
// among tests, [ErrNoBasis] when there is no rate to plan on, and the errors of
// [Calculate].
func BasisFor(p record.Plan, a record.Athlete, tests []Findings, today time.Time, d Setup) (Basis, error) {
	named, whole := namedTests(p.Basis, tests)
	if len(named) == 0 || !whole && p.Basis.Kind != record.BasisEstimate {
		return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, ErrTestGone)
	}
	day := planDay(p, today)
	r, err := Calculate(outingOf(p, a, named, p.Target.Effort), a, named, day, d)
	if err != nil {
		return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, err)
	}
	b, ok := r.Basis(a, day)
	if !ok {
		return Basis{}, fmt.Errorf("open the basis of plan %s: %w", p.ID, ErrNoBasis)
	}
	return b, nil
}

// planDay is the day a plan is for.
func planDay(p record.Plan, today time.Time) time.Time {
	if day, ok := p.Agreement.From.Time(); ok && p.Basis.StopID != "" {
		return day
	}
	if !p.CreatedAt.IsZero() {
		return p.CreatedAt
	}
	return today
}

// NamedTests are the tests that a basis names, in its order: all that [OpenPlan] needs.
func NamedTests(b record.PlanBasis) []record.ID {
	var list []record.ID
	if b.TestID != "" {
		list = append(list, b.TestID)
	}
	for _, id := range strings.Fields(b.PoolIDs) {
		list = append(list, record.ID(id))
	}
	return list
}

// namedTests are the tests a basis names, in its order; whole is false when
// one of them is missing.
func namedTests(b record.PlanBasis, tests []Findings) (named []Findings, whole bool) {
	at := make(map[record.ID]int, len(tests))
	for i := len(tests) - 1; i >= 0; i-- {
		at[tests[i].Test.ID] = i
	}
	whole = true
	for _, id := range NamedTests(b) {
		i, there := at[id]
		if !there {
			whole = false
			continue
		}
		named = append(named, tests[i])
	}
	return named, whole
}

// outingOf is the session of a plan in its air: that of the test named first,
// at another effort where one is given that is not the test's, by a body as
// acclimatised as the plan says. An air or minutes that are not written down are
// the test's own.
func outingOf(p record.Plan, a record.Athlete, named []Findings, effort record.Number) Outing {
	minutes := p.Target.Minutes.Or(0)
	like := likeSession(pointers(named), &p)
	if like != nil && minutes == 0 {
		minutes = like.Minutes
	}
	o := Outing{Air: p.Basis.Air, Minutes: minutes, Session: sessionAhead(p.Target.Sport, effort, like, a, minutes)}
	if like != nil {
		o.Like = like.Test.ID
		if !o.Air.Temperature.Known() {
			o.Air = like.Test.Air
		}
		if p.Basis.StopID == "" && p.Basis.UsedToHeat == "" {
			p.Basis.UsedToHeat = like.Test.Session.UsedToHeat
		}
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
