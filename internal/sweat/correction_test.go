package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// TestCorrectedByWhatIsKnown: breath and gas exchange are taken off at every
// duration and temperature, from the best that is known of the effort, down to
// nothing at all; only the practice's field method leaves them in.
func TestCorrectedByWhatIsKnown(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Input)
		on     bool
		reason string
		u      float64 // relative, of what is taken off
		note   string
	}{
		{"an uptake", func(*Input) {}, true, ReasonEffort, 0.1, NoteAsWeighed},
		{"short", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(30)) }, true, ReasonEffort, 0.1, NoteAsWeighed},
		{"long", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(300)) }, true, ReasonEffort, 0.1, NoteAsWeighed},
		{"cold", func(in *Input) { in.Air.Temperature = new(quantity.Celsius(2)) }, true, ReasonEffort, 0.1, NoteAsWeighed},
		{"energy", func(in *Input) { in.Effort = Effort{Energy: new(quantity.Kilocalories(900)), RelativeU: 0.15} }, true, ReasonEnergy, 0.15, NoteAsWeighed},
		{"energy and a rating", func(in *Input) {
			in.Effort = Effort{Energy: new(quantity.Kilocalories(900)), Rating: new(9.0)}
		}, true, ReasonEnergy, 0.1, NoteAsWeighed},
		{"a rating", func(in *Input) { in.Effort = Effort{Rating: new(9.0), Sport: new(12.0), RelativeU: 0.1} }, true, ReasonRating, 0.35, NoteEffortRated},
		{"the sport", func(in *Input) { in.Effort = Effort{Sport: new(12.0)} }, true, ReasonSport, 0.35, NoteEffortOfSport},
		{"nothing", func(in *Input) { in.Effort = Effort{} }, true, ReasonAssumed, 0.35, NoteEffortAssumed},
		{"field method", func(in *Input) { in.Options.Uncorrected = true }, false, ReasonField, 0.1, NoteFieldMethod},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			in.Effort = Effort{Oxygen: new(1.2), RelativeU: 0.1}
			c.change(&in)
			r := evaluated(t, in)
			sum, spread := 0.0, 0.0
			for _, got := range r.Corrections {
				if got.On != c.on || got.Reason != c.reason {
					t.Errorf("%s: on %v for %s", got.ID, got.On, got.Reason)
				}
				sum, spread = sum+got.Size.Value, spread+got.Size.U
			}
			near(t, "width", spread/sum, c.u, 1e-9)
			if !hasNote(r.Fluid.Loss, c.note) || hasNote(r.Fluid.Rate, NoteRateAsWeighed) != c.on {
				t.Errorf("notes %v, %v", r.Fluid.Loss.Why.Notes, r.Fluid.Rate.Why.Notes)
			}
			want := 2.15
			if c.on {
				want -= sum
				near(t, "as weighed", r.Fluid.Loss.Why.Notes[0].Args[0], 2.15, 1e-9)
			}
			near(t, "loss", r.Fluid.Loss.Value, want, 1e-9)
		})
	}
}

// TestNothingKnownIsSixMet: 6 MET, where the sport has none either.
func TestNothingKnownIsSixMet(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{}
	nothing := evaluated(t, in).Fluid.Rate
	in.Effort = Effort{Sport: new(6.0)}
	six := evaluated(t, in).Fluid.Rate
	near(t, "rate", nothing.Value, six.Value, 1e-12)
	near(t, "u", nothing.U, six.U, 1e-12)
}

// TestCorrectionSizes follows one litre of oxygen a minute by hand.
func TestCorrectionSizes(t *testing.T) {
	in := wholeSheet()
	in.Time.Elapsed = new(quantity.Minutes(100))
	in.Effort = Effort{Oxygen: new(1.0), RER: new(0.92)}
	in.Air.Vapour = new(quantity.Kilopascals(fromMercury(10)))
	r := evaluated(t, in)
	near(t, "respiratory", r.Corrections[0].Size.Value, 0.0646, 1e-9)
	near(t, "exchange", r.Corrections[1].Size.Value, 0.037857, 1e-6)
	near(t, "loss", r.Fluid.Loss.Value, 2.15-0.0646-0.037857, 1e-6)
	// The deficit is what the scale says, whatever is taken off the loss.
	near(t, "deficit", r.Fluid.Deficit.Value, 1.6, 1e-9)
	near(t, "change of mass", r.Fluid.MassChange.Value, -2.5, 1e-9)

	in.Options.Uncorrected = true
	r = evaluated(t, in)
	near(t, "loss, uncorrected", r.Fluid.Loss.Value, 2.15, 1e-9)
	near(t, "deficit, uncorrected", r.Fluid.Deficit.Value, 1.6, 1e-9)
	near(t, "size is still shown", r.Corrections[0].Size.Value, 0.0646, 1e-9)
}

