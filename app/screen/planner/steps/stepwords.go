package steps

import (
	"strings"
	"time"

	"ebbwell/app/kit/chart"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// rung is one column of the picture of steps.
type rung struct {
	name string
	// option is the one kept for it; none where it is proposed.
	option record.ID
	mix    plan.Mix
	from   record.Date
	now    bool
	done   bool
}

// keptRungs are the steps as they are kept.
func keptRungs(s state.State, sp wording.Speaker) []rung {
	var list []rung
	for i, st := range s.Plan.Steps {
		o, ok := consult.OptionByID(s.Plan, st.OptionID)
		if !ok {
			continue
		}
		list = append(list, rung{
			name: sp.RungName(i, s.IsAim(s.PlanCase.MixOf(o))), option: o.ID, mix: s.PlanCase.Carried(o), from: st.From, now: st.State == record.StepNow, done: st.State == record.StepDone,
		})
	}
	return list
}

// proposedRungs are the steps of a ladder that is not kept.
func proposedRungs(s state.State, sp wording.Speaker, l plan.Ladder) []rung {
	var list []rung
	for i, st := range l.Steps {
		list = append(list, rung{name: sp.RungName(i, s.IsAim(st.Mix)), mix: st.Mix, from: record.DateOf(st.From)})
	}
	return list
}

// columns are the habit and the steps as the picture shows them.
func columns(sp wording.Speaker, s state.State, rungs []rung) []chart.StepColumn {
	p := s.PlanCase.Planner
	habit, _ := consult.OptionOf(s.Plan, record.OptionHabit)
	before := s.PlanCase.MixOf(habit)
	first := column(sp, sp.OptionName(habit), p.Evaluate(plan.Expected, before), before)
	if t := s.PlanCase.Basis.Tests; len(t) > 0 {
		first.Note = sp.Words.Day(consult.TestDay(t[0].Test))
	}
	list := []chart.StepColumn{first}
	for _, r := range rungs {
		c := column(sp, r.name, p.Evaluate(plan.Expected, r.mix), r.mix)
		c.Now = r.now
		switch day, ok := r.from.Time(); {
		case r.done:
			c.Note = sp.Say("planner.step.done")
		case ok && r.now:
			c.Note = sp.Say("planner.step.now", sp.Words.Day(day))
		case ok:
			c.Note = sp.Say("planner.step.from", sp.Words.Day(day))
		}
		d := p.Compare(plan.Expected, before, r.mix)
		c.Change, c.ChangeNote = fluidChange(sp, d), foodChange(sp, s, d)
		now := p.Evaluate(plan.Expected, r.mix).Carbohydrate.TotalGH
		c.SecondChange = sp.By.Difference(now, now-d.CarbohydrateGH, quantity.GramPerHour)
		if c.SecondChange != "" {
			c.SecondChange += "\u00a0" + string(quantity.GramPerHour)
		}
		list = append(list, c)
		before = r.mix
	}
	return list
}

// column is what stands beside one step.
func column(sp wording.Speaker, name string, q plan.Prediction, mix plan.Mix) chart.StepColumn {
	return chart.StepColumn{
		Name: name, Parts: wording.MixParts(mix), Figure: sp.Deficit(q), FigureNote: sp.Say("planner.step.deficit"),
		Second: sp.Carbohydrate(q.Carbohydrate.TotalGH), SecondNote: sp.Say("planner.step.carbohydrate"), Third: sp.Litres(q.Fluid.DrunkL),
	}
}

// fluidChange is how much more is drunk than a step before: "+250 mL".
func fluidChange(sp wording.Speaker, d plan.Difference) string {
	if sp.By.Number(d.DrunkL*1000, quantity.Millilitre) == sp.By.Number(0, quantity.Millilitre) {
		return ""
	}
	return sp.By.Signed(d.DrunkL*1000, quantity.Millilitre)
}

// foodChange is what more, or less, is eaten.
func foodChange(sp wording.Speaker, s state.State, d plan.Difference) string {
	var parts []string
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if x := d.Mix[slot]; x > 0 {
			parts = append(parts, sp.Say("planner.step.and", sp.Words.Portions(x, sp.ProductWithin(s.PlanCase, slot))))
		} else if x < 0 {
			parts = append(parts, sp.Say("planner.step.less", sp.Words.Portions(-x, sp.ProductWithin(s.PlanCase, slot))))
		}
	}
	return sp.Words.Commas(parts)
}

// ladderWords say what the steps come to: where they end, what the event
// allows, and that many goals at once are too many.
func ladderWords(sp wording.Speaker, s state.State, l plan.Ladder, rules plan.StepRules) string {
	var list []string
	if len(l.Steps) == 0 && l.Ends == plan.EndsAtAim {
		list = append(list, sp.Say("planner.steps.none"))
	}
	if l.Ends != plan.EndsAtAim {
		list = append(list, sp.Say(l.Ends))
	}
	if event, ok := s.Plan.Target.EventDate.Time(); ok {
		list = append(list, reached(sp, l, rules, event))
	}
	for i, st := range l.Steps {
		if st.Goals > goalsAtOnce() {
			list = append(list, sp.Say("planner.steps.goals", sp.RungName(i, false)))
			break
		}
	}
	for i, st := range l.Steps {
		if st.Large {
			list = append(list, sp.Say("planner.steps.large", sp.RungName(i, false)))
			break
		}
	}
	return strings.Join(list, " ")
}

// ruleWords say when one goes on from the step in force, or from the first, stays
// with it or goes back: the sentence of the athlete's page. Empty without steps.
func ruleWords(sp wording.Speaker, c consult.Case, p record.Plan) string {
	c.Plan = p
	if len(p.Steps) == 0 {
		return ""
	}
	_, place, _ := consult.StepNow(p)
	return handout.RuleOf(c, max(place-1, 0)).Say(sp.Words, sp.By.Hidden)
}

// reached says what can be done by the day of the event.
func reached(sp wording.Speaker, l plan.Ladder, rules plan.StepRules, event time.Time) string {
	day, days := sp.Words.Day(event), sp.Words.Number(float64(rules.ClearDays), 0)
	switch {
	case len(l.Steps) == 0:
		return ""
	case l.Reached < 0:
		return sp.Say("planner.event.none", day, days)
	case l.Reached == len(l.Steps)-1 && l.Ends == plan.EndsAtAim:
		return sp.Say("planner.event.aim", day, days)
	}
	step := l.Steps[l.Reached]
	return sp.Say("planner.event.step", day, sp.RungName(l.Reached, false), sp.Deficit(step.Prediction), days)
}
