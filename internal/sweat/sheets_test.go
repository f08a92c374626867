package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// wholeSheet is a plain sheet with everything in: 1.6 kg lighter, 0.55 kg
// drunk from two bottles, no urine, one forearm patch, 95 min in warm air, at an
// effort that is known for sure: breath and gas exchange are [wholeBreath].
func wholeSheet() Input {
	return Input{
		Time: Time{Elapsed: new(quantity.Minutes(95))},
		Body: Body{
			Before: []quantity.Kilograms{64.0}, After: []quantity.Kilograms{62.4},
			DressBefore: Minimal, DressAfter: Minimal, Step: new(quantity.Kilograms(0.05)),
		},
		Intake: Intake{Bottles: []Bottle{
			{Before: new(quantity.Grams(712)), After: new(quantity.Grams(412))},
			{Before: new(quantity.Grams(688)), After: new(quantity.Grams(438))},
		}},
		Output: Output{Urine: new(quantity.Grams(0))},
		Patches: []Patch{{
			Site: evidence.ForearmDorsal, Side: "left", On: new(quantity.Minutes(28)), Off: new(quantity.Minutes(70)),
			Sodium: new(quantity.MillimolesPerLitre(47.5)), Method: evidence.DirectElectrode,
		}},
		Effort: sure(1.5),
		Air:    Air{Temperature: new(quantity.Celsius(31)), Vapour: new(quantity.Kilopascals(2.2))},
	}
}

// sure is an uptake in L/min that adds nothing to a range.
func sure(uptake float64) Effort { return Effort{Oxygen: &uptake, RelativeU: 1e-9} }

// wholeBreath is what leaves by breath and gas exchange in [wholeSheet], kg, from
// the two formulas by hand: 142.5 L of oxygen.
func wholeBreath() float64 {
	return 142.5 * (0.019*(44-2.2*7.5006) + (44*0.92-32)/22.4) / 1000
}

// failer is a test or a property check.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// evaluated is the result of a sheet that must not fail.
func evaluated(t failer, in Input) Result {
	t.Helper()
	r, err := Evaluate(in)
	if err != nil {
		t.Fatalf("evaluate: %v", err)
	}
	return r
}

// ranged is a figure for tests that take figures.
func ranged(value, u float64) figure.Figure {
	return figure.Figure{Known: true, Value: value, U: u, Ranged: true,
		Range: quantity.Range{Low: value - 1.96*u, High: value + 1.96*u}}
}
