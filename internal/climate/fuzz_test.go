package climate

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// FuzzWeather: no weather panics, and what comes out is either refused or a
// sound number.
func FuzzWeather(f *testing.F) {
	f.Add(30.0, 50.0, 2.0, 0.0, 600.0, 0.5, 0.7, uint8(4))
	f.Add(-20.0, 0.0, 0.0, 6000.0, 0.0, 0.0, -1.0, uint8(0))
	f.Add(55.0, 100.0, 25.0, -430.0, 1400.0, 1.0, 0.00873, uint8(5))
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e300, math.Inf(-1), 2.0, 5.0, uint8(99))
	f.Fuzz(func(t *testing.T, air, humidity, wind, altitude, irradiance, direct, cosZenith float64, sun uint8) {
		w := Weather{quantity.Celsius(air), quantity.Percent(humidity), quantity.MetresPerSecond(wind), Sun("odd"), quantity.Metres(altitude), nil}
		if int(sun) < len(Suns()) {
			w.Sun = Suns()[sun]
		}
		r, err := WeatherWBGT(w)
		sound(t, r.WBGT, err)
		if refuses := refusing(w.Check()); refuses != (err != nil) {
			t.Fatalf("%+v has problems: %v; calculated with %v", w, refuses, err)
		}
		r, err = SolarWBGT(w, quantity.MetresPerSecond(wind), Solar{irradiance, direct, cosZenith})
		sound(t, r.WBGT, err)
		if a, err := AirFromDewPoint(w.Temperature, quantity.Celsius(humidity)); err == nil && a.Humidity() > 100+1e-9 {
			t.Fatalf("humidity %g", a.Humidity())
		}
	})
}

// refusing reports whether one of the problems refuses.
func refusing(list []evidence.Problem) bool {
	for _, p := range list {
		if p.Severity == evidence.Refuses {
			return true
		}
	}
	return false
}

// sound fails on a figure that is not sound, or on one beside an error.
func sound(t *testing.T, f figure.Figure, err error) {
	t.Helper()
	if err != nil {
		if f.Known {
			t.Fatalf("a figure beside the error %v", err)
		}
		return
	}
	if fault := faultOf(f); fault != "" {
		t.Fatal(fault)
	}
}

// FuzzEstimate: no athlete, test or plan panics, and no known figure is
// unsound.
func FuzzEstimate(f *testing.F) {
	f.Add(70.0, 1.78, 25.0, 50.0, 1.0, 12.0, 60.0, 0.3, 1.2, 0.05, 2.0, 33.0, uint8(5), uint8(1))
	f.Add(20.0, 1.0, -20.0, 0.0, 25.0, 1.0, 15.0, 0.0, 0.05, 0.0, 0.0, 55.0, uint8(0), uint8(0))
	f.Add(250.0, 2.4, 55.0, 100.0, 0.0, 30.0, 1440.0, 2.0, 6.0, 6.0, 600.0, -20.0, uint8(2), uint8(2))
	f.Add(math.NaN(), -1.0, 1e9, math.Inf(1), math.NaN(), 0.0, -5.0, math.NaN(), math.Inf(1), math.NaN(), -1.0, 0.0, uint8(77), uint8(77))
	f.Fuzz(func(t *testing.T, mass, height, air, humidity, wind, pace, minutes, clo, rate, u, months, planned float64, sun, state uint8) {
		a := Athlete{Body: Body{quantity.Kilograms(mass), quantity.Metres(height)}}
		e, err := RunningEffort(a.Body, quantity.MetresPerSecond(pace/3.6), 0, false)
		sound(t, e.Metabolic, err)
		s := Session{Effort: e, Clothing: Clothing{Insulation: Clo(clo)}, Minutes: quantity.Minutes(minutes),
			State:   pick([]HeatState{Untrained, Trained, Acclimatised, ""}, state, "odd"),
			Weather: Weather{quantity.Celsius(air), quantity.Percent(humidity), quantity.MetresPerSecond(wind), pick(Suns(), sun, "odd"), 0, nil}}
		plan := s
		plan.Weather.Temperature = quantity.Celsius(planned)
		one := Test{s, quantity.LitresPerHour(rate), quantity.LitresPerHour(u), months}
		for _, tests := range [][]Test{nil, {one}, {one, {plan, one.Rate, 0.02, 1}, {s, 1, 0.02, 1}}} {
			soundEstimate(t, a, tests, plan)
		}
	})
}

// pick takes one of a list, or another beyond its end.
func pick[T any](list []T, at uint8, other T) T {
	if int(at) < len(list) {
		return list[at]
	}
	return other
}

// soundEstimate fails on an estimate or a heat caution with an unsound figure.
func soundEstimate(t *testing.T, a Athlete, tests []Test, plan Session) {
	t.Helper()
	basis, err := Estimate(a, tests, plan)
	if err != nil {
		if basis.Rate.Known {
			t.Fatal("a rate beside an error")
		}
		return
	}
	if !basis.Rate.Known || !basis.Rate.Ranged || basis.Rate.Range.Low < 0 {
		t.Fatalf("rate %+v", basis.Rate)
	}
	c, err := HeatCaution(a.Body, plan, Practice{}, nil, basis)
	if err != nil {
		t.Fatalf("no heat caution: %v", err)
	}
	for _, r := range []any{basis, c} {
		for at, f := range figuresIn(r) {
			if fault := faultOf(f); fault != "" {
				t.Fatalf("%T%s: %s", r, at, fault)
			}
		}
	}
}

// FuzzTables: no table panics; what is read can be asked.
func FuzzTables(f *testing.F) {
	f.Add("# credit\nhead\n", "id\n", "sao")
	f.Add("# c\nh,1,2,3,4,5,6,7,8,9,10,11,12\nA,B,1,2,3,A,"+"1 1 1 1 1 1 1 1 1 1 1 1,- - - - - - - - - - - -,1 1 1 1 1 1 1 1 1 1 1 1,9 9 9 9 9 9 9 9 9 9 9 9,- - - - - - - - - - - -,1 1 1 1 1 1 1 1 1 1 1 1,1 1 1 1 1 1 1 1 1 1 1 1\n", "h,1,2,3,4,5,6,7\na,b,c,8,on-foot,1,P,1\n", "a")
	f.Fuzz(func(t *testing.T, climates, activities, query string) {
		if p, err := readPlaces([]byte(climates)); err == nil {
			if p.Credit == "" {
				t.Fatal("a table without credit was read")
			}
			for _, place := range p.Search(query) {
				for m := 1; m <= months; m++ {
					if _, err := place.Afternoon(m); err != nil {
						t.Fatal(err)
					}
				}
			}
			_, _ = p.Find(query)
		}
		if list, err := readActivities([]byte(activities)); err == nil {
			_ = list.Search(query)
		}
	})
}
