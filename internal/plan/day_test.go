package plan

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/fuel"
)

func clock(s string) time.Time {
	t, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		panic(err)
	}
	return t
}

// event is a line of the day without its advice.
type event struct {
	from, until string
	session     int
	code        string
}

func events(d Day) []event {
	var list []event
	for _, e := range d.Events {
		list = append(list, event{e.From.Format("15:04"), e.Until.Format("15:04"), e.Session, e.Code})
	}
	return list
}

func same(t *testing.T, got, want []event) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("line %d: %v, want %v", i, got[i], want[i])
		}
	}
}

// One session, the next days away: before, during, and nothing special after.
func TestDayOfOneSession(t *testing.T) {
	p := courtPlanner(t)
	d, err := PlanDay([]DaySession{{Start: clock("2026-05-18 14:00"), Planner: p, Length: Expected, Mix: Mix{Water: 1500}}})
	if err != nil {
		t.Fatal(err)
	}
	same(t, events(d), []event{
		{"10:00", "10:00", 0, DayDrinkEarly},
		{"10:00", "13:00", 0, DayEatBefore},
		{"12:00", "12:00", 0, DayDrinkLate},
		{"14:00", "15:45", 0, DayDuring},
		{"15:45", "15:45", 0, DayAsUsual},
	})
	if a := d.Events[0].Advice; math.Abs(a.Range.Low-0.362) > 1e-9 || math.Abs(a.Range.High-0.5068) > 1e-9 {
		t.Errorf("four hours before %+v", a)
	}
	if d.Events[4].Advice.Code != fuel.AfterMeals {
		t.Errorf("after: %s", d.Events[4].Advice.Code)
	}
	near(t, "end", d.Totals[0].EndL.Value, 1.8)
}

// Two sessions in a day: the first's deficit is made up before the second as
// far as time and stomach let it, and the rest is carried over.
func TestDayOfTwoSessions(t *testing.T) {
	p := courtPlanner(t)
	mix := Mix{Water: 1000}
	d, err := PlanDay([]DaySession{
		{Start: clock("2026-05-18 09:00"), Planner: p, Length: Expected, Mix: mix},
		{Start: clock("2026-05-18 11:45"), Planner: p, Length: Expected, Mix: mix},
	})
	if err != nil {
		t.Fatal(err)
	}
	same(t, events(d), []event{
		{"05:00", "05:00", 0, DayDrinkEarly},
		{"05:00", "08:00", 0, DayEatBefore},
		{"07:00", "07:00", 0, DayDrinkLate},
		{"09:00", "10:45", 0, DayDuring},
		{"10:45", "11:45", 0, DayDrinkAfter},
		{"10:45", "11:45", 0, DayEatAfter},
		{"11:45", "13:30", 1, DayDuring},
		{"13:30", "13:30", 1, DayDrinkAfter}, // more than 5 % is missing
	})
	first, second := d.Totals[0], d.Totals[1]
	near(t, "first ends", first.EndL.Value, 2.3)
	// one hour at 1 L/h, of which 1.25 L make up one
	near(t, "owed", second.StartL.Value, 2.3-0.8)
	near(t, "second ends", second.EndL.Value, 2.3-0.8+2.3)
	if !second.PastLimit {
		t.Error("5 % is not called past the limit")
	}
	a := d.Events[4].Advice
	if a.Code != fuel.AfterSoon || math.Abs(a.Range.Low-1.25*2.3) > 1e-9 || math.Abs(a.Range.High-1.5*2.3) > 1e-9 {
		t.Errorf("drink after the first: %+v", a)
	}
	if eat := d.Events[5].Advice; math.Abs(eat.Range.High-1.2*72.4) > 1e-9 {
		t.Errorf("eat after the first: %+v", eat)
	}
}

// A session the same evening, but more than twelve hours on, stands by itself.
func TestDayFarApart(t *testing.T) {
	p := courtPlanner(t)
	d, err := PlanDay([]DaySession{
		{Start: clock("2026-05-18 06:00"), Planner: p, Mix: Mix{Water: 1000}},
		{Start: clock("2026-05-18 20:00"), Planner: p, Mix: Mix{Water: 1000}},
	})
	if err != nil {
		t.Fatal(err)
	}
	before := 0
	for _, e := range d.Events {
		if e.Session == 1 && (e.Code == DayDrinkEarly || e.Code == DayDrinkLate) {
			before++
		}
	}
	if before != 2 || d.Totals[1].StartL.Value != 0 {
		t.Errorf("%d drinks before the evening, %g L owed", before, d.Totals[1].StartL.Value)
	}
}

func TestDayAfterAGain(t *testing.T) {
	s := courtSession()
	s.NextHours = 3
	p := newPlanner(t, courtBasis(), s, NewMenu(), Aim{})
	d, err := PlanDay([]DaySession{{Start: clock("2026-05-18 14:00"), Planner: p, Length: Expected, Mix: Mix{Water: 3500}}})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range d.Events {
		if e.Code == DayDrinkAfter || e.Code == DayNoDrink && e.Advice.Range.High != 0 {
			t.Errorf("after a gain: %+v", e)
		}
	}
}

func TestDayRefusesOverlap(t *testing.T) {
	p := courtPlanner(t)
	for name, second := range map[string]string{"overlap": "2026-05-18 10:00", "order": "2026-05-18 07:00"} {
		_, err := PlanDay([]DaySession{
			{Start: clock("2026-05-18 09:00"), Planner: p, Length: Expected}, {Start: clock(second), Planner: p, Length: Expected},
		})
		if !errors.Is(err, ErrDay) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if d, err := PlanDay(nil); err != nil || len(d.Events) != 0 {
		t.Errorf("an empty day: %v %v", d, err)
	}
}

// Whatever the day: nothing left is negative, nothing is made up faster than
// it was lost, and a gain leaves nothing to drink after.
func TestDayCarriesSoundly(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		start := clock("2026-05-18 06:00")
		var sessions []DaySession
		for range 1 + d.IntN(3) {
			p := d.planner(t, list)
			s := DaySession{Start: start, Planner: p, Length: Expected, Mix: d.mix(p.menu)}
			sessions = append(sessions, s)
			start = s.end().Add(hoursLong(d.between(0, 15)))
		}
		day, err := PlanDay(sessions)
		if err != nil {
			t.Fatal(err)
		}
		for i, total := range day.Totals {
			if o := total.StartL; o.Low < 0 || o.Low > o.Value || o.Value > o.High {
				t.Fatalf("owed %+v", o)
			}
			if i > 0 && total.StartL.Value > math.Max(0, day.Totals[i-1].EndL.Value) {
				t.Fatalf("%g L owed after %g", total.StartL.Value, day.Totals[i-1].EndL.Value)
			}
		}
		for _, e := range day.Events {
			if e.Until.Before(e.From) {
				t.Fatalf("%s ends before it begins", e.Code)
			}
			if e.Code == DayNoDrink != (e.Advice.Code == fuel.AfterGain) {
				t.Fatalf("%s with %s", e.Code, e.Advice.Code)
			}
		}
	})
}
