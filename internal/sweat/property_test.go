package sweat

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// TestAnySheet holds every figure of any sheet to what all of them promise:
// finite, a range that holds its value and is never negative, a formula that
// gives it again, a budget that adds up.
func TestAnySheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := Evaluate(anySheet(t))
		if err != nil {
			t.Fatal(err)
		}
		for path, f := range figuresOf(r) {
			if wrong := checkFigure(f); wrong != "" {
				t.Fatalf("%s: %s", path, wrong)
			}
		}
		checkTogether(t, r)
	})
}

// TestAnyWholeSheet does the same where everything is in, so that every figure
// has its range.
func TestAnyWholeSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in, other := steadySheet(t), anySheet(t)
		in.Effort, in.Air, in.Options.Uncorrected = other.Effort, other.Air, other.Options.Uncorrected
		in.Intake.Foods = []Food{{Mass: new(quantity.Grams(rapid.Float64Range(0, 200).Draw(t, "food")))}}
		in.Intake.Bottles[0].Use = rapid.SampledFrom([]Use{Drunk, Shared, PouredOver}).Draw(t, "use of the first")
		in.Body.OtherScale, in.Body.Step = other.Body.OtherScale, other.Body.Step
		for range rapid.IntRange(0, 2).Draw(t, "more patches") {
			site := rapid.SampledFrom([]evidence.Site{evidence.ForearmDorsal, evidence.Thigh, evidence.Chest}).Draw(t, "site")
			in.Patches = append(in.Patches, goodPatch(site, rapid.Float64Range(15, 90).Draw(t, "more sodium")))
		}
		r := evaluated(t, in)
		if refused(r, evidence.SweatRate, 0, evidence.CodeOutside) {
			t.Skip("the corrections eat up a small loss")
		}
		for path, f := range figuresOf(r) {
			if wrong := checkFigure(f); wrong != "" {
				t.Fatalf("%s: %s", path, wrong)
			}
			if f.Known && !f.Ranged {
				t.Fatalf("%s is provisional in a whole sheet", path)
			}
		}
		checkTogether(t, r)
		if !r.Fluid.Loss.Ranged || !r.Sodium.Concentration.Ranged || !r.Fluid.DeficitShare.Ranged {
			t.Fatalf("loss %s, concentration %s: problems %v", state(r.Fluid.Loss), state(r.Sodium.Concentration), r.Problems)
		}
	})
}

// checkTogether holds the figures against each other.
func checkTogether(t *rapid.T, r Result) {
	if r.Fluid.Rate.Ranged && !r.Fluid.Loss.Ranged {
		t.Fatal("the rate has a range and the loss has none")
	}
	if h := r.Sodium.Hold; h.Known && h.Value > r.Sodium.LossRate.Value*(1+1e-9) {
		t.Fatalf("hold %g mg/h is above the loss of %g", h.Value, r.Sodium.LossRate.Value)
	}
	if r.Fluid.Loss.Known {
		total := 0.0
		for _, l := range r.Balance {
			total += l.Kilograms
		}
		if math.Abs(total-r.Fluid.Loss.Value) > 0.001 { // to the millilitre
			t.Fatalf("lines add up to %g, loss %g", total, r.Fluid.Loss.Value)
		}
	}
	for _, m := range r.Missing {
		if m.Effect.Low > m.Effect.High {
			t.Fatalf("effect of %s from %g to %g", m.ID, m.Effect.Low, m.Effect.High)
		}
	}
	for _, list := range [][]Advice{r.Narrowing.Rate, r.Narrowing.Sodium} {
		for _, a := range list {
			if !(a.Narrower > 0 && a.Narrower <= 1) {
				t.Fatalf("advice %+v", a)
			}
		}
	}
}

