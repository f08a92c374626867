package plan

import (
	"math"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/sweat"
)

// TestLightPiecesStayWhole: a piece lighter than 30 g is not halved, one of 30 g is.
func TestLightPiecesStayWhole(t *testing.T) {
	for grams, step := range map[float64]float64{24: 1, 28.5: 1, 29.99: 1, 30: 0.5, 31.5: 0.5, 40: 0.5} {
		p := find(t, "banana")
		p.Portion = fuel.Portion{Grams: grams}
		m := NewMenu()
		if err := m.SetFood(Food1, p); err != nil {
			t.Fatal(err)
		}
		if m[Food1].Step != step {
			t.Errorf("a piece of %g g goes by %g", grams, m[Food1].Step)
		}
	}
}

// TestEachFoodSlotIsServed: there are as many foods in a plan as slots from the first to the
// last, and each of them is eaten.
func TestEachFoodSlotIsServed(t *testing.T) {
	if n := int(Food4-Food1) + 1; n != Foods {
		t.Fatalf("%d slots for %d foods", n, Foods)
	}
	p := newPlanner(t, courtBasis(), courtSession(), fullMenu(t), Aim{})
	for slot := Food1; slot <= Food4; slot++ {
		s, mix := &Schedule{Takes: breaks(200, 200)}, Mix{}
		mix[slot] = 1
		p.serve(mix, s)
		sum := 0.0
		for _, take := range s.Takes {
			for _, portions := range take.Food {
				sum += portions
			}
		}
		if sum != 1 {
			t.Errorf("slot %d: %g portions are eaten of 1", slot, sum)
		}
	}
}

// TestPotassiumHoldsWaterAsSodiumDoes: in the equation for plasma sodium a mmol of potassium
// taken counts as one of sodium: 390.98 mg as 229.90 mg (atomic masses 39.098 and 22.990).
func TestPotassiumHoldsWaterAsSodiumDoes(t *testing.T) {
	p := courtPlanner(t)
	p.basis.Body = Body{MassKg: 72.4, HeightM: 1.8, AgeYears: 25, Sex: sweat.Male}
	p.basis.Sodium = Between(50, 45, 55)
	q := Prediction{Minutes: 105}
	q.LossL = Between(3.3, 3, 3.6)
	q.Fluid.DrunkL = 3
	by := func(s sums) float64 {
		got := p.plasmaOf(&q, s)
		if !got.Known {
			t.Fatal("not known")
		}
		return got.MmolL
	}
	none, sodium, potassium := by(sums{}), by(sums{sodiumMg: 229.898}), by(sums{potassium: 390.983})
	if math.Abs(sodium-potassium) > 1e-4 || sodium-none < 0.1 {
		t.Errorf("140 come to %.4f, with 10 mmol of sodium %.4f, of potassium %.4f", none, sodium, potassium)
	}
}

// TestPlasmaGuardBeginsBelow: a predicted 135 mmol/L is not below 135.
func TestPlasmaGuardBeginsBelow(t *testing.T) {
	p := courtPlanner(t)
	for mmol, is := range map[float64]bool{134.99: true, 135: false} {
		q := Prediction{Plasma: Plasma{Known: true, MmolL: mmol}}
		if got := p.guardsOf(&q, &proposal.Sum{})&LowPlasmaSodium != 0; got != is {
			t.Errorf("%g mmol/L: %v", mmol, got)
		}
	}
}

// TestFoodWaterIsHeldWithSodiumToo: what holds plasma sodium goes by all water that comes in.
func TestFoodWaterIsHeldWithSodiumToo(t *testing.T) {
	p := courtPlanner(t)
	p.basis.Sodium = Between(60, 55, 65)
	hold := func(drunk, eaten float64) float64 {
		q := Prediction{Minutes: 105}
		p.sodiumOf(&q, sums{drunkL: drunk, foodWaterL: eaten}, 1.75)
		return q.Sodium.HoldMgH.Value
	}
	if all, less := hold(2.5, 0), hold(2.3, 0); hold(2.3, 0.2) != all || less == all {
		t.Errorf("2.5 L drunk %g mg/h, 2.3 L and 0.2 L eaten %g, 2.3 L alone %g", all, hold(2.3, 0.2), less)
	}
}

// TestALittleLeftIsDropped: 100 mL of a deficit are carried over, less is not.
func TestALittleLeftIsDropped(t *testing.T) {
	d := DayTotal{EndL: Between(0.1, 0.0999, 0.5)}
	if got := d.carry(0); got.Value != 0.1 || got.Low != 0 || got.High != 0.5 {
		t.Errorf("carried %+v", got)
	}
}

