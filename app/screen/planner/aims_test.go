package planner

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// What the plan is to meet is chosen on the screen, kept, and asked of the mix at
// once; an empty field goes back to the advice.
func TestAims(t *testing.T) {
	b := begun(t)
	b.tab(TabSession)
	b.option(record.OptionFood)
	advice := b.v.now.planCase.Planner.Aim()
	if !advice.Carbohydrate.On || advice.Sodium.On {
		t.Fatalf("begins with %+v", advice)
	}
	for name, text := range map[string]string{"carbohydrate.low": "50", "carbohydrate.high": "55", "sodium.low": "400", "drinking": "3"} {
		b.Fill("planner.aim."+name, text)
	}
	b.settle()
	aim := b.v.now.planCase.Planner.Aim()
	if aim.Carbohydrate != plan.Within(50, 55) || !aim.Sodium.On || aim.Sodium.Low != 400 || aim.Drinking != advice.Drinking {
		t.Errorf("aims at %+v", aim)
	}
	if kept := b.kept().Aims; kept.CarbohydrateLow.Or(0) != 50 || kept.SodiumLow.Or(0) != 400 {
		t.Errorf("kept %+v", kept)
	}
	if c := b.v.now.planCase.Planner.Misses(plan.Expected, b.v.now.mix); !c.Has(plan.CarbohydrateLeast|plan.CarbohydrateMost) || !c.Has(plan.SodiumLeast) {
		t.Errorf("misses %v", c.Codes())
	}
	b.Fill("planner.aim.carbohydrate.low", "")
	b.Fill("planner.aim.carbohydrate.high", "")
	b.settle()
	if got := b.v.now.planCase.Planner.Aim().Carbohydrate; got != advice.Carbohydrate {
		t.Errorf("emptied, the aim is %+v, not %+v", got, advice.Carbohydrate)
	}
}

// The other range in use is one click away where it fits the session.
func TestOtherRange(t *testing.T) {
	b := begun(t)
	b.tab(TabSession)
	b.Click("planner.aim.other")
	got := b.v.now.planCase.Planner.Aim().Carbohydrate
	if want, ok := newAimsForm(b.v).otherAdvice(); !ok || got.Range != want.Range {
		t.Errorf("aims at %+v, not at %+v", got, want)
	}
}

// Where advice to add salt is withheld no sodium is aimed at, and the drink is
// not held against what drinks for replacement contain.
func TestNoSodiumAimWhereSaltIsWithheld(t *testing.T) {
	b := begun(t)
	if notes := b.v.sp.sodiumNotes(b.v.live.at, b.v.live.habit, true); !strings.Contains(notes[1], "usual 20–50") {
		t.Errorf("the drink reads %q", notes)
	}
	n := b.v.live.at.Sodium
	n.HoldMatters = false
	if text := b.v.sp.hold(b.v.now, n); !strings.Contains(text, "makes drinking easier") {
		t.Errorf("where it does not matter it says %q", text)
	}
	n.HoldMatters, n.HoldMgH = true, plan.Between(400, 300, 520)
	if text := b.v.sp.hold(b.v.now, n); !strings.Contains(text, "400") || !strings.Contains(text, "300 to 520") {
		t.Errorf("where it matters it says %q", text)
	}
	a := b.v.file.athlete
	a.Flags = append(a.Flags, record.Flag{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: record.FlagKidney})
	if _, err := b.desk.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	again := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	again.tab(TabSession)
	if again.Has("planner.aim.sodium.low") {
		t.Error("a sodium aim can be typed")
	}
	p := again.v.now.plan
	p.Aims.SodiumLow = record.Num(400, quantity.MilligramPerHour)
	if got, err := consult.OpenCase(p, a, again.v.now.planCase.Basis, b.desk.Calculate()); err != nil || got.Planner.Aim().Sodium.On {
		t.Errorf("sodium is aimed at, %v", err)
	}
	again.option(record.OptionFood)
	if q := again.v.live.at.Sodium; !q.HoldMgH.Known || again.v.sp.hold(again.v.now, q) != "" {
		t.Errorf("of holding the blood's sodium it says %q", again.v.sp.hold(again.v.now, q))
	}
	if notes := again.v.sp.sodiumNotes(again.v.live.at, again.v.live.habit, again.v.now.salted()); strings.Contains(notes[1], "usual") {
		t.Errorf("the drink reads %q", notes)
	}
}
