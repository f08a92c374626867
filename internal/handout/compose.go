package handout

import (
	"math"
	"time"

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
func TermsOf(p record.Practice, care consult.Care, w *words.Words) Terms {
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
	mix    plan.Mix
	at     plan.Prediction
	habit  plan.Prediction
	spread plan.Schedule
}

// compose reckons what the pages of a case need for one of its options.
func compose(c consult.Case, chosen record.Option, w *words.Words) composer {
	k := composer{c: c, w: w, chosen: chosen, mix: c.MixOf(chosen)}
	k.at = c.Planner.Evaluate(plan.Expected, k.mix)
	if habit, ok := consult.OptionOf(c.Plan, record.OptionHabit); ok {
		k.habit = c.Planner.Evaluate(plan.Expected, c.MixOf(habit))
	}
	c.Planner.Schedule(plan.Expected, k.mix, consult.PlanChances(c.Plan), plan.Mouthful(c.Athlete.Mouthful.Or(0)), &k.spread)
	return k
}

// AthletePageOf is the athlete's page of a plan, for one of its options.
func AthletePageOf(c consult.Case, chosen record.Option, p record.Practice, w *words.Words) AthletePage {
	k := compose(c, chosen, w)
	return AthletePage{
		Terms:   k.terms(p),
		Heading: k.heading(),
		Words:   firstOf(c.Plan.Agreement.Words, chosen.Words),
		Bars:    k.bars(),
		Options: k.options(),
		Before:  k.before(),
		Bag:     k.bag(),
		During:  k.during(),
		After:   k.after(),
		FollowUp: FollowUp{
			Review: dateOf(c.Plan.Agreement.Review), Next: k.nextStep(), Sessions: k.sessions(),
		},
		Basis: k.basis(),
	}
}

// KitBagCardOf is the card of a plan, for one of its options.
func KitBagCardOf(c consult.Case, chosen record.Option, p record.Practice, w *words.Words) KitBagCard {
	k := compose(c, chosen, w)
	h := k.heading()
	return KitBagCard{
		Terms: k.terms(p), Athlete: h.Athlete, Session: h.Session, Step: h.Step, From: h.From, During: k.during(),
		Estimate: c.Basis.Kind == record.BasisEstimate,
	}
}

// terms adds what the plan itself has to say.
func (k composer) terms(p record.Practice) Terms {
	t := TermsOf(p, k.c.Care, k.w)
	if k.at.Guards.Has(plan.LossOutruns) {
		t.Cautions = append(t.Cautions, k.w.Say(plan.LossOutruns.Code()))
	}
	if k.at.Guards.Has(plan.LowPlasmaSodium) {
		t.Cautions = append(t.Cautions, k.w.Say(plan.LowPlasmaSodium.Code()))
	}
	return t
}

func (k composer) heading() Heading {
	p := k.c.Plan
	h := Heading{
		Athlete: k.c.Athlete.Name, Session: p.Target.SessionName, Step: k.stepName(), From: dateOf(p.Agreement.From),
		Minutes: quantity.Minutes(p.Target.Minutes.Or(0)), Draft: p.State != record.PlanAgreed,
	}
	h.Air, h.AirKnown = k.airRange()
	return h
}

// airRange is the air the plan holds for: within the nearness of a test.
func (k composer) airRange() (r quantity.Range, ok bool) {
	air := k.c.Basis.Air
	if !air.Temperature.Known() {
		return r, false
	}
	t := *air.Temperature.Value
	return quantity.Range{Low: math.Round(t - evidence.TestedAir), High: math.Round(t + evidence.TestedAir)}, true
}

// stepName is the step that is in force, or the option's own name.
func (k composer) stepName() string {
	for i, s := range k.c.Plan.Steps {
		if s.State == record.StepNow {
			return k.w.Say("handout.step", k.w.Number(float64(i+1), 0))
		}
	}
	return k.chosen.Name
}

func (k composer) nextStep() time.Time {
	for i, s := range k.c.Plan.Steps {
		if s.State == record.StepNow && i+1 < len(k.c.Plan.Steps) {
			return dateOf(k.c.Plan.Steps[i+1].From)
		}
	}
	return time.Time{}
}

func (k composer) sessions() int {
	for _, s := range k.c.Plan.Steps {
		if s.State == record.StepNow {
			return s.Sessions
		}
	}
	return 0
}

// bars are the test and what is planned.
func (k composer) bars() []Bar {
	var list []Bar
	if k.c.Basis.Kind != record.BasisEstimate && len(k.c.Basis.Tests) > 0 {
		list = append(list, testBar(k.c.Basis.Tests[0], k.w))
	}
	planned := Bar{
		Label: k.stepName(), Parts: k.parts(k.at), Loss: quantity.Litres(k.at.LossL.Value),
		LossRange: k.at.LossL.Range, Ranged: true, Deficit: deficitOf(k.at), Planned: true,
		Estimate: k.c.Basis.Kind == record.BasisEstimate,
	}
	return append(list, planned)
}

// testBar is what happened in a test.
func testBar(f consult.Findings, w *words.Words) Bar {
	fluid := f.Sweat.Fluid
	b := Bar{
		Label: w.Day(consult.TestDay(f.Test)), Loss: quantity.Litres(fluid.Loss.Value), LossRange: fluid.Loss.Range,
		Ranged: fluid.Loss.Ranged,
		Deficit: Deficit{
			Percent: quantity.Percent(fluid.DeficitShare.Value), PercentKnown: fluid.DeficitShare.Known,
			Litres: quantity.Litres(fluid.Deficit.Value), PercentRange: fluid.DeficitShare.Range, LitresRange: fluid.Deficit.Range,
			Ranged: fluid.DeficitShare.Ranged,
		},
	}
	for _, part := range f.Intake.Bottles {
		if part.Known && part.Millilitres > 0 {
			b.Parts = append(b.Parts, Part{
				Substance: substanceOf(part.Product), Name: part.Product.Name, Litres: quantity.Litres(part.Millilitres / 1000),
			})
		}
	}
	b.Parts = joined(b.Parts)
	return b
}

// joined puts parts of one name together.
func joined(parts []Part) []Part {
	var list []Part
	for _, p := range parts {
		found := false
		for i := range list {
			if list[i].Name == p.Name {
				list[i].Litres += p.Litres
				found = true
			}
		}
		if !found {
			list = append(list, p)
		}
	}
	return list
}

func substanceOf(p fuel.Product) Substance {
	if record.ID(p.ID) == consult.Water || p.ID == "" {
		return Water
	}
	return Drink
}

// parts are the drinks of a prediction.
func (k composer) parts(q plan.Prediction) []Part {
	var list []Part
	for s := plan.Water; s <= plan.Drink3; s++ {
		if k.c.Slots[s].InUse && q.Fluid.BySlotML[s] > 0 {
			sub := Drink
			if s == plan.Water {
				sub = Water
			}
			list = append(list, Part{Substance: sub, Name: k.c.Slots[s].Product.Name, Litres: quantity.Litres(q.Fluid.BySlotML[s] / 1000)})
		}
	}
	return list
}

// deficitOf is the deficit at the end of a prediction.
func deficitOf(q plan.Prediction) Deficit {
	return Deficit{
		Percent: quantity.Percent(q.Deficit.Value), PercentKnown: q.Deficit.Known, Litres: quantity.Litres(q.DeficitL.Value),
		PercentRange: q.Deficit.Range, LitresRange: q.DeficitL.Range, Ranged: true,
	}
}

// options are the fluid-only one and the one with food, and the chosen one
// where it is neither.
func (k composer) options() []Option {
	var list []Option
	for _, o := range k.c.Plan.Options {
		chosen := o.ID == k.chosen.ID
		if o.Kind != record.OptionFluid && o.Kind != record.OptionFood && !chosen {
			continue
		}
		q := k.c.Planner.Evaluate(plan.Expected, k.c.MixOf(o))
		list = append(list, Option{
			Name: o.Name, Chosen: chosen, Parts: k.parts(q), Foods: k.foods(k.c.MixOf(o)), Deficit: deficitOf(q),
			Carbohydrate: quantity.GramsPerHour(q.Carbohydrate.TotalGH),
		})
	}
	return list
}

// foods are the foods of a mix, in portions.
func (k composer) foods(mix plan.Mix) []Portion {
	var list []Portion
	for s := plan.Food1; s <= plan.Food4; s++ {
		if k.c.Slots[s].InUse && mix[s] > 0 {
			list = append(list, Portion{Name: k.c.Slots[s].Product.Name, Portions: mix[s]})
		}
	}
	return list
}

// before is what to drink before: the middle of the advice, in 50 mL.
func (k composer) before() Before {
	mass := k.c.Basis.Plan.Body.MassKg
	if mass <= 0 {
		return Before{}
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

// bag is one bottle size of each drink, and the foods.
func (k composer) bag() []BagItem {
	var list []BagItem
	for _, p := range k.parts(k.at) {
		count := math.Ceil(float64(p.Litres)*1000/bottle - 1e-9)
		list = append(list, BagItem{Substance: p.Substance, Name: p.Name, Count: int(count), Volume: bottle})
	}
	for _, f := range k.foods(k.mix) {
		list = append(list, BagItem{Substance: Food, Name: f.Name, Portions: f.Portions})
	}
	return list
}

// after is what to drink afterwards.
func (k composer) after() After {
	next := k.c.Planner.Session().NextHours
	a := After{
		Soon:        next > 0 && next < evidence.RestoreWithin,
		PerKilogram: quantity.Range{Low: evidence.RestoreLow, High: evidence.RestoreHigh},
	}
	deficit := max(0, k.at.DeficitL.Value)
	a.Extra = quantity.Range{Low: deficit * evidence.RestoreLow, High: deficit * evidence.RestoreHigh}
	return a
}

// basis is what the plan rests on.
func (k composer) basis() Basis {
	b := Basis{
		Tests: len(k.c.Basis.Tests), Loss: quantity.Litres(k.at.LossL.Value), LossRange: k.at.LossL.Range, Ranged: true,
		Estimate: k.c.Basis.Kind == record.BasisEstimate, DayToDay: evidence.DayToDayRate,
	}
	if t := k.c.Basis.Air.Temperature; t.Known() {
		b.Air, b.AirKnown = quantity.Range{Low: *t.Value, High: *t.Value}, true
	}
	if len(k.c.Basis.Tests) == 0 {
		return b
	}
	first := k.c.Basis.Tests[0]
	b.Day, b.Place = consult.TestDay(first.Test), first.Test.Session.Place
	if !b.Estimate && len(k.c.Basis.Tests) == 1 && first.Sweat.Fluid.Loss.Ranged {
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
