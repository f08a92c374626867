package sweat

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/published"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// entry reads the evidence entry that a row names.
func entry(t *testing.T) published.Model {
	return func(in published.In) any {
		e, ok := evidence.Find(in.Text("id"))
		if !ok {
			t.Fatalf("no entry %q", in.Text("id"))
		}
		return e.Value
	}
}

// rowSheet is a whole sheet from the inputs of a row.
func rowSheet(t *testing.T, in published.In) Result {
	t.Helper()
	s := Input{
		Time: Time{Elapsed: new(quantity.Minutes(in.Number("minutes")))},
		Body: Body{
			Before:      []quantity.Kilograms{quantity.Kilograms(in.Number("before"))},
			After:       []quantity.Kilograms{quantity.Kilograms(in.Number("after"))},
			DressBefore: Minimal, DressAfter: Minimal,
		},
		Intake: Intake{Bottles: []Bottle{{Before: new(quantity.Grams(in.Number("drunk") + 100)), After: new(quantity.Grams(100))}}},
		Output: Output{Urine: new(quantity.Grams(in.Number("urine")))},
		// What is published is as weighed.
		Options: Options{Uncorrected: true},
	}
	if in.Has("forearm") {
		s.Patches = []Patch{{Site: evidence.ForearmDorsal, Method: evidence.IonChromatography,
			Sodium: new(quantity.MillimolesPerLitre(in.Number("forearm")))}}
	}
	r, err := Evaluate(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// fromMercury turns mmHg into kPa as the formula turns it back.
func fromMercury(mmHg float64) float64 { return mmHg / evidence.MillimetresPerKPa }

func TestPublishedMassBalance(t *testing.T) {
	change := func(cv float64) float64 { return 100 * evidence.CoverageFactor * math.Sqrt2 * cv }
	smallest := func(rate float64) float64 {
		f := ranged(rate, 0.02*rate)
		return Compare(Result{Fluid: Fluid{Rate: f}}, Result{Fluid: Fluid{Rate: f}}).Rate.Smallest
	}
	published.Walk(t, "mass_balance", map[string]published.Model{
		"entry":       entry(t),
		"loss mL":     func(in published.In) any { return 1000 * rowSheet(t, in).Fluid.Loss.Value },
		"rate mL/h":   func(in published.In) any { return 1000 * rowSheet(t, in).Fluid.Rate.Value },
		"rate L/h":    func(in published.In) any { return rowSheet(t, in).Fluid.Rate.Value },
		"change %":    func(in published.In) any { return rowSheet(t, in).Fluid.MassChange.Value },
		"sodium mg/h": func(in published.In) any { return rowSheet(t, in).Sodium.LossRate.Value },
		"sodium mg":   func(in published.In) any { return rowSheet(t, in).Sodium.Loss.Value },
		"respiratory g/min": func(in published.In) any {
			return respired(in.Number("oxygen"), fromMercury(in.Number("mmHg")))
		},
		"respiratory of kPa g/min": func(in published.In) any {
			return respired(in.Number("oxygen"), in.Number("kPa"))
		},
		"energy kcal/L":  func(in published.In) any { return kilocalories(1, in.Number("rer")) },
		"exchange g/min": func(in published.In) any { return exchanged(in.Number("oxygen"), in.Number("rer")) },
		"both g":         func(in published.In) any { return bothLosses(in.Number("kcal")) },
		"both by formulas g/kcal": func(in published.In) any {
			perLitre := respired(1, fromMercury(in.Number("mmHg"))) + exchanged(1, evidence.UsualRER)
			return perLitre / kilocalories(1, evidence.UsualRER)
		},
		"energy J/L": func(in published.In) any { return EnergyPerOxygen(in.Number("rer")) },
		"running mL/kg/min": func(in published.In) any {
			return FromRunning(in.Number("km/h"), in.Number("grade"), 1).Litres * 1000
		},
		"cycling mL/kg/min": func(in published.In) any {
			return FromCycling(in.Number("W"), in.Number("kg")).Litres * 1000 / in.Number("kg")
		},
		"met mL/kg/min": func(in published.In) any { return FromMet(in.Number("met"), 1).Litres * 1000 },
		"u of loss kg": func(in published.In) any {
			s := wholeSheet()
			s.Body.Step = new(quantity.Kilograms(in.Number("step")))
			s.Intake = Intake{NothingDrunk: true}
			return evaluated(t, s).Fluid.Loss.U
		},
		"day-to-day CV": func(in published.In) any {
			return in.Number("mean difference") * math.Sqrt(math.Pi) / 2 / in.Number("rate")
		},
		"smallest change %": func(in published.In) any { return change(in.Number("cv")) },
		"smallest change of rate %": func(in published.In) any {
			return 100 * smallest(in.Number("rate")) / in.Number("rate")
		},
		"smallest change of rate L/h": func(in published.In) any { return smallest(in.Number("rate")) },
		"smallest change of sodium %": func(in published.In) any {
			r := Result{Sodium: Sodium{Concentration: ranged(in.Number("concentration"), 1)}}
			return 100 * Compare(r, r).Concentration.Smallest / in.Number("concentration")
		},
	})
}

// either is the one word or the other.
func either(holds bool, yes, no string) string {
	if holds {
		return yes
	}
	return no
}

// forearm is the whole-body sodium from one dorsal forearm patch.
func forearm(t *testing.T, raw, on float64) figure.Figure {
	t.Helper()
	s := wholeSheet()
	s.Patches[0].Sodium, s.Patches[0].On = new(quantity.MillimolesPerLitre(raw)), new(quantity.Minutes(on))
	return evaluated(t, s).Sodium.Concentration
}

func TestPublishedSodium(t *testing.T) {
	site := func(in published.In) evidence.SiteAgreement {
		row, ok := evidence.AgreementOf(evidence.Site(in.Text("site")))
		if !ok {
			t.Fatalf("no agreement for %q", in.Text("site"))
		}
		return row
	}
	alone := func(in published.In) quantity.Range {
		s := wholeSheet()
		s.Patches = []Patch{{Site: evidence.Site(in.Text("site")), Sodium: new(quantity.MillimolesPerLitre(in.Number("raw"))),
			Method: evidence.IonChromatography}}
		return evaluated(t, s).Sodium.Concentration.Range
	}
	models := map[string]published.Model{
		"entry": entry(t),
		"whole body": func(in published.In) any {
			x, ok := predicted(evidence.Site(in.Text("site")), in.Number("raw"))
			if !ok {
				t.Fatal("no equation")
			}
			return x
		},
		"forearm turn": func(published.In) any { return ForearmTurn() },
		"band raw":     func(in published.In) any { return evidence.ForearmBand(in.Number("mmol")) },
		"equation u": func(in published.In) any {
			row := site(in)
			raw := symbol("raw", uncertainty.Exact(40), quantity.MillimolePerLitre)
			return withEquationError(predict(row, raw), row, []patch{{raw: raw, row: row}}).q.U()
		},
		"agreement": func(in published.In) any {
			row := site(in)
			return map[string]float64{"raw-bias": row.RawBias, "raw-limits": row.RawLimits,
				"bias": row.Bias, "limits": row.Limits}[in.Text("of")]
		},
		"equation range low": func(in published.In) any { return alone(in).Low }, "equation range high": func(in published.In) any { return alone(in).High },
		"raw range low": func(in published.In) any { return alone(in).Low }, "raw range high": func(in published.In) any { return alone(in).High },
		"method cv": func(in published.In) any {
			cv, _ := evidence.MethodCV(evidence.Method(in.Text("method")))
			return cv
		},
		"applied": func(in published.In) any {
			return either(hasNote(forearm(t, in.Number("raw"), 25), NoteForearmOutside), "outside", "inside")
		},
		"patch time": func(in published.In) any {
			return either(hasNote(forearm(t, 40, in.Number("on")), NotePatchTime), "not usual", "usual")
		},
		"hold matters": func(in published.In) any {
			return either(len(holdNotes(in.Number("share"), in.Number("sodium"), false)) == 0, "yes", "no")
		},
		"flag": func(in published.In) any {
			id := in.Text("of")
			return either(slices.ContainsFunc(rowSheet(t, in).Flags, func(f Flag) bool { return f.ID == id }), "yes", "no")
		},
		"hold": func(in published.In) any {
			return SodiumToHold(in.Number("sodium"), in.Number("potassium"), in.Number("share"))
		},
	}
	maps.Copy(models, saltModels())
	published.Walk(t, "sodium", models)
}

// saltModels are the arithmetic of salt.
func saltModels() map[string]published.Model {
	return map[string]published.Model{
		"salt mg": func(in published.In) any { return in.Number("g") * evidence.SodiumInSalt },
		"salt mmol": func(in published.In) any {
			return Millimoles(quantity.Milligrams(in.Number("g") * evidence.SodiumInSalt))
		},
		"label mg":     func(in published.In) any { return float64(SodiumOfLabel(quantity.Grams(in.Number("g")))) },
		"label salt g": func(in published.In) any { return float64(LabelOfSodium(quantity.Milligrams(in.Number("mg")))) },
		"mmol of mg":   func(in published.In) any { return Millimoles(quantity.Milligrams(in.Number("mg"))) },
	}
}

func TestPublishedMarkers(t *testing.T) {
	published.Walk(t, "markers", map[string]published.Model{
		"entry": entry(t),
		"band": func(in published.In) any {
			set, ok := evidence.BandSetNamed(in.Text("set"))
			if !ok {
				t.Fatalf("no set %q", in.Text("set"))
			}
			code, _, _ := set.Band(evidence.Marker(in.Text("marker")), in.Number("value"))
			return code
		},
		"own band": func(in published.In) any {
			code, _, _ := ownBands(t, in.Text("edges")).Band(evidence.GravityMarker, in.Number("value"))
			return code
		},
		"morning u %": func(in published.In) any {
			s := wholeSheet()
			s.Markers.Morning = new(quantity.Kilograms(70))
			for range int(in.Number("mornings")) {
				s.Markers.Baseline = append(s.Markers.Baseline, 70)
			}
			for _, m := range evaluated(t, s).Markers {
				if m.Marker == evidence.MorningMassMarker {
					return m.Figure.U
				}
			}
			return "no morning mass"
		},
		"limit": func(in published.In) any {
			l, ok := evidence.LimitOf(evidence.Field(in.Text("field")))
			if !ok {
				t.Fatalf("no limit for %q", in.Text("field"))
			}
			if in.Text("end") == "low" {
				return l.Refuse.Low
			}
			return l.Refuse.High
		},
	})
}

// ownBands are bands of specific gravity that a practice set itself, by their
// three edges.
func ownBands(t *testing.T, edges string) evidence.BandSet {
	t.Helper()
	var at [3]float64
	if _, err := fmt.Sscan(edges, &at[0], &at[1], &at[2]); err != nil {
		t.Fatal(err)
	}
	return evidence.BandSet{ID: evidence.SetOwn, Scales: []evidence.Scale{{Marker: evidence.GravityMarker, Bands: []evidence.Band{
		{Code: evidence.BandWell, High: at[0], Open: true}, {Code: evidence.BandMinimal, High: at[1]},
		{Code: evidence.BandSignificant, High: at[2]}, {Code: evidence.BandSerious, High: math.Inf(1)},
	}}}}
}

func TestPublishedGroups(t *testing.T) {
	group := func(in published.In) evidence.Group {
		for _, g := range evidence.Groups() {
			if g.ID == in.Text("group") {
				return g
			}
		}
		t.Fatalf("no group %q", in.Text("group"))
		return evidence.Group{}
	}
	published.Walk(t, "groups", map[string]published.Model{
		"mean":     func(in published.In) any { return group(in).Mean },
		"sd":       func(in published.In) any { return group(in).SD },
		"lowest":   func(in published.In) any { return group(in).Observed.Low },
		"highest":  func(in published.In) any { return group(in).Observed.High },
		"athletes": func(in published.In) any { return float64(group(in).N) },
		"median":   func(in published.In) any { return QuantileOf(group(in), 0.5) },
		"below": func(in published.In) any {
			p, _ := PlaceIn(group(in), in.Number("value"))
			return p.Below
		},
	})
}

func TestPublishedPlasma(t *testing.T) {
	published.Walk(t, "hyponatraemia", map[string]published.Model{
		"entry": entry(t),
		"change": func(in published.In) any {
			before := in.Number("before")
			return PlasmaSodium(before, in.Number("water body"), in.Number("ions"), in.Number("water")) - before
		},
	})
}

func TestPublishedBodyWater(t *testing.T) {
	published.Walk(t, "body_water", map[string]published.Model{
		"entry": entry(t),
		"body water": func(in published.In) any {
			return BodyWater(Sex(in.Text("sex")), in.Number("age"), in.Number("cm"), in.Number("kg"))
		},
	})
}
