package plan

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
)

// onlyWater is a planner and chances for a plan of one drink.
func onlyWater(t *rapid.T) (*Planner, []Chance, Mouthful, dice) {
	d := roll(t)
	p := newPlanner(t, d.basis(), d.session(), NewMenu(), Aim{})
	return p, d.chances(p.session.Minutes[Expected]), oneOf[Mouthful](d, 20, 22, 25, 37.5, 50), d
}

// A larger plan takes nothing away from any chance.
func TestScheduleRisesWithThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, chances, mouthful, d := onlyWater(t)
		var less, more Schedule
		small := math.Round(d.between(0, 2500))
		p.Schedule(Expected, Mix{Water: small}, chances, mouthful, &less)
		p.Schedule(Expected, Mix{Water: small + math.Round(d.between(0, 500))}, chances, mouthful, &more)
		for i := range less.Takes {
			if more.Takes[i].ML < less.Takes[i].ML {
				t.Fatalf("chance %d: %d mL of %d, %d of %d", i, less.Takes[i].ML, less.PlannedML, more.Takes[i].ML, more.PlannedML)
			}
		}
	})
}

// Drawn plans of one drink in which a second bottle, had there been one, took from a
// later break what a larger plan gave an earlier one.
func TestOneDrinkOnlyAdds(t *testing.T) {
	for seed := range uint64(20_000) {
		if seed%4 != 0 && seed != 19_044 {
			continue
		}
		d := dice{rand.New(rand.NewPCG(seed, 1))}
		p := newPlanner(t, d.basis(), d.session(), NewMenu(), Aim{})
		chances, mouthful := d.chances(p.session.Minutes[Expected]), oneOf[Mouthful](d, 20, 22, 25, 37.5, 50)
		var less, more Schedule
		small := math.Round(d.between(0, 2500))
		p.Schedule(Expected, Mix{Water: small}, chances, mouthful, &less)
		p.Schedule(Expected, Mix{Water: small + math.Round(d.between(0, 500))}, chances, mouthful, &more)
		for i := range less.Takes {
			if more.Takes[i].ML < less.Takes[i].ML {
				t.Fatalf("seed %d, chance %d: %d mL of %d, %d of %d", seed, i, less.Takes[i].ML, less.PlannedML, more.Takes[i].ML, more.PlannedML)
			}
		}
	}
}

// A mouthful of less than 1 mL is none: the usual one stands in for it.
func TestUsualMouthfulStandsIn(t *testing.T) {
	p := courtPlanner(t)
	var tiny Schedule
	p.Schedule(Expected, Mix{Water: 900}, courtChances(t, 105), 1.05, &tiny)
	if tiny.Takes[4].Mouthfuls < 60 {
		t.Errorf("mouthfuls of 1.05 mL: %d at a chance", tiny.Takes[4].Mouthfuls)
	}
	for given, want := range map[Mouthful]Mouthful{0: 25, 0.95: 25, 1.05: 1.05, 30: 30} {
		var a, b Schedule
		p.Schedule(Expected, Mix{Water: 900}, courtChances(t, 105), given, &a)
		p.Schedule(Expected, Mix{Water: 900}, courtChances(t, 105), want, &b)
		for i := range a.Takes {
			if a.Takes[i].Mouthfuls != b.Takes[i].Mouthfuls {
				t.Errorf("%g mL: %d mouthfuls at chance %d, with %g mL %d", float64(given), a.Takes[i].Mouthfuls, i, float64(want), b.Takes[i].Mouthfuls)
				break
			}
		}
	}
}

