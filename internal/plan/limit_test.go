package plan

import (
	"math"
	"testing"

	"ebbwell/internal/plan/proposal"
)

// The ceiling by hand: 1 L/h, 0.95 at the low end, 70 kg. At 180 min it is 2.85 L, a
// little later 1 % of body mass, 0.7 L, is left of the middle; hidden, in steps of 0.2 L.
func TestCeilingByHand(t *testing.T) {
	at := func(minutes float64, hidden bool) Ceiling {
		b := Basis{SweatRate: Between(1, 0.95, 1.1), Body: Body{MassKg: 70, Hidden: hidden}}
		return newPlanner(t, b, Session{Minutes: [Lengths]float64{minutes, minutes, minutes}}, NewMenu(), Aim{}).CeilingOf(Expected)
	}
	for _, c := range []struct {
		minutes float64
		hidden  bool
		want    Ceiling
	}{
		{170, false, Ceiling{0.95 * 170 / 60, 0.95, LowEnd}}, {180, false, Ceiling{2.85, 0.95, LowEnd}},
		{186, false, Ceiling{2.4, 2.4 / 3.1, LongSession}}, {240, false, Ceiling{3.3, 0.825, LongSession}},
		{240, true, Ceiling{3.2, 0.8, LongSession}}, {252, true, Ceiling{3.4, 3.4 / 4.2, LongSession}},
		{1200, false, Ceiling{19, 0.95, LowEnd}},
	} {
		got := at(c.minutes, c.hidden)
		if math.Abs(got.FluidL-c.want.FluidL) > 1e-9 || math.Abs(got.RateLH-c.want.RateLH) > 1e-9 || got.Reason != c.want.Reason {
			t.Errorf("%g min: %+v, want %+v", c.minutes, got, c.want)
		}
	}
	b := Basis{SweatRate: Between(0.2, 0.19, 0.3), Body: Body{MassKg: 90}}
	p := newPlanner(t, b, Session{Minutes: [Lengths]float64{240, 240, 240}}, NewMenu(), Aim{})
	if c := p.CeilingOf(Expected); c.FluidL != 0 { // 0.8 L are lost, 0.9 L are to be left
		t.Errorf("less is lost than is to be left: %+v", c)
	}
}

// A habit that was measured above the low end and ended low enough is the ceiling, at
// its rate in every length.
func TestMeasuredCeiling(t *testing.T) {
	p := courtPlanner(t).From(Mix{Water: 2500}, Background{Tested: true, Stomach: proposal.Is(2)})
	for l, want := range [Lengths]float64{2.5 * 90 / 105, 2.5, 2.5 * 150 / 105} {
		c := p.CeilingOf(Length(l))
		if c.Reason != Measured || math.Abs(c.FluidL-want) > 1e-9 || math.Abs(c.RateLH-2.5/1.75) > 1e-9 {
			t.Errorf("length %d: %+v, want %g L", l, c, want)
		}
	}
	if c := courtPlanner(t).From(Mix{Water: 1500}, Background{Tested: true, Stomach: proposal.Is(2)}).CeilingOf(Expected); c.Reason != LowEnd {
		t.Errorf("a habit under the low end: %+v", c)
	}
}

