package proposal

import "testing"

// The breaks are asked about where they carry clearly less than was drunk at them, and
// not for what is lost in whole mouthfuls.
func TestWhatBreaksLackIsAskedAbout(t *testing.T) {
	for _, x := range []struct {
		drunk, carried float64
		asks           bool
	}{
		{850, 510, true}, {1000, 890, true}, {437, 190, true},
		{1100, 1000, false}, {900, 840, false}, {500, 500, false}, {510, 505, false}, {400, 850, false},
	} {
		c := runner()
		for i := range c.Chances {
			c.Chances[i].Seconds = 60 // at stations, with no bottle carried
		}
		c.Habit, c.BreaksML = Mix{water: x.drunk}, x.carried
		if got := c.lacks(&Proposal{}); got != x.asks {
			t.Errorf("%g mL drunk where breaks carry %g: asks %v", x.drunk, x.carried, got)
		}
		c.BreaksConfirmed = true
		if c.lacks(&Proposal{}) {
			t.Errorf("%g mL: asks although it was answered", x.drunk)
		}
	}
}

// marathon is one in the cool with eight stations and no bottle: 512 mL.
func marathon() Case {
	c := runner()
	c.Minutes, c.LossML, c.LowML, c.BreathML, c.MassKg, c.AdviceMost, c.BreaksML = 215, 1600, 840, 600, 60, 90, 512
	c.Chances = nil
	for range 8 {
		c.Chances = append(c.Chances, Chance{Seconds: 8, Certain: true})
	}
	return c
}

// A marathon that would get 22 of 60 g/h for want of drink at its stations is not handed
// over before they are settled, though it ends well above -4 %; with a bottle, or where
// more drink would not help, it is.
func TestHungryMarathonIsAskedAbout(t *testing.T) {
	c := marathon()
	c.Habit[water], c.Habit[gel] = 300, 2
	p := Propose(&c)
	if !p.Ask || p.Lacking || !said(&p, SayAskFirst) {
		t.Fatalf("eight stations: ask %v, %v", p.Ask, p.Said)
	}
	for name, change := range map[string]func(c *Case){
		"with a bottle": func(c *Case) { c.Chances = append(c.Chances, Chance{Certain: true, CanEat: true}) },
		"settled":       func(c *Case) { c.BreaksConfirmed = true },
		"40 g/h":        func(c *Case) { c.Habit[gel] = 5 },
		"a little more": func(c *Case) { c.LowML = 540 },
		"half as long":  func(c *Case) { c.Minutes = 150 },
	} {
		other := marathon()
		other.Habit = c.Habit
		change(&other)
		if p := Propose(&other); p.Ask {
			t.Errorf("%s: %v", name, p.Said)
		}
	}
}

// What a habit comes down to is not handed over where the stations carry less.
func TestCutThatStationsDoNotCarryIsAskedAbout(t *testing.T) {
	c := marathon()
	c.Minutes, c.LossML, c.LowML, c.Tested, c.PastLowSodium = 300, 2600, 1620, false, true
	c.Habit[water] = 2600
	p := Propose(&c)
	if p.Outcome != DrinkLess || !p.Ask || p.Lacking || !said(&p, SayAskCut) || said(&p, SayBreaksCarry) {
		t.Fatalf("ask %v, %v", p.Ask, p.Said)
	}
	c.BreaksConfirmed = true
	if p := Propose(&c); p.Ask {
		t.Errorf("settled: %v", p.Said)
	}
	c.BreaksConfirmed, c.BreaksML = false, 1400
	if p := Propose(&c); p.Ask {
		t.Errorf("where they carry it: %v", p.Said)
	}
}
