package sweat

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

func TestCorrectionRule(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Input)
		on     bool
		reason string
	}{
		{"no effort", func(in *Input) { in.Effort = Effort{} }, false, ReasonNoEnergy},
		{"short, easy, humid", func(*Input) {}, false, ReasonNoNeed},
		{"past two hours", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(121)) }, true, ReasonLong},
		{"two hours", func(in *Input) { in.Time.Elapsed = new(quantity.Minutes(120)) }, false, ReasonNoNeed},
		{"hard", func(in *Input) { in.Effort.Oxygen = new(2.0) }, true, ReasonHard},
		{"hard, but mostly rest", func(in *Input) { in.Effort.Oxygen, in.Time.Played = new(2.0), new(quantity.Minutes(30)) }, false, ReasonNoNeed},
		{"dry", func(in *Input) { in.Air.Vapour = new(quantity.Kilopascals(0.9)) }, true, ReasonDry},
		{"a rating alone", func(in *Input) { in.Effort = Effort{Rating: new(9.0)} }, false, ReasonRating},
		{"a rating, switched on", func(in *Input) { in.Effort, in.Options.Corrections = Effort{Rating: new(9.0)}, Both(On) }, true, ReasonChoice},
		{"switched on", func(in *Input) { in.Options.Corrections = Both(On) }, true, ReasonChoice},
		{"switched on without effort", func(in *Input) { in.Effort, in.Options.Corrections = Effort{}, Both(On) }, false, ReasonNoEnergy},
		{"switched off past two hours", func(in *Input) {
			in.Time.Elapsed, in.Options.Corrections = new(quantity.Minutes(180)), Both(Off)
		}, false, ReasonChoice},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := wholeSheet()
			in.Effort = Effort{Oxygen: new(1.2)}
			c.change(&in)
			for _, got := range evaluated(t, in).Corrections {
				if got.On != c.on || got.Reason != c.reason {
					t.Errorf("%s: on %v for %s", got.ID, got.On, got.Reason)
				}
			}
		})
	}
}

// TestCorrectionSizes follows one litre of oxygen a minute by hand.
func TestCorrectionSizes(t *testing.T) {
	in := wholeSheet()
	in.Time.Elapsed = new(quantity.Minutes(100))
	in.Effort = Effort{Oxygen: new(1.0), RER: new(0.92)}
	in.Air.Vapour = new(quantity.Kilopascals(fromMercury(10)))
	in.Options.Corrections = Both(On)
	r := evaluated(t, in)
	near(t, "respiratory", r.Corrections[0].Size.Value, 0.0646, 1e-9)
	near(t, "exchange", r.Corrections[1].Size.Value, 0.037857, 1e-6)
	near(t, "loss", r.Fluid.Loss.Value, 2.15-0.0646-0.037857, 1e-6)
	// Respiratory water is fluid lost; gas exchange is not.
	near(t, "deficit", r.Fluid.Deficit.Value, 1.6-0.037857, 1e-6)
	near(t, "change of mass", r.Fluid.MassChange.Value, -2.5, 1e-9)

	in.Options.Corrections = Both(Off)
	r = evaluated(t, in)
	near(t, "loss, off", r.Fluid.Loss.Value, 2.15, 1e-9)
	near(t, "size is still shown", r.Corrections[0].Size.Value, 0.0646, 1e-9)
	if r.Fluid.Loss.Why.Notes[0].ID != NoteUncorrected {
		t.Errorf("notes %v", r.Fluid.Loss.Why.Notes)
	}
}

// TestCorrectionsAreSwitchedEach takes one off and not the other: respiratory
// water is fluid, gas exchange is not, and what is left says that it is half
// corrected.
func TestCorrectionsAreSwitchedEach(t *testing.T) {
	sheet := func(c Corrections, air quantity.Celsius) Result {
		in := wholeSheet()
		in.Time.Elapsed = new(quantity.Minutes(100))
		in.Effort = Effort{Oxygen: new(1.0), RER: new(0.92)}
		in.Air.Vapour, in.Air.Temperature = new(quantity.Kilopascals(fromMercury(10))), new(air)
		in.Options.Corrections = c
		return evaluated(t, in)
	}
	for _, c := range []struct {
		name          string
		switches      Corrections
		loss, deficit float64
		lines         int
		half          bool
	}{
		{"neither", Both(Off), 2.15, 1.6, 0, false},
		{"breath", Corrections{On, Off}, 2.15 - 0.0646, 1.6, 1, true},
		{"gas exchange", Corrections{Off, On}, 2.15 - 0.037857, 1.6 - 0.037857, 1, true},
		{"both", Both(On), 2.15 - 0.0646 - 0.037857, 1.6 - 0.037857, 2, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := sheet(c.switches, 25)
			near(t, "loss", r.Fluid.Loss.Value, c.loss, 1e-6)
			near(t, "deficit", r.Fluid.Deficit.Value, c.deficit, 1e-6)
			lines := 0
			for _, l := range r.Balance {
				if l.ID == LineRespiratory || l.ID == LineExchange {
					lines++
				}
			}
			if lines != c.lines || hasNote(r.Fluid.Loss, NoteHalfCorrected) != c.half {
				t.Errorf("%d lines, notes %v", lines, r.Fluid.Loss.Why.Notes)
			}
			// A partial correction is no protection in cool air.
			if cool := hasNote(sheet(c.switches, 14).Fluid.Loss, NoteCoolAir); cool != (c.name != "both") {
				t.Errorf("spoken of cool air: %v", cool)
			}
		})
	}
}

