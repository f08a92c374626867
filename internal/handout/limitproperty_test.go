package handout

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// life is one athlete's plan as it goes through its weeks.
type life struct {
	h       house
	w       *words.Words
	athlete record.Athlete
	// sheet is the test as it was at first, test as it is by now.
	sheet, test record.Test
	plan        record.Plan
	kept        []record.Frozen
	places      climate.Places
	printed     int
}

// open opens the plan as every screen does.
func (l *life) open(t *rapid.T) (consult.Case, bool) {
	tests := []consult.Findings{consult.Find(l.test, l.athlete, nil, l.h.desk)}
	c, err := consult.OpenPlan(l.plan, l.athlete, tests, l.kept, composeDay(), l.h.desk)
	if err != nil && !errors.Is(err, consult.ErrNoBasis) {
		t.Fatal(err)
	}
	return c, err == nil
}

// fill gives the options, and steps of their own, any amounts at all.
func (l *life) fill(t *rapid.T) {
	c, ok := l.open(t)
	if !ok || l.plan.State != record.PlanDraft {
		return
	}
	l.plan.Steps = nil
	for i, o := range l.plan.Options {
		mix := plan.Mix{plan.Water: 1000 * c.LimitL() * rapid.Float64Range(0, 1.5).Draw(t, "share of the limit")}
		if i > 0 && rapid.Bool().Draw(t, "under it") {
			mix = c.Planner.UnderCeiling(plan.Expected, mix)
		}
		l.plan.Options[i] = c.WithMix(o, mix)
		if o.Kind != record.OptionHabit && rapid.Bool().Draw(t, "a step") {
			l.plan.Steps = append(l.plan.Steps, record.Step{
				Meta: record.Meta{ID: record.NewID()}, PlanID: l.plan.ID, Order: len(l.plan.Steps), OptionID: o.ID, State: record.StepAhead, Sessions: 3,
			})
		}
	}
}

// agree agrees on any option, as far as the program lets it.
func (l *life) agree(t *rapid.T) {
	c, ok := l.open(t)
	if !ok || l.plan.State != record.PlanDraft {
		return
	}
	o := rapid.SampledFrom(l.plan.Options).Draw(t, "agreed")
	if c.MayAgree(o) != nil {
		return
	}
	at := composeDay()
	l.plan.State, l.plan.Agreement.AgreedAt, l.plan.Agreement.OptionID = record.PlanAgreed, &at, o.ID
	begun := false
	for i, s := range l.plan.Steps {
		l.plan.Steps[i].State = record.StepAhead
		if !begun && (s.OptionID == o.ID || i == len(l.plan.Steps)-1) {
			l.plan.Steps[i].State, begun = record.StepNow, true
		} else if !begun {
			l.plan.Steps[i].State = record.StepDone
		}
	}
	c.Plan = l.plan
	inputs, results, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	l.kept = append([]record.Frozen{{Inputs: inputs, Results: results}}, l.kept...)
	l.inForce(t, "agreed")
}

// decide decides anything on the step in force, or takes a decision back.
func (l *life) decide(t *rapid.T) {
	c, ok := l.open(t)
	if !ok || l.plan.State != record.PlanAgreed {
		return
	}
	what := rapid.SampledFrom([]record.Decision{record.DecisionHold, record.DecisionNext, record.DecisionBack, record.DecisionUndone}).Draw(t, "decision")
	r := record.Review{Meta: record.Meta{ID: record.NewID()}, Decision: what, Note: "because"}
	if what == record.DecisionUndone {
		if done, err := c.TakeBack(&l.plan, r); err != nil || !done {
			return
		}
	} else if c.Decide(&l.plan, r) != nil {
		return
	}
	if !c.Since.Gone {
		l.inForce(t, string(what))
	}
}

// inForce holds the step in force against the limit.
func (l *life) inForce(t *rapid.T, after string) {
	c, ok := l.open(t)
	o, in := consult.InForce(l.plan)
	if !ok || !in {
		t.Fatalf("after %s there is nothing in force", after)
	}
	q := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
	if fluid := q.Fluid.DrunkL + q.Fluid.FoodWaterL; fluid > c.LimitL()+1e-6 {
		t.Fatalf("after %s a step of %.3f L is in force, the limit is %.3f L", after, fluid, c.LimitL())
	}
}

// correct corrects the test that the plan is based on.
func (l *life) correct(t *rapid.T) {
	l.test = l.test.Clone()
	for i, w := range l.test.Weighings {
		if w.Moment == record.After {
			mass := l.sheet.Weighings[i].Mass.Or(0) + rapid.Float64Range(-0.5, 1.2).Draw(t, "heavier after by")
			l.test.Weighings[i].Mass = record.Num(mass, quantity.Kilogram)
		}
	}
}

func (l *life) reopen(*rapid.T) {
	if l.plan.State == record.PlanAgreed {
		l.plan.State, l.plan.Agreement.AgreedAt = record.PlanDraft, nil
	}
}

