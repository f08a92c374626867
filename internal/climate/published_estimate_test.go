package climate

import (
	"maps"
	"math"
	"testing"

	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
)

// sample is the session of the independent figures: 12 km/h, 50 %, shirt and
// shorts, trained, 60 min.
func sample(t *testing.T, air float64, sun Sun) (Body, Session) {
	t.Helper()
	b := Body{70, 1.78}
	e := must[Effort](t)(RunningEffort(b, 12/3.6, 0, false))
	return b, Session{Weather: Weather{Temperature: quantity.Celsius(air), Humidity: 50, Sun: sun}, Effort: e,
		Clothing: Shirt(), State: Trained, Minutes: 60}
}

// calibrated is a calibration of so many like tests that lie away from a
// balance by a need in W/m².
func calibrated(x Balance, e Effort, tests int, away float64) Calibration {
	c := Calibration{Slope: 1}
	for i := range tests {
		c.Used = append(c.Used, i)
		c.points = append(c.points, point{logBase: math.Log(float64(x.Base())), need: x.Need - away, effort: e})
	}
	c.Factor = c.factor()
	return c
}

func TestPublishedHeatEstimate(t *testing.T) {
	models := transferModels(t)
	maps.Copy(models, besideModels(t))
	published.Walk(t, "heat_estimate", models)
}

// transferModels are the balance and the transfer of a calibration.
func transferModels(t *testing.T) map[string]published.Model {
	transferred := func(in published.In) quantity.Range {
		b, s := sample(t, 25, SunShade)
		x := must[Balance](t)(Calculate(b, s))
		c := calibrated(x, s.Effort, int(in.Number("tests")), in.Number("away"))
		f, err := c.Transfer(b, s)
		if err != nil {
			t.Fatal(err)
		}
		return quantity.Range{Low: f.Range.Low / f.Value, High: f.Range.High / f.Value}
	}
	return map[string]published.Model{
		"rate L/h": func(in published.In) any {
			b, s := sample(t, in.Number("air"), Sun(in.Text("sun")))
			x := must[Balance](t)(Calculate(b, s))
			return float64(x.Base()) * Onset(s.Minutes) / 1000
		},
		"base on the floor": func(in published.In) any {
			b, s := sample(t, in.Number("air"), Sun(in.Text("sun")))
			s.Weather.Humidity = quantity.Percent(in.Number("humidity"))
			s.Effort = must[Effort](t)(CyclingEffort(b, quantity.Watts(in.Number("watts")), quantity.MetresPerSecond(in.Number("km/h")/3.6)))
			if must[Balance](t)(Calculate(b, s)).OnFloor() {
				return "yes"
			}
			return "no"
		},
		"onset":           func(in published.In) any { return Onset(quantity.Minutes(in.Number("minutes"))) },
		"weight of tests": func(in published.In) any { return weight(int(in.Number("n"))) },
		"range low %":     func(in published.In) any { return 100 * (transferred(in).Low - 1) },
		"range high %":    func(in published.In) any { return 100 * (transferred(in).High - 1) },
		"range factor":    func(in published.In) any { return transferred(in).High },
		"wettedness max": func(in published.In) any {
			return must[float64](t)(HeatState(in.Text("state")).wettednessMax())
		},
	}
}

// besideModels are what stands beside the estimate: groups, soldiers, days.
func besideModels(t *testing.T) map[string]published.Model {
	soldiers := func(in published.In) Soldiers {
		x := Balance{Need: in.Number("need"), Capacity: in.Number("capacity"), Area: 1, AirPast: 1}
		return must[Soldiers](t)(SoldiersOf(x, 25))
	}
	return map[string]published.Model{
		"group low L/h":  func(published.In) any { return groupRate("").Range.Low },
		"group high L/h": func(published.In) any { return groupRate("").Range.High },
		"soldiers exponential g/m²/h": func(in published.In) any {
			return float64(soldiers(in).Exponential)
		},
		"soldiers linear g/m²/h": func(in published.In) any { return float64(soldiers(in).Linear) },
		"soldiers refused": func(in published.In) any {
			x := Balance{Need: in.Number("need"), Capacity: in.Number("capacity"), Area: 1, AirPast: in.Number("wind")}
			_, err := SoldiersOf(x, quantity.Celsius(in.Number("air")))
			return refusedField(t, err, "none")
		},
		"heat day": func(in published.In) any { return heatDay(int(in.Number("day")), Trained).Code },
		"easier": func(in published.In) any {
			return map[bool]string{true: "yes", false: "no"}[heatDay(int(in.Number("day")), Trained).Easier]
		},
		"entry": entryValue,
		"retest": func(in published.In) any {
			d := must[[]HeatDay](t)(Acclimatise(int(in.Number("day")), 1, Trained))[0]
			switch {
			case d.First:
				return "first"
			case d.Retest:
				return "second"
			}
			return "none"
		},
	}
}
