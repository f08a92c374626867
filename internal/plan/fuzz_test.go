package plan

import (
	"math"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/sweat"
)

// Any numbers at all either are refused or give a prediction, schedule and
// day that are sound: no panic, nothing that is not a number, no range of
// negative width, no move above the ceiling.
func FuzzPlanner(f *testing.F) {
	f.Add(1.9, 1.4, 2.5, 38.0, 72.4, 105.0, 600.0, 1.5, 0.3, 24.0, true)
	f.Add(0.0, -1.0, math.Inf(1), math.NaN(), 0.0, -5.0, 1e12, -3.0, 1e300, 5.0, false)
	f.Add(1e-300, 0.0, 1e-300, 1e-300, 1e-300, 1e-300, 1.0, 1.0, 1.0, 90.0, true)
	f.Add(6.0, 0.05, 12.0, 140.0, 250.0, 1440.0, 20000.0, 60.0, 30.0, 90.0, false)
	menu := fullMenu(f)
	f.Fuzz(func(t *testing.T, rate, low, high, sodium, kg, minutes, water, food, salt, age float64, running bool) {
		b := Basis{
			SweatRate: Between(rate, low, high), Sodium: Ranged{Known: sodium != 0, Value: sodium, Range: Between(0, sodium/2, sodium*2).Range},
			Body: Body{MassKg: kg, HeightM: 1.7, AgeYears: age, Sex: sweat.Female},
		}
		s := Session{Minutes: [Lengths]float64{minutes, minutes, minutes}, Running: running, Effort: fuel.Hard, NextHours: 3}
		p, err := New(b, s, menu, DefaultAim(b.Usual, s))
		if err != nil {
			if p != nil {
				t.Fatal("a planner beside an error")
			}
			return
		}
		if !plausible(rate, 1e-3, 20) || !plausible(kg, 1, 1e3) || !plausible(minutes, 1, 3000) || high > 100 || sodium > 1e3 || age > 1e3 {
			return // accepted, but of no body there is
		}
		mix := Mix{Water: bounded(water, 1e5), Food3: bounded(food, 100), Salt: bounded(salt, 100)}
		q := p.Evaluate(Expected, mix)
		sound(t, &q)
		moved, _ := p.Move(Expected, Mix{}, Water, water)
		if after := p.Evaluate(Expected, moved); after.Guards.Has(OverCeiling) {
			t.Fatalf("moved above the ceiling: %+v", after.Fluid)
		}
		var sc Schedule
		p.Schedule(Expected, mix, []Chance{{Minute: minutes / 2, Seconds: 60, CanEat: true}, {Minute: minutes, Certainty: Maybe}}, 30, &sc)
		checkSchedule(t, p, mix, 30, &sc)
		if _, err := PlanDay([]DaySession{{Planner: p, Length: Expected, Mix: mix}}); err != nil {
			t.Fatal(err)
		}
	})
}

func plausible(x, low, high float64) bool { return x >= low && x <= high }

// bounded brings any number into an amount.
func bounded(x, most float64) float64 {
	if math.IsNaN(x) || x < 0 {
		return 0
	}
	return math.Min(x, most)
}
