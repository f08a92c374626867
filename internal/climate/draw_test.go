package climate

import (
	"ebbwell/internal/quantity"

	"pgregory.net/rapid"
)

// drawAthlete draws a body of the size athletes have.
func drawAthlete(t *rapid.T) Athlete {
	return Athlete{Body: Body{
		quantity.Kilograms(rapid.Float64Range(42, 125).Draw(t, "mass")), quantity.Metres(rapid.Float64Range(1.45, 2.08).Draw(t, "height")),
	}, Start: rapid.SampledFrom([]Start{{}, {Offset: 0.1, SD: 0.3, Athletes: 9}}).Draw(t, "start")}
}

// drawWeather draws weather that can be: dew points to 35 °C.
func drawWeather(t *rapid.T, name string) Weather {
	air := quantity.Celsius(rapid.Float64Range(-5, 48).Draw(t, name+" air"))
	most := min(100, 100*float64(Saturation(35)/Saturation(air)))
	return Weather{
		Temperature: air,
		Humidity:    quantity.Percent(rapid.Float64Range(1, most).Draw(t, name+" humidity")),
		Wind:        quantity.MetresPerSecond(rapid.Float64Range(0, 12).Draw(t, name+" wind")),
		Sun:         rapid.SampledFrom(Suns()).Draw(t, name+" sun"),
		Altitude:    quantity.Metres(rapid.Float64Range(-400, 5000).Draw(t, name+" altitude")),
	}
}

// drawEffort draws an effort on land for a body of average size.
func drawEffort(t *rapid.T, name string) Effort {
	b := Body{70, 1.75}
	var e Effort
	var err error
	switch rapid.IntRange(0, 3).Draw(t, name+" kind") {
	case 0:
		e, err = RunningEffort(b, quantity.MetresPerSecond(rapid.Float64Range(1.5, 6).Draw(t, name+" speed")), 0, rapid.Bool().Draw(t, name+" treadmill"))
	case 1:
		e, err = CyclingEffort(b, quantity.Watts(rapid.Float64Range(40, 380).Draw(t, name+" power")), quantity.MetresPerSecond(rapid.Float64Range(0, 13).Draw(t, name+" road")))
	case 2:
		e, err = MetEffort(b, rapid.Float64Range(3, 15).Draw(t, name+" met"), rapid.SampledFrom([]Motion{OnFoot, Cycling, Rowing}).Draw(t, name+" motion"), 1.5)
	default:
		e, err = RatedEffort(b, rapid.Float64Range(1, 10).Draw(t, name+" rating"), OnFoot, 1.5)
	}
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// drawSession draws a session that can be.
func drawSession(t *rapid.T, name string) Session {
	return Session{
		Weather: drawWeather(t, name), Effort: drawEffort(t, name),
		Clothing: rapid.SampledFrom([]Clothing{Vest(), Shirt(), Tracksuit(), {}}).Draw(t, name+" clothing"),
		State:    rapid.SampledFrom([]HeatState{Untrained, Trained, Acclimatised, ""}).Draw(t, name+" state"),
		Minutes:  quantity.Minutes(rapid.Float64Range(20, 300).Draw(t, name+" minutes")),
	}
}

// drawTests draws up to five measured rates; their sessions are still empty.
func drawTests(t *rapid.T) []Test {
	list := make([]Test, rapid.IntRange(0, 5).Draw(t, "tests"))
	for i := range list {
		list[i].Rate = quantity.LitresPerHour(rapid.Float64Range(0.1, 3.5).Draw(t, "rate"))
		list[i].U = quantity.LitresPerHour(rapid.Float64Range(0, 0.3).Draw(t, "u"))
		list[i].MonthsAgo = rapid.Float64Range(0, 30).Draw(t, "months")
	}
	return list
}
