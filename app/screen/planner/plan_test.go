package planner

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/compare"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/steps"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Another length of the session has its own loss and ceiling; its amounts
// follow from the expected one.
func TestLengths(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabSession)
	b.Fill("planner.session.long", "130")
	b.Fill("planner.session.short", "60")
	expected := b.v.Live.At
	b.settle()
	b.v.ui.strip.length.OnChosen("long")
	long := b.v.Live.At
	if long.Minutes != 130 || !(long.LossL.Value > expected.LossL.Value) || !(long.Ceiling.FluidL > expected.Ceiling.FluidL) || !(long.Fluid.DrunkL > expected.Fluid.DrunkL) {
		t.Errorf("long: %v min, loss %v, ceiling %v, drunk %v", long.Minutes, long.LossL.Value, long.Ceiling.FluidL, long.Fluid.DrunkL)
	}
	if !b.slider(plan.Water).Disabled() || b.v.Now.Movable() {
		t.Error("the amounts of another length can be moved")
	}
	b.v.ui.strip.length.OnChosen("expected")
	if b.v.Live.At.Fluid != expected.Fluid || b.slider(plan.Water).Disabled() {
		t.Error("back at the expected length it is another mix")
	}
	p := b.kept()
	if p.Target.Long.Or(0) != 130 || p.Target.Short.Or(0) != 60 {
		t.Errorf("kept %v, %v", p.Target.Long, p.Target.Short)
	}
}

// A session that cannot be calculated with is said, kept, and can be put right,
// also after the plan was opened again.
func TestWrongSession(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	b.option(record.OptionFood)
	b.tab(part.TabSession)
	b.Fill("planner.session.short", "120")
	b.Fill("planner.session.minutes", "")
	b.kept()
	again := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	for _, at := range []*bench{b, again} {
		title, sentence := at.v.ui.page.trouble.Text()
		if title == "" || sentence == "" {
			t.Fatalf("said %q, %q", title, sentence)
		}
		if at.v.Live.At.Minutes != 95 {
			t.Errorf("calculated with %v min, the test's are 95", at.v.Live.At.Minutes)
		}
	}
	again.tab(part.TabSession)
	again.Fill("planner.session.minutes", "130")
	if title, _ := again.v.ui.page.trouble.Text(); title != "" || again.v.Live.At.Minutes != 130 {
		t.Errorf("put right it still says %q, %v min", title, again.v.Live.At.Minutes)
	}
	if p := again.kept(); p.Target.Minutes.Or(0) != 130 || p.Target.Short.Or(0) != 120 {
		t.Errorf("kept %v, %v", p.Target.Minutes, p.Target.Short)
	}
}

// The option table stands for the record: duplicate, rename, mark, delete.
func TestOptions(t *testing.T) {
	b := begun(t)
	food := b.option(record.OptionFood)
	b.tab(part.TabBeside)
	b.Click("planner.option.duplicate")
	copied := b.v.Now.Selected()
	if copied.ID == food.ID || copied.Kind != record.OptionOwn || b.v.Now.PlanCase.MixOf(copied) != b.v.Now.PlanCase.MixOf(food) {
		t.Fatalf("the copy is %+v", copied)
	}
	b.Click("planner.option.mark")
	if p := b.kept(); p.Agreement.OptionID != copied.ID {
		t.Errorf("marked %q", p.Agreement.OptionID)
	}
	b.settle()
	b.Click("planner.option.delete")
	if p := b.kept(); p.Agreement.OptionID != "" || len(state.SideBySide(p)) != 4 {
		t.Errorf("after deleting %d options, marked %q", len(state.SideBySide(p)), p.Agreement.OptionID)
	}
	b.v.Undo()
	if p := b.kept(); p.Agreement.OptionID != copied.ID || len(state.SideBySide(p)) != 5 {
		t.Errorf("after undo %d options, marked %q", len(state.SideBySide(p)), p.Agreement.OptionID)
	}
	if _, ok := b.Find("planner.option.delete").(*field.Button); !ok {
		t.Error("no button")
	}
	b.option(record.OptionFood)
	if b.v.ui.parts[part.TabBeside].(*compare.Beside).Tools.Remove.Disabled() == false {
		t.Error("an option the consult starts from can be deleted")
	}
}

