package planner

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/figures"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/session"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// What the plan is to meet is chosen on the screen, kept, and asked of the mix at
// once; an empty field goes back to the advice.
func TestAims(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	b.option(record.OptionFood)
	advice := b.v.Now.PlanCase.Planner.Aim()
	if !advice.Carbohydrate.On || advice.Sodium.On {
		t.Fatalf("begins with %+v", advice)
	}
	for name, text := range map[string]string{"carbohydrate.low": "50", "carbohydrate.high": "55", "sodium.low": "400", "drinking": "3"} {
		b.Fill("planner.aim."+name, text)
	}
	b.settle()
	aim := b.v.Now.PlanCase.Planner.Aim()
	if aim.Carbohydrate != plan.Within(50, 55) || !aim.Sodium.On || aim.Sodium.Low != 400 || aim.Drinking != advice.Drinking {
		t.Errorf("aims at %+v", aim)
	}
	if kept := b.kept().Aims; kept.CarbohydrateLow.Or(0) != 50 || kept.SodiumLow.Or(0) != 400 {
		t.Errorf("kept %+v", kept)
	}
	if w := b.v.Now.Proposal().Wants; w.AimGH != 50 || !w.Sodium || w.SodiumMgH != 400 {
		t.Errorf("a proposal asks for %+v", w)
	}
	b.Fill("planner.aim.carbohydrate.low", "")
	b.Fill("planner.aim.carbohydrate.high", "")
	b.settle()
	if got := b.v.Now.PlanCase.Planner.Aim().Carbohydrate; got != advice.Carbohydrate {
		t.Errorf("emptied, the aim is %+v, not %+v", got, advice.Carbohydrate)
	}
}

// The other range in use is one click away where it fits the session.
func TestOtherRange(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	b.Click("planner.aim.other")
	got := b.v.Now.PlanCase.Planner.Aim().Carbohydrate
	if want, ok := session.NewAimsForm(b.v.Plan).OtherAdvice(); !ok || got.Range != want.Range {
		t.Errorf("aims at %+v, not at %+v", got, want)
	}
}

// Where advice to add salt is withheld no sodium is aimed at, and the drink is
// not held against what drinks for replacement contain.
func TestNoSodiumAimWhereSaltIsWithheld(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFluid) // the sodium of a gel is on its label alone
	if notes := figures.SodiumNotes(b.v.Speaker, b.v.Live.At, b.v.Live.Habit, true); !strings.Contains(notes[1], "usual 20–50") {
		t.Errorf("the drink reads %q", notes)
	}
	n := b.v.Live.At.Sodium
	n.HoldMatters = false
	if text := figures.Hold(b.v.Speaker, b.v.Now, n); !strings.Contains(text, "makes it easier to drink") {
		t.Errorf("where it does not matter it says %q", text)
	}
	n.HoldMatters, n.HoldMgH = true, plan.Between(400, 300, 520)
	if text := figures.Hold(b.v.Speaker, b.v.Now, n); !strings.Contains(text, "400") || !strings.Contains(text, "300 to 520") {
		t.Errorf("where it matters it says %q", text)
	}
	a := b.v.File.Athlete
	a.Flags = append(a.Flags, record.Flag{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: record.FlagKidney})
	if _, err := b.desk.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	again := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	again.tab(part.TabSession)
	if again.Has("planner.aim.sodium.low") {
		t.Error("a sodium aim can be typed")
	}
	p := again.v.Now.Plan
	p.Aims.SodiumLow = record.Num(400, quantity.MilligramPerHour)
	if got, err := consult.OpenCase(p, a, again.v.Now.PlanCase.Basis, b.desk.Calculate()); err != nil || got.Planner.Aim().Sodium.On {
		t.Errorf("sodium is aimed at, %v", err)
	}
	again.option(record.OptionFood)
	if q := again.v.Live.At.Sodium; !q.HoldMgH.Known || figures.Hold(again.v.Speaker, again.v.Now, q) != "" {
		t.Errorf("of holding the blood's sodium it says %q", figures.Hold(again.v.Speaker, again.v.Now, q))
	}
	if notes := figures.SodiumNotes(again.v.Speaker, again.v.Live.At, again.v.Live.Habit, again.v.Now.Salted()); strings.Contains(notes[1], "usual") {
		t.Errorf("the drink reads %q", notes)
	}
}

// The kind of session is chosen where the sport has several, and takes its breaks with it.
func TestKindOfSession(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	if b.Has("planner.session.kind") {
		t.Errorf("%s has kinds to choose from", b.v.Now.Plan.Target.Sport)
	}
	b.v.Binder.Pick("planner.test", func(s *part.Sheet) { s.Record.Target.Sport = "swimming" })
	b.tab(part.TabSession)
	b.Find("planner.session.kind").(*field.Choice).OnChosen("race")
	if got := b.v.Now.Plan.Chances; len(got) != 1 || got[0].Name != plan.NoDrinking || b.v.Now.Proposal().Outcome != proposal.Closed {
		t.Errorf("a race in the pool has %+v", got)
	}
	b.Find("planner.session.kind").(*field.Choice).OnChosen("training")
	if got := b.v.Now.Plan.Chances; len(got) < 3 || got[0].Name != "between-sets" {
		t.Errorf("training in the pool has %+v", got)
	}
}