// Every slot is asked for its end; what is none has none.
func TestMost(t *testing.T) {
	p := courtPlanner(t)
	ceiling := math.Floor(1000 * p.CeilingOf(Expected).FluidL)
	for s := range Slots {
		most, why := p.Most(Expected, Mix{}, Slot(s))
		switch {
		case Slot(s).IsDrink() && (most != ceiling || why != LowEnd):
			t.Errorf("drink %d: %g %q, want %g", s, most, why, ceiling)
		case Slot(s) == Salt && why != SodiumLost, Slot(s).IsFood() && why != SliderEnd, most <= 0:
			t.Errorf("slot %d: %g %q", s, most, why)
		}
	}
	for _, s := range []Slot{-1, Slots} {
		if most, why := p.Most(Expected, Mix{}, s); most != 0 || why != NotInUse {
			t.Errorf("slot %d: %g %q", s, most, why)
		}
		if mix, why := p.Move(Expected, courtHabit(), s, 100); mix != courtHabit() || why != NotInUse {
			t.Errorf("slot %d: moved to %v, %q", s, mix, why)
		}
	}
	wet := fullMenu(t)
	wet[Food2].Unit.FoodWaterL = 0.5
	q := newPlanner(t, courtBasis(), courtSession(), wet, Aim{})
	if most, why := q.Most(Expected, Mix{Water: 2000}, Food2); most != 0.5*math.Floor(2*(ceiling/1000-2)/0.5) || why != LowEnd {
		t.Errorf("wet food beside 2 L: %g %q", most, why) // whole steps of half a portion
	}
	if most, _ := q.Most(Expected, Mix{Food2: 2}, Water); most != ceiling-1000 {
		t.Errorf("water beside 1 L in food: %g", most)
	}
}

// Salt stops at the sodium that is lost, beside what the rest brings: 3.3 L with
// 38 mmol/L are 2883 mg, 7.3 g of salt; of which 4 g leave 3.3.
func TestSaltStopsAtTheLoss(t *testing.T) {
	p := courtPlanner(t)
	if most, why := p.Most(Expected, Mix{}, Salt); math.Abs(most-7.3) > 1e-9 || why != SodiumLost {
		t.Errorf("%g %q", most, why)
	}
	p.menu[Food1].Unit.SodiumMg = 1573.6 // as 4 g of salt
	if most, why := p.Most(Expected, Mix{Food1: 1}, Salt); math.Abs(most-3.3) > 1e-9 || why != SodiumLost {
		t.Errorf("beside 1.57 g of sodium: %g %q", most, why)
	}
	p.basis.Sodium = Ranged{}
	if _, why := p.Most(Expected, Mix{}, Salt); why != SliderEnd {
		t.Errorf("with a sodium that is not known: %q", why)
	}
}

// What is above the ceiling is taken from water first, in whole increments, then from
// drinks and food; the same length is left as it is.
func TestUnderCeilingByHand(t *testing.T) {
	b := courtBasis()
	b.SweatRate = Between(1, 0.8, 1.3) // 1.4 L in 105 min
	p := newPlanner(t, b, courtSession(), fullMenu(t), Aim{})
	for _, c := range []struct{ mix, want Mix }{
		{Mix{Water: 1400}, Mix{Water: 1400}}, {Mix{Water: 1401}, Mix{Water: 1351}}, {Mix{Water: 1700}, Mix{Water: 1400}},
		{Mix{Water: 300, Drink1: 1300}, Mix{Water: 100, Drink1: 1300}}, {Mix{Water: 100, Drink1: 1500}, Mix{Drink1: 1400}},
		{Mix{Water: 120, Drink1: 1500}, Mix{Drink1: 1400}}, {Mix{Drink2: 1500, Drink3: 100}, Mix{Drink2: 1300, Drink3: 100}},
	} {
		if got := p.UnderCeiling(Expected, c.mix); got != c.want {
			t.Errorf("%v: %v, want %v", c.mix, got, c.want)
		}
	}
	uneven := Mix{Water: 437, Food1: 1, Food2: 1.25, Food3: 1}
	if got := p.Scaled(uneven, Expected, Expected); got != uneven {
		t.Errorf("the same length: %v", got)
	}
	// 150 of 105 min: 624.3 mL, 1.79 bananas by halves, 1.43 small bars and gels as wholes.
	if got := p.Scaled(uneven, Expected, Long); got != (Mix{Water: 600, Food1: 1, Food2: 1.5, Food3: 1}) {
		t.Errorf("the long length: %v", got)
	}
	b.SweatRate = Between(1, 0.05, 1.3)
	dry := newPlanner(t, b, courtSession(), fullMenu(t), Aim{})
	if got := dry.UnderCeiling(Expected, Mix{Food2: 2}); !(got[Food2] < 2) { // a banana holds 88 mL of water
		t.Errorf("food above the ceiling stays: %v", got)
	}
}
