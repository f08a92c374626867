package agreement

import (
	"strings"

	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Summary says in words what would be agreed, as the page then has it: what is drunk
// and eaten, what it comes to, the limits, what the breaks do not carry, where two bottles
// are needed, and with which step it begins.
func (a *Agreement) Summary() string {
	v, say := a.v, a.v.Speaker.Say
	o, q := a.chosen()
	if o.ID == "" {
		return ""
	}
	c := v.Now.PlanCase
	lines := []string{say("planner.agree.mix", v.Speaker.InWords(v.Now, c.Carried(o)))}
	if first, name, ok := a.begins(o); ok {
		lines = append(lines, say("planner.agree.begins", name, v.Speaker.InWords(v.Now, c.Carried(first))))
	}
	lines = append(lines, say("planner.agree.figures", v.Speaker.Deficit(q), v.Speaker.Spread(q), v.Speaker.Carbohydrate(q.Carbohydrate.TotalGH)))
	limits := say("planner.agree.limits", v.Speaker.StopsAt(q.Ceiling))
	if aim := c.Planner.Aim().Deficit; aim.On && !v.Speaker.By.Hidden {
		limits = wording.Sentences(limits, say("planner.agree.deficit", v.Speaker.Short(aim.High)))
	}
	lines = append(lines, limits)
	var schedule plan.Schedule
	c.Schedule(c.MixOf(o), &schedule)
	if len(schedule.Takes) > 0 {
		lines = append(lines, v.Speaker.NotTaken(v.Now, schedule)...)
	}
	said, _ := a.bottles(o)
	lines = append(lines, said...)
	return strings.Join(lines, "\n")
}

// begins is the step that is done first where an option agreed on is none of the
// steps.
func (a *Agreement) begins(o record.Option) (first record.Option, name string, ok bool) {
	v := a.v
	steps := v.Now.Plan.Steps
	for _, s := range steps {
		if s.OptionID == o.ID {
			return first, "", false
		}
	}
	if len(steps) == 0 {
		return first, "", false
	}
	first, ok = consult.OptionByID(v.Now.Plan, steps[0].OptionID)
	return first, v.Speaker.RungName(0, false), ok
}
