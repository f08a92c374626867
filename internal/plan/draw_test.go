package plan

import (
	"math"
	"math/rand/v2"

	"pgregory.net/rapid"

	"ebbwell/internal/fuel"
	"ebbwell/internal/sweat"
)

// dice draws evenly; rapid's own draws lean to small numbers, which would
// leave most plans empty. Rapid still hands out the seed and repeats it.
type dice struct{ *rand.Rand }

func roll(t *rapid.T) dice {
	return dice{rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))}
}

func (d dice) between(low, high float64) float64 { return low + d.Float64()*(high-low) }
func (d dice) yes() bool                         { return d.IntN(2) == 0 }

func oneOf[T any](d dice, list ...T) T { return list[d.IntN(len(list))] }

// basis draws over all that is possible.
func (d dice) basis() Basis {
	rate, sodium := d.between(0.2, 3), d.between(5, 90)
	return Basis{
		SweatRate:     Between(rate, rate*d.between(0.4, 1), rate*d.between(1, 2)),
		RespiratoryLH: oneOf(d, 0, 0.08),
		ExchangeLH:    oneOf(d, 0, 0.04, -0.01),
		Sodium:        Ranged{Known: d.yes(), Value: sodium, Range: Between(0, sodium*0.6, sodium*1.5).Range},
		Body: Body{
			MassKg: d.between(35, 120), HeightM: oneOf(d, 0, 1.7), AgeYears: oneOf(d, 0.0, 15, 25),
			Sex: oneOf[sweat.Sex](d, "", sweat.Female, sweat.Male),
		},
		Usual: Usual{Known: d.yes(), LH: d.between(0.2, 1.4)},
	}
}

// session draws one of 20 min to 8 h.
func (d dice) session() Session {
	minutes := oneOf(d, 20.0, 44, 60, 75, 95, 105, 150, 179, 181, 240, 480)
	return Session{
		Minutes: [Lengths]float64{minutes * 0.8, minutes, minutes * 1.3},
		Effort:  oneOf(d, fuel.EffortUnknown, fuel.Easy, fuel.Moderate, fuel.Hard),
		Running: d.yes(), Intermittent: d.yes(),
		Heat: oneOf(d, HeatUnknown, Cold, Temperate, Hot),
	}
}

// menu draws up to three drinks and four foods from the catalogue.
func (d dice) menu(list []fuel.Product) Menu {
	m := NewMenu()
	for s := Drink1; s <= Food4; s++ {
		p := oneOf(d, list...)
		for (p.Form == fuel.Drink) != s.IsDrink() {
			p = oneOf(d, list...)
		}
		if d.IntN(3) == 0 {
			continue
		}
		var err error
		if s.IsDrink() {
			err = m.SetDrink(s, p)
		} else {
			err = m.SetFood(s, p)
		}
		if err != nil {
			m.Clear(s)
		}
	}
	return m
}

// mix draws amounts of what is on the menu, in increments or between.
func (d dice) mix(m Menu) Mix {
	var mix Mix
	for s := range m {
		if !m[s].InUse || d.yes() {
			continue
		}
		most := oneOf(d, 200.0, 1500)
		switch {
		case Slot(s).IsFood():
			most = 4
		case Slot(s) == Salt:
			most = 3
		}
		mix[s] = math.Round(d.between(0, most)/m[s].Step) * m[s].Step
		if d.IntN(5) == 0 {
			mix[s] += m[s].Step * 0.3
		}
	}
	return mix
}

// aim draws one near what the advice gives, some bounds off.
func (d dice) aim(u Usual, s Session) Aim {
	a := DefaultAim(u, s)
	switch d.IntN(4) {
	case 0:
		a.Carbohydrate.On = false
	case 1:
		a.Sodium = Within(100, 600)
	case 2:
		a.Deficit = Within(0.5, 3)
	}
	if d.IntN(3) == 0 {
		for s := range a.Allowed {
			a.Allowed[s] = d.IntN(3) > 0
		}
	}
	return a
}

// planner draws all of it.
func (d dice) planner(t tester, list []fuel.Product) *Planner {
	t.Helper()
	b, s := d.basis(), d.session()
	return newPlanner(t, b, s, d.menu(list), d.aim(b.Usual, s))
}

// chances draws up to twelve in a session.
func (d dice) chances(minutes float64) []Chance {
	var list []Chance
	for range d.IntN(13) {
		list = append(list, Chance{
			Code: "pause", Minute: d.between(0, minutes), Seconds: oneOf(d, 0.0, 8, 60, 90, 900),
			CanEat: d.yes(), Certainty: oneOf(d, Certain, Certain, Maybe),
		})
	}
	return list
}
