package planner

import (
	"context"
	"math"
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// decided keeps what the practitioner decided: the decision, where the steps
// stand now, the day of the next review; and, when the next step is taken, what
// the stomach is used to by now, with the reason, in the athlete's profile. It
// can be taken back as any other step.
func (v *View) decided(d record.Decision, why string, review record.Date, usual plan.Usual) {
	stood, _, _ := consult.StepNow(v.now.plan)
	r := v.review(d, why)
	kept := v.keepBecause(why, "planner.decision", func(p *record.Plan) {
		consult.Decide(p, r)
		if review != "" {
			p.Agreement.Review = review
		}
	})
	if !kept {
		return
	}
	if d == record.DecisionNext {
		v.raiseUsual(usual, why)
	}
	v.chooseInForce()
	if d == record.DecisionBack && v.firstStep(stood.ID) {
		v.desk.Say(v.sp.say("planner.decision.first"), v.sp.say("planner.correct"), v.askCorrection)
		return
	}
	v.desk.Offer(v.standsWords(), v.sp.say("planner.undo"), func() { v.undoReview(r.ID) })
}

// takeBack writes down that the decision made last was a mistake, and puts
// everything where it stood before it.
func (v *View) takeBack() {
	last, ok := consult.ToTakeBack(v.now.plan)
	if !ok {
		return
	}
	day, _ := last.Date.Time()
	why := v.sp.say("planner.takeback.why", lower(v.decisionWord(last.StepID, last.Decision)), v.sp.w.Day(day))
	before, r := v.now.plan, v.review(record.DecisionUndone, why)
	if !v.keepBecause(why, "planner.takeback", func(p *record.Plan) { consult.TakeBack(p, r) }) {
		return
	}
	v.followUsual(before, v.now.plan)
	v.chooseInForce()
	v.desk.Offer(sentences(v.sp.say("planner.takeback.done"), v.standsWords()), v.sp.say("planner.undo"), func() { v.undoReview(r.ID) })
}

// review is a decision of today's.
func (v *View) review(d record.Decision, why string) record.Review {
	return record.Review{
		Meta: record.Meta{ID: record.NewID(), CreatedAt: v.desk.Now()}, Date: v.desk.Today(), Decision: d, Note: why,
	}
}

// keepBecause changes the plan with a written reason and has it kept at once;
// false, with the plan as it was and words at the foot, when that failed.
func (v *View) keepBecause(why, label string, f func(p *record.Plan)) bool {
	if !v.b.FlushNow() {
		return false
	}
	v.b.Doc.ChangeBecause(why, label, func(s *sheet) { f(&s.Record) })
	if !v.b.FlushNow() {
		v.b.Undo()
		return false
	}
	v.changed()
	return true
}

// undoReview goes a step back while a review is still the last that was written
// down.
func (v *View) undoReview(id record.ID) {
	list := v.now.plan.Reviews
	if n := len(list); n > 0 && list[n-1].ID == id {
		v.Undo()
	}
}

// chooseInForce takes in hand what is to be done now.
func (v *View) chooseInForce() {
	if o, ok := consult.InForce(v.now.plan); ok {
		v.chooseOption(o.ID)
	}
}

// standsWords say where the steps stand.
func (v *View) standsWords() string {
	step, place, ok := consult.StepNow(v.now.plan)
	switch {
	case !ok:
		return v.sp.say("planner.decision.kept")
	case consult.StepsDone(v.now.plan):
		return v.sp.say("planner.follow.done")
	case consult.DecisionOn(v.now.plan, step.ID) == record.DecisionHold:
		return v.sp.say("planner.decision.held", v.sp.rungName(place-1, false))
	}
	return v.sp.say("planner.decision.moved", v.sp.rungName(place-1, false))
}

// firstStep reports whether a step is the first of the plan.
func (v *View) firstStep(id record.ID) bool {
	return len(v.now.plan.Steps) > 0 && v.now.plan.Steps[0].ID == id
}

// raiseUsual writes what the stomach is used to into the profile; it rises only
// here.
func (v *View) raiseUsual(usual plan.Usual, why string) {
	before := v.file.athlete.UsualDrinking
	if !usual.Known || before.Known() && usual.LH <= *before.Value {
		return
	}
	v.setUsual(record.Num(quantity.Round(usual.LH, 2), quantity.LitrePerHour), why)
}

// followUsual lets what the stomach is used to go with the decisions that raised
// it: down with one that no longer stands, up again with one that stands again.
// A value that was changed since stays.
func (v *View) followUsual(before, after record.Plan) {
	was, is := consult.Standing(before), consult.Standing(after)
	if slices.EqualFunc(was, is, sameReview) {
		return
	}
	history, err := v.desk.Store.History(context.Background(), record.Ref{Kind: record.KindAthlete, ID: v.file.athlete.ID})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	for _, r := range without(was, is) {
		if low, high, ok := consult.UsualRaised(history, r); ok && sameRate(v.file.athlete.UsualDrinking, high) {
			v.setUsual(low, v.sp.say("planner.usual.back", r.Note))
		}
	}
	for _, r := range without(is, was) {
		if low, high, ok := consult.UsualRaised(history, r); ok && sameRate(v.file.athlete.UsualDrinking, low) {
			v.setUsual(high, r.Note)
		}
	}
}

// setUsual writes what the stomach is used to into the profile.
func (v *View) setUsual(x record.Number, why string) {
	ctx := context.Background()
	a, err := v.desk.Store.LoadAthlete(ctx, v.file.athlete.ID)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	a.UsualDrinking = x
	kept, err := v.desk.Store.SaveAthlete(ctx, a, store.Edit{Why: why})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.file.athlete = kept
}

func sameReview(a, b record.Review) bool { return a.ID == b.ID }

// without are the reviews of one list that are not in another.
func without(list, other []record.Review) []record.Review {
	var out []record.Review
	for _, r := range list {
		if !slices.ContainsFunc(other, func(o record.Review) bool { return sameReview(o, r) }) {
			out = append(out, r)
		}
	}
	return out
}

// sameRate reports whether two rates of drinking are the same as they are kept.
func sameRate(a, b record.Number) bool {
	return a.Known() == b.Known() && math.Abs(a.Or(0)-b.Or(0)) < 1e-6
}