// TestABottleIsFilledToTheBrim: two breaks that together take what a bottle holds are drunk
// from one.
func TestABottleIsFilledToTheBrim(t *testing.T) {
	s := Schedule{Takes: []Take{{ByDrink: [Drinks]int{Drink1: 200}}, {ByDrink: [Drinks]int{Drink1: 300}}}}
	for holds, bottles := range map[int]int{499: 2, 500: 1} {
		got := s.Levels(Drink1, holds, nil)
		if last := got[len(got)-1].Bottle; last != bottles {
			t.Errorf("of %d mL: %d bottles", holds, last)
		}
	}
}

// TestTheLineRisesEvenlyToTheBend: half way between two points half of what is taken between
// them is taken.
func TestTheLineRisesEvenlyToTheBend(t *testing.T) {
	p := courtPlanner(t)
	p.basis.Split = Split{At: 0.5, Share: 0.5}
	got := p.to([]Point{{Minute: 20}}, 40, 60, 0.1, 0.5)
	if len(got) != 3 || got[1].Minute != 30 {
		t.Fatalf("%+v", got)
	}
	near(t, "deficit at the bend", got[1].DeficitL.Value, p.point(30, 60, 0.3).DeficitL.Value)
}

// TestTheLeastSodiumIsAskedFor: the low end of an aim for sodium is what a proposal asks for;
// without one nothing is.
func TestTheLeastSodiumIsAskedFor(t *testing.T) {
	p := courtPlanner(t)
	for low, asked := range map[float64]bool{0: false, 300: true} {
		p.aim.Sodium = Within(low, 600)
		c := p.proposalCase(Expected, courtHabit(), DefaultStepRules())
		if c.Sodium.Known != asked || asked && c.Sodium.Value != low || c.SodiumMost != 600 {
			t.Errorf("%g to 600 mg/h: %+v, at most %g", low, c.Sodium, c.SodiumMost)
		}
	}
}

// TestBetweenTheRatingsOfAStomach: a rating between two whole ones is neither calm nor bad.
func TestBetweenTheRatingsOfAStomach(t *testing.T) {
	done := func(stomach float64) []Done {
		one := Done{Share: 0.9, Stomach: stomach, Asked: true, DrunkLH: 0.6}
		return []Done{one, one, one}
	}
	for stomach, want := range map[float64]Decision{3: Next, 3.2: Hold, 6.6: Hold, 7: Back} {
		if got := Review(done(stomach), Usual{}, false).Decision; got != want {
			t.Errorf("stomach %g: %v", stomach, got)
		}
	}
}

// TestStepsByDefault: three sessions on a step, three a week (common practice, no source).
func TestStepsByDefault(t *testing.T) {
	if r := DefaultStepRules(); r.Sessions != 3 || r.PerWeek != 3 || r.ClearDays != 10 {
		t.Errorf("%+v", r)
	}
}

// TestVolumesForgiveRounding: what lacks less than is shown of a mL is that mL.
func TestVolumesForgiveRounding(t *testing.T) {
	p := courtPlanner(t)
	for ml, want := range map[float64]int{299.99995: 300, 299.99: 299, 300.5: 300} {
		if got := p.volumes(Mix{Water: ml})[Water]; got != want {
			t.Errorf("%g mL: %d", ml, got)
		}
	}
}

// TestFoodMovesToWhereMoreIsDrunk: to the break before where enough is drunk, else to the one
// after, else to that of the three at which most is left beside the water that gels want.
func TestFoodMovesToWhereMoreIsDrunk(t *testing.T) {
	for _, c := range []struct {
		what   string
		water  []int
		wants  []int // water that gels there want already
		wanted int
		to     int
	}{
		{"before", []int{300, 50, 300}, nil, 200, 0},
		{"before, though more is drunk after", []int{200, 50, 300}, nil, 200, 0},
		{"after", []int{100, 50, 300}, nil, 200, 2},
		{"nowhere enough, most after", []int{60, 50, 90}, nil, 200, 2},
		{"nowhere enough, most before", []int{90, 50, 60}, nil, 200, 0},
		{"nowhere more", []int{40, 50, 30}, nil, 200, 1},
		{"as much after", []int{40, 50, 50}, nil, 200, 1},
		{"what gels want is not left", []int{40, 50, 190}, []int{0, 0, 180}, 200, 1},
		{"and not counted twice", []int{40, 50, 190}, []int{0, 0, 100}, 200, 2},
	} {
		takes := breaks(c.water...)
		for i, ml := range c.wants {
			takes[i].WaterWantedML = ml
		}
		if got := wetter(takes, 1, true, false, c.wanted); got != c.to {
			t.Errorf("%s: to the break at %g min", c.what, takes[got].Chance.Minute)
		}
	}
}

