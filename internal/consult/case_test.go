package consult

import (
	"encoding/json"
	"errors"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/frozen"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func day() time.Time { return time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC) }

func newCase(t testing.TB) (Case, Setup) {
	t.Helper()
	sheet, a := caseSheet()
	d := testSetup(t)
	return caseOf(t, sheet, a, d), d
}

// caseOf opens a new plan on a test.
func caseOf(t testing.TB, sheet record.Test, a record.Athlete, d Setup) Case {
	t.Helper()
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, day(), d)
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
	return c
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
	// The test ended at 2.9 %; a similar day is drawn a tenth of the way from the
	// 1.74 L/h of the test to what is usual, to 1.70 L/h.
	near(t, "deficit of the habit", q.Deficit.Value, 2.82, 0.01)
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

// A further plan of the same sport and length keeps the breaks and rules of the
// one before; another sport's or length's plan is no pattern.
func TestAsBefore(t *testing.T) {
	c, d := newCase(t)
	was := c.Plan.Clone()
	was.ID, was.CreatedAt = record.NewID(), c.Plan.CreatedAt.Add(-time.Hour)
	was.Chances = was.Chances[:2]
	was.Chances[1].Name, was.Chances[1].Seconds = "by the bench", record.Num(45, quantity.Second)
	was.Rules = record.StepRules{Sessions: record.Num(4, quantity.None), Held: "salt", Further: "none"}
	other, short := was.Clone(), was.Clone()
	other.Target.Sport, short.Target.Minutes = "rugby-union", record.Num(40, quantity.Minute)
	for name, earlier := range map[string][]record.Plan{"nothing": nil, "itself": {c.Plan}, "another sport": {other}, "another length": {short}} {
		if got, err := AsBefore(c.Plan, earlier, c.Athlete, c.Basis, d); err != nil || len(got.Chances) != len(c.Plan.Chances) || got.Rules != (record.StepRules{}) {
			t.Errorf("%s: %d chances, %+v, %v", name, len(got.Chances), got.Rules, err)
		}
	}
	got, err := AsBefore(c.Plan, []record.Plan{other, was}, c.Athlete, c.Basis, d)
	if err != nil || len(got.Chances) != 2 || got.Chances[1].Name != "by the bench" || got.Chances[1].PlanID != c.Plan.ID || got.Chances[1].ID == was.Chances[1].ID {
		t.Fatalf("%+v, %v", got.Chances, err)
	}
	if got.Rules.Sessions.Or(0) != 4 || got.Rules.Held != "" || got.Rules.Further != "" {
		t.Errorf("rules %+v", got.Rules)
	}
	again, err := OpenCase(got, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	habit := again.Planner.Evaluate(plan.Expected, again.Planner.Habit()).Fluid.DrunkL
	carried := again.Planner.CarriesML(plan.Expected, PlanChances(got)) / 1000
	for _, o := range got.Options[1:] {
		if drunk := again.Planner.Evaluate(plan.Expected, again.MixOf(o)).Fluid.DrunkL; drunk > max(habit, carried)+1e-9 {
			t.Errorf("%s: %g L, the two breaks carry %g and %g was drunk", o.Kind, drunk, carried, habit)
		}
	}
}

// A test done since the agreement that lost less than the plan in force gives to
// drink speaks up; an older one, another sport's, or one that lost enough does not.
func TestOutrun(t *testing.T) {
	c, d := newCase(t)
	food, _ := OptionOf(c.Plan, record.OptionFood)
	agreed := day()
	c.Plan.State, c.Plan.Agreement = record.PlanAgreed, record.Agreement{AgreedAt: &agreed, OptionID: food.ID}
	since := func(loss float64, on record.Date, sport string) Findings {
		sheet, a := caseSheet()
		sheet.Session.Date, sheet.Session.Sport = on, sport
		for i := range sheet.Weighings {
			if w := &sheet.Weighings[i]; w.Moment == record.After {
				w.Mass = record.Num(w.Mass.Or(0)+loss, quantity.Kilogram)
			}
		}
		return Find(sheet, a, nil, d)
	}
	on, sport := record.DateOf(agreed).AddDays(9), c.Plan.Target.Sport
	for name, x := range map[string]struct {
		test Findings
		want bool
	}{
		"lost much less": {since(1.6, on, sport), true}, "lost as much": {since(0, on, sport), false},
		"before the agreement": {since(1.6, record.DateOf(agreed), sport), false}, "another sport": {since(1.6, on, "rowing"), false},
	} {
		if x.test.Sweat.Fluid.Rate.Value <= 0 || !x.test.Sweat.Fluid.Rate.Ranged {
			t.Fatalf("%s: no rate", name)
		}
		if got, ok := c.Outrun([]Findings{x.test}, day(), d); ok != x.want || ok && got.Test.Session.Date != on {
			t.Errorf("%s: %v on %s", name, ok, got.Test.Session.Date)
		}
	}
	c.Plan.State = record.PlanDraft
	if _, ok := c.Outrun([]Findings{since(1.6, on, sport)}, day(), d); ok {
		t.Error("a draft is outrun")
	}
}

// What nobody knows the contents of counts as water, or as nothing, and is said;
// so is what is more than a plan holds. A plan can begin all the same.
func TestHabitNamesItsGaps(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	g := func(x float64) record.Number { return record.Num(x, quantity.Gram) }
	bare := record.Product{Meta: record.Meta{ID: "own.bare"}, Name: "Bare", Form: "drink", Density: record.Num(1, quantity.GramPerMillilitre), PortionMass: g(500)}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	d.Pantry = NewPantry(generic, []record.Product{caseDrink(), bare})
	before := Find(sheet, a, nil, d)
	if got := before.Gaps(); len(got) != 0 {
		t.Fatalf("a sheet of known drinks has gaps: %+v", got)
	}
	bottle := func(id record.ID, name string) record.Bottle {
		return record.Bottle{ProductID: id, Name: name, Use: record.UseDrunk, Before: g(400), After: g(300)}
	}
	sheet.Bottles = append(sheet.Bottles, bottle("", "Something from a team mate"), bottle("gone", ""), bottle("own.bare", "Bare"),
		bottle("generic.drink-4", ""), bottle("generic.drink-8", ""), bottle("generic.cola", ""), bottle("generic.drink-4", ""))
	sheet.Foods = append(sheet.Foods, record.FoodEaten{Name: "Grandmother's cake", Mass: g(40)})
	f := Find(sheet, a, nil, d)
	first := len(sheet.Bottles) - 7
	want := []Gap{
		{first + 1, false, "Something from a team mate"}, {first + 2, false, ""}, {first + 3, false, "Bare"}, {first + 6, false, "Cola, flat"},
		{len(sheet.Foods), true, "Grandmother's cake"},
	}
	if got := f.Gaps(); !slices.Equal(got, want) {
		t.Errorf("gaps %+v, want %+v", got, want)
	}
	b, err := BasisOf(a, []Findings{f}, day(), d)
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
	habit, _ := OptionOf(p, record.OptionHabit)
	near(t, "water", c.MixOf(habit)[plan.Water], 700+3*100+100/1.04, 1)
	near(t, "everything drunk is in the habit", c.Planner.Evaluate(plan.Expected, c.MixOf(habit)).Fluid.DrunkL, f.Sweat.Fluid.Drunk.Value, 0.005)
}

// 1.5 L of water, 0.75 L of a 6 % drink and one 20 g snack: about 1.5 %, 35-38
// g/h, and at 1.29 L/h the guard speaks (common practice, no source).
func TestGuardSpeaksInTheCommonPracticeCase(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
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
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	// The case is worked with the sheet's own rate.
	rate := b.Tests[0].Sweat.Fluid.Rate
	b.Plan.SweatRate = plan.Between(rate.Value, rate.Range.Low, rate.Range.High)
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
	near(t, "deficit by drinks, as practice counts it", q.ByDrinks.Value, 1.5, 0.1)
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

// A plan is looked at again when its next step would begin; one without a further
// step after two weeks.
func TestReviewDay(t *testing.T) {
	steps := []record.Step{{State: record.StepNow, From: "2026-05-18"}, {State: record.StepAhead, From: "2026-05-25"}}
	done := []record.Step{{State: record.StepDone, From: "2026-05-11"}, {State: record.StepNow, From: "2026-05-18"}}
	for name, c := range map[string]struct {
		steps []record.Step
		want  record.Date
	}{"no steps": {nil, "2026-06-01"}, "a further step": {steps, "2026-05-25"}, "the last step": {done, "2026-06-01"}} {
		if got := ReviewDay(record.Plan{Steps: c.steps}, "2026-05-18"); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
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
	var in frozen.Plan
	var out []frozen.Outcome
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
		if got := again.Evaluate(plan.Expected, c.Carried(o)).Deficit.Value; got != out[i].Prediction.Deficit.Value {
			t.Errorf("%s: %v when frozen, %v again", o.Kind, out[i].Prediction.Deficit.Value, got)
		}
	}
}

func TestNoBasisWithoutARange(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Loss.NoUrine = false
	if _, err := BasisOf(a, []Findings{Find(sheet, a, nil, testSetup(t))}, day(), testSetup(t)); !errors.Is(err, ErrNoBasis) {
		t.Errorf("a provisional rate makes a basis: %v", err)
	}
	if _, err := BasisOf(a, nil, day(), testSetup(t)); !errors.Is(err, ErrNoBasis) {
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
