package plan

import (
	"testing"

	"ebbwell/internal/fuel"
)

// at plans sessions of an hour, 1 L/h and 70 kg, from the start of one to the next so
// many hours after its end; each drinks so many mL.
func hourly(t *testing.T, gaps []float64, ml ...float64) Day {
	t.Helper()
	b := Basis{SweatRate: Between(1, 0.9, 1.2), Body: Body{MassKg: 70}}
	p := newPlanner(t, b, Session{Minutes: [Lengths]float64{60, 60, 60}}, NewMenu(), Aim{})
	start := clock("2026-05-18 06:00")
	var list []DaySession
	for i, x := range ml {
		list = append(list, DaySession{Start: start, Planner: p, Length: Expected, Mix: Mix{Water: x}})
		if i < len(gaps) {
			start = start.Add(hoursLong(1 + gaps[i]))
		}
	}
	d, err := PlanDay(list)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// What is left by hand: of 1 L missing 0.4 L are made up in half an hour, at 1 L/h with
// 1.25 L for each; ends of the range alike. Less than 0.1 L is let go.
func TestOwedByHand(t *testing.T) {
	for _, c := range []struct{ gap, drunk, short, low, high float64 }{
		{0, 0, 1, 0.9, 1.2}, {0.5, 0, 0.6, 0.5, 0.8}, {0.9, 0, 0.28, 0.18, 0.48}, {1.1, 0, 0.12, 0, 0.32}, {1.2, 0, 0, 0, 0.24}, {24, 0, 0, 0, 0},
		{0, 895, 0.105, 0, 0.305}, {0, 905, 0, 0, 0.295}, {0, 1300, 0, 0, 0},
	} {
		d := hourly(t, []float64{c.gap}, c.drunk, 500)
		got := d.Totals[1]
		near(t, "owed", got.StartL.Value, c.short)
		near(t, "low", got.StartL.Low, c.low)
		near(t, "high", got.StartL.High, c.high)
		near(t, "ends", got.EndL.Value, c.short+0.5)
		near(t, "ends low", got.EndL.Low, c.low+0.4)
		near(t, "ends high", got.EndL.High, c.high+0.7)
		near(t, "%", got.End.Value, (c.short+0.5)/0.7)
	}
}

// A session twelve hours on stands by itself; one that begins as another ends does not
// overlap it; what passes the limit with what is left is said.
func TestDayEdges(t *testing.T) {
	early := func(d Day) (n int) {
		for _, e := range d.Events {
			if e.Session == 1 && e.Code == DayDrinkEarly {
				n++
			}
		}
		return n
	}
	for gap, want := range map[float64]int{0: 0, 11.9: 0, 12: 1, 12.5: 1} {
		if got := early(hourly(t, []float64{gap}, 500, 500)); got != want {
			t.Errorf("%g h on: %d drinks before", gap, got)
		}
	}
	for ml, past := range map[float64]bool{0: true, 400: false} { // 1.5 and 1.1 L of 70 kg, the limit is 2.2 %
		if d := hourly(t, []float64{0}, 500, ml); d.Totals[1].PastLimit != (past) && ml == 400 || d.Totals[0].PastLimit {
			t.Errorf("%g mL: %+v", ml, d.Totals)
		}
	}
	if d := hourly(t, []float64{0}, 0, 0); !d.Totals[1].PastLimit { // 2 L, 2.9 %
		t.Errorf("%+v", d.Totals[1])
	}
}

// What to eat after lasts as long as the next session is away, four hours at most.
func TestEatAfterByHand(t *testing.T) {
	for gap, want := range map[float64]float64{2: 2, 4: 4, 7: 4} {
		found := false
		for _, e := range hourly(t, []float64{gap}, 500, 500).Events {
			if e.Session == 0 && e.Code == DayEatAfter {
				found = true
				if got := e.Until.Sub(e.From).Hours(); got != want || e.Advice.Code != fuel.FuelAfter {
					t.Errorf("%g h to the next: %g h of eating", gap, got)
				}
			}
			if e.Session == 0 && e.Code == DayDrinkAfter && e.Until.Sub(e.From).Hours() != gap {
				t.Errorf("%g h to the next: drinks until %v", gap, e.Until)
			}
		}
		if !found {
			t.Errorf("%g h to the next: nothing to eat", gap)
		}
	}
}
