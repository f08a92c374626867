package consult

import (
	"slices"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// MouthfulOf is the athlete's mouthful as weighed, or the usual one.
func MouthfulOf(a record.Athlete) plan.Mouthful {
	if m := plan.Mouthful(a.Mouthful.Or(0)); m > 0 {
		return m
	}
	return plan.UsualMouthful(sweat.Sex(a.Sex))
}

// Schedule spreads a mix over the chances of the plan, for the expected session,
// into out.
func (c Case) Schedule(mix plan.Mix, out *plan.Schedule) {
	c.Planner.Schedule(plan.Expected, mix, PlanChances(c.Plan), MouthfulOf(c.Athlete), out)
}

// Carried is the mix of an option as the breaks carry it, in whole mouthfuls:
// what is shown, agreed and printed. The habit is as it was measured.
func (c Case) Carried(o record.Option) plan.Mix {
	mix := c.MixOf(o)
	if o.Kind == record.OptionHabit {
		return mix
	}
	var s plan.Schedule
	c.Schedule(mix, &s)
	return s.Carried(mix)
}

// OneBottle is the case with one bottle at each break.
func (c Case) OneBottle() Case {
	SetWish(&c.Plan, WishOneBottle, true)
	c.Planner = c.Planner.OneBottle()
	return c
}

// WithCarried returns the plan with the drinks of each option, but for the habit, as the
// breaks carry them: what is agreed is then what is scheduled, one bottle a break.
// Foods stay.
func (c Case) WithCarried(p record.Plan) record.Plan {
	p = p.Clone()
	for i, o := range p.Options {
		if o.Kind != record.OptionHabit {
			mix, carried := c.MixOf(o), c.Carried(o)
			copy(mix[:plan.Drinks], carried[:plan.Drinks])
			p.Options[i] = c.WithMix(o, mix)
		}
	}
	return p
}

// moved are the chances of a plan in a session of another length, min, each at the
// same moment of play.
func moved(kind plan.Sport, list []record.Chance, before, after float64) []record.Chance {
	list = slices.Clone(list)
	for i := range list {
		if at := list[i].AtMinute; at.Known() {
			list[i].AtMinute = record.Num(kind.Moved(*at.Value, before, after), quantity.Minute)
		}
	}
	return list
}