// TestAddingABottle never lowers the sweat loss, nor moves the deficit.
func TestAddingABottle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anySheet(t)
		in.Options.Kept = []Kept{{evidence.DrinkingRate, 0}, {evidence.SweatRate, 0}, {evidence.MassChange, 0}}
		before, err := Evaluate(in)
		if err != nil {
			t.Fatal(err)
		}
		in.Intake.Bottles = append(slices.Clone(in.Intake.Bottles), anyBottle(t))
		after, err := Evaluate(in)
		if err != nil {
			t.Fatal(err)
		}
		a, b := before.Fluid, after.Fluid
		if a.Loss.Known && b.Loss.Known && b.Loss.Value < a.Loss.Value-1e-9 {
			t.Fatalf("loss %g became %g", a.Loss.Value, b.Loss.Value)
		}
		if a.Deficit.Value != b.Deficit.Value {
			t.Fatalf("deficit %g became %g", a.Deficit.Value, b.Deficit.Value)
		}
	})
}

// TestScaling: with corrections off, all masses times k give the loss times k.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := steadySheet(t)
		in.Options.Uncorrected = true
		k := rapid.Float64Range(0.7, 1.4).Draw(t, "k")
		one := evaluated(t, in).Fluid
		times := evaluated(t, scaled(in, k)).Fluid
		if !one.Loss.Known || !times.Loss.Known {
			t.Skip("refused")
		}
		if math.Abs(times.Loss.Value-k*one.Loss.Value) > 1e-9 {
			t.Fatalf("loss %g, times %g gives %g", one.Loss.Value, k, times.Loss.Value)
		}
		if math.Abs(times.MassChange.Value-one.MassChange.Value) > 1e-9 {
			t.Fatalf("change %g %% became %g %%", one.MassChange.Value, times.MassChange.Value)
		}
	})
}

// scaled multiplies every mass of a steady sheet.
func scaled(in Input, k float64) Input {
	out := in
	out.Body.Before = []quantity.Kilograms{in.Body.Before[0] * quantity.Kilograms(k)}
	out.Body.After = []quantity.Kilograms{in.Body.After[0] * quantity.Kilograms(k)}
	out.Output.Urine = new(*in.Output.Urine * quantity.Grams(k))
	out.Intake.Bottles = nil
	for _, b := range in.Intake.Bottles {
		out.Intake.Bottles = append(out.Intake.Bottles, Bottle{
			Before: new(*b.Before * quantity.Grams(k)), After: new(*b.After * quantity.Grams(k)),
		})
	}
	return out
}

// TestFillingNeverLosesAFigure: urine entered turns provisional figures into
// ranged ones and takes none away.
func TestFillingNeverLosesAFigure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := steadySheet(t)
		whole := figuresOf(evaluated(t, in))
		in.Output.Urine = nil
		for path, f := range figuresOf(evaluated(t, in)) {
			if f.Known && !whole[path].Known {
				t.Fatalf("%s is known without urine and unknown with it", path)
			}
			if f.Ranged && !whole[path].Ranged {
				t.Fatalf("%s has a range without urine and none with it", path)
			}
		}
	})
}

// TestEvaluateLeavesItsInput: the same sheet gives the same result twice.
func TestEvaluateLeavesItsInput(t *testing.T) {
	in := wholeSheet()
	first := evaluated(t, in)
	if second := evaluated(t, in); first.Sodium.LossRate.Value != second.Sodium.LossRate.Value || len(first.Balance) != len(second.Balance) {
		t.Errorf("%+v, then %+v", first.Sodium.LossRate, second.Sodium.LossRate)
	}
	if *in.Intake.Bottles[0].Before != 712 || in.Body.After[0] != 62.4 {
		t.Error("the input was changed")
	}
}

// TestSaltRoundTrip: units come back.
func TestSaltRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mg := quantity.Milligrams(rapid.Float64Range(0.1, 20000).Draw(t, "mg"))
		for name, back := range map[string]quantity.Milligrams{
			"mmol": quantity.Milligrams(Millimoles(mg) * evidence.SodiumMolarMass), "label": SodiumOfLabel(LabelOfSodium(mg)),
		} {
			if math.Abs(float64(back/mg)-1) > 1e-12 {
				t.Fatalf("%s: %g mg comes back as %g", name, mg, back)
			}
		}
	})
}
