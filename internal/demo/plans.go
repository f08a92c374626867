package demo

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// agreement is one invented plan.
type agreement struct {
	// plan ends the keys of its name and of what kind of session it is for.
	test, plan string
	// ago is the day it was agreed; draft leaves it open.
	ago   int
	draft bool
	// fluid is agreed without food.
	fluid bool
	// food makes what is eaten part of the aim, though drinks alone would do.
	food bool
	// own ends the key of the athlete's words; confidence is 0-10.
	own        string
	confidence float64
	// done are sessions recorded on the first step; next moves to the second.
	done []record.Review
	next bool
	// event is days from today; 0 for none.
	event int
	// bottles are the sizes owned, mL.
	bottles string
	// carriers are the minutes at which carriers are sure to bring the bottle: what was
	// drunk showed that there are more breaks than the table has.
	carriers []float64
}

func agreements() []agreement {
	return []agreement{
		{test: "ravka-spring", bottles: "500 750", plan: "match", ago: 0, own: "legs", confidence: 8, event: 54},
		{test: "dorian-heat", bottles: "750", plan: "hot", ago: 21, own: "half-time", confidence: 7,
			done: []record.Review{reviewed(85, 800, 2), reviewed(90, 850, 2), reviewed(95, 850, 1)}, next: true},
		{test: "jorun-warm", bottles: "500 750", plan: "ride", draft: true},
		{test: "sefa-hall", bottles: "750 1000", plan: "practice", draft: true},
		{test: "mirel-camp", bottles: "500", plan: "tempo", ago: 14, fluid: true, own: "fence", confidence: 8, done: []record.Review{reviewed(80, 250, 4)}},
		{test: "nessa-match", bottles: "750", plan: "match", ago: 2, own: "end", confidence: 7},
		{test: "ottoline-training", bottles: "500", plan: "training", ago: 20, own: "forget", confidence: 6,
			done: []record.Review{reviewed(85, 400, 2)}},
		{test: "kester-match", bottles: "1000", food: true, carriers: []float64{10, 20, 30, 60, 70, 80}, plan: "match", ago: 28, own: "sweet", confidence: 6, done: []record.Review{reviewed(70, 1200, 3), reviewed(75, 1250, 3)}},
	}
}

// reviewed is a session done under a plan: share %, mL, stomach.
func reviewed(share, drunk, stomach float64) record.Review {
	return record.Review{
		DoneShare: record.Num(share, quantity.PerCent), Drunk: record.Num(drunk, quantity.Millilitre),
		Stomach: record.Num(stomach, quantity.None),
	}
}

// addPlans begins each plan as the planner proposes it and agrees those that
// are agreed.
func (f *filler) addPlans(ctx context.Context) error {
	for _, g := range agreements() {
		if err := f.addPlan(ctx, g); err != nil {
			return fmt.Errorf("plan of %s: %w", g.test, err)
		}
	}
	return nil
}

func (f *filler) addPlan(ctx context.Context, g agreement) error {
	t := f.tests[g.test]
	a := f.athleteOf(t)
	basis, err := consult.BasisOf(a, []consult.Findings{consult.Find(t, a, nil, f.desk)}, f.today, f.desk)
	if err != nil {
		return err
	}
	p, err := consult.NewPlan(a, basis, f.desk, f.names.Options, f.today)
	if err != nil {
		return err
	}
	p.Name, p.Target.SessionName, p.Rules.Bottles = f.names.Say("demo.plan."+g.plan), f.names.Say("demo.session."+g.plan), g.bottles
	if g.event > 0 {
		p.Target.EventDate = f.day(-g.event)
	}
	if len(g.carriers) > 0 {
		if p, err = f.offered(carried(p, g.carriers), a, basis); err != nil {
			return err
		}
	}
	if g.draft {
		if p, err = f.offered(p, a, basis); err != nil {
			return err
		}
		_, err := f.store.SavePlan(ctx, p, store.Edit{})
		return err
	}
	return f.agree(ctx, p, a, basis, g)
}

// carried is a plan whose uncertain breaks are those at which carriers come, for sure.
func carried(p record.Plan, minutes []float64) record.Plan {
	var list []record.Chance
	for _, c := range p.Chances {
		if !c.Maybe {
			list = append(list, c)
			continue
		}
		for _, at := range minutes {
			c.Meta, c.AtMinute, c.Maybe = record.Meta{ID: record.NewID()}, record.Num(at, quantity.Minute), false
			list = append(list, c)
		}
		minutes = nil
	}
	slices.SortStableFunc(list, func(a, b record.Chance) int { return cmp.Compare(a.AtMinute.Or(0), b.AtMinute.Or(0)) })
	for i := range list {
		list[i].Order = i
	}
	p.Chances = list
	return p
}

