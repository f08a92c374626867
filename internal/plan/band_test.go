package plan

import (
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/plan/proposal"
)

// unmet works out from a prediction which conditions a mix does not meet: what the
// bands are there for, in the words of the aims and guards.
func unmet(p *Planner, mix Mix) Condition {
	q, a := p.Evaluate(Expected, mix), p.Aim()
	var c Condition
	when := func(one Condition, x, most float64) {
		if x > most+1e-6 {
			c |= one
		}
	}
	if a.Deficit.On {
		each := p.Basis().Body.MassKg * 10
		kept := proposal.KeepML(p.Basis().Body.MassKg, p.Basis().Body.Hidden) / each
		when(DeficitMost, q.ByDrinks.Value, a.Deficit.High+kept)
		when(DeficitLeast, a.Deficit.Low, q.ByDrinks.Value-q.Fluid.FoodWaterL*1000/each)
	}
	if a.Carbohydrate.On {
		when(CarbohydrateMost, q.Carbohydrate.TotalGH, a.Carbohydrate.High)
		when(CarbohydrateLeast, a.Carbohydrate.Low, q.Carbohydrate.TotalGH)
	}
	if a.Sodium.On {
		when(SodiumMost, q.Sodium.InMgH, a.Sodium.High)
		when(SodiumLeast, a.Sodium.Low, q.Sodium.InMgH)
	}
	if a.Drinking.On {
		when(DrinkingMost, q.Fluid.RateLH, a.Drinking.High)
	}
	if a.Strength.On {
		when(StrengthMost, q.StrengthPercent, a.Strength.High)
	}
	if a.OneSource {
		when(OneSourceMost, q.Carbohydrate.GlucoseGH+q.Carbohydrate.UnknownGH, 60)
	}
	if b := p.carried[Expected]; b.On {
		when(BreaksMost, q.Fluid.DrunkL, b.High)
	}
	when(FluidCeiling, q.Fluid.DrunkL+q.Fluid.FoodWaterL, q.Ceiling.FluidL)
	if q.Sodium.LossMg.Known {
		when(SodiumCeiling, q.Sodium.InMg, q.Sodium.LossMg.Value)
	}
	return c
}

// A band is what meets all aims and guards: inside it nothing is missed, a little
// outside something is, and where it is empty no value of the slot meets them all.
// Conditions that the slot cannot move are named, or the two that clash.
func TestBandsAreWhatMeetsAll(t *testing.T) { //nolint:gocognit // one slot after the other
	list := products(t)
	bands, empties := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		if d.yes() {
			p = p.At(d.chances(p.session.Minutes[Expected]))
		}
		mix := d.mix(p.menu)
		if d.IntN(3) == 0 {
			mix = Mix{} // drinks without strength can meet more
		}
		for s, band := range p.Bands(Expected, mix) {
			if !p.menu[s].InUse || !p.aim.allows(Slot(s)) {
				continue
			}
			with := func(x float64) Condition {
				m := mix
				m[s] = x
				return unmet(p, m)
			}
			most := p.menu[s].Most
			if band.Empty {
				empties++
				if band.Clash == 0 {
					t.Fatalf("slot %d: empty without a clash", s)
				}
				for part := 0.0; part <= 1; part += 0.05 {
					if x := part * most; with(x) == 0 && x > 0 {
						t.Fatalf("slot %d: empty, and %g meets all", s, x)
					}
				}
				continue
			}
			bands++
			if !(band.Low >= 0) || band.Low > band.High || band.High > most {
				t.Fatalf("slot %d: %+v", s, band)
			}
			inset := 1e-4 * (1 + band.High - band.Low)
			for _, x := range []float64{band.Low + inset, (band.Low + band.High) / 2, band.High - inset} {
				if missed := with(x); band.High-band.Low > 3*inset && x > 0 && missed != 0 {
					t.Fatalf("slot %d: %b is missed at %g of %g to %g", s, missed, x, band.Low, band.High)
				}
			}
			out := 0.01 * (1 + band.High)
			if band.Low > out && with(band.Low-out) == 0 {
				t.Fatalf("slot %d: %g meets all, the band begins at %g", s, band.Low-out, band.Low)
			}
			stops, _ := p.Most(Expected, mix, Slot(s))
			if band.High+out < min(most, max(stops, band.Low)) && with(band.High+out) == 0 {
				t.Fatalf("slot %d: %g meets all, the band ends at %g", s, band.High+out, band.High)
			}
			if stops >= band.Low && band.High > stops {
				t.Fatalf("slot %d: the band ends at %g, the slider at %g", s, band.High, stops)
			}
		}
	})
	if bands == 0 || empties == 0 {
		t.Errorf("%d bands and %d empty ones", bands, empties)
	}
}