// The fill before it is rounded rises with the plan, and comes to it.
func TestFillComesToThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, chances, _, d := onlyWater(t)
		takes, g := p.place(Expected, chances, nil), p.gut()
		most := g.filled(takes, evidence.FillMost)
		last := 0.0
		for plan := 0.0; plan < 3000; plan += 100 {
			fill, sum := g.fill(takes, plan, evidence.FillMost)
			if want := min(plan, most); math.Abs(sum-want) > 0.01 {
				t.Fatalf("%g mL of %g planned, %g are the most", sum, plan, most)
			}
			if fill < last-1e-9 {
				t.Fatalf("fill %g after %g", fill, last)
			}
			last = fill
		}
		fixed := Chance{Seconds: oneOf(d, 0.0, 8, 30, 60, 120, 300, 900), Certainty: oneOf(d, Certain, Maybe, IfHot)}
		for ml := 1.0; ml < fixed.MostML(); ml++ {
			if back := fixed.FillML(fixed.fillFor(ml)); math.Abs(back-ml) > 1e-9 {
				t.Fatalf("%+v: filled for %g mL it has %g", fixed, ml, back)
			}
		}
	})
}

// No chance that may not happen is given anything while a certain one could
// take another mouthful in comfort; and with a setting none but long breaks are
// filled above comfort.
func TestCertainBeforeMaybe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, chances, mouthful, d := onlyWater(t)
		p.session.Comfortable = d.yes()
		var s Schedule
		p.Schedule(Expected, Mix{Water: math.Round(d.between(0, 2500))}, chances, mouthful, &s)
		w := pouring{gut: p.gut(), takes: s.Takes, mouthful: float64(mouthful), most: p.fillMost()}
		maybe := false
		for i := range s.Takes {
			maybe = maybe || s.Takes[i].ML > 0 && s.Takes[i].Chance.mayNotHappen()
		}
		for i := range s.Takes {
			take := &s.Takes[i]
			comfortable := take.Chance.ComfortableML()
			next := (float64(take.Mouthfuls) + 0.5) * float64(mouthful)
			if maybe && !take.Chance.mayNotHappen() && next < comfortable-1e-9 && !w.over(take) && w.bears(i) {
				t.Fatalf("%d mouthfuls of %g where %g mL are comfortable, and a chance that may not happen is used", take.Mouthfuls, float64(mouthful), comfortable)
			}
			if p.session.Comfortable && !take.Chance.long() && float64(take.ML) > comfortable+1e-9 {
				t.Fatalf("%d mL where %g are comfortable", take.ML, comfortable)
			}
		}
	})
}

// Whole mouthfuls of two drinks lose less than two mouthfuls of what can be
// carried, and a little more where a break is cut short by stomach or loss.
func TestLittleIsLostToMouthfuls(t *testing.T) {
	list, lost, planned := products(t), 0.0, 0.0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix, chances := d.mix(p.menu), courtChances(t, p.session.Minutes[Expected])
		var s Schedule
		p.Schedule(Expected, mix, chances, 25, &s)
		if !s.DrinksFit {
			return
		}
		planned += float64(s.PlannedML)
		lost += float64(s.PlannedML - s.DrinkableML)
	})
	if planned == 0 || lost > 0.1*planned {
		t.Errorf("%g of %g mL were lost to mouthfuls", lost, planned)
	}
}

// What was set by hand stands as far as the chance bears it, and the rest is
// filled around it.
func TestFixedAmountsStand(t *testing.T) {
	p := courtPlanner(t)
	chances := courtChances(t, 105)
	chances[1].Fixed = Fixed{On: true, ML: 60}
	chances[3].Fixed = Fixed{On: true}
	chances[5].Fixed = Fixed{On: true, ML: 437}
	var s, free Schedule
	p.Schedule(Expected, Mix{Water: 1000}, courtChances(t, 105), 30, &free)
	p.Schedule(Expected, Mix{Water: 1000}, chances, 30, &s)
	if s.Takes[1].ML != 60 || s.Takes[3].ML != 0 || s.Takes[5].ML != 240 {
		t.Errorf("set 60, 0 and 437 mL: %d, %d and %d (90 s carry 252)", s.Takes[1].ML, s.Takes[3].ML, s.Takes[5].ML)
	}
	if s.DrinkableML != free.DrinkableML {
		t.Errorf("%d mL in all, %d with nothing set by hand", s.DrinkableML, free.DrinkableML)
	}
	p.Schedule(Expected, Mix{Water: 200}, chances, 30, &s)
	if s.DrinkableML > 200 {
		t.Errorf("%d mL of a plan of 200", s.DrinkableML)
	}
}

