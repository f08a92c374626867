package proposal

import (
	"testing"
)

// The cases here are our own: what the written ones do not pin.

// runner is a run of an hour and a half that loses 1.2 L/h, with a bottle.
func runner() Case {
	c := Case{
		Minutes: 90, LossML: 1800, LowML: 1300, BreathML: 250, MassKg: 70, DeficitAim: 2, Running: true,
		SodiumMmolL: Is(40), Stomach: Is(2), Confidence: Is(8), Age: Is(30), AdviceMost: 60, Tested: true, BreaksML: 1200,
	}
	for range 5 {
		c.Chances = append(c.Chances, Chance{CanEat: true, Certain: true})
	}
	t := things()
	c.Sources = [Slots]Source{t["water"], t["sport6"], t["gel"], t["banana"], t["salt"]}
	return c
}

// The slots of [runner].
const (
	water = iota
	sport
	gel
	banana
	salt
)

func said(p *Proposal, code string) bool {
	for _, s := range p.Said {
		if s.Code == code {
			return true
		}
	}
	return false
}

// TestCutNearTheLimit: a habit between the low end and the mean of the loss
// comes down to 0.95 of the limit; one beyond the mean to 0.9.
func TestCutNearTheLimit(t *testing.T) {
	for habit, want := range map[float64]float64{1500: 1200, 1900: 1150} {
		c := runner()
		c.Tested = false
		c.Habit[water] = habit
		p := Propose(&c)
		if p.Outcome != DrinkLess || p.Limits.TargetML != want || c.SumOf(p.Cut).DrunkML != want {
			t.Errorf("habit %g: %v to %g, cut to %g; want %g", habit, p.Outcome, p.Limits.TargetML, c.SumOf(p.Cut).DrunkML, want)
		}
		if p.Said[0].Code != SayLess {
			t.Errorf("habit %g: said first %s", habit, p.Said[0].Code)
		}
	}
}

// TestLargestIsADrink: of what is drunk the water comes down first and then the largest
// drink, however much is eaten beside it.
func TestLargestIsADrink(t *testing.T) {
	c := runner()
	c.Sources[0], c.Sources[3] = c.Sources[3], c.Sources[0]
	for m, want := range map[Mix]int{{0: 4, 1: 3}: 1, {0: 4, 1: 3, 3: 2}: 3, {1: 300, 3: 200}: 3} {
		if got := c.largest(m); got != want {
			t.Errorf("%v: %d, want %d", m, got, want)
		}
	}
	if got := c.largest(Mix{0: 4}); got >= 0 {
		t.Errorf("nothing is drunk, and %d is the largest", got)
	}
}

// TestSodiumCeiling: no proposal brings more than 0.9 of the sodium lost, nor
// more than the habit where that does.
func TestSodiumCeiling(t *testing.T) {
	c := runner()
	c.Minutes, c.LossML, c.LowML, c.BreaksML, c.AdviceMost = 300, 4000, 3000, 2800, 90
	c.Habit[water] = 2000
	for _, mmol := range []float64{8, 12, 20, 60} {
		c.SodiumMmolL = Is(mmol)
		most := 0.9 * 4 * mmol * 22.99
		p := Propose(&c)
		for way, r := range p.Routes {
			for _, s := range r.Steps {
				if na := c.SumOf(s.Mix).SodiumMg; na > most+1e-6 {
					t.Errorf("%g mmol/L, way %d: %.0f mg, %.0f lost", mmol, way, na, most)
				}
			}
		}
		if mmol == 60 && !(c.SumOf(p.Picked().Aim).SodiumMg > 500) {
			t.Errorf("a salty sweater gets %.0f mg", c.SumOf(p.Picked().Aim).SodiumMg)
		}
	}
	c.SodiumMmolL = Known{}
	if p := Propose(&c); c.SumOf(p.Picked().Aim).SodiumMg > 0.9*4*25*22.99 {
		t.Error("unknown sodium is not taken for 25 mmol/L")
	}
}

