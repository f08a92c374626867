package proposal

import (
	"slices"
	"testing"
)

// A sodium aim set by hand is asked for in mg/h instead of by the litre drunk, with
// less than 300 mL too; none of it goes past what is lost, and what stays short is said.
func TestSodiumAimByHand(t *testing.T) {
	c := runner()
	c.Habit[water], c.Habit[sport] = 1000, 200
	if p := Propose(&c); p.Wants.Sodium {
		t.Fatalf("an hour and a half asks for sodium: %+v", p.Wants)
	}
	habit := c.SumOf(c.Habit)
	c.Sodium = Is(300)
	p := Propose(&c)
	r := p.Picked()
	if got := c.SumOf(r.Aim).SodiumMg / c.hours(); !r.Exists || got < 300 || r.Misses.Sodium != 0 || said(&p, SaySaltAim) {
		t.Errorf("asked for 300 mg/h: %g, %+v", got, r)
	}
	if c.SumOf(r.Aim).DrunkML < habit.DrunkML {
		t.Errorf("less is drunk: %v", r.Aim)
	}
	c.Sodium = Is(2000) // 0.9 of 1.8 L with 40 mmol/L is 1490 mg, and salt is 1.5 g/L at most
	p = Propose(&c)
	r = p.Picked()
	if got := c.SumOf(r.Aim).SodiumMg; !r.Exists || got > 0.9*1.8*40*22.990+1e-6 || r.Misses.Sodium == 0 {
		t.Errorf("asked for 2000 mg/h: %g mg", got)
	}
	at := slices.IndexFunc(p.Said, func(s Saying) bool { return s.Code == SaySaltAim })
	if at < 0 || p.Said[at].Figures[1] != 2000 || p.Said[at].Figures[0] != c.SumOf(r.Aim).SodiumMg/c.hours() {
		t.Errorf("said %v", p.Said)
	}
	c.Sodium = Is(0)
	if p := Propose(&c); p.Wants.Sodium {
		t.Error("none is asked for by hand, and it is")
	}
	little := runner()
	little.Minutes, little.LossML, little.LowML, little.Habit[water], little.Sodium = 60, 900, 700, 250, Is(120)
	if p := Propose(&little); !p.Picked().Exists || little.SumOf(p.Picked().Aim).SodiumMg < 120 {
		t.Errorf("with 250 mL: %v", p.Picked().Aim)
	}
}

// A most of sodium set by hand is not passed, unless the habit passes it.
func TestMostSodiumByHand(t *testing.T) {
	long := runner()
	long.Minutes, long.LossML, long.LowML, long.AdviceMost, long.BreaksML = 300, 5000, 4000, 90, 4000
	long.Habit[water] = 2000
	for most, want := range map[float64]float64{0: 0.9 * 5 * 40 * 22.990, 100: 500, 1: 5} {
		c := long
		c.SodiumMost = most
		p := Propose(&c)
		got := c.SumOf(p.Picked().Aim).SodiumMg
		if got > max(want, c.SumOf(c.Habit).SodiumMg)+1e-6 || most != 1 && got == 0 || most == 0 && got <= 500 {
			t.Errorf("most %g mg/h: %g mg", most, got)
		}
	}
}

// The search is exact with sodium set by hand, too.
func TestSearchIsExactWithSodiumSet(t *testing.T) {
	found, asked := 0, 0
	for seed := range uint64(300) {
		d := seeded(seed + 90_000)
		c := d.draw()
		c.Sodium = Is(d.between(60, 900))
		if d.chance(3) {
			c.SodiumMost = c.Sodium.Value + d.between(0, 300)
		}
		p := aimOf(&c, seed%2 == 1)
		if p.size() > 100_000 {
			continue
		}
		got, want := p.solve(), p.every()
		if got.ok != want.ok || got.misses != want.misses || got.ok && (got.cost-want.cost > 1e-9 || want.cost-got.cost > 1e-9) {
			t.Errorf("seed %d: %+v, every mix tried: %+v", seed, got, want)
		}
		if want.ok {
			found++
			if want.misses.Sodium == 0 {
				asked++
			}
		}
	}
	if found < 80 || asked < 20 {
		t.Errorf("%d compared, %d with all the sodium", found, asked)
	}
}

// A drink that alone is stronger than 8 % is said to want water, also where the mix is
// weaker; without a per cent where the mass is hidden.
func TestStrongDrinkWantsWater(t *testing.T) {
	c := runner()
	c.Sources[sport].CarbohydrateG = 0.106
	c.Habit[water], c.Habit[sport] = 300, 200
	p := Propose(&c)
	at := slices.IndexFunc(p.Said, func(s Saying) bool { return s.Code == SayStrong })
	if at < 0 || p.Said[at].Figures[0] < 10.59 || p.Said[at].Figures[0] > 10.61 || p.Said[at].Figures[1] != 8 {
		t.Errorf("said %v", p.Said)
	}
	for _, r := range p.Routes {
		if s := c.SumOf(r.Aim); r.Exists && s.DrinksG > 0.08*s.DrunkML+1e-9 {
			t.Errorf("the drinks of %v are %g %%", r.Aim, 100*s.DrinksG/s.DrunkML)
		}
	}
	c.Hidden = true
	if p := Propose(&c); !said(&p, SayStrongBlind) || said(&p, SayStrong) {
		t.Errorf("hidden: said %v", p.Said)
	}
	c.Sources[sport].CarbohydrateG = 0.08
	if p := Propose(&c); said(&p, SayStrongBlind) {
		t.Errorf("8 %%: said %v", p.Said)
	}
	c.Sources[sport].CarbohydrateG, c.Habit[sport], c.Sources[sport].Fixed = 0.106, 0, true
	if p := Propose(&c); said(&p, SayStrongBlind) {
		t.Errorf("not taken: said %v", p.Said)
	}
}
