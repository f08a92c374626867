package consult

import (
	"encoding/json"
	"errors"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func newCase(t *testing.T) (Case, Desk) {
	t.Helper()
	sheet, a := caseSheet()
	d := testDesk(t)
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)})
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(a, b, d, Names{"Habit", "Without food", "With food", "Aim"}, day())
	if err != nil {
		t.Fatal(err)
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Fatal(err)
	}
	return c, d
}

func TestNewPlanBeginsAtTheHabit(t *testing.T) {
	c, _ := newCase(t)
	if len(c.Plan.Options) != 4 {
		t.Fatalf("%d options", len(c.Plan.Options))
	}
	habit, _ := OptionOf(c.Plan, record.OptionHabit)
	mix := c.MixOf(habit)
	if mix[plan.Water] != 700 || mix[plan.Drink1] != 500 {
		t.Errorf("the habit is %v", mix)
	}
	q := c.Planner.Evaluate(plan.Expected, mix)
	near(t, "deficit of the habit", q.Deficit.Value, 2.9, 0.05)
	near(t, "carbohydrate of the habit", q.Carbohydrate.TotalGH, 21, 0.1)
	fluid, _ := OptionOf(c.Plan, record.OptionFluid)
	for s := plan.Food1; s <= plan.Food4; s++ {
		if c.MixOf(fluid)[s] != 0 {
			t.Error("the option without food has food")
		}
	}
	for _, o := range c.Plan.Options[1:] {
		q := c.Planner.Evaluate(plan.Expected, c.MixOf(o))
		if q.Guards.Stops() {
			t.Errorf("%s is offered and may not be agreed: %v", o.Kind, q.Guards.Codes())
		}
	}
	if len(c.Plan.Chances) == 0 {
		t.Error("basketball has no chances to drink")
	}
}

// 1.5 L of water, 0.75 L of a 6 % drink and one 20 g snack: about 1.5 %, 35-38
// g/h, and at 1.29 L/h the guard speaks (common practice, no source).
func TestGuardSpeaksInTheCommonPracticeCase(t *testing.T) {
	sheet, a := caseSheet()
	d := testDesk(t)
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	drink := record.Product{Meta: record.Meta{ID: "own.six"}, Name: "6 %", Form: "drink", Density: record.Num(1.02, quantity.GramPerMillilitre),
		PortionMass: g(510), Per100: record.Composition{Available: g(6 / 1.02), Sodium: g(45)}}
	snack := record.Product{Meta: record.Meta{ID: "own.snack"}, Name: "Snack", Form: "solid", PortionMass: g(25),
		Per100: record.Composition{Available: g(80), Sodium: g(100), Water: g(10)}}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	d.Pantry = NewPantry(generic, []record.Product{caseDrink(), drink, snack})
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)})
	if err != nil {
		t.Fatal(err)
	}
	p := record.Plan{Meta: record.Meta{ID: "p"}, Target: record.Target{Minutes: record.Num(105, quantity.Minute), Effort: record.Num(8, quantity.None), Sport: "basketball"}}
	ml := func(x float64) record.Number { return record.Num(x, quantity.Millilitre) }
	p.Options = []record.Option{{Meta: record.Meta{ID: "o"}, Kind: record.OptionFood, Items: []record.Item{
		{Role: record.RoleWater, ProductID: Water, Volume: ml(1500)}, {Role: record.RoleDrink, ProductID: "own.six", Volume: ml(750)},
		{Role: record.RoleFood, ProductID: "own.snack", Portions: record.Num(1, quantity.Portion)},
	}}}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Fatal(err)
	}
	q := c.Planner.Evaluate(plan.Expected, c.MixOf(p.Options[0]))
	near(t, "deficit", q.Deficit.Value, 1.5, 0.1)
	if q.Carbohydrate.TotalGH < 35 || q.Carbohydrate.TotalGH > 38 {
		t.Errorf("%v g/h", q.Carbohydrate.TotalGH)
	}
	near(t, "drinking rate", q.Fluid.RateLH, 1.29, 0.005)
	if !q.Guards.Has(plan.OverStomach) {
		t.Errorf("the guards at 1.29 L/h: %v", q.Guards.Codes())
	}
}

// A mix put into an option and read again is the same mix.
func TestMixRoundTrip(t *testing.T) {
	c, _ := newCase(t)
	o := c.Plan.Options[2]
	mix := c.MixOf(o)
	mix[plan.Water], mix[plan.Drink1], mix[plan.Food1], mix[plan.Salt] = 450, 350, 1.5, 0.4
	if got := c.MixOf(c.WithMix(o, mix)); got != mix {
		t.Errorf("%v came back as %v", mix, got)
	}
	if got := c.MixOf(o); got == mix {
		t.Error("the option given was changed")
	}
}