// offered gives a draft what is offered for the bottles it is to be drunk from.
func (f *filler) offered(p record.Plan, a record.Athlete, b consult.Basis) (record.Plan, error) {
	c, err := consult.OpenCase(p, a, b, f.desk)
	if err != nil {
		return p, err
	}
	p, _ = c.OfferAnew(p, func(kind record.OptionKind) (plan.Mix, bool) {
		o, ok := consult.OptionOf(p, kind)
		return c.MixOf(o), ok
	})
	return p, nil
}

// agree builds the steps, agrees the plan, and records the sessions done.
func (f *filler) agree(ctx context.Context, p record.Plan, a record.Athlete, b consult.Basis, g agreement) error {
	c, err := consult.OpenCase(p, a, b, f.desk)
	if err != nil {
		return err
	}
	if g.food {
		p = aimWithFood(c, p)
		c.Plan = p
	}
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	aim, _ := consult.OptionOf(p, record.OptionAim)
	start := f.today.AddDate(0, 0, -g.ago)
	event, _ := p.Target.EventDate.Time()
	rules := plan.DefaultStepRules()
	p = c.WithLadder(c.Planner.Steps(plan.Climb{
		Length: plan.Expected, Habit: c.MixOf(habit), Aim: c.MixOf(aim), Rules: rules, Start: start, Event: event,
	}), rules.Sessions, f.names.Step)
	chosen, _ := consult.InForce(p)
	if g.fluid {
		chosen, _ = consult.OptionOf(p, record.OptionFluid)
	}
	agreed := start.Add(time.Hour)
	p.State = record.PlanAgreed
	p.Agreement = record.Agreement{
		AgreedAt: &agreed, AgreedBy: f.by, OptionID: chosen.ID, Words: f.names.Say("demo.words." + g.own),
		From: record.DateOf(start), Review: consult.ReviewDay(p, record.DateOf(start)),
	}
	for i := range p.Options {
		if p.Options[i].ID == chosen.ID {
			p.Options[i].Confidence = record.Num(g.confidence, quantity.None)
		}
	}
	if c, err = consult.OpenCase(p, a, b, f.desk); err != nil {
		return err
	}
	c.Plan = c.WithCarried(p)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		return err
	}
	kept, err := f.store.AgreePlan(ctx, c.Plan, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{})
	if err != nil {
		return err
	}
	return f.follow(ctx, kept, g)
}

// aimWithFood is a plan whose aim is the option with food.
func aimWithFood(c consult.Case, p record.Plan) record.Plan {
	food, ok := consult.OptionOf(p, record.OptionFood)
	if !ok {
		return p
	}
	p = p.Clone()
	for i, o := range p.Options {
		if o.Kind == record.OptionAim {
			p.Options[i] = c.WithMix(o, c.MixOf(food))
		}
	}
	return p
}

// follow records what was done on the first step, and the decision.
func (f *filler) follow(ctx context.Context, p record.Plan, g agreement) error {
	step, _, ok := consult.StepNow(p)
	if !ok {
		return nil
	}
	for i, r := range g.done {
		r.Meta, r.PlanID, r.StepID, r.Order = record.Meta{ID: record.NewID()}, p.ID, step.ID, i
		r.Date = f.day(g.ago - 4*(i+1))
		kept, err := f.store.SaveReview(ctx, r, store.Edit{})
		if err != nil {
			return err
		}
		p = kept
	}
	if !g.next || len(p.Steps) < 2 {
		return nil
	}
	kept, err := f.store.SaveReview(ctx, record.Review{
		Meta: record.Meta{ID: record.NewID()}, PlanID: p.ID, StepID: step.ID, Order: len(g.done), Date: f.day(g.ago - 4*len(g.done) - 1),
		Decision: record.DecisionNext,
	}, store.Edit{})
	if err != nil {
		return err
	}
	p = kept.Clone()
	p.Steps[0].State, p.Steps[1].State = record.StepDone, record.StepNow
	p.Agreement.Review = f.day(-6)
	_, err = f.store.SavePlan(ctx, p, store.Edit{})
	return err
}

// athleteOf finds whose test it is.
func (f *filler) athleteOf(t record.Test) record.Athlete {
	for _, a := range f.athletes {
		if a.ID == t.AthleteID {
			return a
		}
	}
	return record.Athlete{}
}
