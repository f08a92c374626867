package consult

import (
	"reflect"
	"slices"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Since is what became of the records an agreed plan is based on since it was
// agreed. Nothing of the plan changes by itself: it is to be checked.
type Since struct {
	// Changed: the present records would give another plan.
	Changed bool
	// Test is the test that was corrected, On when; the zero Test where the
	// change is another.
	Test record.Test
	On   time.Time
	// Before and After are its sweat loss in the session as agreed and now, L.
	Before, After figure.Figure
	// Products: a drink or a food was corrected.
	Products bool
	// Gone: what the plan is based on cannot be calculated with any more, a test
	// is being corrected or was removed.
	Gone bool
	// now calculates with the present records; nil where they give nothing.
	now *plan.Planner
	// slots are those of the present records.
	slots [plan.Slots]SlotInfo
}

// said is what was said of an estimate and of the heat when a plan was agreed.
type said struct {
	rangeAlone bool
	place      string
	ownTests   string
	heat       climate.Level
}

// since compares an agreed plan with the same plan by the present records.
func since(agreed, now Case) Since {
	s := Since{Changed: true, now: now.Planner, slots: now.Slots, Products: !reflect.DeepEqual(agreed.Planner.Menu(), now.Planner.Menu())}
	for _, was := range agreed.Basis.Tests {
		i := slices.IndexFunc(now.Basis.Tests, func(f Findings) bool { return f.Test.ID == was.Test.ID })
		if i < 0 {
			continue
		}
		is := now.Basis.Tests[i]
		if !alike(was.Sweat.Fluid.Loss.Value, is.Sweat.Fluid.Loss.Value) || !alike(was.Sweat.Fluid.Rate.Range.Low, is.Sweat.Fluid.Rate.Range.Low) {
			s.Test, s.On, s.Before, s.After = is.Test, is.Test.ChangedAt, was.Sweat.Fluid.Loss, is.Sweat.Fluid.Loss
			break
		}
	}
	return s
}

// RangeAlone reports whether the middle of the estimate a plan is based on is not
// to be written.
func (c Case) RangeAlone() bool {
	if c.said != nil {
		return c.said.rangeAlone
	}
	r := c.Basis.Calculation
	return r != nil && r.Climate.RangeOnly
}

// Heat is what the heat of the session calls for; usual care where it cannot be
// judged.
func (c Case) Heat() climate.Level {
	if c.said != nil {
		return c.said.heat
	}
	if r := c.Basis.Calculation; r != nil && r.CautionKnown {
		return r.Caution.Level
	}
	return climate.UsualCare
}

// Place is where the estimate a plan is based on is for; empty where it has none.
// A session like that of a test has the test's place, which is not where the
// estimate is for.
func (c Case) Place() string {
	if c.said != nil {
		return c.said.place
	}
	if r := c.Basis.Calculation; r != nil && r.Outing.Like == "" {
		return r.Outing.Session.Place
	}
	return ""
}
