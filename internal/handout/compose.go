package handout

import (
	"math"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// TermsOf are the terms of an athlete's pages: practice, units, what the
// profile hides and withholds, and the sentences of its conditions.
func TermsOf(p record.Practice, care care.Care, w *words.Words) Terms {
	t := Terms{
		Practice: Practice{
			Name: p.Name, Practitioner: p.Practitioner, Registration: p.Registration, Telephone: p.Telephone, Emergency: p.Emergency,
		},
		USUnits: p.Settings.Units == "us", MassHidden: care.MassHidden, SaltWithheld: len(care.WithholdSalt) > 0,
	}
	for _, kind := range care.Flags {
		t.Cautions = append(t.Cautions, w.Say("flag."+string(kind)+".page"))
	}
	return t
}

// composer turns a case into the parts of a page.
type composer struct {
	c      consult.Case
	w      *words.Words
	chosen record.Option
	us     bool // amounts in fluid ounces
	// over: the mix is above the limit, so that nothing of it is printed as
	// something to do; gains: more would be taken in than is lost.
	over, gains bool
	outcome
}

// outcome is what one option comes to.
type outcome struct {
	// mix is what of the option can be taken at the chances there are.
	mix    plan.Mix
	at     plan.Prediction
	spread plan.Schedule
	// short: the chances do not carry all the drink; unfed: at none of them
	// can all the food be eaten.
	short, unfed bool
}

// compose calculates what the pages of a case need for one of its options.
func compose(c consult.Case, chosen record.Option, w *words.Words) composer {
	mix := c.MixOf(chosen)
	return composer{c: c, w: w, chosen: chosen, over: c.Over(mix), gains: c.Gains(mix), outcome: outcomeOf(c, chosen)}
}

// outcomeOf calculates one option. Where its chances carry less than was planned,
// the whole page speaks of what they carry: the rows then add up to the total,
// and nobody makes up between breaks for what the breaks are too short for.
func outcomeOf(c consult.Case, o record.Option) outcome {
	out := outcome{mix: c.MixOf(o)}
	c.Schedule(out.mix, &out.spread)
	if len(out.spread.Takes) > 0 {
		out.carry()
	}
	out.at = c.Planner.Evaluate(plan.Expected, out.mix)
	return out
}

// carry takes from the mix what no chance has room for, or no whole mouthful.
func (o *outcome) carry() {
	o.mix = o.spread.Carried(o.mix)
	if o.spread.Closed() {
		return // nothing is short of what may not be drunk
	}
	o.short, o.unfed = !o.spread.DrinksFit, !o.spread.FoodFits
}

// AthletePageOf is the athlete's page of a plan, for one of its options.
func AthletePageOf(c consult.Case, chosen record.Option, p record.Practice, w *words.Words) AthletePage {
	k := compose(c, chosen, w)
	k.us = p.Settings.Units == "us"
	return AthletePage{
		Terms:    k.terms(p),
		Heading:  k.heading(),
		Words:    firstOf(c.Plan.Agreement.Words, chosen.Words),
		Bars:     k.bars(),
		Options:  k.options(),
		Before:   k.before(),
		Bag:      k.bag(),
		During:   k.during(),
		Gut:      k.gutTraining(),
		Practise: k.practise(),
		After:    k.after(),
		FollowUp: FollowUp{Review: dateOf(c.Plan.Agreement.Review), Sessions: k.sessions()},
		Basis:    k.basis(),
		Sign:     Sign{Athlete: k.agreed(k.chosen) && !k.over, Guardian: slices.Contains(c.Care.Flags, record.FlagMinor)},
	}
}

// KitBagCardOf is the card of a plan, for one of its options.
func KitBagCardOf(c consult.Case, chosen record.Option, p record.Practice, w *words.Words) KitBagCard {
	k := compose(c, chosen, w)
	k.us = p.Settings.Units == "us"
	h := k.heading()
	return KitBagCard{
		Terms: k.terms(p), Athlete: h.Athlete, Session: h.Session, Step: h.Step, From: h.From, During: k.during(),
		Estimate: c.Basis.Kind == record.BasisEstimate,
	}
}

// terms adds what the heat and the plan itself have to say, the gravest first.
func (k composer) terms(p record.Practice) Terms {
	t := TermsOf(p, k.c.Care, k.w)
	add := func(on bool, sentence string) {
		if on {
			t.Cautions = append(t.Cautions, sentence)
		}
	}
	guards := k.at.Guards
	if k.over {
		add(k.gains, k.w.Say("handout.over.gain"))
		add(!k.gains, k.w.Say("handout.over.limit"))
		guards &^= plan.OverCeiling | plan.GainInMass | plan.LowPlasmaSodium | plan.LossOutruns
	}
	add(guards.Has(plan.LowPlasmaSodium), k.w.Say("handout.caution.sodium"))
	add(k.at.Plasma.Show && !k.over && !guards.Has(plan.LowPlasmaSodium|plan.GainInMass), k.w.Say("handout.caution.near"))
	if level := k.c.Heat(); level >= climate.Reduce {
		add(true, k.w.Say("handout.caution.heat", k.w.Say("level."+level.Code()), k.w.Say("caution.local-policy-wins")))
	}
	add(k.c.Planner.Basis().Cool && !k.over, k.w.Say("handout.caution.cool"))
	if own := k.c.OwnTests(); own != "" && !k.over {
		add(true, k.w.Say("handout.caution."+own))
	}
	add(guards.Has(plan.LossOutruns), k.w.Say(plan.LossOutruns.Code()))
	add(k.short && !k.over, k.w.Say("handout.caution.breaks"))
	add(k.unfed && !k.over, k.w.Say("handout.caution.food"))
	return t
}

func (k composer) heading() Heading {
	p := k.c.Plan
	h := Heading{
		Athlete: k.c.Athlete.Name, Session: k.sessionName(), Step: k.stepName(), From: dateOf(p.Agreement.From),
		Minutes:  quantity.Minutes(p.Target.Minutes.Or(0)),
		Replaced: p.State == record.PlanReplaced, Draft: p.State != record.PlanReplaced && !k.agreed(k.chosen),
	}
	if i, ok := k.place(); ok && p.Steps[i].From != "" {
		h.From = dateOf(p.Steps[i].From)
	}
	h.Air, h.AirKnown = k.airRange()
	return h
}

// sessionName is what the plan is for: as it was named, else its sport.
func (k composer) sessionName() string {
	t := k.c.Plan.Target
	if key := "sport." + t.Sport; t.SessionName == "" && k.w.Has(key) {
		return k.w.Say(key)
	}
	return firstOf(t.SessionName, t.Sport)
}

// agreed reports whether an option is the agreed one, or one of the steps to
// it, of a plan in force.
func (k composer) agreed(o record.Option) bool {
	if k.c.Plan.State != record.PlanAgreed {
		return false
	}
	_, step := stepOf(k.c.Plan, o.ID)
	return step || o.ID == k.c.Plan.Agreement.OptionID
}

// place is where the chosen option stands among the steps, from 0; ok is false
// where it is none of them.
func (k composer) place() (i int, ok bool) { return stepOf(k.c.Plan, k.chosen.ID) }

// stepOf finds the step that an option is done in.
func stepOf(p record.Plan, option record.ID) (i int, ok bool) {
	for i, s := range p.Steps {
		if s.OptionID == option {
			return i, true
		}
	}
	return 0, false
}

// airRange is the air the plan holds for: a little either way, but not
// cooler than the test where so much is drunk that on a cooler day it could pass
// what is lost; that of the test alone where no other is estimated.
func (k composer) airRange() (r quantity.Range, ok bool) {
	air := k.c.Basis.Air
	if !air.Temperature.Known() {
		return r, false
	}
	t := *air.Temperature.Value
	if k.c.OwnTests() != "" {
		return quantity.Range{Low: math.Round(t), High: math.Round(t)}, true
	}
	r = quantity.Range{Low: math.Round(t - evidence.PlanAirReach), High: math.Round(t + evidence.PlanAirReach)}
	if fluid := k.at.Fluid; 100*(fluid.DrunkL+fluid.FoodWaterL) > evidence.CoolerDayShare*k.at.Ceiling.FluidL {
		r.Low = math.Round(t)
	}
	return r, true
}

// stepName is the step that the chosen option is, or the option's own name.
func (k composer) stepName() string {
	if i, ok := k.place(); ok {
		return k.w.Say("option.step", k.w.Number(float64(i+1), 0))
	}
	return k.w.Option(k.chosen.Name)
}

// sessions is how many to do before the next step.
func (k composer) sessions() int {
	if i, ok := k.place(); ok {
		return k.c.Plan.Steps[i].Sessions
	}
	return 0
}

// options are the fluid-only one and the one with food, and the chosen one
// where it is neither. One that would be over-drinking is no option: a change of
// what the plan is based on may have left it behind.
func (k composer) options() []Option {
	var list []Option
	if k.over {
		return nil
	}
	for _, o := range k.c.Plan.Options {
		chosen := o.ID == k.chosen.ID
		if o.Kind != record.OptionFluid && o.Kind != record.OptionFood && !chosen {
			continue
		}
		out, name := outcomeOf(k.c, o), k.w.Option(o.Name)
		if chosen {
			out, name = k.outcome, k.stepName()
		} else if k.c.Over(k.c.MixOf(o)) || out.unfed && len(k.foods(out.mix)) == 0 {
			continue // too much to drink, or a way with food whose food no break lets one eat
		}
		list = append(list, Option{
			Name: name, Chosen: chosen && k.agreed(o), Parts: k.parts(out.at), Foods: k.foods(out.mix), Deficit: deficitOf(out.at),
			Carbohydrate: quantity.GramsPerHour(out.at.Carbohydrate.TotalGH), Estimate: k.c.Basis.Kind == record.BasisEstimate,
		})
	}
	return list
}

// foods are the foods of a mix, in portions.
func (k composer) foods(mix plan.Mix) []Portion {
	var list []Portion
	for s := plan.Food1; s <= plan.Food4; s++ {
		if k.c.Slots[s].InUse && mix[s] > 0 {
			list = append(list, Portion{Name: inside(k.w, k.c.Slots[s].Product), Portions: mix[s]})
		}
	}
	return list
}

// before is what to drink before: the middle of the advice, in 50 mL.
func (k composer) before() Before {
	mass := k.c.Basis.Plan.Body.MassKg
	if mass <= 0 {
		return Before{Missing: true}
	}
	middle := func(a fuel.Advice) quantity.Millilitres {
		return quantity.Millilitres(quantity.RoundTo(1000*(a.Range.Low+a.Range.High)/2, evidence.FluidIncrement))
	}
	return Before{
		Early: middle(fuel.BeforeFourHours(mass)), EarlyHours: evidence.BeforeEarlyHours,
		Late: middle(fuel.BeforeTwoHours(mass)), LateHours: evidence.BeforeLateHours,
	}
}

// bottle is the bottle size a bag is packed with, mL: common practice.
const bottle = 500.0

// bag is the bottles with what goes into each, so that what is carried is what is
// planned and no more, and the foods.
func (k composer) bag() []BagItem {
	if k.over {
		return nil
	}
	list := k.poured()
	for _, f := range k.foods(k.mix) {
		list = append(list, BagItem{Substance: Food, Name: f.Name, Portions: f.Portions})
	}
	if salt := k.mix[plan.Salt]; salt > 0 && len(k.c.Care.WithholdSalt) == 0 {
		list = append(list, BagItem{Substance: Food, Name: k.w.Say("handout.bag.salt", k.w.Number(salt, 1)+"\u00a0"+string(quantity.Gram))})
	}
	return list
}

// after is what to drink afterwards. The next session is near by the hours to it,
// or since the day has a further one.
func (k composer) after() After {
	next := k.c.Planner.Session().NextHours
	a := After{Further: k.further(), PerKilogram: quantity.Range{Low: evidence.RestoreLow, High: evidence.RestoreHigh}}
	a.Soon = len(a.Further) > 0 || next > 0 && next < evidence.RestoreWithin
	deficit := max(0, k.at.DeficitL.Value)
	a.Large = !a.Soon && fuel.After(deficit, k.c.Basis.Plan.Body.MassKg, next).Code == fuel.AfterLarge
	a.Extra = quantity.Range{Low: deficit * evidence.RestoreLow, High: deficit * evidence.RestoreHigh}
	return a
}

// basis is what the plan is based on.
func (k composer) basis() Basis {
	b := Basis{
		Tests: len(k.c.Basis.Tests), Loss: quantity.Litres(k.at.LossL.Value), LossRange: k.at.LossL.Range, Ranged: true,
		Estimate: k.c.Basis.Kind == record.BasisEstimate, RangeAlone: k.c.RangeAlone(), DayToDay: evidence.DayToDayRate, Asked: true,
	}
	if t := k.c.Basis.Air.Temperature; t.Known() {
		b.Air, b.AirKnown = quantity.Range{Low: *t.Value, High: *t.Value}, true
	}
	if b.Estimate {
		b.Place = k.c.Place()
	}
	if b.Estimate || len(k.c.Basis.Tests) == 0 {
		return b
	}
	first := k.c.Basis.Tests[0]
	b.Day = consult.TestDay(first.Test)
	if len(k.c.Basis.Tests) == 1 && first.Sweat.Fluid.Loss.Ranged {
		b.Loss, b.LossRange = quantity.Litres(first.Sweat.Fluid.Loss.Value), first.Sweat.Fluid.Loss.Range
	}
	return b
}

func firstOf(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// dateOf reads a day; zero when it is empty.
func dateOf(d record.Date) time.Time {
	t, _ := d.Time()
	return t
}