// TestStrength: drinks together stay at 8 %, or at what was drunk with a calm stomach.
func TestStrength(t *testing.T) {
	c := runner()
	c.Sources[sport].CarbohydrateG = 0.11
	c.NoFood = true
	c.Habit[water] = 500
	p := Propose(&c)
	if s := c.SumOf(p.Routes[DrinksAlone].Aim); !p.Routes[DrinksAlone].Exists || s.DrinksG > 0.08*s.DrunkML+1e-9 {
		t.Errorf("%+v: %.1f %%", p.Routes[DrinksAlone].Aim, 100*s.DrinksG/s.DrunkML)
	}
	c.Habit = Mix{sport: 500}
	p = Propose(&c)
	if s := c.SumOf(p.Routes[DrinksAlone].Aim); s.DrunkML <= 500 || s.DrinksG > 0.11*s.DrunkML+1e-9 {
		t.Errorf("used to 11 %%: %.1f %% of %.0f mL", 100*s.DrinksG/s.DrunkML, s.DrunkML)
	}
}

// TestSaltInWater: added salt stays at 1.5 g/L of what is drunk.
func TestSaltInWater(t *testing.T) {
	c := runner()
	c.Minutes, c.LossML, c.LowML, c.BreaksML, c.AdviceMost = 300, 6000, 5000, 900, 90
	c.SodiumMmolL = Is(80)
	c.Habit = Mix{water: 700}
	c.NoNewDrink = true
	p := Propose(&c)
	for _, r := range p.Routes {
		if s := c.SumOf(r.Aim); r.Exists && s.SaltG > 0.0015*s.DrunkML+1e-9 {
			t.Errorf("%.1f g in %.0f mL", s.SaltG, s.DrunkML)
		}
	}
	if c.SumOf(p.Picked().Aim).SaltG == 0 {
		t.Error("no salt proposed at all: the case shows nothing")
	}
}

// TestAdviceEnds: carbohydrate stays inside the advice, but never under the habit.
func TestAdviceEnds(t *testing.T) {
	c := runner()
	c.AdviceMost = 30
	c.Habit = Mix{water: 300}
	p := Propose(&c)
	for _, r := range p.Routes {
		if g := c.SumOf(r.Aim).CarbohydrateG; g > 45+1e-9 {
			t.Errorf("%.0f g in 1.5 h", g)
		}
	}
	c.Habit = Mix{water: 300, gel: 3}
	p = Propose(&c)
	if g := c.SumOf(p.Picked().Aim).CarbohydrateG; g < 78 {
		t.Errorf("%.0f g, less than the habit", g)
	}
	if !said(&p, SayAboveAdvice) {
		t.Error("a habit above the advice is kept without a word")
	}
}

// TestYoungTakeNoGels: under 16 no gel is proposed, and at most 30 g/h.
func TestYoungTakeNoGels(t *testing.T) {
	c := runner()
	c.Minutes, c.LossML, c.LowML, c.Age = 200, 3000, 2200, Is(15)
	c.Habit = Mix{water: 500}
	if a := CarbohydrateAim(&c); a != 30 {
		t.Errorf("aim %g g/h", a)
	}
	p := Propose(&c)
	for _, r := range p.Routes {
		if r.Aim[gel] > 0 {
			t.Errorf("gels: %v", r.Aim)
		}
	}
	if !p.Routes[WithFood].Exists || p.Routes[WithFood].Aim[banana] == 0 {
		t.Errorf("no food proposed instead: %+v", p.Routes[WithFood])
	}
	c.Age = Is(16)
	if a := CarbohydrateAim(&c); a != 60 {
		t.Errorf("at 16: aim %g g/h", a)
	}
}

