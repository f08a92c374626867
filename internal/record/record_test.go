package record

import (
	"reflect"
	"testing"
	"time"

	"ebbwell/internal/quantity"
)

func TestSessionMinutes(t *testing.T) {
	for _, c := range []struct {
		s    Session
		want float64
		ok   bool
	}{
		{Session{Start: "14:05", End: "15:40"}, 95, true},
		{Session{Start: "23:10", End: "00:20"}, 0, false},
		{Session{Start: "23:10", End: "00:20", EndsNextDay: true}, 70, true},
		{Session{Start: "14:05", End: "14:05"}, 0, false},
		{Session{Start: "14:05"}, 0, false},
		{Session{Start: "25:00", End: "26:00"}, 0, false},
	} {
		if got, ok := c.s.Minutes(); got != c.want || ok != c.ok {
			t.Errorf("%+v lasts %v, %v; want %v, %v", c.s, got, ok, c.want, c.ok)
		}
	}
}

func TestAge(t *testing.T) {
	on := time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		born  Date
		years int
		ok    bool
		minor bool
	}{
		{"2008-05-14", 18, true, false},
		{"2008-05-15", 17, true, true},
		{"1999-01-02", 27, true, false},
		{"", 0, false, false},
		{"2030-01-01", 0, false, false},
	} {
		a := Athlete{Born: c.born}
		if years, ok := a.Age(on); years != c.years || ok != c.ok || a.Minor(on) != c.minor {
			t.Errorf("born %q: %d, %v, minor %v", c.born, years, ok, a.Minor(on))
		}
	}
}

func TestConsentHolds(t *testing.T) {
	c := Consent{Given: "2026-01-10", Until: "2026-06-30", Withdrawn: "2026-05-01"}
	for day, want := range map[Date]bool{"2026-01-09": false, "2026-01-10": true, "2026-04-30": true, "2026-05-01": false} {
		if c.Holds(day) != want {
			t.Errorf("on %s: %v", day, !want)
		}
	}
	if (Consent{}).Holds("2026-01-10") {
		t.Error("a consent never given holds")
	}
}

func TestClockAndDate(t *testing.T) {
	if ClockAt(1450) != "00:10" || ClockAt(-30) != "23:30" || ClockAt(845) != "14:05" {
		t.Error("ClockAt is off")
	}
	if Date("2026-12-30").AddDays(3) != "2027-01-02" || Date("").AddDays(3) != "" {
		t.Error("AddDays is off")
	}
}

func TestNumber(t *testing.T) {
	a, b := Num(61.7, quantity.Kilogram), Num(61.7, quantity.Kilogram)
	if !a.Same(b) || a.Same(Num(61.7, quantity.Pound)) || a.Same(Number{Unit: quantity.Kilogram}) {
		t.Error("Same is wrong")
	}
	if (Number{}).Or(3) != 3 || a.Or(3) != 61.7 || (Number{}).Known() {
		t.Error("Or or Known is wrong")
	}
}

// A clone must not share a list with its original, at any depth.
func TestClonesShareNoList(t *testing.T) {
	plan := Plan{Options: []Option{{Items: []Item{{}}}}, Steps: []Step{{}}, Chances: []Chance{{}}, Reviews: []Review{{}}}
	test := Test{
		Weighings: []Weighing{{}}, Bottles: []Bottle{{Refills: []Refill{{}}}}, Foods: []FoodEaten{{}}, Patches: []Patch{{}},
		Partway: []PartwayWeighing{{}}, Safety: []SafetyNote{{}},
	}
	group := GroupSession{Bottles: []BottleKind{{}}, Members: []Member{{}}}
	athlete := Athlete{Flags: []Flag{{}}, Consents: []Consent{{}}, Memberships: []Membership{{}}}
	trip := Trip{Travellers: []Traveller{{}}, Stops: []Stop{{}}, Supplies: []Supply{{}}}
	for _, pair := range [][2]any{
		{plan, plan.Clone()}, {test, test.Clone()}, {athlete, athlete.Clone()}, {trip, trip.Clone()}, {group, group.Clone()},
	} {
		noSharedList(t, reflect.ValueOf(pair[0]), reflect.ValueOf(pair[1]))
	}
}

// noSharedList walks two values side by side; a list left empty in the
// original would prove nothing and fails.
func noSharedList(t *testing.T, a, b reflect.Value) {
	t.Helper()
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			if a.Type().Field(i).IsExported() {
				noSharedList(t, a.Field(i), b.Field(i))
			}
		}
	case reflect.Slice:
		if a.Len() == 0 || a.Pointer() == b.Pointer() {
			t.Errorf("list of %s: %d long, shared %v", a.Type(), a.Len(), a.Pointer() == b.Pointer())
			return
		}
		noSharedList(t, a.Index(0), b.Index(0))
	}
}
