package planner

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/review"
	"ebbwell/app/screen/planner/steps"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// comfortable records two sessions that went well.
func (b *bench) comfortable() {
	b.t.Helper()
	for range 2 {
		b.Click("planner.done.record")
		b.Fill("planner.done.share", "95")
		b.Fill("planner.done.drunk", "1100")
		b.Focus("planner.done.stomach")
		b.Type("1")
		b.Click("planner.session.done.yes")
		b.settle()
	}
}

// decide decides, with a reason where one is given.
func (b *bench) decide(d record.Decision, why string) {
	b.t.Helper()
	b.settle()
	b.Click("planner.decide." + string(d))
	if why != "" {
		b.Fill("planner.decision.why", why)
	}
	b.Click("planner.decision.yes")
	b.settle()
}

// place is the place of the step in force as it is kept.
func (b *bench) place() int {
	b.t.Helper()
	_, place, _ := consult.StepNow(b.kept())
	return place
}

// Sessions done are recorded, the rule proposes, the practitioner decides, and
// only so the tolerance rises, with the reason in the athlete's history.
func TestFollowUp(t *testing.T) {
	b := stepped(t)
	for _, stomach := range []string{"2", "1"} {
		b.Click("planner.done.record")
		b.Fill("planner.done.share", "90")
		b.Fill("planner.done.drunk", "1100")
		b.Focus("planner.done.stomach")
		b.Type(stomach)
		b.Click("planner.session.done.yes")
		b.settle()
	}
	p := b.kept()
	if len(p.Reviews) != 2 || p.Reviews[0].Drunk.Or(0) != 1100 || p.Reviews[1].Stomach.Or(-1) != 1 || p.State != record.PlanAgreed {
		t.Fatalf("kept %+v", p.Reviews)
	}
	if got := review.Proposal(b.v.Plan); got.Decision != plan.Next {
		t.Fatalf("proposes %+v", got)
	}
	before := b.v.File.Athlete.UsualDrinking.Or(0)
	b.Click("planner.decide.hold")
	b.Click("planner.decision.yes")
	if !b.Has("planner.decision.yes") {
		t.Fatal("decided against the rule without a reason")
	}
	b.Key(fyne.KeyEscape)
	if a := b.athlete(); a.UsualDrinking.Or(0) != before {
		t.Error("the tolerance rose without a decision")
	}
	b.Click("planner.decide.next")
	b.Click("planner.decision.yes")
	p = b.kept()
	if _, place, _ := consult.StepNow(p); place != 2 || p.Steps[0].State != record.StepDone || len(p.Reviews) != 3 || p.Reviews[2].Decision != record.DecisionNext {
		t.Fatalf("step %d is in force, %+v", place, p.Reviews)
	}
	a := b.athlete()
	if !(a.UsualDrinking.Or(0) > before) {
		t.Errorf("the stomach is used to %v after %v L/h", a.UsualDrinking.Or(0), before)
	}
	changes, err := b.desk.Store.History(context.Background(), record.Ref{Kind: record.KindAthlete, ID: a.ID})
	if err != nil || len(changes) == 0 || changes[0].Field != "usualDrinking" || changes[0].Why == "" {
		t.Errorf("the history says %+v, %v", changes[:1], err)
	}
	if b.v.Now.Selected().Name != "Step 2" {
		t.Errorf("%q in hand", b.v.Now.Selected().Name)
	}
}

// Heavier after a session goes back, whatever else went well.
func TestHeavierGoesBack(t *testing.T) {
	b := stepped(t)
	b.Click("planner.done.record")
	b.Fill("planner.done.share", "100")
	b.Click("planner.done.heavier")
	b.Click("planner.session.done.yes")
	p := review.Proposal(b.v.Plan)
	if p.Decision != plan.Back || p.Reason != plan.ReviewGained {
		t.Fatalf("proposes %+v", p)
	}
	b.settle()
	b.Click("planner.decide.back")
	b.Click("planner.decision.yes")
	if _, place, _ := consult.StepNow(b.kept()); place != 1 {
		t.Errorf("step %d is in force", place)
	}
	if len(*b.said) == 0 || !strings.Contains((*b.said)[len(*b.said)-1], "no step before") {
		t.Errorf("said %q", *b.said)
	}
}

