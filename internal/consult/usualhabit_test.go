package consult

import (
	"errors"
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// A plan starts from the habit of the test day or from the usual one of the
// profile, over its own session, and back; without one there is an error.
func TestStartFrom(t *testing.T) {
	c, d := newCase(t)
	p := c.Plan.Clone()
	if err := c.StartFrom(&p, true, d); !errors.Is(err, ErrNoHabit) {
		t.Fatalf("no usual habit: %v", err)
	}
	c.Athlete.Habit = record.Habit{
		Water: record.Num(0.3, quantity.LitrePerHour), Drink: record.Num(0.2, quantity.LitrePerHour),
		Portions: record.Num(1, quantity.Portion), FoodID: firstFood,
	}
	if err := c.StartFrom(&p, true, d); err != nil || !p.UsualHabit {
		t.Fatal(err)
	}
	usual, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	hours := usual.Planner.Session().Minutes[plan.Expected] / 60
	q := usual.Planner.Evaluate(plan.Expected, usual.Planner.Habit())
	if want := 0.5 * hours; q.Fluid.DrunkL < want-0.02 || q.Fluid.DrunkL > want+0.02 || q.Carbohydrate.TotalGH < 20 {
		t.Errorf("%g L and %g g/h in %g h", q.Fluid.DrunkL, q.Carbohydrate.TotalGH, hours)
	}
	if b := usual.Planner.Background(); b.Tested || b.Stomach.Known {
		t.Errorf("what is told is taken for tested: %+v", b)
	}
	if err := c.StartFrom(&p, false, d); err != nil || p.UsualHabit {
		t.Fatal(err)
	}
	again, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil || again.MixOf(p.Options[0]) != c.MixOf(c.Plan.Options[0]) {
		t.Errorf("back: %v, %v", again.MixOf(p.Options[0]), err)
	}
}

// A session as long as the test becomes as long as the usual one, with its breaks, and back
// again; one of a length that was set by hand stays, and is drunk over at the usual rates.
func TestUsualSessionHasItsLength(t *testing.T) {
	c, d := newCase(t)
	c.Athlete.Habit = record.Habit{Minutes: record.Num(70, quantity.Minute), Water: record.Num(0.6, quantity.LitrePerHour)}
	for _, x := range []struct{ set, want, water float64 }{{105, 70, 700}, {120, 120, 1200}} {
		p := c.Plan.Clone()
		p.Target.Minutes, p.Target.Short, p.Target.Long = record.Num(x.set, quantity.Minute), record.Num(90, quantity.Minute), record.Num(130, quantity.Minute)
		if err := c.StartFrom(&p, true, d); err != nil {
			t.Fatal(err)
		}
		open, err := OpenCase(p, c.Athlete, c.Basis, d)
		if err != nil {
			t.Fatal(err)
		}
		if got := open.Planner.Session().Minutes[plan.Expected]; got != x.want || open.Planner.Habit()[plan.Water] != x.water {
			t.Errorf("set to %g min: %g min, %g mL of water", x.set, got, open.Planner.Habit()[plan.Water])
		}
		for _, ch := range PlanChances(p) {
			if ch.Minute > x.want {
				t.Errorf("a break at minute %g of %g", ch.Minute, x.want)
			}
		}
		if err := c.StartFrom(&p, false, d); err != nil || p.Target.Minutes.Or(0) != x.set {
			t.Errorf("back: %g min of %g, %v", p.Target.Minutes.Or(0), x.set, err)
		}
	}
}

// Wishes and the settled breaks are kept in one line, and reach the proposal.
func TestWishes(t *testing.T) {
	c, d := newCase(t)
	p := c.Plan.Clone()
	for _, w := range Wishes() {
		SetWish(&p, w, true)
	}
	SetWish(&p, WishNoFood, false)
	open, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	if b := open.Planner.Background(); b.NoFood || !b.NoMoreDrink || !b.NoNewDrink || !b.BreaksConfirmed || Wished(p, WishNoFood) {
		t.Errorf("%q: %+v", p.Rules.Wishes, b)
	}
}

// The tolerated rate is at least what was drunk in a test with a calm stomach, and
// sets made in the practice hold where neither plan nor athlete has their own.
func TestToleranceAndSettings(t *testing.T) {
	c, d := newCase(t)
	f := c.Basis.Tests[0]
	f.Test.Feeling.Stomach = record.Num(2, quantity.None)
	a := c.Athlete
	a.UsualDrinking = record.Num(0.1, quantity.LitrePerHour)
	if u := toleratedBy(a, []Findings{f}); u.LH != f.Sweat.Fluid.DrinkingRate.Value || u.LH <= 0.1 {
		t.Errorf("tolerates %+v, drunk %g L/h", u, f.Sweat.Fluid.DrinkingRate.Value)
	}
	f.Test.Feeling.Stomach = record.Num(5, quantity.None)
	if u := toleratedBy(a, []Findings{f}); u.LH != 0.1 {
		t.Errorf("at stomach 5: %+v", u)
	}
	d.Settings.CarbohydrateAim = record.Num(40, quantity.GramPerHour)
	open, _ := OpenCase(c.Plan, c.Athlete, c.Basis, d)
	if x := open.Planner.Background().Carbohydrate; x.Value != 40 {
		t.Errorf("the practice asks for %+v", x)
	}
	for typed, want := range map[float64]float64{125: 125, 400: 0} { // 400 mL lies beyond its limits
		d.Settings.DrinkStep = record.Num(typed, quantity.Millilitre)
		open, _ = OpenCase(c.Plan, c.Athlete, c.Basis, d)
		if x := open.Planner.Background().DrinkStepML; x != want {
			t.Errorf("drinks by %g mL go by %g", typed, x)
		}
	}
	a = c.Athlete
	a.CarbohydrateAim = record.Num(50, quantity.GramPerHour)
	open, _ = OpenCase(c.Plan, a, c.Basis, d)
	if x := open.Planner.Background().Carbohydrate; x.Value != 50 {
		t.Errorf("the athlete asks for %+v", x)
	}
}
