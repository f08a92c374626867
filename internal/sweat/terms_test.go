package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// The values of these tests are worked by hand from the numbers of a sheet, not
// from the program's own constants: a constant that goes astray is found here.

// drunkFrom is what was drunk from one bottle, on an otherwise whole sheet
// without corrections.
func drunkFrom(t *testing.T, b Bottle) figure.Figure {
	t.Helper()
	in := wholeSheet()
	in.Intake = Intake{Bottles: []Bottle{b}}
	return evaluated(t, in).Fluid.Drunk
}

func grams(x float64) *quantity.Grams { return new(quantity.Grams(x)) }

// One weighing of a bottle errs by 1 g [P]; each filling and what was poured
// away are two weighings more. A volume from a carton errs by 5 % [P].
func TestErrorOfABottle(t *testing.T) {
	for name, c := range map[string]struct {
		bottle   Bottle
		value, u float64 // L
	}{
		"weighed twice":              {Bottle{Before: grams(700), After: grams(300)}, 0.4, 1e-3 * math.Sqrt(2)},
		"refilled":                   {Bottle{Before: grams(700), After: grams(300), Refills: []quantity.Grams{500}}, 0.9, 1e-3 * 2},
		"refilled twice":             {Bottle{Before: grams(700), After: grams(300), Refills: []quantity.Grams{500, 400}}, 1.3, 1e-3 * math.Sqrt(6)},
		"poured away":                {Bottle{Before: grams(700), After: grams(300), Poured: grams(100)}, 0.3, 1e-3 * 2},
		"from a carton":              {Bottle{Volume: new(quantity.Millilitres(500))}, 0.5, 0.025},
		"a dense carton":             {Bottle{Volume: new(quantity.Millilitres(500)), Density: new(1.04)}, 0.5, 0.025},
		"carton, a part poured away": {Bottle{Volume: new(quantity.Millilitres(500)), Poured: grams(200)}, 0.3, 0.025},
	} {
		f := drunkFrom(t, c.bottle)
		near(t, name, f.Value, c.value, 1e-9)
		near(t, name+", u", f.U, c.u, 1e-9)
		near(t, name+", low", f.Range.Low, c.value-1.96*c.u, 1e-9)
		near(t, name+", high", f.Range.High, c.value+1.96*c.u, 1e-9)
	}
}

// Two weighings of a bottle err by 1.41 g together: up to twice that a bottle
// that gained counts as untouched, beyond it is refused.
func TestBottleThatGained(t *testing.T) {
	for gain, untouched := range map[float64]bool{0.5: true, 2.5: true, 2.8: true, 2.9: false, 5: false, 40: false} {
		in := wholeSheet()
		in.Intake = Intake{Bottles: []Bottle{{Before: grams(500), After: grams(500 + gain)}}}
		r := evaluated(t, in)
		if (len(r.Problems) == 0) != untouched {
			t.Errorf("a gain of %v g: problems %v", gain, r.Problems)
		}
		if untouched && r.Fluid.Drunk.Value != 0 {
			t.Errorf("a gain of %v g: %v L drunk", gain, r.Fluid.Drunk.Value)
		}
	}
}

// Of 500 g that left a shared bottle 40 to 60 % are the athlete's: 250 mL, at
// least 200 and at most 300, and the sentence says so.
func TestSharedBottleEnds(t *testing.T) {
	share := func(x float64) *quantity.Percent { return new(quantity.Percent(x)) }
	in := wholeSheet()
	in.Intake = Intake{Bottles: []Bottle{{Use: Shared, Before: grams(700), After: grams(200), ShareLow: share(40), ShareHigh: share(60)}}}
	r := evaluated(t, in)
	near(t, "drunk", r.Fluid.Drunk.Value, 0.25, 1e-9)
	i := slices.IndexFunc(r.Fluid.Loss.Why.Notes, func(n figure.Note) bool { return n.ID == NoteSharedBottles })
	if i < 0 {
		t.Fatalf("no sentence on the shared bottle: %v", r.Fluid.Loss.Why.Notes)
	}
	near(t, "at least", r.Fluid.Loss.Why.Notes[i].Args[0], 0.2, 1e-9)
	near(t, "at most", r.Fluid.Loss.Why.Notes[i].Args[1], 0.3, 1e-9)
	if f := r.Fluid.Drunk; f.Range.Low > 0.2 || f.Range.High < 0.3 {
		t.Errorf("the range %v leaves out what may be", f.Range)
	}
	if b := r.Bottles[0]; b.Item != 1 || math.Abs(b.Bounds.Low-200) > 1e-9 || math.Abs(b.Bounds.High-300) > 1e-9 || math.Abs(b.Drunk-250) > 1e-9 {
		t.Errorf("the bottle is said to be %+v", b)
	}
}

