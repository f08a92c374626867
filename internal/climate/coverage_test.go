package climate

import (
	"slices"
	"testing"

	"ebbwell/internal/quantity"
)

// TestCoverage changes one thing at a time from a test at 25 °C in the shade.
func TestCoverage(t *testing.T) {
	b, done := sample(t, 25, SunShade)
	for _, c := range []struct {
		name   string
		change func(*Session)
		months float64
		want   Grade
		by     string
	}{
		{"nothing", func(*Session) {}, 0, Tested, ""},
		{"5 °C hotter, drier", func(s *Session) { s.Weather.Temperature, s.Weather.Humidity = 30, 37 }, 0, Tested, ""},
		{"6 °C hotter, drier", func(s *Session) { s.Weather.Temperature, s.Weather.Humidity = 31, 35 }, 0, Near, ByAir},
		{"11 °C hotter, drier", func(s *Session) { s.Weather.Temperature, s.Weather.Humidity = 36, 27 }, 0, Far, ByAir},
		{"a little more humid", func(s *Session) { s.Weather.Humidity = 72 }, 0, Tested, ""},
		{"more humid", func(s *Session) { s.Weather.Humidity = 80 }, 0, Near, ByHumidity},
		{"much more humid", func(s *Session) { s.Weather.Humidity = 97 }, 0, Far, ByHumidity},
		{"one step of sun", func(s *Session) { s.Weather.Sun = SunOvercast }, 0, Near, BySun},
		{"full sun", func(s *Session) { s.Weather.Sun = SunHigh }, 0, Far, BySun},
		{"10 % harder", func(s *Session) { s.Effort.Metabolic.Value *= 1.1 }, 0, Tested, ""},
		{"15 % harder", func(s *Session) { s.Effort.Metabolic.Value *= 1.15 }, 0, Near, ByEffort},
		{"25 % easier", func(s *Session) { s.Effort.Metabolic.Value *= 0.75 }, 0, Far, ByEffort},
		{"a vest", func(s *Session) { s.Clothing = Vest() }, 0, Near, ByClothing},
		{"not trained any more", func(s *Session) { s.State = Untrained }, 0, Near, ByHeatState},
		{"used to heat now", func(s *Session) { s.State = Acclimatised }, 0, Far, ByHeatState},
		{"a year old", func(*Session) {}, 12, Tested, ""},
		{"two years old", func(*Session) {}, 24, Near, ByMonths},
		{"no air past the body", func(s *Session) { s.Effort.OwnSpeed, s.Effort.OnTheSpot = 0, true }, 0, Far, ByWettedness},
		{"twice as long", func(s *Session) { s.Minutes = 120 }, 0, Tested, ""},
		{"heat that cannot leave", func(s *Session) { s.Weather.Temperature, s.Weather.Humidity = 34, 80 }, 0, Far, ByWettedness},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := done
			c.change(&plan)
			list, err := Cover(b, []Test{{Session: done, Rate: 1, U: 0.05, MonthsAgo: c.months}}, plan)
			if err != nil {
				t.Fatal(err)
			}
			if list[0].Grade != c.want {
				t.Fatalf("%s, want %s: %+v", list[0].Grade.Code(), c.want.Code(), list[0].Differences)
			}
			reasons := list[0].Reasons()
			if (c.by == "") != (len(reasons) == 0) {
				t.Fatalf("reasons %+v", reasons)
			}
			if c.by != "" && !slices.ContainsFunc(reasons, func(d Difference) bool { return d.By == c.by && d.Grade == c.want }) {
				t.Errorf("%s is not among the reasons %+v", c.by, reasons)
			}
		})
	}
}

// TestNeedSetsApart: like air, sun and effort, and yet over 100 W/m² apart,
// because the air past the body is another.
func TestNeedSetsApart(t *testing.T) {
	b, done := sample(t, 15, SunShade)
	plan := done
	plan.Effort.OwnSpeed, plan.Effort.OnTheSpot = 0, true
	list, err := Cover(b, []Test{{Session: done, Rate: 1, U: 0.05}}, plan)
	if err != nil {
		t.Fatal(err)
	}
	if reasons := list[0].Reasons(); list[0].Grade != Far || reasons[0].By != ByNeed || reasons[0].Size < 100 {
		t.Errorf("%s by %+v", list[0].Grade.Code(), reasons)
	}
}

// TestHotTestHoldsForItself: where heat could not leave, the test holds for
// like conditions and for no others, not even near ones.
func TestHotTestHoldsForItself(t *testing.T) {
	b, done := sample(t, 34, SunShade)
	done.Weather.Humidity = 80
	x := must[Balance](t)(Calculate(b, done))
	if !x.Uncompensable() {
		t.Fatal("the heat can leave")
	}
	cooler := done
	cooler.Weather.Temperature, cooler.Weather.Humidity = 28, 95
	tests := []Test{{Session: done, Rate: 2, U: 0.05}}
	own, err := Cover(b, tests, done)
	if err != nil {
		t.Fatal(err)
	}
	other, err := Cover(b, tests, cooler)
	if err != nil {
		t.Fatal(err)
	}
	if own[0].Grade != Tested || other[0].Grade != Far {
		t.Errorf("its own: %s, another: %s", own[0].Grade.Code(), other[0].Grade.Code())
	}
}

func TestDifferencesHaveSizes(t *testing.T) {
	b, done := sample(t, 25, SunShade)
	plan := done
	plan.Weather.Temperature, plan.Weather.Humidity, plan.Weather.Sun = 36, 48, SunHigh
	plan.State, plan.Clothing, plan.Minutes = Acclimatised, Vest(), 95
	list, err := Cover(b, []Test{{Session: done, Rate: 1, U: 0.05, MonthsAgo: 2}}, plan)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{ByAir: 11, BySun: 3, ByHeatState: 1, ByClothing: -0.1, ByMonths: 2, ByDuration: 35, ByEffort: 0}
	order := []string{ByAir, ByHumidity, BySun, ByEffort, ByClothing, ByHeatState, ByMonths, ByNeed, ByWettedness, ByDuration}
	for i, d := range list[0].Differences {
		if d.By != order[i] {
			t.Errorf("difference %d is %s, want %s", i, d.By, order[i])
		}
		if size, ok := want[d.By]; ok && (d.Size-size > 1e-9 || size-d.Size > 1e-9) {
			t.Errorf("%s: %g, want %g", d.By, d.Size, size)
		}
	}
}

// TestUnusableTestIsFar: a test that cannot be compared says why.
func TestUnusableTestIsFar(t *testing.T) {
	b, plan := sample(t, 25, SunShade)
	bad := plan
	bad.Weather.Humidity = 200
	list, err := Cover(b, []Test{{Session: bad, Rate: 1}, {Session: plan, Rate: quantity.LitresPerHour(-1)}}, plan)
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range list {
		if c.Grade != Far || c.Err == nil || c.Test != i {
			t.Errorf("coverage %d: %+v", i, c)
		}
	}
}
