package climate

import (
	"maps"
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
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

func TestPublishedHeatEstimate(t *testing.T) {
	models := ruleModels(t)
	maps.Copy(models, besideModels(t))
	published.Walk(t, "heat_estimate", models)
}

// ruleModels are the steps of the rule for one session.
func ruleModels(t *testing.T) map[string]published.Model {
	return map[string]published.Model{
		"onset": func(in published.In) any { return Onset(quantity.Minutes(in.Number("minutes"))) },
		"wettedness max": func(in published.In) any {
			return must[float64](t)(HeatState(in.Text("state")).wettednessMax())
		},
		"step of the rule": func(in published.In) any {
			row := ruleRows(t)[in.Text("session")]
			d := demandOf(must[Balance](t)(Calculate(row.body, row.plan)), row.plan)
			steps := map[string]float64{"Eres": d.balance.BreathWet, "w": d.wet, "g": d.log, "Q": d.weak, "lambda": d.lowEnd, "day²": d.day,
				"qc": d.cool, "qh": d.hot, "qv": d.fast}
			x, ok := steps[in.Text("step")]
			if !ok {
				t.Fatalf("no step %q", in.Text("step"))
			}
			return x
		},
		"day to day": func(in published.In) any {
			need, kind := in.Number("need"), EffortKind(in.Text("effort"))
			return math.Sqrt(square(evidence.DayShare) + square(evidence.DayFlow/need) + square(evidence.DayEffort*kind.relativeU()))
		},
		"range low %":  func(in published.In) any { r := likeRange(t, in); return 100 * (r.Range.Low/r.Value - 1) },
		"range high %": func(in published.In) any { r := likeRange(t, in); return 100 * (r.Range.High/r.Value - 1) },
		"inside without a test": func(in published.In) any {
			b := must[Basis](t)(Estimate(Athlete{Body: Body{quantity.Kilograms(in.Number("mass")), quantity.Metres(in.Number("height"))}}, nil, publishedSession(t, in)))
			if b.Rate.Range.Contains(in.Number("rate")) {
				return "yes"
			}
			return "no"
		},
	}
}

// likeRange is the estimate from tests like "same as the test" whose effort was
// found in some way, for that session or another air.
func likeRange(t *testing.T, in published.In) figure.Figure {
	t.Helper()
	row := ruleRows(t)["same as the test"]
	one := row.tests[0]
	one.Session.Effort.Kind = EffortKind(in.Text("effort"))
	plan := one.Session
	if warmer := quantity.Celsius(in.Number("warmer")); warmer != 0 {
		radiant := *plan.Weather.Radiant + warmer
		plan.Weather.Temperature += warmer
		plan.Weather.Radiant = &radiant
	}
	var tests []Test
	for range int(in.Number("tests")) {
		tests = append(tests, one)
	}
	return must[Basis](t)(Estimate(Athlete{Body: row.body}, tests, plan)).Rate
}

// publishedSession is a session as a paper describes it; what it leaves out is
// our guess and stands in the row.
func publishedSession(t *testing.T, in published.In) Session {
	t.Helper()
	b := Body{quantity.Kilograms(in.Number("mass")), quantity.Metres(in.Number("height"))}
	s := Session{Clothing: Shirt(), State: Trained, Minutes: quantity.Minutes(in.Number("minutes")), Weather: Weather{
		Temperature: quantity.Celsius(in.Number("air")), Humidity: quantity.Percent(in.Number("humidity")), Sun: Sun(in.Text("sun"))}}
	switch {
	case in.Has("km/h"):
		s.Effort = must[Effort](t)(RunningEffort(b, quantity.MetresPerSecond(in.Number("km/h")/3.6), 0, false))
	case in.Has("watts"):
		s.Effort = must[Effort](t)(CyclingEffort(b, quantity.Watts(in.Number("watts")), 0))
		s.Weather.Wind = quantity.MetresPerSecond(in.Number("fan"))
	default:
		s.Effort = must[Effort](t)(MetEffort(b, in.Number("met"), OnFoot, 1.5))
	}
	return s
}

// besideModels are what stands beside the estimate: groups, soldiers, days.
func besideModels(t *testing.T) map[string]published.Model {
	soldiers := func(in published.In) Soldiers {
		x := Balance{Need: in.Number("need"), Capacity: in.Number("capacity"), Area: 1, AirPast: 1}
		return must[Soldiers](t)(SoldiersOf(x, 25))
	}
	return map[string]published.Model{
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
