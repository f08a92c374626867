package climate

import (
	"errors"
	"maps"
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
)

// must fails the test on an error.
func must[T any](t *testing.T) func(T, error) T {
	return func(x T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
}

// strainInput reads a row of heat strain; air holds vapour or humidity.
func strainInput(in published.In) StrainInput {
	air := Air{Temperature: quantity.Celsius(in.Number("air"))}
	if in.Has("humidity") {
		air.Vapour = Saturation(air.Temperature) * quantity.Kilopascals(in.Number("humidity")/100)
	} else {
		air.Vapour = quantity.Kilopascals(in.Number("vapour"))
	}
	s := StrainInput{
		Air: air, Radiant: quantity.Celsius(in.Number("radiant")), Wind: quantity.MetresPerSecond(in.Number("wind")),
		Metabolic: quantity.WattsPerSquareMetre(in.Number("metabolic")), Clothing: Clothing{Insulation: Clo(in.Number("clo"))},
		Posture: Posture(in.Text("posture")), Acclimatised: in.Text("acclimatised") == "yes",
		Body:    Body{quantity.Kilograms(in.Number("mass")), quantity.Metres(in.Number("height"))},
		Minutes: int(in.Number("minutes")),
	}
	if in.Has("walk") {
		s.Walking = &Walking{Speed: quantity.MetresPerSecond(in.Number("walk")), Directed: true, Degrees: in.Number("degrees")}
	}
	return s
}

// strainModels are the outputs of heat strain by a way to run it.
func strainModels(run func(StrainInput) StrainResult) map[string]published.Model {
	return map[string]published.Model{
		"rectal °C":            func(in published.In) any { return float64(run(strainInput(in)).Rectal) },
		"water g":              func(in published.In) any { return float64(run(strainInput(in)).Water) },
		"minutes to rectal 38": func(in published.In) any { return run(strainInput(in)).RectalLimit },
		"minutes to 7.5 % lost": func(in published.In) any {
			return run(strainInput(in)).MeanLossLimit
		},
		"minutes to 5 % lost": func(in published.In) any { return run(strainInput(in)).MostLossLimit },
	}
}

func TestPublishedHeatStrain(t *testing.T) {
	models := strainModels(func(in StrainInput) StrainResult { return must[StrainResult](t)(PredictStrain(in)) })
	models["outside the standard"] = outsideStandard
	published.Walk(t, "heat_strain", models)
}

// outsideStandard names the field in which a row leaves the standard's range.
func outsideStandard(in published.In) any {
	or := func(name string, usual float64) float64 {
		if in.Has(name) {
			return in.Number(name)
		}
		return usual
	}
	body := Body{75, 1.8}
	air := quantity.Celsius(or("air", 30))
	s := StrainInput{
		Air: Air{air, quantity.Kilopascals(or("vapour", 2))}, Radiant: air + quantity.Celsius(or("above", 0)),
		Wind: quantity.MetresPerSecond(or("wind", 1)), Metabolic: quantity.WattsPerSquareMetre(or("watts", 300) / body.Area()),
		Clothing: Clothing{Insulation: Clo(or("clo", 0.5))}, Body: body,
	}
	list := s.Outside()
	if len(list) > 1 {
		in.TB().Fatalf("outside in %v", list)
	}
	return firstOr(list, "nothing")
}

// firstOr is the first field of a list, or a word.
func firstOr(list []evidence.Field, other string) string {
	if len(list) == 0 {
		return other
	}
	return string(list[0])
}

// refusedField is the field of a refusal as outside a formula's fit, or a word
// where nothing was refused.
func refusedField(tb testing.TB, err error, other string) string {
	tb.Helper()
	if err == nil {
		return other
	}
	var p evidence.Problem
	if !errors.As(err, &p) || p.Code != evidence.CodeOutOfFit {
		tb.Fatalf("not refused as outside the fit: %v", err)
	}
	return string(p.Field)
}

// entryValue is the value of the evidence entry that a row names.
func entryValue(in published.In) any {
	e, ok := evidence.Find(in.Text("id"))
	if !ok {
		in.TB().Fatalf("no entry %q", in.Text("id"))
	}
	return e.Value
}

// libraryHeatCapacity is what the outside library takes instead of the
// standard's 57.83 W·min/(kg·K).
const libraryHeatCapacity = 58.15

func TestPublishedHeatStrainGrid(t *testing.T) {
	published.Walk(t, "heat_strain_grid", strainModels(func(in StrainInput) StrainResult {
		if err := in.refused(); err != nil {
			t.Fatal(err)
		}
		s := newStrain(in, strainSetting{heatCapacity: libraryHeatCapacity, skinMetabolicMax: math.Inf(1)})
		return s.run(in, nil)
	}))
}

func TestPublishedAltitude(t *testing.T) {
	published.Walk(t, "altitude", map[string]published.Model{
		"pressure kPa": func(in published.In) any {
			return pressure(in.Number("metres"))
		},
	})
}

func TestPublishedClimate(t *testing.T) {
	models := airModels(t)
	maps.Copy(models, placeModels(t))
	maps.Copy(models, travelModels(t))
	published.Walk(t, "climate", models)
}

// airModels work out air.
func airModels(t *testing.T) map[string]published.Model {
	return map[string]published.Model{
		"saturation kPa": func(in published.In) any { return float64(Saturation(quantity.Celsius(in.Number("air")))) },
		"dew point °C": func(in published.In) any {
			a := must[Air](t)(NewAir(quantity.Celsius(in.Number("air")), quantity.Percent(in.Number("humidity"))))
			return dewPoint(t, a)
		},
	}
}

// dewPoint is the dew point of air that has one.
func dewPoint(t *testing.T, a Air) float64 {
	t.Helper()
	d, ok := a.DewPoint()
	if !ok {
		t.Fatal("no dew point")
	}
	return float64(d)
}

// placeModels ask the climate table.
func placeModels(t *testing.T) map[string]published.Model {
	places := loaded(t)
	place := func(in published.In) (Place, int) {
		return must[Place](t)(places.Find(in.Text("place"))), int(in.Number("month"))
	}
	return map[string]published.Model{
		"dew point of a month °C": func(in published.In) any {
			p, m := place(in)
			return dewPoint(t, Air{p.Months[m-1].Mean, p.Months[m-1].Vapour})
		},
		"afternoon °C": func(in published.In) any {
			p, m := place(in)
			return float64(must[PlaceAir](t)(p.Afternoon(m)).Temperature)
		},
		"mean °C": func(in published.In) any {
			p, m := place(in)
			return float64(must[PlaceAir](t)(p.Mean(m)).Temperature)
		},
		"elevation m": func(in published.In) any {
			p, _ := place(in)
			return float64(p.Elevation)
		},
		"places": func(published.In) any { return float64(len(places.List)) },
		"credit": func(published.In) any { return places.Credit },
	}
}

// travelModels are flight and packing.
func travelModels(t *testing.T) map[string]published.Model {
	return map[string]published.Model{
		"flight L": func(in published.In) any {
			f, err := FlightFluid(in.Number("hours"))
			if err != nil {
				t.Fatal(err)
			}
			if in.Text("end") == "low" {
				return f.Range.Low
			}
			return f.Range.High
		},
		"entry": entryValue,
		"water a day L": func(in published.In) any {
			stay := Stay{Days: 1, SessionsADay: int(in.Number("sessions")), Drink: quantity.Litres(in.Number("drink"))}
			return float64(must[PackingList](t)(Pack([]Stay{stay}, 0)).SafeWater)
		},
		"servings packed": func(in published.In) any {
			stay := Stay{Days: int(in.Number("sessions")), SessionsADay: 1,
				Supplies: []Supply{{ID: "drink", Form: Powder, Servings: in.Number("servings"), Serving: 30}}}
			return float64(must[PackingList](t)(Pack([]Stay{stay}, in.Number("margin"))).Supplies[0].Servings)
		},
	}
}

func TestPublishedWbgt(t *testing.T) {
	weather := func(in published.In) Weather {
		return Weather{Temperature: quantity.Celsius(in.Number("air")), Humidity: quantity.Percent(in.Number("humidity")), Sun: SunNone}
	}
	published.Walk(t, "wbgt", map[string]published.Model{
		"measured": func(in published.In) any {
			r := Readings{quantity.Celsius(in.Number("wet")), quantity.Celsius(in.Number("globe")), quantity.Celsius(in.Number("air")),
				in.Text("place") == "indoors"}
			return wbgt(r)
		},
		"from weather": func(in published.In) any {
			// The rows give the pressure; the model takes the altitude at which it is the standard's.
			w := weather(in)
			w.Altitude = altitudeOf(in.Number("hPa") / 10)
			r := must[GlobeReading](t)(SolarWBGT(w, quantity.MetresPerSecond(in.Number("wind")),
				Solar{in.Number("sun"), in.Number("direct"), in.Number("cosz")}))
			return r.WBGT.Value
		},
		"preset": func(in published.In) any {
			w := weather(in)
			w.Sun = Sun(in.Text("sun"))
			w.Wind = quantity.MetresPerSecond(in.Number("wind") * evidence.WindAtBody)
			return must[GlobeReading](t)(WeatherWBGT(w)).WBGT.Value
		},
		"entry": entryValue,
		"band from °C": func(in published.In) any {
			return BandOf(quantity.Celsius(in.Number("wbgt")), Practice{Continuous: in.Text("practice") == "continuous"}).Range.Low
		},
		"band": func(in published.In) any {
			kind := in.Text("practice")
			return BandOf(quantity.Celsius(in.Number("wbgt")), Practice{kind == "continuous", kind == "acclimatised"}).Code
		},
	})
}

// altitudeOf inverts the standard atmosphere.
func altitudeOf(kpa float64) quantity.Metres {
	return quantity.Metres((1 - math.Pow(kpa/evidence.SeaLevelPressure, 1/evidence.PressureExponent)) / evidence.PressureLapse)
}

// clothingRow is the insulation of the clothing that a row names.
func clothingRow(in published.In) any {
	c, ok := map[string]Clothing{"vest": Vest(), "shirt": Shirt(), "tracksuit": Tracksuit()}[in.Text("of")]
	if !ok {
		in.TB().Fatalf("no clothing %q", in.Text("of"))
	}
	return float64(c.Insulation)
}

func TestPublishedMetabolic(t *testing.T) {
	body := func(in published.In) Body {
		return Body{quantity.Kilograms(in.Number("mass")), quantity.Metres(in.Number("height"))}
	}
	one := Body{70, 1.78}
	// perKg brings a metabolic rate back to mL/kg/min.
	perKg := func(e Effort, b Body) float64 {
		return e.Metabolic.Value * b.Area() / evidence.OxygenEnergy * 60 / float64(b.Mass) * 1000
	}
	list := must[Activities](t)(LoadActivities())
	speed := func(in published.In) quantity.MetresPerSecond {
		return quantity.MetresPerSecond(in.Number("km/h") / 3.6)
	}
	effort := must[Effort](t)
	published.Walk(t, "metabolic", map[string]published.Model{
		"area m²": func(in published.In) any { return body(in).Area() },
		"running mL/kg/min": func(in published.In) any {
			return perKg(effort(RunningEffort(one, speed(in), in.Number("grade"), false)), one)
		},
		"cycling mL/kg/min": func(in published.In) any {
			b := Body{quantity.Kilograms(in.Number("kg")), 1.78}
			return perKg(effort(CyclingEffort(b, quantity.Watts(in.Number("W")), 8)), b)
		},
		"running W/m²": func(in published.In) any {
			return effort(RunningEffort(body(in), speed(in), 0, false)).Metabolic.Value
		},
		"cycling work W/m²": func(in published.In) any {
			return float64(effort(CyclingEffort(body(in), quantity.Watts(in.Number("W")), 8)).Work)
		},
		"cycling W/m²": func(in published.In) any {
			return effort(CyclingEffort(body(in), quantity.Watts(in.Number("W")), 8)).Metabolic.Value
		},
		"MET W/m²": func(in published.In) any {
			return effort(MetEffort(body(in), in.Number("met"), OnFoot, 1)).Metabolic.Value
		},
		"rowing W/m²": func(in published.In) any {
			return effort(RowingEffort(body(in), quantity.Watts(in.Number("W")), 4)).Metabolic.Value
		},
		"oxygen flux over comfort flux": func(in published.In) any {
			const comfort = 58.15 // W/m², the MET of comfort standards
			return effort(MetEffort(body(in), 8, OnFoot, 1)).Metabolic.Value / (8 * comfort)
		},
		"air past m/s": func(in published.In) any {
			e := Effort{OwnSpeed: quantity.MetresPerSecond(in.Number("own"))}
			return float64(e.AirPast(quantity.MetresPerSecond(in.Number("wind"))))
		},
		"air past on the spot m/s": func(in published.In) any {
			return float64(Effort{OnTheSpot: true}.AirPast(quantity.MetresPerSecond(in.Number("wind"))))
		},
		"clothing clo": clothingRow,
		"met": func(in published.In) any {
			a, ok := list.Find(in.Text("id"))
			if !ok || a.Compendium != in.Text("code") {
				t.Fatalf("no activity %q with code %q", in.Text("id"), in.Text("code"))
			}
			return a.Met
		},
	})
}
