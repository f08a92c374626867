package plan

import (
	"math"
	"strings"
	"testing"

	"ebbwell/internal/evidence"
)

// half is a match of 105 min whose half-time of 15 min is at 45.
func half() Sport {
	return Sport{Rules: []Rule{
		{Chance: Chance{Code: "half-time", Seconds: 900}, At: []float64{45}, Minutes: 105},
		{Chance: Chance{Code: "drinks-break", Seconds: 60, Certainty: IfHot}, At: []float64{30, 90}, Minutes: 105},
		{Chance: Chance{Code: "maybe-long", Seconds: 600, Certainty: Maybe}, At: []float64{50}, Minutes: 105},
		{Chance: Chance{Code: "short", Seconds: 299}, At: []float64{10}, Minutes: 105},
		{Chance: Chance{Code: "of another length", Seconds: 900}, At: []float64{20}, Minutes: 60},
	}}
}

// A match may be entered with its half-time, as the playing time alone, or in between:
// the end of the first half is 45 min in all three; the 75th minute of play is 90, 75
// and 82.5. A shorter match is shorter in play, a longer one longer in all.
func TestMomentsOfPlay(t *testing.T) {
	c := half().clockOf(105)
	if c.pausing != 15 || len(c.pauses) != 1 {
		t.Fatalf("%+v: only certain breaks of 5 min and more of this length are no play", c)
	}
	five := Sport{Rules: []Rule{{Chance: Chance{Seconds: 300}, At: []float64{40}, Minutes: 80}, {Chance: Chance{Seconds: 310}, At: []float64{60}, Minutes: 80}}}
	if c := five.clockOf(80); math.Abs(c.pausing-5-310.0/60) > 1e-9 || len(c.pauses) != 2 {
		t.Errorf("a break of five minutes is no play: %+v", c)
	}
	for _, x := range []struct{ minutes, moment, want float64 }{
		{105, 45, 45}, {105, 60, 60}, {105, 90, 90}, {90, 45, 45}, {90, 60, 45}, {90, 90, 75}, {97.5, 45, 45}, {97.5, 60, 52.5}, {97.5, 90, 82.5},
		{97.5, 52.5, 48.75}, {45, 45, 22.5}, {45, 90, 37.5}, {210, 45, 90}, {210, 90, 180}, {90, 30, 30}, {45, 30, 15},
	} {
		if got := c.in(x.minutes, x.moment); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("%g min of %g: %g, want %g", x.moment, x.minutes, got, x.want)
		}
	}
}

// A break that was entered stays at its moment of play when the length changes; a
// break every so many minutes stretches, as does one after the end.
func TestBreaksMoveWithTheLength(t *testing.T) {
	for _, x := range []struct{ at, before, after, want float64 }{
		{45, 90, 105, 45}, {75, 90, 105, 90}, {90, 105, 90, 75}, {30, 105, 90, 30}, {90, 90, 105, 105}, {100, 90, 180, 200}, {0, 90, 105, 0},
	} {
		if got := half().Moved(x.at, x.before, x.after); math.Abs(got-x.want) > 1e-6 {
			t.Errorf("%g of %g min in %g: %g, want %g", x.at, x.before, x.after, got, x.want)
		}
	}
	every := Sport{Rules: []Rule{{Chance: Chance{Code: "bottle"}, Every: 15}}}
	if got := every.Moved(15, 60, 120); got != 30 {
		t.Errorf("every 15 min: %g", got)
	}
}

// Breaks by an interval come at each of it, none at the very end; those for heat once
// where two rules place them at one moment, and only in heat.
func TestBreaksByInterval(t *testing.T) {
	s := Sport{Rules: []Rule{
		{Chance: Chance{Code: "bottle"}, Every: 20}, {Chance: Chance{Code: "drinks", Seconds: 60, Certainty: IfHot}, At: []float64{20}, Minutes: 60},
		{Chance: Chance{Code: "cooling", Seconds: 180, Certainty: IfHot}, At: []float64{20}, Minutes: 60}, {Chance: Chance{Code: "first"}, At: []float64{5}, Minutes: 60},
	}}
	for heat, want := range map[Heat][]float64{Temperate: {5, 20, 40}, Hot: {5, 20, 20, 40}} {
		list := s.Chances(60, heat)
		if len(list) != len(want) {
			t.Fatalf("%v: %+v", heat, list)
		}
		for i := range want {
			if list[i].Minute != want[i] {
				t.Errorf("%v: chance %d at %g", heat, i, list[i].Minute)
			}
		}
	}
	if list := s.Chances(60, Hot); list[1].Code != "bottle" || list[2].Code != "drinks" {
		t.Errorf("of two breaks for heat the first of the table stands: %+v", list)
	}
}

