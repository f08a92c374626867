package athlete

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// card is one step of the way from the habit to the aim.
type card struct {
	chart.IntakeCardData
	option record.ID
	// now marks the step in force.
	now bool
}

// cards are the habit, every step and the aim of an agreed plan, each with what
// changes from the one before. An aim that the last step is already is not shown
// twice.
func (sp speaker) cards(c consult.Case) []card {
	p := c.Plan
	var list []card
	var before plan.Mix
	add := func(o record.Option, name, note string, now bool) {
		mix := c.Carried(o)
		made := card{option: o.ID, now: now, IntakeCardData: sp.cardData(c, mix)}
		made.Name, made.Note = name, note
		if len(list) > 0 {
			made.Change, made.ChangeShort = sp.changes(c, before, mix)
		}
		made.Summary = strings.Join([]string{name, note, made.DrinkText, made.FuelText, made.Foot, made.Change}, " ")
		list, before = append(list, made), mix
	}
	if habit, ok := consult.OptionOf(p, record.OptionHabit); ok {
		add(habit, sp.Say("overview.steps.habit"), sp.habitNote(c), false)
	}
	for i, s := range p.Steps {
		if o, ok := consult.OptionByID(p, s.OptionID); ok {
			add(o, sp.Say("overview.steps.step", strconv.Itoa(i+1)), sp.stepNote(s), s.State == record.StepNow)
		}
	}
	if len(p.Steps) == 0 {
		if o, ok := consult.InForce(p); ok && o.Kind != record.OptionAim {
			add(o, sp.Words.Option(o.Name), sp.Say("overview.steps.agreed"), true)
		}
	}
	if aim, ok := consult.OptionOf(p, record.OptionAim); ok && (len(list) == 0 || c.Carried(aim) != before) {
		add(aim, sp.Say("overview.steps.aim"), sp.untilNote(p), false)
	}
	oneScale(list)
	return list
}

// oneScale gives all cards the same ends of their scales.
func oneScale(list []card) {
	var drink, fuel float64
	for _, c := range list {
		drink, fuel = max(drink, sum(c.Drink)), max(fuel, sum(c.Fuel))
		if c.Advised {
			fuel = max(fuel, c.Advice.High)
		}
	}
	for i := range list {
		list[i].DrinkMax, list[i].FuelMax = drink, fuel
	}
}

// sum is how long a bar is.
func sum(parts []chart.Part) float64 {
	var all float64
	for _, p := range parts {
		all += p.Value
	}
	return all
}

// cardData is what a mix comes to over the expected session.
func (sp speaker) cardData(c consult.Case, mix plan.Mix) chart.IntakeCardData {
	q := c.Planner.Evaluate(plan.Expected, mix)
	d := chart.IntakeCardData{
		DrinkText: sp.By.Amount(q.Fluid.DrunkL, quantity.Litre), FuelText: sp.By.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour),
	}
	for slot := plan.Water; slot <= plan.Salt; slot++ {
		if slot.IsDrink() {
			d.Drink = append(d.Drink, chart.Part{Of: desk.Substance(slot), Value: q.Fluid.BySlotML[slot] / 1000})
		}
		d.Fuel = append(d.Fuel, chart.Part{Of: desk.Substance(slot), Value: q.Carbohydrate.BySlotGH[slot]})
	}
	if a := q.Carbohydrate.Advice; a.Says() && a.Unit == quantity.GramPerHour && a.Range.High > 0 {
		d.Advice, d.Advised = chart.Span{Low: a.Range.Low, High: a.Range.High}, true
	}
	x, u := q.Deficit.Value, quantity.PerCent
	if sp.By.Hidden {
		x, u = q.DeficitL.Value, quantity.Litre
	}
	d.Foot = sp.Say("overview.steps.deficit", sp.By.Signed(-x, u))
	return d
}

// changes are what a mix has more, or less, than the one before, in whole and in short:
// the drinks alone, or food where only that changes.
func (sp speaker) changes(c consult.Case, before, mix plan.Mix) (whole, short string) {
	d := c.Planner.Compare(plan.Expected, before, mix)
	named := func(slot plan.Slot) string {
		p := c.Slots[slot].Product
		return sp.Words.FoodWithin(p.ID, p.Name)
	}
	var more, less []string
	if litres := sp.By.Amount(math.Abs(d.DrunkL), quantity.Litre); litres != sp.By.Amount(0, quantity.Litre) {
		if d.DrunkL > 0 {
			more, short = append(more, litres), sp.Say("overview.steps.more", litres)
		} else {
			less, short = append(less, litres), sp.Say("overview.steps.less", litres)
		}
	}
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if x := d.Mix[slot]; x > 0 {
			more = append(more, sp.Words.Portions(x, named(slot)))
		} else if x < 0 {
			less = append(less, sp.Words.Portions(-x, named(slot)))
		}
	}
	var parts []string
	if len(more) > 0 {
		parts = append(parts, sp.Say("overview.steps.more", sp.Words.List(more)))
	}
	if len(less) > 0 {
		parts = append(parts, sp.Say("overview.steps.less", sp.Words.List(less)))
	}
	if short == "" && len(parts) > 0 { // food alone changes
		short = parts[0]
	}
	return sp.Words.Commas(parts), short
}

// habitNote is the day of the test the habit was measured in.
func (sp speaker) habitNote(c consult.Case) string {
	if len(c.Basis.Tests) == 0 {
		return ""
	}
	return sp.shortDate(c.Basis.Tests[0].Test.Session.Date)
}

// stepNote says where a step stands: now, done, or from when.
func (sp speaker) stepNote(s record.Step) string {
	switch {
	case s.State == record.StepNow && s.From != "":
		return sp.Say("overview.steps.since", sp.shortDate(s.From))
	case s.State == record.StepNow:
		return sp.Say("overview.steps.now")
	case s.State == record.StepDone || s.State == record.StepLeft:
		return sp.Say("overview.steps." + string(s.State))
	case s.From != "":
		return sp.Say("overview.due.from", sp.shortDate(s.From))
	}
	return ""
}

// untilNote is the last day of the plan.
func (sp speaker) untilNote(p record.Plan) string {
	if p.Agreement.Until == "" {
		return ""
	}
	return sp.Say("overview.steps.until", sp.shortDate(p.Agreement.Until))
}
