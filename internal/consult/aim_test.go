package consult

import (
	"math"
	"testing"

	"ebbwell/internal/care"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What was chosen for a plan stands in place of the advice; what cannot be, and
// what would loosen a guard, does not.
func TestAimOfAPlan(t *testing.T) {
	n := func(x float64) record.Number { return record.Num(x, quantity.None) }
	usual := plan.Aim{
		Deficit: plan.Within(0, 2), Carbohydrate: plan.Within(30, 60), Drinking: plan.Within(0, 1), Strength: plan.Within(0, 8), OneSource: true,
	}
	kidney := []record.FlagKind{record.FlagKidney}
	for name, c := range map[string]struct {
		own  record.Aims
		salt []record.FlagKind
		want func(a *plan.Aim)
	}{
		"nothing":              {record.Aims{}, nil, func(*plan.Aim) {}},
		"the alternative":      {record.Aims{CarbohydrateLow: n(45), CarbohydrateHigh: n(60)}, nil, func(a *plan.Aim) { a.Carbohydrate.Low = 45 }},
		"low alone":            {record.Aims{CarbohydrateLow: n(75)}, nil, func(a *plan.Aim) { a.Carbohydrate = plan.Within(75, 75) }},
		"high alone":           {record.Aims{CarbohydrateHigh: n(20)}, nil, func(a *plan.Aim) { a.Carbohydrate = plan.Within(20, 20) }},
		"the wrong way round":  {record.Aims{CarbohydrateLow: n(50), CarbohydrateHigh: n(40)}, nil, func(*plan.Aim) {}},
		"no number":            {record.Aims{CarbohydrateLow: n(math.NaN()), Strength: n(math.Inf(1))}, nil, func(*plan.Aim) {}},
		"below nothing":        {record.Aims{CarbohydrateLow: n(-5), Drinking: n(-1)}, nil, func(*plan.Aim) {}},
		"sodium":               {record.Aims{SodiumLow: n(300), SodiumHigh: n(600)}, nil, func(a *plan.Aim) { a.Sodium = plan.Within(300, 600) }},
		"sodium withheld":      {record.Aims{SodiumLow: n(300), SodiumHigh: n(600)}, kidney, func(*plan.Aim) {}},
		"drinking less":        {record.Aims{Drinking: n(0.5)}, nil, func(a *plan.Aim) { a.Drinking.High = 0.5 }},
		"drinking more, never": {record.Aims{Drinking: n(1.4)}, nil, func(*plan.Aim) {}},
		"weaker":               {record.Aims{Strength: n(6)}, nil, func(a *plan.Aim) { a.Strength.High = 6 }},
	} {
		want := usual
		c.want(&want)
		s := plan.Session{Minutes: [plan.Lengths]float64{100, 100, 100}}
		got := Case{Plan: record.Plan{Aims: c.own}, Care: care.Care{WithholdSalt: c.salt}}.aim(s, plan.Usual{Known: true, LH: 0.8}, Setup{})
		if got != want {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
	}
}