// A decision is taken back as any other step: with it go where the steps stand,
// the next review and what the stomach is used to; done again, they come back.
func TestDecisionIsTakenBack(t *testing.T) {
	b := stepped(t)
	var undo func()
	b.desk.Say = func(sentence, action string, do func()) {
		*b.said = append(*b.said, sentence)
		if undo = do; action != b.v.Speaker.Say("planner.undo") {
			t.Errorf("%q offers %q", sentence, action)
		}
	}
	b.comfortable()
	before, usual := b.kept(), b.athlete().UsualDrinking
	b.Click("planner.decide.next")
	b.Fill("planner.decision.review", "8.6.2026")
	b.Click("planner.decision.yes")
	raised := b.athlete().UsualDrinking
	if b.place() != 2 || b.kept().Agreement.Review != "2026-06-08" || !(raised.Or(0) > usual.Or(0)) || undo == nil {
		t.Fatalf("on step %d, used to %v after %v, said %q", b.place(), raised.Or(0), usual.Or(0), *b.said)
	}
	if said := (*b.said)[len(*b.said)-1]; said != "Step 2 is now in force." {
		t.Errorf("said %q", said)
	}
	undo()
	p := b.kept()
	if b.place() != 1 || p.Steps[0].State != record.StepNow || p.Steps[1].State != record.StepAhead || len(p.Reviews) != 2 || p.Agreement.Review != before.Agreement.Review {
		t.Errorf("taken back, %+v, %+v", p.Steps, p.Reviews)
	}
	if got := b.athlete().UsualDrinking; !got.Same(usual) {
		t.Errorf("the stomach is used to %v, before it was %v", got.Or(0), usual.Or(0))
	}
	if b.v.Now.Selected().Name != "Step 1" {
		t.Errorf("%q in hand", b.v.Now.Selected().Name)
	}
	undo() // there is nothing of it left to take back
	if got := len(b.kept().Reviews); got != 2 {
		t.Errorf("pressed twice, %d reviews are left", got)
	}
	b.v.Redo()
	if got := b.athlete().UsualDrinking; b.place() != 2 || !review.SameRate(got, raised) || b.v.Now.Selected().Name != "Step 2" {
		t.Errorf("done again: step %d, used to %v", b.place(), got.Or(0))
	}
	b.v.Undo()
	if got := b.athlete().UsualDrinking; b.place() != 1 || !review.SameRate(got, usual) {
		t.Errorf("taken back again: step %d, used to %v", b.place(), got.Or(0))
	}
	changes, err := b.desk.Store.History(context.Background(), record.Ref{Kind: record.KindPlan, ID: p.ID})
	if err != nil || len(changes) < 4 {
		t.Errorf("the history of the plan says %d changes, %v", len(changes), err)
	}
}