// TestFieldMethodReachesDown: uncorrected, the low end is lowered by 0.20 g/kcal
// of the session, at every temperature, and the high end stays; the rate alike.
func TestFieldMethodReachesDown(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Energy: new(quantity.Kilocalories(700)), RelativeU: 1e-9}
	in.Options.Uncorrected = true
	spread := 1.96 * math.Sqrt(2*0.03*0.03+0.05*0.05+4e-6)
	for _, air := range []quantity.Celsius{5, 14, 18, 31} {
		in.Air.Temperature = &air
		f := evaluated(t, in).Fluid
		near(t, "low", f.Loss.Range.Low, 2.15-0.14-spread, 1e-9)
		near(t, "high", f.Loss.Range.High, 2.15+spread, 1e-9)
		near(t, "bias of the rate", f.Bias, 0.14*60/95, 1e-9)
		if !(f.Rate.Range.Low < f.Rate.Value-f.Bias && f.Rate.Range.High < f.Rate.Value+f.Bias) {
			t.Errorf("rate %g, range %v, bias %g", f.Rate.Value, f.Rate.Range, f.Bias)
		}
	}
	advice := evaluated(t, in).Narrowing.Rate
	if len(advice) == 0 || advice[0].ID != AdviceCorrect {
		t.Errorf("advice %v", advice)
	}
	in.Options.Uncorrected, in.Effort = false, Effort{Rating: new(8.0)}
	if f := evaluated(t, in); f.Fluid.Bias != 0 || !slices.ContainsFunc(f.Narrowing.Rate, func(a Advice) bool { return a.ID == AdviceGiveEffort }) {
		t.Errorf("corrected by a rating: bias %g, advice %v", f.Fluid.Bias, f.Narrowing.Rate)
	}
}

func TestCorrectionFromEnergyAlone(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Energy: new(quantity.Kilocalories(3000))}
	in.Air.Vapour = nil
	r := evaluated(t, in)
	near(t, "both", r.Corrections[0].Size.Value+r.Corrections[1].Size.Value, 0.60, 1e-9)
	swap := exchanged(3000*evidence.JoulesPerKilocalorie/EnergyPerOxygen(0.92), 0.92) / 1000
	near(t, "exchange", r.Corrections[1].Size.Value, swap, 1e-9)
}

func TestExchangeBelowTheTurnIsNegative(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Oxygen: new(1.0), RER: new(0.70)}
	r := evaluated(t, in)
	if x := r.Corrections[1].Size.Value; x >= 0 {
		t.Errorf("exchange %g kg at an exchange ratio of 0.70", x)
	}
	if !(r.Balance[len(r.Balance)-1].Kilograms > 0) {
		t.Errorf("its line takes %g kg off", r.Balance[len(r.Balance)-1].Kilograms)
	}
}

// TestPlayedMinutesEnterTheMetabolicRateOnly: half the time played, the rest at
// two MET, as in the heat balance; the sweat rate divides by all of it.
func TestPlayedMinutesEnterTheMetabolicRateOnly(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Oxygen: new(2.0)}
	whole := evaluated(t, in).Corrections[1].Size.Value
	in.Time.Played = new(quantity.Minutes(47.5))
	half := evaluated(t, in).Corrections[1].Size.Value
	rest := 2 * 3.5 * 64 / 1000
	near(t, "exchange", half/whole, (2.0+rest)/4.0, 1e-9)

	in.Options.Uncorrected = true
	near(t, "rate", evaluated(t, in).Fluid.Rate.Value, 2.15/(95.0/60), 1e-9)
	in.Time.Played = new(quantity.Minutes(120))
	if r := evaluated(t, in); !refused(r, evidence.PlayedMinutes, 0, evidence.CodeOrder) {
		t.Errorf("more played than elapsed: %v", r.Problems)
	}
}

func TestUptake(t *testing.T) {
	for _, c := range []struct {
		name string
		got  Uptake
		want float64
		u    float64
	}{
		{"10 MET, 70 kg", FromMet(10, 70), 2.45, 0.20},
		{"12 km/h, 70 kg", FromRunning(12, 0, 70), 3.045, 0.10},
		{"200 W, 70 kg", FromCycling(200, 70), 2.65, 0.07},
		{"effort 7, 70 kg", FromRating(7, 70), 9 * 3.5 * 70 / 1000, 0.35},
	} {
		near(t, c.name, c.got.Litres, c.want, 1e-9)
		near(t, c.name+", u", c.got.RelativeU, c.u, 1e-12)
	}
}

// usedOxygen is an uptake, L, known exactly, at an exchange ratio.
func usedOxygen(litres, rer float64) oxygen {
	return oxygen{litres: symbol("oxygen", uncertainty.Exact(litres), quantity.Litre), rer: rer}
}

// respired is the water breathed out with so much oxygen, g, in air of a vapour
// pressure in kPa.
func respired(litres, vapour float64) float64 {
	r, _ := lossesOf(usedOxygen(litres, evidence.UsualRER), vapour, true)
	return 1000 * r.q.Value()
}

// exchanged is the carbon dioxide given off less the oxygen taken up, g.
func exchanged(litres, rer float64) float64 {
	_, swap := lossesOf(usedOxygen(litres, rer), 0, true)
	return 1000 * swap.q.Value()
}

// bothLosses are both at once, g, where only the energy is known, kcal.
func bothLosses(energy float64) float64 {
	r, swap := lossesOf(usedOxygen(energy/kilocalories(1, evidence.UsualRER), evidence.UsualRER), 0, false)
	return 1000 * (r.q.Value() + swap.q.Value())
}