// TestHiddenTarget: with a hidden mass a raised target comes in steps of 250 mL.
func TestHiddenTarget(t *testing.T) {
	c := runner()
	c.Hidden, c.MassKg, c.LossML, c.LowML, c.BreaksML = true, 60, 2600, 2400, 2500
	c.Minutes, c.Running = 120, false
	p := Propose(&c)
	if p.Limits.Case != More || p.Limits.Clash || math250(p.Limits.TargetML) != 0 {
		t.Errorf("%+v", p.Limits)
	}
	for _, s := range p.Said {
		if s.Code == SayAim || s.Code == SayEndsBreaks || s.Code == SayNoMore || s.Code == SayDeep {
			t.Errorf("says %s of a hidden mass", s.Code)
		}
	}
}

func math250(x float64) float64 { return x - 250*float64(int(x/250)) }

// TestNoChancesKnown: where no break was entered the habit proves what can be drunk.
func TestNoChancesKnown(t *testing.T) {
	c := runner()
	c.Chances, c.BreaksML = nil, 0
	c.Habit = Mix{water: 400}
	p := Propose(&c)
	if p.Limits.BreaksML != 400 || p.Limits.TargetML != 400 || said(&p, SayBreaksCarry) {
		t.Errorf("%+v", p.Limits)
	}
}

// TestStuck: nothing fits, and it is said what is used up.
func TestStuck(t *testing.T) {
	c := runner()
	c.NoFood, c.NoNewDrink, c.BreaksML = true, true, 420
	c.Sources[salt] = Source{}
	c.Habit = Mix{water: 400}
	p := Propose(&c)
	if p.Outcome != Stuck || !said(&p, SayStuck) || !said(&p, SayEndsBreaks) {
		t.Errorf("%v, said %v", p.Outcome, p.Said)
	}
}

// TestFourThings: up to 150 min three things change at most, past that four.
func TestFourThings(t *testing.T) {
	for minutes, most := range map[float64]int{150: 3, 151: 4} {
		c := runner()
		c.Minutes = minutes
		l := LimitsOf(&c)
		if p := c.hard(&l); p.things != most {
			t.Errorf("%g min: %d things", minutes, p.things)
		}
	}
}

// TestLimitUnsure: a measured habit above the low end that ended at -1 % or
// lower is kept, nothing is added, and a new test is asked for; the same not measured
// comes down.
func TestLimitUnsure(t *testing.T) {
	c := runner()
	c.LossML, c.LowML, c.MassKg = 1500, 800, 60
	c.Habit = Mix{water: 900}
	p := Propose(&c)
	if p.Limits.Case != Unsure || !said(&p, SayUnsure) {
		t.Fatalf("%+v, %v", p.Limits, p.Said)
	}
	for _, r := range p.Routes {
		for _, s := range r.Steps {
			if d := c.SumOf(s.Mix).DrunkML; d != 900 {
				t.Errorf("a step drinks %.0f mL", d)
			}
		}
	}
	c.Tested = false
	if p := Propose(&c); p.Outcome != DrinkLess {
		t.Errorf("not measured: %v", p.Outcome)
	}
}

// TestAimRises: the carbohydrate asked for never falls with the length and never jumps.
func TestAimRises(t *testing.T) {
	c := runner()
	before := 0.0
	for m := 15.0; m <= 600; m++ {
		c.Minutes = m
		a := CarbohydrateAim(&c)
		if a < before || a-before > 15 {
			t.Errorf("%g min: %g after %g", m, a, before)
		}
		before = a
	}
	if before != 60 {
		t.Errorf("ends at %g", before)
	}
}

// TestNothingSmall: no step holds a sip of a drink or a sliver of food.
func TestNothingSmall(t *testing.T) {
	for name, w := range writtenCases(t) {
		p := Propose(&w.Case)
		for _, r := range p.Routes {
			for _, s := range r.Steps {
				for i, x := range s.Mix {
					if k := w.Sources[i].Kind; (k == Water || k == Drink) && x > 0 && x < 50 && x != w.Habit[i] {
						t.Errorf("%s: %g mL of %s", name, x, w.names[i])
					}
				}
			}
		}
	}
}

