package review

import (
	"context"
	"errors"
	"math"
	"slices"

	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
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
func decided(v *part.Plan, d record.Decision, why string, review record.Date, usual plan.Usual) {
	stood, _, _ := consult.StepNow(v.Now.Plan)
	r := decisionToday(v, d, why)
	if !mayDecide(v, func(p *record.Plan) error { return v.Now.PlanCase.Decide(p, r) }) {
		return
	}
	kept := keepBecause(v, why, "planner.decision", func(p *record.Plan) {
		consult.Decide(p, r)
		if review != "" {
			p.Agreement.Review = review
		}
	})
	if !kept {
		return
	}
	if d == record.DecisionNext {
		raiseUsual(v, usual, why)
	}
	ChooseInForce(v)
	if d == record.DecisionBack && firstStep(v, stood.ID) {
		v.Desk.Say(v.Speaker.Say("planner.decision.first"), v.Speaker.Say("planner.correct"), v.CorrectAgreed)
		return
	}
	v.Desk.Offer(standsWords(v), v.Speaker.Say("planner.undo"), func() { undoReview(v, r.ID) })
}

// takeBack writes down that the decision made last was a mistake, and puts
// everything where it stood before it.
func takeBack(v *part.Plan) {
	last, ok := consult.ToTakeBack(v.Now.Plan)
	if !ok {
		return
	}
	day, _ := last.Date.Time()
	why := v.Speaker.Say("planner.takeback.why", decisionWithin(v, last.StepID, last.Decision), v.Speaker.Words.Day(day))
	before, r := v.Now.Plan, decisionToday(v, record.DecisionUndone, why)
	if !mayDecide(v, func(p *record.Plan) error {
		_, err := v.Now.PlanCase.TakeBack(p, r)
		return err
	}) {
		return
	}
	if !keepBecause(v, why, "planner.takeback", func(p *record.Plan) { consult.TakeBack(p, r) }) {
		return
	}
	FollowUsual(v, before, v.Now.Plan)
	ChooseInForce(v)
	v.Desk.Offer(wording.Sentences(v.Speaker.Say("planner.takeback.done"), standsWords(v)), v.Speaker.Say("planner.undo"), func() { undoReview(v, r.ID) })
}

// mayDecide tries a decision on a copy of the plan. Where the step that would be in
// force is above the limit it says so, and nothing is decided.
func mayDecide(v *part.Plan, decide func(p *record.Plan) error) bool {
	p := v.Now.Plan.Clone()
	err := decide(&p)
	if err == nil {
		return true
	}
	sentence := v.Speaker.Say("planner.decision.over")
	if errors.Is(err, consult.ErrBasisOpen) {
		sentence = v.Speaker.Say("planner.decision.open")
	}
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.overlimit", Title: v.Speaker.Say("planner.decision.refused"), Sentence: sentence,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.done"), Kind: field.Primary}},
	})
	return false
}

// decisionToday is a decision of today's.
func decisionToday(v *part.Plan, d record.Decision, why string) record.Review {
	return record.Review{
		Meta: record.Meta{ID: record.NewID(), CreatedAt: v.Desk.Now()}, Date: v.Desk.Today(), Decision: d, Note: why,
	}
}

// keepBecause changes the plan with a written reason and has it kept at once;
// false, with the plan as it was and words at the foot, when that failed.
func keepBecause(v *part.Plan, why, label string, f func(p *record.Plan)) bool {
	if !v.Binder.FlushNow() {
		return false
	}
	v.Binder.Doc.ChangeBecause(why, label, func(s *part.Sheet) { f(&s.Record) })
	if !v.Binder.FlushNow() {
		v.Binder.Undo()
		return false
	}
	v.Changed()
	return true
}

// undoReview goes a step back while a review is still the last that was written
// down.
func undoReview(v *part.Plan, id record.ID) {
	list := v.Now.Plan.Reviews
	if n := len(list); n > 0 && list[n-1].ID == id {
		v.Undo()
	}
}

// ChooseInForce takes in hand what is to be done now.
func ChooseInForce(v *part.Plan) {
	if o, ok := consult.InForce(v.Now.Plan); ok {
		v.ChooseOption(o.ID)
	}
}

// standsWords say where the steps stand.
func standsWords(v *part.Plan) string {
	step, place, ok := consult.StepNow(v.Now.Plan)
	switch {
	case !ok:
		return v.Speaker.Say("planner.decision.kept")
	case consult.StepsDone(v.Now.Plan):
		return v.Speaker.Say("planner.follow.done")
	case consult.DecisionOn(v.Now.Plan, step.ID) == record.DecisionHold:
		return v.Speaker.Say("planner.decision.held", v.Speaker.RungName(place-1, false))
	}
	return v.Speaker.Say("planner.decision.moved", v.Speaker.RungName(place-1, false))
}

// firstStep reports whether a step is the first of the plan.
func firstStep(v *part.Plan, id record.ID) bool {
	return len(v.Now.Plan.Steps) > 0 && v.Now.Plan.Steps[0].ID == id
}

// raiseUsual writes what the stomach is used to into the profile; it rises only
// here.
func raiseUsual(v *part.Plan, usual plan.Usual, why string) {
	before := v.File.Athlete.UsualDrinking
	if !usual.Known || before.Known() && usual.LH <= *before.Value {
		return
	}
	SetUsual(v, record.Num(quantity.Round(usual.LH, 2), quantity.LitrePerHour), why)
}

// FollowUsual lets what the stomach is used to go with the decisions that raised
// it: down with one that no longer stands, up again with one that stands again.
// A value that was changed since stays.
func FollowUsual(v *part.Plan, before, after record.Plan) {
	was, is := consult.Standing(before), consult.Standing(after)
	if slices.EqualFunc(was, is, sameReview) {
		return
	}
	history, err := v.Desk.Store.History(context.Background(), record.Ref{Kind: record.KindAthlete, ID: v.File.Athlete.ID})
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	for _, r := range without(was, is) {
		if low, high, ok := consult.UsualRaised(history, r); ok && SameRate(v.File.Athlete.UsualDrinking, high) {
			SetUsual(v, low, v.Speaker.Say("planner.usual.back", r.Note))
		}
	}
	for _, r := range without(is, was) {
		if low, high, ok := consult.UsualRaised(history, r); ok && SameRate(v.File.Athlete.UsualDrinking, low) {
			SetUsual(v, high, r.Note)
		}
	}
}

// SetUsual writes what the stomach is used to into the profile.
func SetUsual(v *part.Plan, x record.Number, why string) {
	ctx := context.Background()
	a, err := v.Desk.Store.LoadAthlete(ctx, v.File.Athlete.ID)
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	a.UsualDrinking = x
	kept, err := v.Desk.Store.SaveAthlete(ctx, a, store.Edit{Why: why})
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	v.File.Athlete = kept
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

// SameRate reports whether two rates of drinking are the same as they are kept.
func SameRate(a, b record.Number) bool {
	return a.Known() == b.Known() && math.Abs(a.Or(0)-b.Or(0)) < 1e-6
}
