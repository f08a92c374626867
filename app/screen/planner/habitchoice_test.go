package planner

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A plan starts from the habit of the test day, or from the usual one of the profile:
// the arrow keys choose, the habit's amounts and figures follow, undo brings the first
// back, and the choice is kept.
func TestTheHabitIsChosen(t *testing.T) {
	b, toggle := withUsualHabit(t, 95, 0.6)
	habit := func() float64 { return b.v.Now.PlanCase.Planner.Habit()[plan.Water] }
	onTheDay, figure := habit(), b.v.ui.page.deficit.Data.HabitEnd.Figure
	if toggle.Disabled() || toggle.Chosen() != "test" || b.v.Now.Plan.UsualHabit {
		t.Fatalf("it starts from %q", toggle.Chosen())
	}
	b.Focus("planner.habit")
	b.Key(fyne.KeyRight)
	b.settle()
	want := quantity.RoundTo(600*b.v.Now.PlanCase.Planner.Session().Minutes[plan.Expected]/60, 10)
	if toggle.Chosen() != "usual" || habit() != want || want == onTheDay {
		t.Errorf("%q: %g mL of water, want %g", toggle.Chosen(), habit(), want)
	}
	if got := b.v.ui.page.deficit.Data.HabitEnd.Figure; got == figure {
		t.Errorf("the habit still ends at %s", got)
	}
	if p := b.kept(); !p.UsualHabit {
		t.Error("the choice is not kept")
	}
	b.v.Undo()
	if toggle.Chosen() != "test" || habit() != onTheDay {
		t.Errorf("undone it is %q with %g mL", toggle.Chosen(), habit())
	}
	b.v.Redo()
	toggle.OnChosen("test")
	b.settle()
	if toggle.Chosen() != "test" || habit() != onTheDay || b.kept().UsualHabit {
		t.Errorf("back on the test day it is %q with %g mL, before %g", toggle.Chosen(), habit(), onTheDay)
	}
}

// withUsualHabit begins the plan of one whose profile has a usual habit, minutes and litres
// of water an hour, and opens the session with the choice.
func withUsualHabit(t *testing.T, minutes, water float64) (*bench, *field.Toggle) {
	t.Helper()
	d, went := apptest.Desk(t)
	a, test := hockey(t, d)
	a.Habit = record.Habit{Minutes: record.Num(minutes, quantity.Minute), Water: record.Num(water, quantity.LitrePerHour)}
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
	b.tab(part.TabSession)
	return b, b.Find("planner.habit").(*field.Toggle)
}

// What is proposed starts from the habit that is chosen: with a usual one that drinks more
// no option that was offered drinks less than it, an option changed by hand stays and is
// named, and the session is as long as the usual one.
func TestOptionsStartFromTheHabitChosen(t *testing.T) {
	b, toggle := withUsualHabit(t, 120, 0.7)
	before := b.v.Now.Plan.Clone()
	toggle.OnChosen("usual")
	b.settle()
	now := b.v.Now
	if got := now.PlanCase.Planner.Session().Minutes[plan.Expected]; got != 120 {
		t.Errorf("the session lasts %g min", got)
	}
	drunk := func(o record.Option) float64 {
		return now.PlanCase.Planner.Evaluate(plan.Expected, now.PlanCase.MixOf(o)).Fluid.DrunkL
	}
	habit := now.PlanCase.Planner.Evaluate(plan.Expected, now.PlanCase.Planner.Habit()).Fluid.DrunkL
	for _, o := range now.Plan.Options {
		mix, ok := consult.Offered(now.Proposal(), o.Kind)
		if ok && (now.PlanCase.MixOf(o) != mix || drunk(o) < habit-0.05) {
			t.Errorf("%s: %g L, the habit has %g, proposed %v", o.Kind, drunk(o), habit, mix)
		}
	}
	b.v.Undo()
	if got := b.v.Now.Plan; got.UsualHabit || got.Target.Minutes.Or(0) != before.Target.Minutes.Or(0) || len(got.Chances) != len(before.Chances) {
		t.Errorf("undone: %v min, %d breaks", got.Target.Minutes.Or(0), len(got.Chances))
	}
	food := b.option(record.OptionFood)
	b.Fill("planner.water.amount", "0.33")
	toggle.OnChosen("usual")
	b.settle()
	now = b.v.Now
	if o, _ := consult.OptionByID(now.Plan, food.ID); now.PlanCase.MixOf(o)[plan.Water] != 330 {
		t.Errorf("the option changed by hand has %g mL of water", now.PlanCase.MixOf(o)[plan.Water])
	}
}

// Without a usual habit in the profile there is nothing to choose.
func TestNoChoiceWithoutAUsualHabit(t *testing.T) {
	b := begun(t)
	b.tab(part.TabSession)
	if toggle := b.Find("planner.habit").(*field.Toggle); !toggle.Disabled() || toggle.Chosen() != "test" {
		t.Errorf("%q can be changed", toggle.Chosen())
	}
}

// Of more than seven breaks the selected one has a field: a click on another takes it
// there, and what is typed is set for that break alone.
func TestTheSelectedBreakHasAField(t *testing.T) {
	d, went := apptest.Demo(t)
	b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: apptest.AthleteNamed(t, d, "Sefa").ID})
	takes := b.v.Live.Take.Takes
	if len(takes) <= 7 {
		t.Fatalf("%d breaks", len(takes))
	}
	e, page := b.v.ui.editor, b.v.ui.page
	if !e.One() || len(e.Fields) != 1 || !page.deficit.Data.OneField {
		t.Fatalf("%d fields for %d breaks", len(e.Fields), len(takes))
	}
	b.v.selectBreak(1)
	b.settle()
	if got, ok := e.Fields[0].Value(); !ok || got != float64(takes[1].ML) {
		t.Errorf("the field has %g mL, the break %d", got, takes[1].ML)
	}
	b.Fill("planner.break.1.amount", "140")
	b.Tab()
	b.settle()
	if got := b.v.Live.Take.Takes[1].ML; got != 140 {
		t.Errorf("typed 140 mL, the break has %d", got)
	}
	if set := b.v.Now.Plan.Chances; set[0].Amount.Known() || set[1].Amount.Or(0) != 140 {
		t.Errorf("set at the first %+v, at the second %+v", set[0].Amount, set[1].Amount)
	}
	x := e.Fields[0].Position().X
	b.v.selectBreak(5)
	b.settle()
	if got, _ := e.Fields[0].Value(); got != float64(b.v.Live.Take.Takes[5].ML) || e.Fields[0].Position().X <= x {
		t.Errorf("at the sixth break the field has %g mL at %g", got, e.Fields[0].Position().X)
	}
}