// further gives the day further sessions of any length.
func (l *life) further(t *rapid.T) {
	consult.SetFurther(&l.plan, []consult.Further{{Start: "18:00", Minutes: float64(rapid.IntRange(20, 300).Draw(t, "minutes"))}})
}

// print prints the page and the card of any option, the habit too.
func (l *life) print(t *rapid.T) {
	if c, ok := l.open(t); ok {
		l.pages(t, c, rapid.SampledFrom(l.plan.Options).Draw(t, "printed"))
	}
}

// pages holds every amount of a page and a card that one is told to take against
// the limit.
func (l *life) pages(t *rapid.T, c consult.Case, o record.Option) {
	page, card := AthletePageOf(c, o, l.h.practice, l.w), KitBagCardOf(c, o, l.h.practice, l.w)
	limit := c.LimitL() + 1e-6
	told := func(where string, litres, most float64) {
		if litres > most {
			t.Fatalf("%s of %q tells to drink %.3f L, the limit is %.3f L", where, o.Name, litres, most)
		}
	}
	for where, d := range map[string]During{"the page": page.During, "the card": card.During} {
		told(where, float64(sum(d.Total).Litres()), limit)
		hour := float64(sum(d.PerHour).Litres()) * c.Planner.Session().Minutes[plan.Expected] / 60
		told(where+" by the hour", hour, limit)
		rows := 0.0
		for _, ch := range d.Chances {
			rows += float64(sum(ch.Volumes).Litres())
		}
		told(where+" at the breaks", rows, limit)
		if rows+hour > 0 {
			l.printed++
		}
	}
	bag := 0.0
	for _, it := range page.Bag {
		if it.Substance != Food {
			bag += float64(it.Count) * float64(it.Fill.Litres())
		}
	}
	told("the bag", bag, limit)
	for _, b := range page.Bars {
		if b.Planned {
			// A food's dry mass fills the bar too; what limits is its water.
			water := c.Planner.Evaluate(plan.Expected, c.MixOf(o)).Fluid.FoodWaterL
			told("the bar", float64(b.taken()-b.Food)+water, limit)
		}
	}
	for _, x := range page.Options {
		litres := 0.0
		for _, p := range x.Parts {
			litres += float64(p.Litres)
		}
		told("a way beside it", litres, limit)
	}
	for _, f := range page.After.Further {
		litres := 0.0
		for _, p := range f.Parts {
			litres += float64(p.Litres)
		}
		long, length, _, err := c.ForMinutes(plan.Mix{}, float64(f.Minutes))
		if err != nil {
			t.Fatal(err)
		}
		told("a further session", litres, long.Planner.CeilingOf(length).FluidL+1e-6)
	}
}

// trip takes the agreed plan to another air and prints what would be agreed there.
func (l *life) trip(t *rapid.T) {
	if l.plan.State != record.PlanAgreed {
		return
	}
	s := record.Stop{Meta: record.Meta{ID: "s"}, From: "2026-07-11", Until: "2026-07-17", Air: record.Air{
		Temperature: record.Num(rapid.Float64Range(5, 38).Draw(t, "air"), quantity.DegreeCelsius), Humidity: record.Num(50, quantity.PerCent),
	}}
	d := l.h.desk.WithFrozen(l.kept)
	there, err := consult.NewTraveller(l.athlete, []consult.Findings{consult.Find(l.test, l.athlete, nil, d)}, &l.plan, l.places, composeDay(), d).Plan(s)
	if err != nil || !there.Planned {
		return
	}
	c, err := there.Draft(consult.StopNames{Plan: "a", Option: "b"}, "2026-07-20", composeDay(), d)
	if err != nil {
		t.Fatal(err)
	}
	if o, _ := consult.OptionByID(c.Plan, c.Plan.Agreement.OptionID); c.MayAgree(o) == nil {
		l.pages(t, c, o)
	}
}

// Nothing that is agreed, decided or printed passes the limit, whatever is done with
// a plan and its test in whatever order.
func TestNothingPassesTheLimit(t *testing.T) {
	h, w := openHouse(t), english(t)
	a := h.athlete(t, "Ravka")
	p, b := h.plan(t, a)
	places, err := climate.LoadPlaces()
	if err != nil {
		t.Fatal(err)
	}
	printed := 0
	rapid.Check(t, func(t *rapid.T) {
		l := &life{h: h, w: w, athlete: a, sheet: b.Tests[0].Test, test: b.Tests[0].Test.Clone(), plan: p.Clone(), places: places}
		l.plan.State, l.plan.Agreement.AgreedAt = record.PlanDraft, nil
		t.Repeat(map[string]func(*rapid.T){
			"fill": l.fill, "agree": l.agree, "decide": l.decide, "correct": l.correct, "reopen": l.reopen, "further": l.further,
			"print": l.print, "trip": l.trip,
		})
		printed += l.printed
	})
	if printed == 0 {
		t.Error("no page told anybody to drink: this test cannot fail")
	}
}