// TestSaidOfWritten: every case says something, and the most urgent first.
func TestSaidOfWritten(t *testing.T) {
	known := map[string]bool{}
	for _, code := range Codes() {
		known[code] = true
	}
	for name, w := range writtenCases(t) {
		p := Propose(&w.Case)
		if len(p.Said) == 0 {
			t.Errorf("%s: nothing said", name)
			continue
		}
		for _, s := range p.Said {
			if !known[s.Code] {
				t.Errorf("%s: code %q is not listed", name, s.Code)
			}
		}
		first := p.Said[0].Code
		if w.Gained && first != SayGained || w.PastLowSodium && first != SayPastSodium ||
			p.Outcome == DrinkLess && !w.careful() && first != SayLess {
			t.Errorf("%s: says %s first", name, first)
		}
	}
}

// TestBreaksAreAskedFirst: a marathon with eight stations and no bottle is not
// handed over before the breaks are settled; with a bottle, or settled, it is.
func TestBreaksAreAskedFirst(t *testing.T) {
	w := writtenCases(t)["marathon woman 34, 3 h 30"]
	if w == nil {
		t.Fatal("no such case")
	}
	if p := Propose(&w.Case); !p.Ask || !said(&p, SayAskFirst) {
		t.Errorf("eight stations: %v", p.Said)
	}
	settled := w.Case
	settled.BreaksConfirmed = true
	if p := Propose(&settled); p.Ask || !said(&p, SayAskBreaks) {
		t.Errorf("settled: %v", p.Said)
	}
	bottle := w.Case
	bottle.Chances = append([]Chance{{Certain: true, CanEat: true}}, bottle.Chances...)
	if p := Propose(&bottle); p.Ask {
		t.Errorf("with a bottle: %v", p.Said)
	}
}

// TestFoodIsNoWater: food comes for carbohydrate alone, however wet it is and
// however much fluid is missing; and never eight of a kind.
func TestFoodIsNoWater(t *testing.T) {
	c := runner()
	c.Minutes, c.LossML, c.LowML, c.BreaksML, c.AdviceMost, c.Running = 300, 6500, 5000, 700, 90, false
	c.Habit = Mix{water: 500, sport: 200, gel: 11}
	p := Propose(&c)
	for _, r := range p.Routes {
		if r.Exists && r.Aim[banana] > 0 {
			t.Errorf("carbohydrate is met, and %g bananas are proposed", r.Aim[banana])
		}
	}
	c.Minutes, c.Habit = 420, Mix{water: 500}
	c.BreaksML = 4000
	for range 40 {
		c.Chances = append(c.Chances, Chance{CanEat: true, Certain: true})
	}
	p = Propose(&c)
	for _, r := range p.Routes {
		if r.Aim[gel] > 8 || r.Aim[banana] > 3 {
			t.Errorf("%g gels and %g bananas in 7 h", r.Aim[gel], r.Aim[banana])
		}
	}
}

// Codes lists every code of [Saying].
func Codes() []string {
	return []string{
		SayGained, SayPastSodium, SayLess, SayUnsure, SayInPlace, SayNothing, SayStuck, SayFirstDrinks, SayFirstFood, SayFirstHold,
		SayAim, SayAimHidden, SayNoMore, SayNoMoreBlind, SayBreaksCarry, SayEndsBreaks, SayEndsStomach, SayEndsLoss,
		SayRoomBreaks, SayRoomStomach, SayRoomLoss, SayAskBreaks, SayAskFirst, SayDeep, SayStomach, SayDrinksShort, SayNoFoodShort,
		SayFoodShort, SaySaltShort, SaySecondTest, SayCool, SayAboveAdvice, SayYoung, SayOlder, SayUpTo, SayRinse, SayThirst,
		SayHalfSteps, SayAskCut, SaySaltAim, SayStrong, SayStrongBlind, SayFirstBack, SayStomachBad, SayBottles,
	}
}