// Two foods of 80 and 20 g err by 5 % each [P]: 4 and 1 g. The second that has
// no mass is named as the second.
func TestErrorOfFood(t *testing.T) {
	in := wholeSheet()
	was := evaluated(t, in).Fluid.Loss.U
	in.Intake.Foods = []Food{{Mass: grams(80)}, {Mass: grams(20)}}
	r := evaluated(t, in)
	near(t, "u of the loss", r.Fluid.Loss.U, math.Sqrt(was*was+17e-6), 1e-9)
	in.Intake.Foods[1].Mass = nil
	r = evaluated(t, in)
	if len(r.Missing) != 1 || r.Missing[0].ID != MissingFood || r.Missing[0].Item != 2 {
		t.Errorf("missing %v, want the second food", r.Missing)
	}
	in.Intake.Foods[1].Mass = grams(-5)
	if r = evaluated(t, in); len(r.Problems) != 1 || r.Problems[0].Item != 2 {
		t.Errorf("problems %v, want one with the second food", r.Problems)
	}
}

// Urine errs by 10 g [P].
func TestErrorOfUrine(t *testing.T) {
	in := wholeSheet()
	near(t, "bottles, scale and urine", evaluated(t, in).Fluid.Loss.U, math.Sqrt(2*0.03*0.03+0.05*0.05+4e-6), 1e-9)
	in.Output.Urine = grams(0)
	without := evaluated(t, in).Fluid.Loss.U
	in.Output.Urine = grams(150)
	with := evaluated(t, in).Fluid.Loss.U
	near(t, "150 g of urine", math.Sqrt(with*with-without*without), 0.01, 1e-9)
}

// The rate by body mass: 1.2 L/h of 64 kg are 18.75 mL/kg/h.
func TestRateByMass(t *testing.T) {
	r := evaluated(t, wholeSheet())
	near(t, "mL/kg/h", r.Fluid.RateByMass.Value, 1000*r.Fluid.Rate.Value/64, 1e-9)
}

// 200 W on a rowing machine at an efficiency of 0.19 [P]: 1052.6 W, 63,158 J a
// minute; a litre of oxygen at an exchange ratio of 0.92 gives (0.23 x 0.92 +
// 0.77) 21,166 = 20,776.5 J (Parsons 1993). 3.040 L/min, known to 7 % [P].
func TestUptakeOfRowing(t *testing.T) {
	u := FromRowing(200)
	near(t, "L/min", u.Litres, 3.03987, 5e-5)
	near(t, "error", u.RelativeU, 0.07, 1e-12)
}

// An uptake without an error of its own errs by 10 % [P]; one with an error
// keeps it, up to all of it; what is no share of one does not count.
func TestErrorOfTheUptake(t *testing.T) {
	oxygen := func(relative float64) float64 {
		in := wholeSheet()
		in.Effort = Effort{Oxygen: new(2.0), RelativeU: relative}
		s := open(in)
		o, ok := s.oxygenUsed()
		if !ok {
			t.Fatal("no uptake")
		}
		return o.litres.q.U() / o.litres.q.Value()
	}
	for given, want := range map[float64]float64{0: 0.10, 0.05: 0.05, 0.5: 0.5, 1: 1, 1.05: 0.10, 2: 0.10, -0.1: 0.10} {
		near(t, "relative error", oxygen(given), want, 1e-9)
	}
}

// Drinking near the loss is spoken of from 90 % of it, sodium from above 45
// mmol/L over the whole body.
func TestEdgesOfFlags(t *testing.T) {
	has := func(r Result, id string) bool {
		return slices.ContainsFunc(r.Flags, func(f Flag) bool { return f.ID == id })
	}
	flagged := func(share float64) bool {
		in := wholeSheet()
		in.Options.Uncorrected = true
		in.Body.Before, in.Body.After = []quantity.Kilograms{64}, []quantity.Kilograms{64 - quantity.Kilograms(1-share)}
		in.Output.Urine = grams(0)
		in.Intake = Intake{Bottles: []Bottle{{Before: grams(1000 * share), After: grams(0)}}}
		r := evaluated(t, in)
		near(t, "replaced", r.Fluid.Replaced.Value, 100*share, 1e-9)
		return has(r, FlagNearLoss)
	}
	for share, want := range map[float64]bool{0.82: false, 0.895: false, 0.905: true, 0.98: true} {
		if flagged(share) != want {
			t.Errorf("%v of the loss drunk: spoken of %v", share, !want)
		}
	}
}