// Low confidence halves the steps.
func TestSmallerStep(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	b.tab(part.TabSteps)
	usual := len(b.v.ui.parts[part.TabSteps].(*steps.StepsTab).Ladder.Steps)
	b.tab(part.TabBeside)
	b.Focus("planner.option.confidence")
	b.Type("5")
	if !b.Has("planner.smaller") {
		t.Fatal("nothing is proposed at a confidence of 5")
	}
	b.Click("planner.smaller")
	b.settle()
	if got := len(b.v.ui.parts[part.TabSteps].(*steps.StepsTab).Ladder.Steps); !(got > usual) {
		t.Errorf("%d steps of half the size, %d of the usual", got, usual)
	}
}

// A plan for an athlete without a test that can carry one says what is missing.
func TestEmptyStates(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	b.Click("planner.test")
	if last := (*went)[0]; last.Screen != desk.Tests || !last.New {
		t.Errorf("went to %+v", last)
	}
	_, test := tested(t, d, a, 62.4)
	b = openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	b.Click("planner.begin")
	last := (*went)[1]
	if last.Screen != desk.Plan || !last.New || last.Part != string(test.ID) {
		t.Fatalf("went to %+v", last)
	}
	begun := openAt(t, d, went, last).v.Place()
	b = openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID})
	if b.v.Binder == nil || begun.New || begun.Record != b.v.Now.Plan.ID {
		t.Errorf("the plan that was begun is not kept, or its place is %+v", begun)
	}
	if err := d.Store.Delete(context.Background(), record.Ref{Kind: record.KindTest, ID: test.ID}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if b = openAt(t, d, went, begun); b.v.Binder != nil || b.v.Place().Record != begun.Record {
		t.Errorf("a plan whose test is gone is at %+v", b.v.Place())
	}
	if _, err := New(d, desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: "nowhere"}); err == nil {
		t.Error("a plan that is not there opened")
	}
	if c := care.Of(a, d.Now()); c.MassHidden {
		t.Error("the athlete's mass is hidden")
	}
}

// A swimmer's plan goes by the swimmer's own test, is called no estimate, and says where
// it holds and how to weigh; of other air it says that nothing is estimated.
func TestPlanInWater(t *testing.T) {
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	open, err := d.Store.ReopenTest(context.Background(), test.ID, "swum")
	if err != nil {
		t.Fatal(err)
	}
	open.Session.Sport, open.Session.Activity = "swimming", ""
	if _, err := d.Store.SaveTest(context.Background(), open, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	if b.v.Binder == nil {
		t.Fatalf("no plan: %q", strings.Join(apptest.Texts(b.w.Content()), " "))
	}
	c := b.v.Now.PlanCase
	if c.Basis.Kind != record.BasisTest || c.OwnTests() != climate.MeasuredInWater {
		t.Errorf("based on %s, %q", c.Basis.Kind, c.OwnTests())
	}
	said := ""
	for _, one := range b.v.Speaker.Cautions(b.v.Now, b.v.Live.At) {
		said += one.Text + " "
	}
	if !strings.Contains(said, "for this pool and effort only") || !strings.Contains(said, "without the suit") {
		t.Errorf("it says %q", said)
	}
}

// A plan made for a stop of a trip, though newer, is not shown as the athlete's;
// it is reached from the list.
func TestPlanOfATripIsReached(t *testing.T) {
	b := begun(t)
	if at := b.asked(); !at.Agree() {
		t.Fatal(b.refusal(at))
	}
	home, ctx := b.kept(), context.Background()
	trip, err := b.desk.Store.SaveTrip(ctx, record.Trip{Name: "July", Stops: []record.Stop{{Place: "Camp"}}}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	away := consult.Successor(home, "")
	away.Name, away.Basis.StopID = "Camp, an estimate", trip.Stops[0].ID
	if away, err = b.desk.Store.SavePlan(ctx, away, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if plans, err := b.desk.Store.Plans(ctx, home.AthleteID); err != nil || plans[0].ID != away.ID {
		t.Fatalf("the plan of the trip is not the newest: %v", err)
	}
	b = openAt(t, b.desk, b.went, desk.Place{Screen: desk.Plan, Athlete: home.AthleteID})
	if b.v.Now.Plan.ID != home.ID {
		t.Errorf("%q is shown", b.v.Now.Plan.Name)
	}
	b.Pick("planner.plan", "Camp, an estimate")
	if last := (*b.went)[len(*b.went)-1]; last.Record != away.ID {
		t.Errorf("the list leads to %+v", last)
	}
	if at := agreement.NewAgreement(b.v.Plan); len(at.Older) != 0 {
		t.Errorf("it may replace %d plans", len(at.Older))
	}
}
