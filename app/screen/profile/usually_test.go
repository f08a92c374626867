package profile

import (
	"context"
	"math"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// telling opens the profile of an athlete with a draft plan and tells the usual
// habit and the aims.
func telling(t *testing.T) (*bench, record.Athlete) {
	t.Helper()
	d, _ := apptest.Demo(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.AthleteNamed(t, d, "Sefa").ID})
	for _, f := range []struct{ name, text string }{
		{"habit.minutes", "100"}, {"habit.water", "0.3"}, {"habit.drink", "0.2"}, {"habit.portions", "1"}, {"aim.carbohydrate", "45"}, {"aim.deficit", "2.5"},
	} {
		b.enter("profile."+f.name, f.text)
	}
	b.pick("profile.habit.of", "Sports drink 8")
	b.pick("profile.habit.food", "Fig bar")
	return b, b.kept()
}

// What the athlete usually drinks and eats, of what, and the aims set with them are
// kept as they were told.
func TestUsualHabitAndAimsAreKept(t *testing.T) {
	_, a := telling(t)
	h := a.Habit
	if h.Minutes.Or(0) != 100 || h.Water.Or(0) != 0.3 || h.Drink.Or(0) != 0.2 || h.Portions.Or(0) != 1 {
		t.Errorf("kept %+v", h)
	}
	if h.DrinkID != "generic.drink-8" || h.FoodID != "generic.fig-bar" || h.FoodName != "Fig bar" {
		t.Errorf("of %q and %q, %q", h.DrinkID, h.FoodID, h.FoodName)
	}
	if a.CarbohydrateAim.Or(0) != 45 || a.DeficitAim.Or(0) != 2.5 {
		t.Errorf("aims %v g/h and %v %%", a.CarbohydrateAim.Or(0), a.DeficitAim.Or(0))
	}
}

// They are what a plan starts from once that is chosen: litres an hour and portions an
// hour over its session, with the drink and the food that were named; the aims hold
// without being chosen.
func TestPlanStartsFromTheUsualHabit(t *testing.T) {
	b, a := telling(t)
	ctx, d := context.Background(), b.desk
	tests, err := d.AllFindings(ctx, a)
	if err != nil {
		t.Fatal(err)
	}
	plans, err := d.Store.Plans(ctx, a.ID)
	if err != nil || len(plans) == 0 {
		t.Fatalf("%d plans, %v", len(plans), err)
	}
	c, err := d.OpenPlan(ctx, plans[0], a, tests)
	if err != nil {
		t.Fatal(err)
	}
	if x := c.Planner.Background().Carbohydrate; !x.Known || x.Value != 45 {
		t.Errorf("carbohydrate asked for: %+v", x)
	}
	if c.Limit() != 2.5 {
		t.Errorf("the limit of the deficit is %g %%", c.Limit())
	}
	before := c.Planner.Evaluate(plan.Expected, c.Planner.Habit())
	p := c.Plan.Clone()
	if err := c.StartFrom(&p, true, d.Calculate()); err != nil {
		t.Fatal(err)
	}
	if c, err = d.OpenPlan(ctx, p, a, tests); err != nil {
		t.Fatal(err)
	}
	hours := c.Planner.Session().Minutes[plan.Expected] / 60
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	amounts := map[record.ID]float64{}
	for _, it := range habit.Items {
		amounts[it.ProductID] = it.Volume.Or(0) + it.Portions.Or(0)
	}
	for id, want := range map[record.ID]float64{consult.Water: 300 * hours, "generic.drink-8": 200 * hours, "generic.fig-bar": hours} {
		if math.Abs(amounts[id]-want) > max(5, 0.02*want) && id != "generic.fig-bar" || id == "generic.fig-bar" && math.Abs(amounts[id]-want) > 0.25 {
			t.Errorf("%s: %g, want %g", id, amounts[id], want)
		}
	}
	q := c.Planner.Evaluate(plan.Expected, c.Planner.Habit())
	if math.Abs(q.Fluid.DrunkL-0.5*hours) > 0.02 || math.Abs(q.Fluid.DrunkL-before.Fluid.DrunkL) < 0.02 {
		t.Errorf("the habit drinks %g L in %g h; at the test %g L", q.Fluid.DrunkL, hours, before.Fluid.DrunkL)
	}
}
