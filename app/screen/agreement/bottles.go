package agreement

import (
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// bottles says at which breaks an option stands in two bottles, and what one bottle at
// each would come to; empty where one is enough. offer: that is little less to drink, so
// that it is offered.
func (a *Agreement) bottles(o record.Option) (said []string, offer bool) {
	v := a.v
	c := v.Now.PlanCase
	var two plan.Schedule
	c.Schedule(c.MixOf(o), &two)
	where := v.Speaker.TwoBottles(two)
	if where == "" {
		return nil, false
	}
	said = []string{v.Speaker.Say("planner.agree.two", where)}
	both, one := drinks(two.Carried(c.MixOf(o))), drinks(c.OneBottle().Carried(o))
	less, offer := spared(both, one)
	switch {
	case !offer:
	case less < evidence.ScheduleRound:
		said = append(said, v.Speaker.Say("planner.agree.one.same", v.Speaker.InWords(v.Now, one)))
	default:
		said = append(said, v.Speaker.Say("planner.agree.one", v.Speaker.InWords(v.Now, one), v.Speaker.By.Amount(less, quantity.Millilitre)))
	}
	return said, offer
}

// spared is how much less one mix has to drink than another, mL; worth is false where
// that is a tenth or more, or where a drink falls away.
func spared(both, one plan.Mix) (ml float64, worth bool) {
	sum, worth := 0.0, true
	for d := range plan.Drinks {
		sum += both[d]
		ml += both[d] - one[d]
		worth = worth && (both[d] <= 0 || one[d] > 0)
	}
	return ml, worth && ml < evidence.AskedGap*sum
}

// drinks are the drinks of a mix alone.
func drinks(mix plan.Mix) (only plan.Mix) {
	copy(only[:plan.Drinks], mix[:plan.Drinks])
	return only
}

// followBottles shows the box for one bottle at each break, where it is set or offered.
func (a *Agreement) followBottles(offer bool) {
	on := consult.Wished(a.v.Now.Plan, consult.WishOneBottle)
	a.OneBottle.Set(on)
	look.ShowIf(a.OneBottle, on || offer)
}

// setOneBottle keeps with the plan whether each break has one bottle.
func (a *Agreement) setOneBottle(on bool) {
	a.v.Binder.Pick("planner.agree.onebottle", func(s *part.Sheet) { consult.SetWish(&s.Record, consult.WishOneBottle, on) })
	a.retell()
}
