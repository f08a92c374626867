package planner

import (
	"strings"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// foodDrawn is how high a portion of food is drawn on a column of drinks, in the
// mL of the column: food has no volume worth drawing.
const foodDrawn = 60.0

// partsOf are what a mix is drawn as: drinks by volume, food on top of them.
// What is at nothing has no height, so that there are always as many.
func partsOf(drink [plan.Drinks]float64, food [plan.Foods]float64) []chart.Part {
	var list []chart.Part
	for i, ml := range drink {
		list = append(list, chart.Part{Of: substance(plan.Slot(i)), Value: ml})
	}
	portions := 0.0
	for _, x := range food {
		portions += x
	}
	return append(list, chart.Part{Of: look.Food, Value: portions * foodDrawn})
}

// mixParts are the parts of a whole mix.
func mixParts(mix plan.Mix) []chart.Part {
	var drink [plan.Drinks]float64
	var food [plan.Foods]float64
	copy(drink[:], mix[plan.Water:plan.Food1])
	copy(food[:], mix[plan.Food1:plan.Salt])
	return partsOf(drink, food)
}

// rung is one column of the picture of steps.
type rung struct {
	name string
	mix  plan.Mix
	from record.Date
	now  bool
	done bool
}

// keptRungs are the steps as they are kept.
func (s state) keptRungs(sp speaker) []rung {
	var list []rung
	for i, st := range s.plan.Steps {
		o, ok := consult.OptionByID(s.plan, st.OptionID)
		if !ok {
			continue
		}
		mix := s.planCase.MixOf(o)
		list = append(list, rung{
			name: sp.rungName(i, s.isAim(mix)), mix: mix, from: st.From, now: st.State == record.StepNow, done: st.State == record.StepDone,
		})
	}
	return list
}

// isAim reports whether a mix is that of the aim.
func (s state) isAim(mix plan.Mix) bool {
	aim, ok := consult.OptionOf(s.plan, record.OptionAim)
	return ok && s.planCase.MixOf(aim) == mix
}

// proposedRungs are the steps of a ladder that is not kept.
func (s state) proposedRungs(sp speaker, l plan.Ladder) []rung {
	var list []rung
	for i, st := range l.Steps {
		list = append(list, rung{name: sp.rungName(i, s.isAim(st.Mix)), mix: st.Mix, from: record.DateOf(st.From)})
	}
	return list
}

// rungName names a step: "Step 2", the last one "Step 3, the aim".
func (sp speaker) rungName(i int, aim bool) string {
	name := sp.say("option.step", sp.w.Number(float64(i+1), 0))
	if aim {
		return sp.say("planner.step.aim", name)
	}
	return name
}

// columns are the habit and the steps as the picture shows them.
func (sp speaker) columns(s state, rungs []rung) []chart.StepColumn {
	p := s.planCase.Planner
	habit, _ := consult.OptionOf(s.plan, record.OptionHabit)
	before := s.planCase.MixOf(habit)
	first := sp.column(sp.optionName(habit), p.Evaluate(plan.Expected, before), before)
	if t := s.planCase.Basis.Tests; len(t) > 0 {
		first.Note = sp.w.Day(consult.TestDay(t[0].Test))
	}
	list := []chart.StepColumn{first}
	for _, r := range rungs {
		c := sp.column(r.name, p.Evaluate(plan.Expected, r.mix), r.mix)
		c.Now = r.now
		switch day, ok := r.from.Time(); {
		case r.done:
			c.Note = sp.say("planner.step.done")
		case ok && r.now:
			c.Note = sp.say("planner.step.now", sp.w.Day(day))
		case ok:
			c.Note = sp.say("planner.step.from", sp.w.Day(day))
		}
		d := p.Compare(plan.Expected, before, r.mix)
		c.Change, c.ChangeNote = sp.fluidChange(d), sp.foodChange(s, d)
		now := p.Evaluate(plan.Expected, r.mix).Carbohydrate.TotalGH
		c.SecondChange = sp.by.Difference(now, now-d.CarbohydrateGH, quantity.GramPerHour)
		if c.SecondChange != "" {
			c.SecondChange += "\u00a0" + string(quantity.GramPerHour)
		}
		list = append(list, c)
		before = r.mix
	}
	return list
}

// column is what stands beside one step.
func (sp speaker) column(name string, q plan.Prediction, mix plan.Mix) chart.StepColumn {
	return chart.StepColumn{
		Name: name, Parts: mixParts(mix), Figure: sp.deficit(q), FigureNote: sp.say("planner.step.deficit"),
		Second: sp.carbohydrate(q.Carbohydrate.TotalGH), SecondNote: sp.say("planner.step.carbohydrate"), Third: sp.litres(q.Fluid.DrunkL),
	}
}

// fluidChange is how much more is drunk than a step before: "+250 mL".
func (sp speaker) fluidChange(d plan.Difference) string {
	if sp.by.Number(d.DrunkL*1000, quantity.Millilitre) == sp.by.Number(0, quantity.Millilitre) {
		return ""
	}
	return sp.by.Signed(d.DrunkL*1000, quantity.Millilitre)
}

// foodChange is what more, or less, is eaten.
func (sp speaker) foodChange(s state, d plan.Difference) string {
	var parts []string
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if x := d.Mix[slot]; x > 0 {
			parts = append(parts, sp.say("planner.step.and", sp.portions(x, sp.product(s.planCase, slot))))
		} else if x < 0 {
			parts = append(parts, sp.say("planner.step.less", sp.portions(-x, sp.product(s.planCase, slot))))
		}
	}
	return strings.Join(parts, sp.say("format.comma"))
}

// ladderWords say what the steps come to: where they end, what the event
// allows, and that many goals at once are too many.
func (sp speaker) ladderWords(s state, l plan.Ladder, rules plan.StepRules) string {
	var list []string
	if len(l.Steps) == 0 && l.Ends == plan.EndsAtAim {
		list = append(list, sp.say("planner.steps.none"))
	}
	if l.Ends != plan.EndsAtAim {
		list = append(list, sp.say(l.Ends))
	}
	if event, ok := s.plan.Target.EventDate.Time(); ok {
		list = append(list, sp.reached(l, rules, event))
	}
	for i, st := range l.Steps {
		if st.Goals > goalsAtOnce() {
			list = append(list, sp.say("planner.steps.goals", sp.rungName(i, false)))
			break
		}
	}
	for i, st := range l.Steps {
		if st.Large {
			list = append(list, sp.say("planner.steps.large", sp.rungName(i, false)))
			break
		}
	}
	return strings.Join(list, " ")
}

// ruleWords say when one goes on from the step in force, or from the first, stays
// with it or goes back: the sentence of the athlete's page. Empty without steps.
func (sp speaker) ruleWords(p record.Plan) string {
	if len(p.Steps) == 0 {
		return ""
	}
	_, place, _ := consult.StepNow(p)
	return handout.RuleOf(p, max(place-1, 0)).Say(sp.w)
}

// reached says what can be done by the day of the event.
func (sp speaker) reached(l plan.Ladder, rules plan.StepRules, event time.Time) string {
	day, days := sp.w.Day(event), sp.w.Number(float64(rules.ClearDays), 0)
	switch {
	case len(l.Steps) == 0:
		return ""
	case l.Reached < 0:
		return sp.say("planner.event.none", day, days)
	case l.Reached == len(l.Steps)-1 && l.Ends == plan.EndsAtAim:
		return sp.say("planner.event.aim", day, days)
	}
	step := l.Steps[l.Reached]
	return sp.say("planner.event.step", day, sp.rungName(l.Reached, false), sp.deficit(step.Prediction), days)
}
