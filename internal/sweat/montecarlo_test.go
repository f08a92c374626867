package sweat

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// spoil draws the readings of a steady sheet anew about their values, with the
// errors that Evaluate supposes, the equation's among them.
func spoil(in Input, from *rand.Rand) Input {
	out := in
	draw := func(x, u float64) float64 { return x + u*from.NormFloat64() }
	offset := draw(0, evidence.ScaleOffsetU)
	before, after := float64(in.Body.Before[0]), float64(in.Body.After[0])
	out.Body.Before = []quantity.Kilograms{quantity.Kilograms(draw(before, evidence.FieldScaleU) + offset)}
	out.Body.After = []quantity.Kilograms{quantity.Kilograms(draw(draw(after, evidence.FieldScaleU), evidence.TowelU) + offset)}
	if u := *in.Output.Urine; u > 0 {
		out.Output.Urine = new(quantity.Grams(max(0, draw(float64(u), evidence.UrineU))))
	}
	out.Time.Elapsed = new(quantity.Minutes(draw(float64(*in.Time.Elapsed), evidence.DurationU)))
	out.Intake.Bottles = nil
	for _, b := range in.Intake.Bottles {
		out.Intake.Bottles = append(out.Intake.Bottles, Bottle{
			Before: new(quantity.Grams(draw(float64(*b.Before), 1))), After: new(quantity.Grams(draw(float64(*b.After), 1))),
		})
	}
	p := in.Patches[0]
	row, _ := evidence.AgreementOf(p.Site)
	p.Sodium = new(quantity.MillimolesPerLitre(draw(float64(*p.Sodium), row.Limits/1.96/row.Slope)))
	out.Patches = []Patch{p}
	out.Options.Kept = append(out.Options.Kept, Kept{evidence.PatchSodium, 1}, Kept{evidence.Duration, 0})
	return out
}

// scatter is the standard deviation of figures over spoiled sheets.
func scatter(t failer, in Input, n int, from *rand.Rand, of ...func(Result) float64) []float64 {
	t.Helper()
	sums, squares := make([]float64, len(of)), make([]float64, len(of))
	for range n {
		r := evaluated(t, spoil(in, from))
		for i, value := range of {
			y := value(r)
			sums[i], squares[i] = sums[i]+y, squares[i]+y*y
		}
	}
	sd := make([]float64, len(of))
	for i := range of {
		mean := sums[i] / float64(n)
		sd[i] = math.Sqrt((squares[i]/float64(n) - mean*mean) * float64(n) / float64(n-1))
	}
	return sd
}

// TestMonteCarloAgrees draws whole sheets: the standard uncertainty that
// Evaluate gives is the scatter of its figures, within 5 %, where the balance is
// nearly straight.
func TestMonteCarloAgrees(t *testing.T) {
	in := wholeSheet()
	in.Patches = []Patch{goodPatch(evidence.ForearmDorsal, 60)}
	in.Output.Urine = new(quantity.Grams(150))
	figures := []func(Result) figure.Figure{
		func(r Result) figure.Figure { return r.Fluid.Loss },
		func(r Result) figure.Figure { return r.Fluid.Rate },
		func(r Result) figure.Figure { return r.Fluid.DeficitShare },
		func(r Result) figure.Figure { return r.Fluid.Replaced },
		func(r Result) figure.Figure { return r.Sodium.LossRate },
	}
	var values []func(Result) float64
	for _, of := range figures {
		values = append(values, func(r Result) float64 { return of(r).Value })
	}
	drawn := scatter(t, in, 5000, rand.New(rand.NewPCG(31, 32)), values...)
	whole := evaluated(t, in)
	for i, of := range figures {
		if f := of(whole); math.Abs(f.U/drawn[i]-1) > 0.05 {
			t.Errorf("%s: u %.4g, scatter %.4g", f.Why.Formula, f.U, drawn[i])
		}
	}
}

// TestMonteCarloAgreesOnSteadySheets does the same for the sodium loss of a
// dozen random sheets, with fewer draws and their own statistical error allowed
// for. The patches are salty enough for no draw to fall below nothing.
func TestMonteCarloAgreesOnSteadySheets(t *testing.T) {
	const n = 800
	for i := range 12 {
		in := rapid.Custom(steadySheet).Example(i)
		in.Patches[0].Sodium = new(quantity.MillimolesPerLitre(50 + 3*float64(i)))
		f := evaluated(t, in).Sodium.LossRate
		if !f.Ranged {
			t.Fatalf("sheet %d has no sodium loss: %+v", i, f)
		}
		drawn := scatter(t, in, n, rand.New(rand.NewPCG(33, uint64(i))), func(r Result) float64 { return r.Sodium.LossRate.Value })[0]
		if allowed := 0.05 + 3/math.Sqrt(2*n); math.Abs(f.U/drawn-1) > allowed {
			t.Errorf("sheet %d: u %g, scatter %g", i, f.U, drawn)
		}
	}
}

// TestMonteCarloDisagreesWhereBent: where hardly anything was lost the share
// replaced is far from straight; its first-order uncertainty is not its
// scatter, and its range (Fieller) lies unevenly and covers the draws better
// than the even one would.
func TestMonteCarloDisagreesWhereBent(t *testing.T) {
	in := wholeSheet()
	in.Body.After[0] = 64.2 // 0.35 L lost, 0.55 L drunk
	in.Options.Kept = []Kept{{evidence.MassChange, 0}, {evidence.SweatRate, 0}, {evidence.DrinkingRate, 0}}
	f := evaluated(t, in).Fluid.Replaced
	drawn := scatter(t, in, 3000, rand.New(rand.NewPCG(35, 36)), func(r Result) float64 { return r.Fluid.Replaced.Value })[0]
	if math.Abs(f.U/drawn-1) < 0.05 {
		t.Errorf("u %g and scatter %g agree; the share is bent here", f.U, drawn)
	}
	below, above := f.Value-f.Range.Low, f.Range.High-f.Value
	if above < 1.3*below {
		t.Errorf("range %v lies evenly about %g", f.Range, f.Value)
	}
}
