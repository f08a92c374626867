package consult

import (
	"fmt"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Taken is the agreed plan as it is taken along to a stop. Planned is false
// where there is no plan, nothing for it to be based on, or Trouble with it.
type Taken struct {
	Planned bool
	Case    Case
	Mix     plan.Mix
	// Home is the mix as agreed, at the same rates where a session there has
	// another length; Cut when it had to come down to stay under the low end
	// of the estimate.
	Home plan.Mix
	Cut  bool
	At   plan.Prediction
	// Spread is the mix over the chances there.
	Spread plan.Schedule
	// Trouble is why the plan cannot be taken along; nil when it can or there
	// is none.
	Trouble error

	// ratio of a session there to one at home.
	ratio float64
}

// takeAlong moves the agreed plan to the stop's air. A mix that would pass the
// low end of the loss there comes down to it.
func (s *StopPlan) takeAlong(a record.Athlete, agreed *record.Plan, today time.Time, d Setup) {
	b, ok := s.Calculation.Basis(a, today)
	if agreed == nil || !ok {
		return
	}
	p, ratio := agreed.Clone(), 1.0
	if home := p.Target.Minutes.Or(0); home > 0 {
		ratio = s.Calculation.Outing.Minutes / home
		kind, _ := KindOf(p.Target.Sport, p.Chances)
		p.Chances = moved(kind, p.Chances, home, s.Calculation.Outing.Minutes)
	}
	p.Target.Minutes = record.Num(s.Calculation.Outing.Minutes, quantity.Minute)
	p.Target.Short, p.Target.Long = record.Number{}, record.Number{}
	if s.Stop.Effort.Known() {
		p.Target.Effort = s.Stop.Effort
	}
	s.Taken = taken(p, a, b, ratio, today, d)
}

// TakeAlong opens a plan on another basis, its mix brought under the ceiling
// there.
func TakeAlong(p record.Plan, a record.Athlete, b Basis, today time.Time, d Setup) Taken {
	return taken(p.Clone(), a, b, 1, today, d)
}

// taken opens a plan on another basis, its mix for a session of another length
// and brought under the ceiling.
func taken(p record.Plan, a record.Athlete, b Basis, ratio float64, today time.Time, d Setup) Taken {
	t := Taken{ratio: ratio}
	o, ok := InForce(p)
	if !ok {
		return t
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Trouble = fmt.Errorf("take the plan along: %w", err)
		return t
	}
	c.Care = care.Of(a, today)
	home := c.MixOf(o)
	if len(c.Care.WithholdSalt) > 0 { // may have come up since it was agreed
		home[plan.Salt] = 0
	}
	t.Case, t.Planned, t.Home = c, true, scaled(c.Planner.Menu(), home, ratio)
	t.Mix = Under(c.Planner, t.Home)
	t.Cut = t.Mix != t.Home
	c.Schedule(t.Mix, &t.Spread)
	t.Mix = t.Spread.Carried(t.Mix)
	t.At = c.Planner.Evaluate(plan.Expected, t.Mix)
	return t
}

// scaled is a mix for a session so many times as long: the same rates, each
// down to its increment.
func scaled(menu plan.Menu, mix plan.Mix, ratio float64) plan.Mix {
	if ratio == 1 {
		return mix
	}
	for s := range mix {
		if step := menu[s].Step; menu[s].InUse && step > 0 {
			mix[s] = proposal.FloorTo(mix[s]*ratio, step)
		}
	}
	return mix
}

// Under brings a mix down under the planner's ceiling: all drinks in
// proportion, each down to its increment, and the salt that was to go into
// them. Foods stay.
func Under(p *plan.Planner, mix plan.Mix) plan.Mix {
	q := p.Evaluate(plan.Expected, mix)
	if q.Fluid.DrunkL <= 0 || !q.Guards.Stops() {
		return mix
	}
	room := max(0, q.Ceiling.FluidL-q.Fluid.FoodWaterL)
	part := room / q.Fluid.DrunkL // less than all, since it is above the ceiling
	menu := p.Menu()
	for _, s := range []plan.Slot{plan.Water, plan.Drink1, plan.Drink2, plan.Drink3, plan.Salt} {
		if menu[s].InUse && menu[s].Step > 0 {
			mix[s] = proposal.FloorTo(mix[s]*part, menu[s].Step)
		}
	}
	return mix
}

// LongestBreak is the chance to drink at which most is taken; ok is false
// where the plan has no chances or nothing is drunk.
func (t Taken) LongestBreak() (take plan.Take, ok bool) {
	if !t.Planned {
		return take, false
	}
	for _, one := range t.Spread.Takes {
		if one.ML > take.ML {
			take, ok = one, true
		}
	}
	return take, ok
}

// HighEnd tells what the high end of the loss makes of the plan: passes when
// the deficit at the end is then past the limit, outruns when even what a
// stomach usually takes would leave it there.
func (t Taken) HighEnd() (passes, outruns bool) {
	if !t.Planned {
		return false, false
	}
	limit := t.Case.Limit()
	passes = t.At.Deficit.High > limit
	b, s := t.Case.Planner.Basis(), t.Case.Planner.Session()
	hours := t.At.Minutes / 60
	most := plan.StomachTakes(s.Running).High
	left := (b.SweatRate.High + b.BreathLH() - most) * hours
	return passes, passes && 100*left/b.Body.MassKg > limit
}

// PastHarm reports whether the deficit at the end is, at the high end of the loss,
// past all that blinded trials in heat find harm at ([evidence.DeficitHarmHeatHigh]),
// to a tenth of a per cent, as it is shown.
func (t Taken) PastHarm() bool {
	return t.Planned && quantity.Round(t.At.Deficit.High, 1) > evidence.DeficitHarmHeatHigh
}

// Limit is the deficit at the end not to pass, % of body mass.
func (c Case) Limit() float64 {
	if aim := c.Planner.Aim(); aim.Deficit.On {
		return aim.Deficit.High
	}
	return plan.DeficitLimit(c.Planner.Session().Heat)
}

// OtherDay is the same session there on a hotter or a cooler day. Planned is
// false where there is no plan for it.
type OtherDay struct {
	Air         record.Air
	Calculation Calculation
	Taken
}

// OnAnotherDay takes the stop to a day that is so many °C hotter (cooler below
// zero) than its air, the vapour in the air the same. ok is false where
// nothing can be said.
func (s StopPlan) OnAnotherDay(by float64) (day OtherDay, ok bool) {
	t, o := s.traveller, s.Calculation.Outing
	if t == nil || s.Calculation.set == nil {
		return day, false
	}
	if day.Air, ok = warmer(o.Air, by); !ok {
		return day, false
	}
	o.Air = day.Air
	var err error
	if day.Calculation, err = t.asking.Calculate(o, stopDay(s.Stop, t.today)); err != nil {
		return day, false
	}
	if b, ok := day.Calculation.Basis(t.athlete, t.today); ok && s.Planned {
		day.Taken = taken(s.Case.Plan, t.athlete, b, s.ratio, t.today, t.asking.desk)
	}
	return day, true
}

// warmer is air so many °C warmer with the same vapour in it, as humid as a
// day gets at most. A WBGT that was read is of the day it was read on.
func warmer(air record.Air, by float64) (record.Air, bool) {
	if !air.Temperature.Known() || !air.Humidity.Known() {
		return air, false
	}
	now, err := climate.NewAir(quantity.Celsius(*air.Temperature.Value), quantity.Percent(*air.Humidity.Value))
	if err != nil {
		return air, false
	}
	now.Temperature += quantity.Celsius(by)
	air.Temperature = record.Num(float64(now.Temperature), quantity.DegreeCelsius)
	air.Humidity = record.Num(min(float64(now.Humidity()), evidence.HumidityCap), quantity.PerCent)
	return air.Without(record.AirRead), true
}