// A wrong decision is taken back with one click, also days later, and both stay
// in the list.
func TestDecisionIsTakenBackLater(t *testing.T) {
	b := stepped(t)
	if b.Has("planner.takeback") {
		t.Fatal("there is nothing to take back")
	}
	b.comfortable()
	usual := b.athlete().UsualDrinking
	b.decide(record.DecisionNext, "")
	raised := b.athlete().UsualDrinking
	b = b.again(part.TabSteps)
	b.Click("planner.takeback")
	p := b.kept()
	if b.place() != 1 || p.Steps[1].State != record.StepAhead || len(p.Reviews) != 4 || p.Reviews[3].Decision != record.DecisionUndone || p.Reviews[3].StepID != p.Steps[0].ID {
		t.Fatalf("%+v, %+v", p.Steps, p.Reviews)
	}
	if p.Reviews[3].Note != "undone: next step, decided on 18 May" {
		t.Errorf("written down as %q", p.Reviews[3].Note)
	}
	if got := b.athlete().UsualDrinking; !review.SameRate(got, usual) {
		t.Errorf("the stomach is used to %v, before it was %v", got.Or(0), usual.Or(0))
	}
	b.settle()
	rows := strings.Join(texts(b.v.ui.parts[part.TabSteps].(*steps.StepsTab).After.Box), "\n")
	if !strings.Contains(rows, "decided: Next step") || !strings.Contains(rows, "undone: next step") {
		t.Errorf("the list says %s", rows)
	}
	if b.Has("planner.takeback") {
		t.Error("what was taken back can be taken back")
	}
	if last := (*b.said)[len(*b.said)-1]; last != "Undone. Step 1 is now in force." {
		t.Errorf("said %q", last)
	}
	b.v.Undo()
	if got := b.athlete().UsualDrinking; b.place() != 2 || len(b.kept().Reviews) != 3 || !review.SameRate(got, raised) {
		t.Errorf("after undo step %d, used to %v", b.place(), got.Or(0))
	}
}

// What the profile says since is not touched by taking a decision back.
func TestTakingBackLeavesALaterValue(t *testing.T) {
	b := stepped(t)
	b.comfortable()
	b.decide(record.DecisionNext, "")
	review.SetUsual(b.v.Plan, record.Num(0.9, b.athlete().UsualDrinking.Unit), "asked again")
	b.Click("planner.takeback")
	if got := b.athlete().UsualDrinking.Or(0); got != 0.9 || b.place() != 1 {
		t.Errorf("used to %v, step %d", got, b.place())
	}
}

// Holding, and a step back from the first, move nothing and are taken back too.
func TestHoldingIsTakenBack(t *testing.T) {
	b := stepped(t)
	b.decide(record.DecisionHold, "")
	if last := (*b.said)[len(*b.said)-1]; last != "Step 1 is held." || b.place() != 1 {
		t.Errorf("said %q, step %d", last, b.place())
	}
	b.Click("planner.takeback")
	if p := b.kept(); b.place() != 1 || consult.DecisionOn(p, p.Steps[0].ID) != "" {
		t.Errorf("%q stands", consult.DecisionOn(p, p.Steps[0].ID))
	}
}

// The last step is done by a decision, and that is said.
func TestLastStepDone(t *testing.T) {
	b := stepped(t)
	last := len(b.v.Now.Plan.Steps)
	for range last - 1 {
		b.decide(record.DecisionNext, "it went well")
	}
	if got := b.place(); got != last {
		t.Fatalf("on step %d of %d", got, last)
	}
	after := b.v.ui.parts[part.TabSteps].(*steps.StepsTab).After
	if text := b.text("planner.decide.next"); text != "Last step done" || after.Decide[record.DecisionNext].Disabled() {
		t.Fatalf("on the last step the button says %q", text)
	}
	b.decide(record.DecisionNext, "it went well")
	done := func(b *bench) bool {
		after := b.v.ui.parts[part.TabSteps].(*steps.StepsTab).After
		return strings.HasPrefix(after.Proposal.Text(), "All steps are done.") && after.Decide[record.DecisionNext].Disabled()
	}
	if !done(b) || !strings.HasPrefix((*b.said)[len(*b.said)-1], "All steps are done.") || b.place() != last {
		t.Errorf("says %q, said %q", after.Proposal.Text(), (*b.said)[len(*b.said)-1])
	}
	b = b.again(part.TabSteps)
	if !done(b) || b.v.Now.Selected().ID != b.v.Now.Plan.Steps[last-1].OptionID {
		t.Errorf("opened again, %q is in hand", b.v.Now.Selected().Name)
	}
	b.Click("planner.takeback")
	if done(b) || b.place() != last || b.text("planner.decide.next") != "Last step done" {
		t.Errorf("taken back, it is still done, or on step %d", b.place())
	}
}