// TestHandsDoNotPassTheCeiling: amounts set by hand come to no more than the loss has room for.
func TestHandsDoNotPassTheCeiling(t *testing.T) {
	p := courtPlanner(t)
	p.basis.SweatRate = Between(0.5, 0.4, 0.6)
	chances := []Chance{
		{Minute: 90, Seconds: 900, Certainty: Certain, Fixed: Fixed{On: true, ML: 500}}, {Minute: 100, Seconds: 900, Certainty: Certain, Fixed: Fixed{On: true, ML: 500}},
	}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 1000}, chances, 30, &s)
	if most := 0.4 * 1.75 * 1000; float64(s.DrinkableML) > most || s.DrinkableML == 0 {
		t.Errorf("%d mL of at most %.0f", s.DrinkableML, most)
	}
}

// TestAMouthfulOfEachMayLack: with one bottle at each break a mouthful of each drink may stay
// undrunk, and no more.
func TestAMouthfulOfEachMayLack(t *testing.T) {
	w := pouring{mouthful: 30}
	for given, lacks := range map[int]bool{800: false, 740: false, 739: true} {
		if got := w.lacks([Drinks]float64{Water: 500, Drink1: 300}, given); got != lacks {
			t.Errorf("%d of 800 mL: lacks %v", given, got)
		}
	}
}

// TestMostLeftIsPouredFirst: of the drinks that stand at a break that of which most is left.
func TestMostLeftIsPouredFirst(t *testing.T) {
	both := Take{stands: [Drinks]bool{Water: true, Drink1: true}}
	for _, c := range []struct{ water, drink float64 }{{300, 100}, {100, 300}, {200, 200}} {
		want := int(Water)
		if c.drink > c.water {
			want = int(Drink1)
		}
		w := pouring{left: [Drinks]float64{Water: c.water, Drink1: c.drink}}
		if got := w.drinkFor(&both); got != want {
			t.Errorf("%g mL of water and %g of a drink: slot %d", c.water, c.drink, got)
		}
	}
}

// TestASecondBottleStandsAtTheLongestBreak: where one may stand, and with one bottle at each
// break only where nothing is drunk yet.
func TestASecondBottleStandsAtTheLongestBreak(t *testing.T) {
	take := func(seconds float64, ml int, stand ...Slot) Take {
		t := Take{Chance: Chance{Minute: 10, Seconds: seconds}, ML: ml}
		for _, s := range stand {
			t.stands[s] = true
		}
		return t
	}
	for _, c := range []struct {
		what   string
		single bool
		takes  []Take
		want   int
	}{
		{"the longer first", false, []Take{take(120, 0), take(60, 0)}, 0},
		{"the longer last", false, []Take{take(60, 0), take(120, 0)}, 1},
		{"where it stands already", false, []Take{take(120, 0, Drink1), take(60, 0)}, 1},
		{"beside two", false, []Take{take(120, 0, Water, Drink2), take(60, 0, Water)}, 1},
		{"one at each, where some is drunk", true, []Take{take(120, 50), take(60, 0)}, 1},
		{"one at each, and all are drunk from", true, []Take{take(120, 50), take(60, 50)}, -1},
	} {
		w := pouring{takes: c.takes, single: c.single}
		if got := w.sharing(int(Drink1)); got != c.want {
			t.Errorf("%s: %d", c.what, got)
		}
	}
}

// TestSodiumLossIsPartedBetweenRateAndConcentration: by the squares of the relative half
// widths, the larger first: 10 and 20 % are 1 to 4.
func TestSodiumLossIsPartedBetweenRateAndConcentration(t *testing.T) {
	for _, c := range []struct {
		rate, sodium Ranged
		rest, large  float64
	}{
		{Between(1, 0.9, 1.1), Between(50, 40, 60), 0.2, 0.8}, {Between(1, 0.9, 1.1), Between(50, 45, 55), 0.5, 0.5}, {Between(1, 1, 1), Between(50, 45, 55), 0, 1},
	} {
		e := &explainer{p: &Planner{basis: Basis{SweatRate: c.rate, Sodium: c.sodium}}}
		got := e.sodiumBudget()
		if len(got) != 2 || math.Abs(got[0].Part-c.large) > 1e-9 || math.Abs(got[1].Part-c.rest) > 1e-9 {
			t.Errorf("%+v and %+v: %+v", c.rate, c.sodium, got)
		}
	}
}
