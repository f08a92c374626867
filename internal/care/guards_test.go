package care

import (
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"

	"golang.org/x/text/language"
)

// Every guard there is stands once in the table, in the order of its gravity, and has
// its sentence, for a hidden mass too where it needs one.
func TestEveryGuardIsInTheTable(t *testing.T) {
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	all := plan.Guard(1<<20 - 1).Each()
	rows := Guards()
	if len(rows) != len(all) || len(all) < 10 {
		t.Fatalf("%d rows of %d guards", len(rows), len(all))
	}
	for i, g := range all {
		if rows[i].Guard != g {
			t.Errorf("%s stands in the place of %s", rows[i].Guard.Code(), g.Code())
		}
		if !w.Has(g.Code()) || w.Has(g.Code()+".hidden") != (rows[i].Covered != "") {
			t.Errorf("%s: its sentences are not what the table says", g.Code())
		}
	}
	if _, ok := SayGuard(plan.GainInMass|plan.DryFood, GuardCase{}); ok {
		t.Error("two guards at once have one sentence")
	}
}

func TestSayGuard(t *testing.T) {
	c := GuardCase{Athlete: "Nessa", Length: plan.Expected}
	c.At.Ceiling = plan.Ceiling{FluidL: 1.83, Reason: plan.LongSession}
	if said, ok := SayGuard(plan.OverCeiling, c); !ok || said.Figures[0] != (GuardFigure{Value: 1.83, Unit: quantity.Litre}) {
		t.Errorf("the limit: %+v", said)
	}
	c.Hidden = true
	if said, ok := SayGuard(plan.OverCeiling, c); !ok || said.Figures[0].Value > 1.8+1e-9 || said.Figures[0].Value < 1.8-1e-9 {
		t.Errorf("the limit with a hidden mass: %+v", said)
	}
	if said, ok := SayGuard(plan.StrongDrink, c); !ok || said.Key != "guard.strong-drink.hidden" || len(said.Figures) > 0 {
		t.Errorf("a strong drink with a hidden mass: %+v", said)
	}
	if said, ok := SayGuard(plan.GainInMass, c); !ok || said.Key != "guard.gain-in-mass" || said.Figures[0].Name != "Nessa" {
		t.Errorf("a gain: %+v", said)
	}
}

// A limit made with a hidden mass is written in whole steps of 0.2 L, downwards.
func TestStopsAt(t *testing.T) {
	for _, c := range []struct {
		litres, want float64
		why          plan.Reason
		hidden       bool
	}{
		{1.2, 1.2, plan.LongSession, true}, {1.39, 1.2, plan.LongSession, true}, {1.39, 1.39, plan.LongSession, false}, {1.39, 1.39, plan.LowEnd, true},
	} {
		if got := StopsAt(plan.Ceiling{FluidL: c.litres, Reason: c.why}, c.hidden); got < c.want-1e-12 || got > c.want+1e-12 {
			t.Errorf("%g L (hidden %v) is written as %g L, not %g", c.litres, c.hidden, got, c.want)
		}
	}
}

// More than the stomach is used to is said only where it is known what that is; other
// sentences need no figure.
func TestSayMoreThanUsual(t *testing.T) {
	b := plan.Basis{SweatRate: plan.Between(1.2, 1, 1.6), Body: plan.Body{MassKg: 60}}
	for _, known := range []bool{false, true} {
		b.Usual.Known, b.Usual.LH = known, 0.7
		p, err := plan.New(b, plan.Session{Minutes: [plan.Lengths]float64{120, 120, 120}, Heat: plan.Hot}, plan.NewMenu(), plan.Aim{})
		if err != nil {
			t.Fatal(err)
		}
		c := GuardCase{Planner: p, Length: plan.Expected}
		said, ok := SayGuard(plan.OverUsual, c)
		if ok != known || known && (said.Figures[0].Value != 1.4 || said.Figures[1].Value != 0.7) {
			t.Errorf("known %v: said %v, %+v", known, ok, said)
		}
		if said, ok := SayGuard(plan.DryFood, c); !ok || len(said.Figures) > 0 {
			t.Errorf("food without water: said %v, %+v", ok, said)
		}
	}
}