// In tennis rests follow the games 3, 5, 7 of a set, of 5 min each here: 6-4 6-4 has
// them after 15, 25, 35 and 45 min and again in the second set, 90 s each, and 120 s
// between the sets.
func TestTennisByHand(t *testing.T) {
	list := courtChances(t, 100)
	for i, want := range []float64{15, 25, 35, 45, 50, 65, 75, 85, 95} {
		seconds, code := 90.0, "changeover"
		if want == 50 {
			seconds, code = 120, "set-break"
		}
		if c := list[i]; math.Abs(c.Minute-want) > 1e-9 || c.Seconds != seconds || c.Code != code || !c.CanEat {
			t.Errorf("chance %d: %+v, want %g min", i, c, want)
		}
	}
	for _, one := range []TennisSet{{1, 0}, {0, 1}, {100, 100}} {
		if _, err := TennisChances([]TennisSet{one}, 100); err != nil {
			t.Errorf("%v: %v", one, err)
		}
	}
	for _, one := range []TennisSet{{0, -1}, {-1, 2}, {101, 100}, {6, -1}} {
		if _, err := TennisChances([]TennisSet{one}, 100); err == nil {
			t.Errorf("%v is a set", one)
		}
	}
	if list, err := TennisChances([]TennisSet{{6, 4}}, 0); list != nil || err != nil {
		t.Errorf("no time: %v %v", list, err)
	}
}

// A mouthful of at least 1 mL, and no more than a stomach takes at once, from ten.
func TestMouthfulsByHand(t *testing.T) {
	for _, c := range []struct {
		before, after, density float64
		want                   Mouthful
	}{{800, 550, 1, 25}, {800, 540, 1.04, 25}, {810, 800, 1, 1}, {5800, 800, 1, 500}} {
		if m, err := MouthfulFromTen(c.before, c.after, c.density); err != nil || math.Abs(float64(m-c.want)) > 1e-9 {
			t.Errorf("%+v: %g %v", c, float64(m), err)
		}
	}
	for _, grams := range []float64{9.9, 5000.1} {
		if m, err := MouthfulFromTen(6000, 6000-grams, 1); err == nil {
			t.Errorf("%g g: %g mL", grams, float64(m))
		}
	}
	if UsualMouthful("") != evidence.MouthfulWomen || UsualMouthful("male") != evidence.MouthfulMen {
		t.Error("the smaller mouthful is taken where the sex is not known")
	}
}

// A session is no longer than a day, nor is a break; a moment may be the very end.
func TestTimesInATable(t *testing.T) {
	at := func(minutes string) error {
		_, err := readRule([]string{"a", "s", minutes, "c", minutes, "", "60", "yes", "yes", "R", ""})
		return err
	}
	if err := at("1440"); err != nil {
		t.Errorf("a session of a day: %v", err)
	}
	if at("1441") == nil || at("-1") == nil {
		t.Error("more than a day, or less than nothing, is a time")
	}
	for seconds, ok := range map[string]bool{"86400": true, "86401": false} {
		if _, err := readRule([]string{"a", "s", "60", "c", "10", "", seconds, "yes", "yes", "R", ""}); (err == nil) != ok {
			t.Errorf("%s s: %v", seconds, err)
		}
	}
	if list, err := ReadSports(strings.NewReader(chanceColumns + "\na,s,,c,,15,60,yes,yes,R,\n")); err != nil || len(list) != 1 {
		t.Errorf("a table of one row: %v %v", list, err)
	}
	if _, err := readRule([]string{"a", "s", "", "c", "", "1", "60", "yes", "yes", "R", ""}); err != nil {
		t.Errorf("every minute: %v", err)
	}
	if _, err := readRule([]string{"a", "s", "", "c", "", "0.99", "60", "yes", "yes", "R", ""}); err == nil {
		t.Error("more often than every minute")
	}
	if _, err := readRule([]string{"a", "s", "60", "c", "60", "", "60", "yes", "yes", "R", ""}); err != nil {
		t.Errorf("at the very end: %v", err)
	}
}
