package proposal

import (
	"math"

	"ebbwell/internal/evidence"
)

// cut is the habit with its fluid brought down to the target: water first,
// then the largest drink. Gels come down with the water they were taken with,
// and food last, where its water alone is past the limit.
func (c *Case) cut(l *Limits) Mix {
	m := c.Habit
	least := c.grainsOf(true).least
	for over := c.SumOf(m).DrunkML - l.TargetML; Passes(over, 0); over = c.SumOf(m).DrunkML - l.TargetML {
		i := c.largest(m)
		if i < 0 {
			break
		}
		if m[i] -= over; Passes(least, m[i]) {
			m[i] = 0
		}
	}
	c.fewerGels(&m)
	c.lessFood(&m, l)
	return m
}

// largest is the water, or where there is none the largest drink; -1 for none.
func (c *Case) largest(m Mix) int {
	best := -1
	for i := range m {
		switch c.Sources[i].Kind {
		case Water:
			if Passes(m[i], 0) {
				return i
			}
		case Drink:
			if Passes(m[i], 0) && (best < 0 || m[i] > m[best]) {
				best = i
			}
		case None, Gel, Food, Salt:
		}
	}
	return best
}

// strength of drinks and gels together, g per 100 mL.
func (c *Case) strength(m Mix) float64 {
	g, ml := 0.0, 0.0
	for i := range m {
		src := &c.Sources[i]
		switch src.Kind {
		case Water, Drink:
			g, ml = g+src.CarbohydrateG*m[i], ml+m[i]
		case Gel:
			// A gram of carbohydrate in solution takes about 0.6 mL.
			g += src.CarbohydrateG * m[i]
			ml += (src.FoodWaterML + evidence.SugarVolume*src.CarbohydrateG) * m[i]
		case None, Food, Salt:
		}
	}
	if ml <= 0 {
		return 0
	}
	return 100 * g / ml
}

// fewerGels takes gels away until the mix is no stronger than 10 %, or than it was.
func (c *Case) fewerGels(m *Mix) {
	most := max(evidence.CutStrength, c.strength(c.Habit))
	for i := range m {
		for c.Sources[i].Kind == Gel && Passes(m[i], 0) && Passes(c.strength(*m), most) {
			m[i] = max(0, math.Ceil(m[i])-1)
		}
	}
}

// lessFood takes food away, the wettest first, until its water is inside the limit.
func (c *Case) lessFood(m *Mix, l *Limits) {
	for {
		sum := c.SumOf(*m)
		if !Passes(sum.DrunkML+sum.FoodWaterML, l.LimitML) {
			return
		}
		wettest := -1
		for i := range m {
			src := &c.Sources[i]
			if (src.Kind == Food || src.Kind == Gel) && Passes(m[i], 0) && src.FoodWaterML > 0 && (wettest < 0 || src.FoodWaterML > c.Sources[wettest].FoodWaterML) {
				wettest = i
			}
		}
		if wettest < 0 {
			return
		}
		step := c.Sources[wettest].portion()
		m[wettest] = max(0, CeilTo(m[wettest], step)-step)
	}
}
