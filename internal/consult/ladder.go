package consult

import (
	"slices"
	"time"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// WithLadder puts the steps of a ladder into a plan, each with its mix as an
// option of its own. The first step is the one in force. Steps that were there
// before are taken out.
func (c Case) WithLadder(l plan.Ladder, sessions int, name func(step int) string) record.Plan {
	p := c.Plan.Clone()
	p.Steps = nil
	p.Options = slices.DeleteFunc(p.Options, func(o record.Option) bool { return o.Kind == record.OptionStep })
	for i, s := range l.Steps {
		o := c.WithMix(emptyOption(p, record.OptionStep, name(i+1), len(p.Options)), s.Mix)
		p.Options = append(p.Options, o)
		state := record.StepAhead
		if i == 0 {
			state = record.StepNow
		}
		p.Steps = append(p.Steps, record.Step{
			Meta: record.Meta{ID: record.NewID()}, PlanID: p.ID, Order: i, OptionID: o.ID, State: state,
			From: record.DateOf(s.From), Sessions: sessions,
		})
	}
	return p
}

// StepNow returns the step in force and its place, 1 for the first; ok is
// false when there is none.
func StepNow(p record.Plan) (s record.Step, place int, ok bool) {
	for i, s := range p.Steps {
		if s.State == record.StepNow {
			return s, i + 1, true
		}
	}
	return record.Step{}, 0, false
}

// reviewAfter is how many days after its start a plan without a further step is
// looked at again: common practice, no source.
const reviewAfter = 14

// ReviewDay is the day to propose for the review of a plan that is done from a
// day on: when its next step would begin.
func ReviewDay(p record.Plan, from record.Date) record.Date {
	if _, place, ok := StepNow(p); ok && place < len(p.Steps) && p.Steps[place].From > from {
		return p.Steps[place].From
	}
	return from.AddDays(reviewAfter)
}

// OptionByID returns the option with an id.
func OptionByID(p record.Plan, id record.ID) (record.Option, bool) {
	for _, o := range p.Options {
		if o.ID == id {
			return o, true
		}
	}
	return record.Option{}, false
}

// InForce is the option that is to be done now: the step in force, else the
// agreed option, else the one that is proposed first.
func InForce(p record.Plan) (record.Option, bool) {
	if s, _, ok := StepNow(p); ok {
		if o, ok := OptionByID(p, s.OptionID); ok {
			return o, true
		}
	}
	if o, ok := OptionByID(p, p.Agreement.OptionID); ok {
		return o, true
	}
	return proposedFirst(p)
}

// proposedFirst is the option that the aim comes to: with food, or without where only
// that one is the aim.
func proposedFirst(p record.Plan) (record.Option, bool) {
	food, ok := OptionOf(p, record.OptionFood)
	fluid, without := OptionOf(p, record.OptionFluid)
	if aim, aims := OptionOf(p, record.OptionAim); aims && without && asMuch(fluid, aim) && !asMuch(food, aim) {
		return fluid, true
	}
	return food, ok
}

// asMuch reports whether two options have the same amounts of everything; what is not
// there is none.
func asMuch(a, b record.Option) bool {
	left := map[record.ID]float64{}
	for _, it := range a.Items {
		left[it.ProductID] += it.Volume.Or(0) + it.Portions.Or(0)
	}
	for _, it := range b.Items {
		left[it.ProductID] -= it.Volume.Or(0) + it.Portions.Or(0)
	}
	for _, x := range left {
		if !alike(x, 0) {
			return false
		}
	}
	return alike(a.Salt.Or(0), b.Salt.Or(0))
}

// DoneOf are the sessions recorded on the step in force as the review rule
// reads them.
func DoneOf(p record.Plan, minutes float64) []plan.Done {
	step, _, _ := StepNow(p)
	var list []plan.Done
	for _, r := range p.Reviews {
		if r.Decision != "" || r.StepID != step.ID {
			continue
		}
		d := plan.Done{
			Share: r.DoneShare.Or(0) / 100, Stomach: r.Stomach.Or(0), Asked: r.Stomach.Known(), Gained: r.Heavier,
		}
		if minutes > 0 {
			d.DrunkLH = r.Drunk.Or(0) / 1000 / (minutes / 60)
		}
		list = append(list, d)
	}
	return list
}

// Start is the day a plan's steps begin: as agreed, else today.
func Start(p record.Plan, today time.Time) time.Time {
	if t, ok := p.Agreement.From.Time(); ok {
		return t
	}
	return today
}