func TestLadderGoesIntoThePlan(t *testing.T) {
	c, d := newCase(t)
	habit, _ := OptionOf(c.Plan, record.OptionHabit)
	aim, _ := OptionOf(c.Plan, record.OptionAim)
	l := c.Planner.Steps(plan.Climb{Length: plan.Expected, Habit: c.MixOf(habit), Aim: c.MixOf(aim), Rules: plan.DefaultStepRules(), Start: day()})
	if len(l.Steps) == 0 {
		t.Fatal("no steps")
	}
	p := c.WithLadder(l, 3, func(int) string { return "step" })
	if len(p.Steps) != len(l.Steps) || p.Steps[0].State != record.StepNow {
		t.Fatalf("%d steps of %d", len(p.Steps), len(l.Steps))
	}
	again := c
	again.Plan = p
	if twice := again.WithLadder(l, 3, func(int) string { return "step" }); len(twice.Options) != len(p.Options) {
		t.Errorf("steps pile up: %d options, then %d", len(p.Options), len(twice.Options))
	}
	re, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range p.Steps {
		o, ok := OptionByID(p, s.OptionID)
		if !ok || re.MixOf(o) != l.Steps[i].Mix {
			t.Errorf("step %d is kept as %v, was %v", i+1, re.MixOf(o), l.Steps[i].Mix)
		}
	}
	if o, ok := InForce(p); !ok || o.ID != p.Steps[0].OptionID {
		t.Error("the first step is not in force")
	}
}

func TestPlanFreezes(t *testing.T) {
	c, _ := newCase(t)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	var in FrozenPlan
	var out []Outcome
	if err := json.Unmarshal(inputs, &in); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(results, &out); err != nil {
		t.Fatal(err)
	}
	again, err := plan.New(in.Basis, in.Session, in.Menu, in.Aim)
	if err != nil {
		t.Fatal(err)
	}
	for i, o := range c.Plan.Options {
		if got := again.Evaluate(plan.Expected, c.MixOf(o)).Deficit.Value; got != out[i].Prediction.Deficit.Value {
			t.Errorf("%s: %v when frozen, %v again", o.Kind, out[i].Prediction.Deficit.Value, got)
		}
	}
}

func TestNoBasisWithoutARange(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Loss.NoUrine = false
	if _, err := BasisOf(a, []Findings{Find(sheet, a, nil, testDesk(t))}); !errors.Is(err, ErrNoBasis) {
		t.Errorf("a provisional rate makes a basis: %v", err)
	}
	if _, err := BasisOf(a, nil); !errors.Is(err, ErrNoBasis) {
		t.Errorf("no test makes a basis: %v", err)
	}
}

func TestTooManyItems(t *testing.T) {
	c, d := newCase(t)
	p := c.Plan.Clone()
	for _, id := range []record.ID{"generic.drink-4", "generic.drink-8", "generic.cola"} {
		p.Options[1].Items = append(p.Options[1].Items, record.Item{Role: record.RoleDrink, ProductID: id, Volume: record.Num(100, quantity.Millilitre)})
	}
	if _, err := OpenCase(p, c.Athlete, c.Basis, d); !errors.Is(err, ErrTooMany) {
		t.Errorf("four drinks beside water: %v", err)
	}
	p.Options[1].Items = []record.Item{{Role: record.RoleFood, ProductID: "gone", Name: "Gone"}}
	if _, err := OpenCase(p, c.Athlete, c.Basis, d); err == nil {
		t.Error("a product that is not there is accepted")
	}
}

func TestReviewsAreRead(t *testing.T) {
	p := record.Plan{Steps: []record.Step{{Meta: record.Meta{ID: "s"}, State: record.StepNow}}, Reviews: []record.Review{
		{StepID: "s", DoneShare: record.Num(90, quantity.PerCent), Drunk: record.Num(800, quantity.Millilitre), Stomach: record.Num(2, quantity.None)},
		{StepID: "other", DoneShare: record.Num(10, quantity.PerCent)},
		{StepID: "s", Decision: record.DecisionHold},
		{StepID: "s", DoneShare: record.Num(80, quantity.PerCent), Heavier: true},
	}}
	got := DoneOf(p, 120)
	if len(got) != 2 || got[0].DrunkLH != 0.4 || !got[0].Asked || got[1].Asked || !got[1].Gained {
		t.Errorf("read %+v", got)
	}
	if Start(p, day()) != day() || Start(record.Plan{Agreement: record.Agreement{From: "2026-05-18"}}, day()).Day() != 18 {
		t.Error("the start is wrong")
	}
}
