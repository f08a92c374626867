package climate

import (
	"math"
	"testing"

	"ebbwell/internal/quantity"
)

// Gonzalez et al. 2009, with the coefficients again, and inside its fit alone.
func TestSoldiersByHand(t *testing.T) {
	x := Balance{Need: 200, Capacity: 300, AirPast: 1, Area: 1.9}
	got := must[Soldiers](t)(SoldiersOf(x, 30))
	same(t, "exponential", float64(got.Exponential), 1.9*147*math.Exp(0.0012*27.9*200*math.Pow(300, -0.455)), 1e-9)
	same(t, "linear", float64(got.Linear), 1.9*(147+1.527*200-0.87*300), 1e-9)
	for _, c := range []struct {
		need, capacity, past, air float64
		holds                     bool
	}{
		{47, 300, 1, 30, false}, {52, 300, 1, 30, true}, {350, 300, 1, 30, true}, {370, 300, 1, 30, false},
		{200, 19, 1, 30, false}, {200, 21, 1, 30, true}, {200, 500, 1, 30, true}, {200, 550, 1, 30, false},
		{200, 300, 0.38, 30, false}, {200, 300, 0.42, 30, true}, {200, 300, 2.4, 30, true}, {200, 300, 2.6, 30, false},
		{200, 300, 1, 14, false}, {200, 300, 1, 16, true}, {200, 300, 1, 43, true}, {200, 300, 1, 48, false},
	} {
		if _, err := SoldiersOf(Balance{Need: c.need, Capacity: c.capacity, AirPast: c.past, Area: 1.9}, quantity.Celsius(c.air)); (err == nil) != c.holds {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

func TestPackingSums(t *testing.T) {
	one := PackingList{Margin: 0.2, Powder: 100, Salt: 5, Gels: 2, Bottles: 1, SafeWater: 4, Supplies: []PackedSupply{{Supply: Supply{ID: "a"}, Servings: 2, Mass: 60, HandLuggage: 1}}}
	two := PackingList{Margin: 0.1, Powder: 50, Salt: 3, Gels: 1, Bottles: 2, SafeWater: 3.5, Supplies: []PackedSupply{{Supply: Supply{ID: "a"}, Servings: 3, Mass: 90, HandLuggage: 2}}}
	sum := SumPacking(one, two)
	if sum.Margin != 0.2 || sum.Powder != 150 || sum.Salt != 8 || sum.Gels != 3 || sum.Bottles != 3 || sum.SafeWater != 7.5 {
		t.Errorf("%+v", sum)
	}
	if len(sum.Supplies) != 1 || sum.Supplies[0].Servings != 5 || sum.Supplies[0].Mass != 150 || sum.Supplies[0].HandLuggage != 3 {
		t.Errorf("%+v", sum.Supplies)
	}
}

// Gels in hand luggage: 100 mL each at most, and together what is left.
func TestGelsInHand(t *testing.T) {
	for _, c := range []struct {
		each, hand quantity.Millilitres
		want       int
		left       quantity.Millilitres
	}{{95, 1000, 5, 525}, {100, 1000, 5, 500}, {105, 1000, 0, 1000}, {100, 300, 3, 0}, {40, 100, 2, 20}} {
		hand := c.hand
		p := line{supply: Supply{Form: Gel, Volume: c.each, Serving: 50}, servings: 10, firstDay: 5}.pack(0, &hand)
		if p.HandLuggage != c.want || hand != c.left || p.Servings != 10 || p.Mass != 500 {
			t.Errorf("%g mL each of %g: %+v, %g left", float64(c.each), float64(c.hand), p, float64(hand))
		}
	}
}

// Levels of 0.1 and 0.3 with variances of 0.04 and 0.08: their weighted mean is
// 1/6, a fifth of it counts beside the eight of the usual start.
func TestStartOfTwoAthletes(t *testing.T) {
	s := startOf([]levelled{{mean: 0.1, variance: 0.04}, {mean: 0.3, variance: 0.08}})
	same(t, "offset", s.Offset, 0.33+1.0/6*2/10, 1e-12)
	same(t, "sd", s.SD, 0.23*math.Sqrt((8+1.0/3)/9), 1e-12)
	if s.Athletes != 2 || startOf(nil) != UsualStart() {
		t.Errorf("%+v", s)
	}
	b, _ := sample(t, 25, SunShade)
	set := must[*TestSet](t)(NewTestSet(Athlete{Body: b}, []Test{testAt(t, 25, 1.3)}))
	l := set.level()
	same(t, "level", l.mean, set.offset.AtVec(0), 1e-12)
	same(t, "variance", l.variance, set.own[0], 1e-12)
}