func TestCorrectionFromEnergyAlone(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Energy: new(quantity.Kilocalories(3000))}
	in.Air.Vapour = nil
	in.Options.Corrections = Both(On)
	r := evaluated(t, in)
	near(t, "both", r.Corrections[0].Size.Value+r.Corrections[1].Size.Value, 0.60, 1e-9)
	swap := GasExchange(3000*evidence.JoulesPerKilocalorie/EnergyPerOxygen(0.92), 0.92) / 1000
	near(t, "exchange", r.Corrections[1].Size.Value, swap, 1e-9)
}

func TestExchangeBelowTheTurnIsNegative(t *testing.T) {
	in := wholeSheet()
	in.Effort = Effort{Oxygen: new(1.0), RER: new(0.70)}
	in.Options.Corrections = Both(On)
	r := evaluated(t, in)
	if x := r.Corrections[1].Size.Value; x >= 0 {
		t.Errorf("exchange %g kg at an exchange ratio of 0.70", x)
	}
	if r.Fluid.Deficit.Value <= 1.6 {
		t.Errorf("deficit %g L", r.Fluid.Deficit.Value)
	}
}

// TestPlayedMinutesEnterTheMetabolicRateOnly: half the time played, the rest at
// one MET; the sweat rate divides by all of it.
func TestPlayedMinutesEnterTheMetabolicRateOnly(t *testing.T) {
	in := wholeSheet()
	in.Effort, in.Options.Corrections = Effort{Oxygen: new(2.0)}, Both(On)
	whole := evaluated(t, in).Corrections[1].Size.Value
	in.Time.Played = new(quantity.Minutes(47.5))
	half := evaluated(t, in).Corrections[1].Size.Value
	rest := 3.5 * 64 / 1000
	near(t, "exchange", half/whole, (2.0+rest)/4.0, 1e-9)

	in.Options.Corrections = Both(Off)
	near(t, "rate", evaluated(t, in).Fluid.Rate.Value, 2.15/(95.0/60), 1e-9)
	in.Time.Played = new(quantity.Minutes(120))
	if r := evaluated(t, in); !refused(r, evidence.PlayedMinutes, 0, evidence.CodeOrder) {
		t.Errorf("more played than elapsed: %v", r.Problems)
	}
}

func TestCoolAir(t *testing.T) {
	cool := func(change func(*Input)) Result {
		in := wholeSheet()
		in.Air.Temperature = new(quantity.Celsius(14))
		change(&in)
		return evaluated(t, in)
	}
	warm := evaluated(t, wholeSheet()).Fluid.Loss.U

	r := cool(func(*Input) {})
	kcal := evidence.CoolAirMet * 3.5 * 64 / 1000 * 95 * EnergyPerOxygen(0.92) / 4184
	near(t, "effort not known", r.Fluid.Loss.U, math.Hypot(warm, 0.0001*kcal), 1e-9)
	if r.Fluid.Loss.Why.Notes[0].ID != NoteCoolAir || r.Narrowing.Rate[0].ID != AdviceGiveEffort {
		t.Errorf("notes %v, advice %v", r.Fluid.Loss.Why.Notes, r.Narrowing.Rate)
	}

	r = cool(func(in *Input) { in.Effort = Effort{Energy: new(quantity.Kilocalories(700))} })
	near(t, "700 kcal", r.Fluid.Loss.U, math.Hypot(warm, 0.07), 1e-9)
	if r.Narrowing.Rate[0].ID != AdviceCorrect {
		t.Errorf("advice %v", r.Narrowing.Rate)
	}

	r = cool(func(in *Input) {
		in.Effort, in.Options.Corrections = Effort{Energy: new(quantity.Kilocalories(700)), RelativeU: 0.1}, Both(On)
	})
	if r.Fluid.Loss.U >= math.Hypot(warm, 0.07) {
		t.Errorf("corrected, u is still %g", r.Fluid.Loss.U)
	}
	r = cool(func(in *Input) { in.Air.Temperature = new(quantity.Celsius(18)) })
	near(t, "at 18", r.Fluid.Loss.U, warm, 1e-12)

	r = cool(func(in *Input) { in.Time = Time{} })
	if state(r.Fluid.Loss) != "provisional" {
		t.Errorf("cool air without a duration: the loss is %s", state(r.Fluid.Loss))
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