// One bottle stands at a chance; the drink with carbohydrate at the long breaks,
// water at the short ones; two only where one break is all there is.
func TestOneBottleAChance(t *testing.T) {
	p := courtPlanner(t)
	chances := []Chance{
		{Code: "time-out", Minute: 11, Seconds: 60, Certainty: Maybe},
		{Code: "interval", Minute: 21, Seconds: 120},
		{Code: "half-time", Minute: 45, Seconds: 900},
		{Code: "time-out", Minute: 69, Seconds: 60, Certainty: Maybe},
		{Code: "interval", Minute: 82, Seconds: 120},
		{Code: "time-out", Minute: 95, Seconds: 60, Certainty: Maybe},
	}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 150, Drink1: 800}, chances, 25, &s)
	for i, take := range s.Takes {
		want := Drink1
		if take.Chance.Certainty == Maybe {
			want = Water
		}
		if take.ByDrink[want] != take.ML {
			t.Errorf("chance %d: %v", i, take.ByDrink)
		}
	}
	if s.Carried(Mix{})[Drink1] < 775 || s.Carried(Mix{})[Water] < 125 {
		t.Errorf("%v of 150 and 800", s.Carried(Mix{}))
	}
	p.Schedule(Expected, Mix{Water: 250, Drink1: 200}, chances[2:3], 25, &s)
	if s.Takes[0].ByDrink != [Drinks]int{Water: 250, Drink1: 200} {
		t.Errorf("one break: %v", s.Takes[0].ByDrink)
	}
}

// With one bottle a break no chance has a second one, a schedule of what is drunk is the
// same again, and what falls away by more than mouthfuls is said.
func TestOneBottleIsKept(t *testing.T) {
	list, two, less := products(t), 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix, chances, mouthful := d.mix(p.menu), d.chances(p.session.Minutes[Expected]), oneOf[Mouthful](d, 20, 25, 37.5)
		var free, one, again Schedule
		p.Schedule(Expected, mix, chances, mouthful, &free)
		single := p.OneBottle()
		single.Schedule(Expected, mix, chances, mouthful, &one)
		single.Schedule(Expected, one.Carried(mix), chances, mouthful, &again)
		parted := false
		for i := range one.Takes {
			if n := one.Takes[i].Bottles(); n > 1 {
				t.Fatalf("%d bottles at chance %d", n, i)
			}
			if one.Takes[i].ByDrink != again.Takes[i].ByDrink {
				t.Fatalf("chance %d: %v, agreed %v", i, one.Takes[i].ByDrink, again.Takes[i].ByDrink)
			}
			parted = parted || free.Takes[i].Bottles() > 1
		}
		for s := range Drinks {
			if one.Carried(mix)[s] > mix[s]+negligibleML {
				t.Fatalf("drink %d: %g mL of %g", s, one.Carried(mix)[s], mix[s])
			}
		}
		if parted {
			two++
		}
		if len(one.Takes) > 0 && float64(free.DrinkableML-one.DrinkableML) > float64(Drinks)*float64(mouthful) {
			less++
			if one.DrinksFit {
				t.Fatalf("%d mL of %d, with two bottles %d, and it is not said", one.DrinkableML, one.PlannedML, free.DrinkableML)
			}
		}
	})
	if two == 0 || less == 0 {
		t.Errorf("%d with two bottles, %d with less to drink", two, less)
	}
}

// A half-time and two intervals of 120 s: 150 mL of water and 500 of a drink stand in
// three bottles; alone at half-time one of two drinks falls away.
func TestOneBottleByHand(t *testing.T) {
	p := courtPlanner(t).OneBottle()
	chances := []Chance{{Code: "interval", Minute: 21, Seconds: 120}, {Code: "half-time", Minute: 45, Seconds: 900}, {Code: "interval", Minute: 82, Seconds: 120}}
	var s Schedule
	p.Schedule(Expected, Mix{Water: 150, Drink1: 500}, chances, 25, &s)
	if got := s.Carried(Mix{}); got[Water] != 150 || got[Drink1] != 500 || !s.DrinksFit {
		t.Errorf("%v carried of 150 and 500, fits %v", got, s.DrinksFit)
	}
	p.Schedule(Expected, Mix{Water: 250, Drink1: 200}, chances[1:2], 25, &s)
	if s.Takes[0].Bottles() != 1 || s.Takes[0].ML > 250 || s.DrinksFit {
		t.Errorf("one break: %v, fits %v", s.Takes[0].ByDrink, s.DrinksFit)
	}
}

