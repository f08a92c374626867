package consult

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The rules of a plan are the usual ones but for what it says itself; what
// nobody could practise by is not taken.
func TestRulesOf(t *testing.T) {
	usual := plan.DefaultStepRules()
	if got := RulesOf(record.Plan{}); got != usual {
		t.Errorf("a plan that says nothing goes by %+v, not %+v", got, usual)
	}
	n := func(x float64) record.Number { return record.Num(x, quantity.None) }
	for name, c := range map[string]struct {
		own  record.StepRules
		want func(r *plan.StepRules)
	}{
		"fluid":              {record.StepRules{Fluid: n(0.1)}, func(r *plan.StepRules) { r.FluidLH = 0.1 }},
		"carbohydrate":       {record.StepRules{Carbohydrate: n(8)}, func(r *plan.StepRules) { r.CarbohydrateGH = 8 }},
		"sessions":           {record.StepRules{Sessions: n(5)}, func(r *plan.StepRules) { r.Sessions = 5 }},
		"sessions in part":   {record.StepRules{Sessions: n(2.6)}, func(r *plan.StepRules) { r.Sessions = 3 }},
		"twice in three":     {record.StepRules{PerWeek: n(1.5)}, func(r *plan.StepRules) { r.PerWeek = 1.5 }},
		"no clear days":      {record.StepRules{ClearDays: n(0)}, func(r *plan.StepRules) { r.ClearDays = 0 }},
		"nothing in a step":  {record.StepRules{Fluid: n(0), Carbohydrate: n(0), Sessions: n(0), PerWeek: n(0)}, func(*plan.StepRules) {}},
		"less than nothing":  {record.StepRules{Fluid: n(-1), Carbohydrate: n(-5), Sessions: n(-2), PerWeek: n(-1), ClearDays: n(-3)}, func(*plan.StepRules) {}},
		"beyond all measure": {record.StepRules{Fluid: n(1e9), Sessions: n(1e18), PerWeek: n(math.Inf(1)), ClearDays: n(math.NaN())}, func(*plan.StepRules) {}},
	} {
		want := usual
		c.want(&want)
		if got := RulesOf(record.Plan{Rules: c.own}); got != want {
			t.Errorf("%s: %+v, not %+v", name, got, want)
		}
	}
	p := record.Plan{Rules: record.StepRules{Sessions: n(5)}}
	half, ok := RulesOf(p).Smaller(5)
	SetStepSize(&p, half)
	if got := RulesOf(p); !ok || got.FluidLH != usual.FluidLH/2 || got.CarbohydrateGH != usual.CarbohydrateGH/2 || got.Sessions != 5 {
		t.Errorf("half the step is kept as %+v", got)
	}
}

func TestBottles(t *testing.T) {
	for text, want := range map[string][]float64{
		"": nil, "500": {500}, "500 750.5  330": {500, 750.5, 330}, "500 big -3 0 1e99 NaN": {500},
	} {
		if got := BottlesOf(record.Plan{Rules: record.StepRules{Bottles: text}}); !slices.Equal(got, want) {
			t.Errorf("%q is %v, not %v", text, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		sizes := rapid.SliceOf(rapid.Float64Range(50, 12000)).Draw(t, "sizes")
		var p record.Plan
		if SetBottles(&p, append([]float64{-1, math.NaN()}, sizes...)); !slices.Equal(BottlesOf(p), sizes) {
			t.Fatalf("%v are kept as %q and read as %v", sizes, p.Rules.Bottles, BottlesOf(p))
		}
	})
}

func TestHold(t *testing.T) {
	var p record.Plan
	Hold(&p, "generic.banana", true)
	Hold(&p, HeldSalt, true)
	Hold(&p, HeldSalt, true)
	Hold(&p, "two words", true)
	Hold(&p, "", true)
	if p.Rules.Held != "generic.banana salt" || !Held(p, HeldSalt) || Held(p, "generic") || Held(p, "") {
		t.Errorf("kept %q", p.Rules.Held)
	}
	Hold(&p, "generic.banana", false)
	Hold(&p, "never there", false)
	if p.Rules.Held != "salt" || Held(p, "generic.banana") {
		t.Errorf("kept %q", p.Rules.Held)
	}
}

// Saying that there is no further session is another thing than saying nothing.
func TestFurtherSessions(t *testing.T) {
	var p record.Plan
	if list, said := FurtherOf(p); said || len(list) != 0 {
		t.Errorf("nothing kept is read as %v, %v", list, said)
	}
	SetFurther(&p, nil)
	if list, said := FurtherOf(p); !said || len(list) != 0 {
		t.Errorf("none is kept as %q and read as %v, %v", p.Rules.Further, list, said)
	}
	for text, want := range map[string]Further{
		"15:00/95":    {Start: "15:00", Minutes: 95},
		"15:00/95/p2": {Start: "15:00", Minutes: 95, Plan: "p2"},
		"9:05/":       {Start: "09:05"}, "/": {}, "15:00": {Start: "15:00"}, "//p2": {Plan: "p2"},
		"25:00/x/p/q": {}, "noon/-5": {}, "15:00/1e300": {Start: "15:00"}, "15:00/NaN": {Start: "15:00"},
	} {
		p.Rules.Further = text
		if list, said := FurtherOf(p); !said || len(list) != 1 || list[0] != want {
			t.Errorf("%q is %+v, %v, not %+v", text, list, said, want)
		}
	}
}

func TestFurtherIsKept(t *testing.T) {
	further := rapid.Custom(func(t *rapid.T) Further {
		f := Further{Minutes: float64(rapid.IntRange(15, 1440).Draw(t, "minutes"))}
		if rapid.Bool().Draw(t, "timed") {
			f.Start = record.ClockAt(float64(rapid.IntRange(0, 1439).Draw(t, "start")))
		}
		if rapid.Bool().Draw(t, "short") {
			f.Minutes = 0
		}
		if rapid.Bool().Draw(t, "other") {
			f.Plan = record.NewID()
		}
		return f
	})
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(further, 0, 5).Draw(t, "sessions")
		var p record.Plan
		SetFurther(&p, list)
		if got, said := FurtherOf(p); !said || !slices.Equal(got, list) {
			t.Fatalf("%+v is kept as %q and read as %+v", list, p.Rules.Further, got)
		}
	})
}

