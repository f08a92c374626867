package proposal

import (
	"math"
	"math/rand/v2"
)

// dice draws cases over all that comes into a practice.
type dice struct{ *rand.Rand }

func seeded(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, 9))} }

func (d dice) between(low, high float64) float64 { return low + d.Float64()*(high-low) }
func (d dice) chance(of int) bool                { return d.IntN(of) == 0 }

func oneOf[T any](d dice, list ...T) T { return list[d.IntN(len(list))] }

// draw makes a case: session, loss, breaks, menu and a habit between nothing and
// more than is lost.
func (d dice) draw() Case {
	minutes := oneOf(d, 20.0, 50, 70, 80, 90, 105, 120, 150, 151, 180, 200, 240, 300, 420)
	h := minutes / 60
	c := Case{
		Minutes: minutes, LossML: 1000 * h * d.between(0.3, 2.4), MassKg: d.between(42, 120),
		DeficitAim: oneOf(d, 2.0, 2, 2, 3), Running: d.chance(2), Light: d.chance(4), Hidden: d.chance(6),
		PastLowSodium: d.chance(10), Gained: d.chance(15), AsksLess: d.chance(12), NoFood: d.chance(10),
		NoMoreDrink: d.chance(12), NoNewDrink: d.chance(8), Tested: !d.chance(3), Cool: d.chance(5),
	}
	c.LowML = c.LossML * d.between(0.5, 0.85)
	c.BreathML = h * d.between(60, 200)
	if !d.chance(5) {
		c.SodiumMmolL = Is(d.between(12, 85))
	}
	if !d.chance(5) {
		c.Stomach = Is(float64(d.IntN(9)))
	}
	if !d.chance(3) {
		c.Confidence = Is(float64(d.IntN(11)))
	}
	if !d.chance(4) {
		c.Age = Is(float64(12 + d.IntN(55)))
	}
	c.AdviceMost = adviceMost(minutes)
	d.breaks(&c)
	d.menu(&c)
	d.habit(&c)
	return c
}

func adviceMost(minutes float64) float64 {
	switch {
	case minutes < 45:
		return 0
	case minutes < 75:
		return 30
	case minutes <= 150:
		return 60
	}
	return 90
}

// breaks draws a carried bottle, stations, or breaks of one length.
func (d dice) breaks(c *Case) {
	every, kind := d.between(8, 40), Chance{Seconds: oneOf(d, 8.0, 30, 60, 90, 120, 600), CanEat: d.chance(2), Certain: true}
	switch d.IntN(4) {
	case 0:
		every, kind = 15, Chance{CanEat: true, Certain: true}
	case 1:
		kind.CanEat = true
	}
	var minutes []float64
	for at := every; at < c.Minutes; at += every {
		one := kind
		one.Certain = one.Seconds == 0 || !d.chance(4)
		c.Chances, minutes = append(c.Chances, one), append(minutes, at)
	}
	c.BreaksML = carried(&written{Case: *c}, minutes)
}

// menu draws two to eight sources.
func (d dice) menu(c *Case) {
	t := things()
	c.Sources[0] = t["water"]
	names := []string{"sport6", "light4", "gel", "banana", "sandwich", "ricesq", "salt"}
	d.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	for i := range 1 + d.IntN(len(names)) {
		c.Sources[i+1] = t[names[i]]
		c.Sources[i+1].Fixed = d.chance(15)
	}
}

// habit draws what is taken: fluid up to 1.2 of the loss, some food.
func (d dice) habit(c *Case) {
	fluid := c.LossML * max(0, d.between(-0.2, 1.2))
	for i := range c.Sources {
		switch c.Sources[i].Kind {
		case Water:
			c.Habit[i] = math.Round(fluid*oneOf(d, 0.4, 1)/50) * 50
		case Drink:
			if d.chance(3) {
				c.Habit[i] = math.Round(fluid*0.4/50) * 50
			}
		case Gel, Food:
			if d.chance(3) {
				c.Habit[i] = float64(d.IntN(1 + int(c.Minutes/60)))
			}
		case None, Salt:
		}
	}
	if d.chance(6) {
		c.Habit[0] += 37
	}
}
