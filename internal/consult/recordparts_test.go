package consult

import (
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

func TestPhysiciansOfFlags(t *testing.T) {
	a := record.Athlete{Flags: []record.Flag{{Physician: "A"}, {}, {Physician: "A"}, {Physician: "B"}}}
	if got := physicians(a); got != "A; B" {
		t.Errorf("%q", got)
	}
}

func TestHasUsualHabit(t *testing.T) {
	for _, c := range []struct {
		h    record.Habit
		want bool
	}{
		{record.Habit{}, false}, {record.Habit{Water: numberOf(0.5)}, true}, {record.Habit{Drink: numberOf(0.5)}, true},
		{record.Habit{Portions: numberOf(1)}, false}, {record.Habit{FoodID: "x"}, false}, {record.Habit{Portions: numberOf(1), FoodID: "x"}, true},
	} {
		if got := HasUsualHabit(record.Athlete{Habit: c.h}); got != c.want {
			t.Errorf("%+v: %v", c.h, got)
		}
	}
}

func TestSmallestBottle(t *testing.T) {
	for ml, want := range map[float64]bool{47: false, 49: false, 50: true, 54: true} {
		if BottleSize(ml) != want {
			t.Errorf("%g mL: %v", ml, !want)
		}
	}
	for last, want := range map[record.Decision]bool{record.DecisionNext: true, record.DecisionHold: true, record.DecisionBack: false, "": false} {
		if stands(last) != want {
			t.Errorf("%s: %v", last, !want)
		}
	}
}

func TestSameBreaks(t *testing.T) {
	one := record.Chance{Name: "half-time", AtMinute: numberOf(45.2), Seconds: numberOf(900), CanEat: true}
	if !sameBreaks([]record.Chance{one}, []record.Chance{one}) {
		t.Error("a break is another than itself")
	}
	for name, change := range map[string]func(*record.Chance){
		"name": func(c *record.Chance) { c.Name = "other" }, "minute": func(c *record.Chance) { c.AtMinute = numberOf(46) }, "seconds": func(c *record.Chance) { c.Seconds = numberOf(60) },
		"food": func(c *record.Chance) { c.CanEat = false }, "maybe": func(c *record.Chance) { c.Maybe = true }, "amount": func(c *record.Chance) { c.Amount = numberOf(100) },
	} {
		other := one
		change(&other)
		if sameBreaks([]record.Chance{other}, []record.Chance{one}) {
			t.Errorf("another %s is the same break", name)
		}
	}
	got := withIDs([]record.Chance{{Name: "a"}, {Name: "b"}}, []record.Chance{{Meta: record.Meta{ID: "1"}}})
	if got[0].ID != "1" || got[1].ID != "" {
		t.Errorf("%+v", got)
	}
}

func TestHumidityOfAMonth(t *testing.T) {
	var city climate.Place
	for m := range city.Months {
		city.Months[m].Vapour = 2
	}
	air := climate.PlaceAir{Humidity: 55}
	near(t, "nothing typed", humidityAt(city, 6, air, record.Number{}), 55, 0)
	at30 := float64(climate.Air{Temperature: 30, Vapour: 2}.Humidity())
	for month, want := range map[int]float64{0: 55, 1: at30, 12: at30, 13: 55} {
		near(t, "30 °C", humidityAt(city, month, air, numberOf(30)), want, 1e-9)
	}
	near(t, "too cold for it", humidityAt(city, 6, air, numberOf(10)), 98, 1e-9)
}