// A movement makes nothing anew once the memory is there.
func TestScheduleMakesNothingAnew(t *testing.T) {
	p, mix := courtPlanner(t), Mix{Water: 437, Drink1: 800, Food1: 1}
	chances := courtChances(t, 105)
	var s Schedule
	p.Schedule(Expected, mix, chances, 25, &s)
	if n := testing.AllocsPerRun(100, func() { p.Schedule(Expected, mix, chances, 25, &s) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// No drink is carried above what is planned of it, nor all of them with the foods
// above the limit: with amounts between whole mL, amounts set by hand, any mouthful.
func TestNeverMoreThanPlanned(t *testing.T) {
	list, compared := products(t), 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix, chances := d.mix(p.menu), d.chances(p.session.Minutes[Expected])
		for s := range Drinks {
			if mix[s] > 0 {
				mix[s] += oneOf(d, 0, 0.4, 0.5, 0.9)
			}
		}
		for i := range chances {
			chances[i].Fixed = Fixed{On: d.IntN(3) == 0, ML: d.between(0, 600)}
		}
		var s Schedule
		p.Schedule(Expected, mix, chances, Mouthful(d.between(5, 60)), &s)
		carried := s.Carried(mix)
		for slot := range carried {
			if carried[slot] > mix[slot]+negligibleML {
				t.Fatalf("slot %d: %g carried of %g planned", slot, carried[slot], mix[slot])
			}
		}
		q := p.Evaluate(Expected, carried)
		if most := q.Ceiling.FluidL; len(s.Takes) > 0 && q.Fluid.DrunkL > 0 && p.Evaluate(Expected, Mix{Food1: mix[Food1], Food2: mix[Food2], Food3: mix[Food3], Food4: mix[Food4]}).Fluid.FoodWaterL < most {
			compared++
			if q.Guards.Has(OverCeiling) {
				t.Fatalf("%g L carried, the limit is %g", q.Fluid.DrunkL+q.Fluid.FoodWaterL, most)
			}
		}
	})
	if compared == 0 {
		t.Errorf("%d compared with the limit", compared)
	}
}

// Where breaks are filled comfortably only, they are counted for no more than a
// schedule then gives: half-time and long ones to their most, the others to comfort.
func TestComfortableBoundsTheBreaks(t *testing.T) {
	chances := []Chance{{Minute: 30, Seconds: 60}, {Minute: 45, Seconds: 900}, {Minute: 90, Seconds: 60}, {Minute: 95, Seconds: 60, Certainty: Maybe}}
	p := courtPlanner(t)
	if got, want := p.CarriesML(Expected, chances), 168+500+168+58.8; math.Abs(got-want) > 0.01 {
		t.Errorf("the breaks carry %g mL, want %g", got, want)
	}
	p.session.Comfortable = true
	if got, want := p.CarriesML(Expected, chances), 117.6+500+117.6+58.8; math.Abs(got-want) > 0.01 {
		t.Errorf("comfortably the breaks carry %g mL, want %g", got, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		p, chances, mouthful, d := onlyWater(t)
		p.session.Comfortable = true
		for i := range chances {
			chances[i].Certainty = Certain
		}
		p.basis.SweatRate.Low = p.basis.SweatRate.Value // the schedule is held by the middle
		var s Schedule
		p.Schedule(Expected, Mix{Water: math.Round(d.between(0, 2500))}, chances, mouthful, &s)
		if carries := p.CarriesML(Expected, chances); float64(s.DrinkableML) > carries+1e-6 {
			t.Fatalf("%d mL scheduled, the breaks are counted for %g", s.DrinkableML, carries)
		}
	})
}