// A session of another length is calculated beside the plan's own, at the same
// rate of loss; the case itself stays.
func TestLasting(t *testing.T) {
	c, _ := newCase(t)
	expected := c.Planner.Session().Minutes[plan.Expected]
	food, _ := OptionOf(c.Plan, record.OptionFood)
	mix := c.MixOf(food)
	own := c.Planner.Evaluate(plan.Expected, mix)
	for _, minutes := range []float64{expected - 30, expected, expected + 45} {
		other, at, err := c.Lasting(minutes)
		if err != nil {
			t.Fatal(err)
		}
		if got := other.Planner.Session().Minutes; got[at] != minutes || got[plan.Expected] != expected || (at == plan.Expected) != (minutes == expected) {
			t.Errorf("%v min: lasts %v at %v", minutes, got, at)
		}
		q := other.Planner.Evaluate(at, other.Planner.Scaled(mix, plan.Expected, at))
		if math.Abs(q.LossL.Value/minutes-own.LossL.Value/expected) > 1e-9 {
			t.Errorf("%v min: %v L lost, %v L in %v min", minutes, q.LossL.Value, own.LossL.Value, expected)
		}
	}
	if c.Planner.Session().Minutes[plan.Expected] != expected || c.Planner.Evaluate(plan.Expected, mix) != own {
		t.Error("the case was changed")
	}
	for _, minutes := range []float64{5, -1, math.NaN(), 1e9} {
		if _, _, err := c.Lasting(minutes); !errors.Is(err, ErrLength) {
			t.Errorf("a session of %v min is calculated: %v", minutes, err)
		}
	}
}

// FuzzRules reads whatever may stand in a plan's rules: nothing that cannot be
// meant comes out, and what does is kept as it was read.
func FuzzRules(f *testing.F) {
	f.Add("500 750", "salt generic.water", "15:00/95/p none 8:30/")
	f.Add("1e308 -0 Inf", " \u00a0 salt\tsalt", "////// none none 99:99/15")
	f.Fuzz(func(t *testing.T, bottles, held, further string) {
		p := record.Plan{Rules: record.StepRules{Bottles: bottles, Held: held, Further: further}}
		sizes := BottlesOf(p)
		for _, ml := range sizes {
			if !BottleSize(ml) {
				t.Errorf("%q holds a bottle of %v mL", bottles, ml)
			}
		}
		list, said := FurtherOf(p)
		if said != (len(strings.Fields(further)) > 0) {
			t.Errorf("%q: said %v", further, said)
		}
		for _, s := range list {
			if _, ok := s.Start.Minutes(); s.Start != "" && !ok || s.Minutes != 0 && !sessionLasts(s.Minutes) {
				t.Errorf("%q holds %+v", further, s)
			}
		}
		again := record.Plan{}
		SetBottles(&again, sizes)
		SetFurther(&again, list)
		if got, _ := FurtherOf(again); !slices.Equal(got, list) || !slices.Equal(BottlesOf(again), sizes) {
			t.Errorf("%+v, %v are kept as %+v", list, sizes, again.Rules)
		}
		Hold(&again, "x", true)
		Hold(&p, "x", true)
		Hold(&p, "x", false)
		if Held(p, "x") {
			t.Errorf("%q still holds x", p.Rules.Held)
		}
	})
}

// SetStepSize writes down how much may change in one step; the other rules stay.
func SetStepSize(p *record.Plan, r plan.StepRules) {
	p.Rules.Fluid = record.Num(r.FluidLH, quantity.LitrePerHour)
	p.Rules.Carbohydrate = record.Num(r.CarbohydrateGH, quantity.GramPerHour)
}
