package handout

import (
	"math"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// practise is what is new on the chosen step; nothing where it is no step.
func (k composer) practise() Practise {
	i, ok := k.place()
	if !ok || k.over {
		return Practise{}
	}
	step := k.c.Plan.Steps[i]
	what := step.Practise
	if strings.TrimSpace(what) == "" {
		what = k.stepChange(i)
	}
	return Practise{What: what, From: k.heading().From, PerWeek: consult.RulesOf(k.c.Plan).PerWeek, Rule: RuleOf(k.c, i)}
}

// RuleOf is the rule for the i-th step of a plan, from 0. The last step is the one
// that brings the aim: the steps kept may end before it.
func RuleOf(c consult.Case, i int) StepRule {
	p := c.Plan
	ends := i+1 == len(p.Steps)
	r := StepRule{Sessions: p.Steps[i].Sessions, Last: ends && reachesAim(c, p.Steps[i].OptionID)}
	if !ends {
		r.Next = dateOf(p.Steps[i+1].From)
	}
	return r
}

// reachesAim reports whether an option is what the plan aims at, as the breaks carry
// both. A plan without an aim goes no further than its steps.
func reachesAim(c consult.Case, id record.ID) bool {
	aim, there := consult.OptionOf(c.Plan, record.OptionAim)
	step, ok := consult.OptionByID(c.Plan, id)
	if !there || !ok || aim.ID == id {
		return true
	}
	same := func(a, b plan.Mix) bool {
		for s := range a {
			if math.Abs(a[s]-b[s]) > 1e-6 {
				return false
			}
		}
		return true
	}
	return same(c.MixOf(step), c.MixOf(aim)) || c.Planner != nil && same(c.Carried(step), c.Carried(aim))
}

// PractiseWords say in words how the i-th step of a case, from 0, differs from
// the one before: what to practise where nobody has written anything. Empty
// where nothing differs.
func PractiseWords(c consult.Case, i int, us bool, w *words.Words) string {
	o, ok := consult.OptionByID(c.Plan, c.Plan.Steps[i].OptionID)
	if !ok {
		return ""
	}
	k := compose(c, o, w)
	k.us = us
	return k.stepChange(i)
}

// stepChange words what the chosen mix, the i-th step, has more and less of than
// the step before, or than the habit: each as the breaks carry it, the habit as it
// was measured. What was left as it was is no change, however it is carried.
func (k composer) stepChange(i int) string {
	before, ok := consult.OptionOf(k.c.Plan, record.OptionHabit)
	if i > 0 {
		before, ok = consult.OptionByID(k.c.Plan, k.c.Plan.Steps[i-1].OptionID)
	}
	if !ok {
		return ""
	}
	was, a := k.c.Carried(before), amounts{say: k.w, us: k.us}
	planned, chosen := k.c.MixOf(before), k.c.MixOf(k.chosen)
	var list []string
	add := func(s string) {
		if s != "" {
			list = append(list, s)
		}
	}
	for s := plan.Water; s < plan.Salt; s++ {
		name, more := inside(k.w, k.c.Slots[s].Product), k.mix[s]-was[s]
		switch {
		case !k.c.Slots[s].InUse || chosen[s] == planned[s]:
		case s.IsFood():
			add(k.foodChange(a, s, Portion{Name: name, Portions: more}))
		default:
			add(k.drinkChange(a, name, more))
		}
	}
	if more := k.mix[plan.Salt] - was[plan.Salt]; len(k.c.Care.WithholdSalt) == 0 {
		add(k.change(more, 0.05, k.w.Number(max(more, -more), 1)+"\u00a0"+string(quantity.Gram), k.w.Say("handout.practise.salt")))
	}
	return k.w.Semicolons(list)
}

// drinkChange words more or less of a drink, mL: in tens, since a habit is as
// measured. Less by under a mouthful is no change: a step comes in whole ones rounded
// down, a habit does not.
func (k composer) drinkChange(a amounts, name string, more float64) string {
	change := quantity.RoundTo(max(more, -more), hourStep)
	if more < 0 && -more < float64(consult.MouthfulOf(k.c.Athlete)) {
		return ""
	}
	return k.change(more, k.step(hourStep), a.millilitres(quantity.Millilitres(change)), name)
}

// change words more or less of something by an amount; nothing below the least.
func (k composer) change(more, least float64, amount, name string) string {
	switch {
	case more >= least:
		return k.w.Say("handout.practise.more", amount, k.w.Of(name))
	case more <= -least:
		return k.w.Say("handout.practise.less", amount, k.w.Of(name))
	}
	return ""
}

// foodChange words more or less of a food, with the break where it is eaten.
func (k composer) foodChange(a amounts, s plan.Slot, f Portion) string {
	switch {
	case f.Portions < 0:
		f.Portions = -f.Portions
		return k.w.Say("handout.practise.food.less", a.food(f))
	case f.Portions == 0:
		return ""
	}
	text := k.w.Say("handout.practise.food.more", a.food(f))
	var at []string
	for i, t := range k.spread.Takes {
		if t.Food[s-plan.Food1] > 0 {
			at = append(at, k.numbered(i, k.chanceName(t.Chance.Code)))
		}
	}
	if len(at) != 1 {
		return text
	}
	return k.w.Say("handout.practise.at", text, at[0])
}

// further are the sessions of the day that were written down after the plan's
// own. One of another length by this plan takes the same rates, in whole steps,
// held under what is lost in it.
func (k composer) further() []FurtherSession {
	list, _ := consult.FurtherOf(k.c.Plan)
	var out []FurtherSession
	for _, f := range list {
		s := FurtherSession{Start: string(f.Start), Minutes: quantity.Minutes(f.Minutes), Other: f.Plan != "" && f.Plan != k.c.Plan.ID}
		if f.Minutes <= 0 && !s.Other {
			s.Minutes = quantity.Minutes(k.at.Minutes)
		}
		if !s.Other && !k.over {
			s.Again, s.Parts, s.Foods = k.lasting(float64(s.Minutes))
		}
		out = append(out, s)
	}
	return out
}

// lasting is what of the mix is for a session of so many minutes; again is true
// where that is all of it.
func (k composer) lasting(minutes float64) (again bool, parts []Part, foods []Portion) {
	c, length, mix, err := k.c.ForMinutes(k.mix, minutes)
	if err != nil || length == plan.Expected {
		return true, nil, nil
	}
	return false, k.parts(c.Planner.Evaluate(length, mix)), k.foods(mix)
}
