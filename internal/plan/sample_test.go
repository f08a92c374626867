package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
	"math"
)

// tester is what testing.T, testing.B and rapid.T share.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
	Fatal(args ...any)
}

// find returns a generic product.
func find(t tester, id string) fuel.Product {
	t.Helper()
	c, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	p, ok := c.Find("generic." + id)
	if !ok {
		t.Fatalf("no product %s", id)
	}
	return p
}

// menuOf is water, drinks, foods and salt.
func menuOf(t tester, drinks, foods []string) Menu {
	t.Helper()
	m := NewMenu()
	for i, id := range drinks {
		if err := m.SetDrink(Drink1+Slot(i), find(t, id)); err != nil {
			t.Fatal(err)
		}
	}
	for i, id := range foods {
		if err := m.SetFood(Food1+Slot(i), find(t, id)); err != nil {
			t.Fatal(err)
		}
	}
	return m
}

// fullMenu fills every slot.
func fullMenu(t tester) Menu {
	return menuOf(t, []string{"drink-6", "home-drink", "cola"}, []string{"fig-bar", "banana", "gel", "rice-square"})
}

// courtBasis is one test of hard play: 3.3 L in 105 min by an athlete of 72.4 kg,
// with the planned range of a single test.
func courtBasis() Basis {
	rate := 3.3 / 1.75
	r := afterOneTest(rate)
	return Basis{
		Kind: Test, Code: "basis.test", Tests: 1,
		SweatRate: Between(rate, r.Low, r.High),
		Sodium:    Between(38, 28, 48),
		Body:      Body{MassKg: 72.4, HeightM: 1.8, AgeYears: 24, Sex: sweat.Male},
		Usual:     Usual{Known: true, LH: 1.0},
	}
}

func courtSession() Session {
	return Session{
		Minutes: [Lengths]float64{90, 105, 150}, Effort: fuel.Hard, Intermittent: true, Heat: Hot,
	}
}

func newPlanner(t tester, b Basis, s Session, m Menu, a Aim) *Planner {
	t.Helper()
	p, err := New(b, s, m, a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// courtPlanner is the whole of it with every slot filled.
func courtPlanner(t tester) *Planner {
	t.Helper()
	b, s := courtBasis(), courtSession()
	return newPlanner(t, b, s, fullMenu(t), DefaultAim(b.Usual, s))
}

// courtHabit is what the athlete drank in the test: 1.2 L.
func courtHabit() Mix { return Mix{Water: 600, Drink1: 600} }

// courtChances is the tennis table stretched over the session.
func courtChances(t tester, minutes float64) []Chance {
	t.Helper()
	list, err := TennisChances([]TennisSet{{6, 4}, {6, 4}}, minutes)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func inRange(r quantity.Range, x float64) bool { return x >= r.Low-1e-9 && x <= r.High+1e-9 }

// afterOneTest is the range of a sweat rate, L/h, on one more day like that of
// one test: 11 % from day to day, and a little for what one test leaves open.
func afterOneTest(rate float64) quantity.Range {
	f := math.Exp(evidence.CoverageFactor * evidence.DayToDayRateCV * math.Sqrt(1+1/1.134))
	return quantity.Range{Low: rate / f, High: rate * f}
}
