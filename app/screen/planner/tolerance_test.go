package planner

import (
	"strings"
	"testing"

	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/session"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What is tolerated is raised in place, with a reason and only upwards, and what is
// shown follows; with a plan agreed it rises by a review alone.
func TestToleranceIsRaisedInPlace(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	before := b.v.Now.PlanCase.Planner.Basis().Usual
	raise := func(rate, why string) {
		session.AskTolerance(b.v.Plan)
		b.Fill("planner.tolerance.rate", rate)
		if why != "" {
			b.Focus("planner.tolerance.why")
			b.Type(why)
		}
		b.Click("planner.tolerance.ask.yes")
	}
	raise("1.3", "")
	if b.athlete().UsualDrinking.Or(0) == 1.3 {
		t.Error("raised without a reason")
	}
	b.Click("planner.tolerance.ask.no")
	raise("0.05", "by mistake")
	if b.athlete().UsualDrinking.Or(0) == 0.05 || !before.Known {
		t.Errorf("lowered from %+v", before)
	}
	b.Click("planner.tolerance.ask.no")
	raise("1.3", "three sessions at that rate, stomach 1")
	if got := b.athlete().UsualDrinking.Or(0); got != 1.3 {
		t.Fatalf("the profile has %g", got)
	}
	if got := b.v.Now.PlanCase.Planner.Basis().Usual; got.LH != 1.3 || b.v.Now.PlanCase.Planner.Aim().Drinking.High != 1.3 {
		t.Errorf("the plan goes by %+v, at most %g", got, b.v.Now.PlanCase.Planner.Aim().Drinking.High)
	}
	if at := b.asked(); !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	b.settle()
	b.v.File.Plans = []record.Plan{b.kept()}
	session.AskTolerance(b.v.Plan)
	if b.Has("planner.tolerance.ask.yes") || !b.Has("planner.tolerance.agreed.done") {
		t.Error("with a plan agreed it can still be raised")
	}
}

// Breaks that carry so little that the plan would end deep have to be settled before
// anything is agreed: the question is asked, and an answer lets it go on.
func TestTightBreaksAreSettledFirst(t *testing.T) {
	b := begun(t)
	if got := agreement.NotYet(b.v.Plan); got != "" {
		t.Fatalf("at first it says %q", got)
	}
	b.v.Binder.Pick("test", func(s *part.Sheet) {
		s.Record.Target.Minutes = record.Num(240, quantity.Minute)
		s.Record.Chances = consult.RecordChances(s.Record.ID, []plan.Chance{{Code: "half-time", Minute: 40, Seconds: 8}})
	})
	if got := agreement.NotYet(b.v.Plan); !strings.Contains(got, "breaks") {
		t.Fatalf("four hours with one break of 8 s: it says %q", got)
	}
	b.Click("planner.agree")
	if b.Has("planner.agreement.yes") || b.kept().State != record.PlanDraft {
		t.Error("it is asked for all the same")
	}
	b.Click("planner.notyet.done")
	b.v.Binder.Pick("test", func(s *part.Sheet) { consult.SetWish(&s.Record, consult.BreaksConfirmed, true) })
	if got := agreement.NotYet(b.v.Plan); got != "" {
		t.Errorf("once settled it says %q", got)
	}
}