// One drink by hand: 3.3 L lost in 105 min by 72.4 kg. To end between 0 and 2 % with
// 0.2 % kept, water is 3.3 - 0.022 x 72.4 = 1.7072 L or more, and no more than 1.75 L
// at 1 L/h; 500 mL of a drink beside it leave 1.2072 to 1.25 L.
func TestBandByHand(t *testing.T) {
	b := courtBasis()
	p := newPlanner(t, b, courtSession(), fullMenu(t), Aim{Deficit: Within(0, 2), Drinking: Within(0, 1)})
	for drink, want := range map[float64][2]float64{0: {1707.2, 1750}, 500: {1207.2, 1250}, 1750: {0, 0}} {
		band := p.Bands(Expected, Mix{Drink1: drink})[Water]
		near(t, "low", band.Low, want[0])
		near(t, "high", band.High, want[1])
	}
	band := p.Bands(Expected, Mix{Drink1: 1800})[Water]
	if !band.Empty || band.Clash != DrinkingMost {
		t.Errorf("above the rate without a drop of water: %+v", band)
	}
	least := newPlanner(t, b, courtSession(), fullMenu(t), Aim{Deficit: Within(1.5, 2)}) // 3.3 L less 1.5 % of 72.4 kg
	near(t, "ends at 1.5 %", least.Bands(Expected, Mix{})[Water].High, 2214)
	salted := newPlanner(t, b, courtSession(), byHand(), Aim{Sodium: Within(400, 600)}) // 700 to 1050 mg in 1.75 h
	near(t, "least salt", salted.Bands(Expected, Mix{})[Salt].Low, 700/393.4)
	near(t, "most salt", salted.Bands(Expected, Mix{})[Salt].High, 1050/393.4)
	weak := newPlanner(t, b, courtSession(), byHand(), Aim{Strength: Within(0, 4)}) // 6 % beside 500 mL of water
	near(t, "no more than 4 %", weak.Bands(Expected, Mix{Water: 500})[Drink1].High, 1000)
	near(t, "water that 4 % takes", weak.Bands(Expected, Mix{Drink1: 1000})[Water].Low, 500)
	sweet := newPlanner(t, b, courtSession(), byHand(), Aim{Deficit: Within(0, 2), Carbohydrate: Within(60, 90)})
	near(t, "105 g from a drink of 6 %", sweet.Bands(Expected, Mix{})[Drink1].Low, 1750)
	near(t, "60 g from it beside two portions", sweet.Bands(Expected, Mix{Food1: 2.25})[Drink1].Low, 1707.2)
	slow := newPlanner(t, b, courtSession(), fullMenu(t), Aim{Deficit: Within(0, 2), Drinking: Within(0, 0.8)})
	if band := slow.Bands(Expected, Mix{})[Water]; !band.Empty || band.Clash != DrinkingMost|DeficitMost {
		t.Errorf("2 %% at 0.8 L/h: %+v", band)
	}
	if band := slow.Bands(Expected, Mix{})[Food1]; !band.Empty || band.Clash != DeficitMost {
		t.Errorf("food does not meet a deficit: %+v", band)
	}
}

// Each condition is in its own set.
func TestConditionsAreApart(t *testing.T) {
	c := DeficitMost | SodiumLeast
	for one := DeficitMost; one <= SodiumCeiling; one <<= 1 {
		if c.Has(one) != (one == DeficitMost || one == SodiumLeast) {
			t.Errorf("condition %b", one)
		}
	}
}
