package demo

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// sheet fills a test sheet in as a dietitian would.
func (f *filler) sheet(s session) record.Test {
	a := f.athletes[s.athlete]
	t := record.Test{
		Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen,
		Session: record.Session{
			Date: f.day(s.ago), Place: s.place, Sport: a.Sport, Start: s.start, End: endOf(s),
			Effort: record.Num(s.effort, quantity.None), Power: some(s.power, quantity.Watt), Speed: some(s.speed, quantity.KilometrePerHour),
		},
		Air: record.Air{
			Temperature: record.Num(s.air, quantity.DegreeCelsius), Humidity: record.Num(s.humidity, quantity.PerCent),
			Wind: record.Num(s.wind, quantity.MetrePerSecond), Sun: s.sun, Clothing: "shirt-shorts",
		},
		Scale:   record.Scale{Step: record.Num(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Urine:   record.Urine{Gravity: some(s.gravity, quantity.None), When: record.Before},
		Loss:    record.Loss{Urine: record.Num(s.urine, quantity.Gram), NoUrine: s.urine == 0, NoStool: true, Guess: some(s.guess, quantity.Litre)},
		Feeling: record.Feeling{Thirst: record.Num(3, quantity.None), Stomach: record.Num(1, quantity.None)},
	}
	f.addIntake(&t, s)
	f.weigh(&t, a, s)
	for i, p := range s.patches {
		p.Meta, p.TestID, p.Order = record.Meta{ID: record.NewID()}, t.ID, i
		p.On, p.Off = record.ClockAt(startOf(s)+25), record.ClockAt(startOf(s)+min(60, s.minutes-5))
		p.Method, p.Condition, p.AtLaboratory = record.MethodIonChromatography, record.PatchGood, !p.Sodium.Known()
		t.Patches = append(t.Patches, p)
	}
	return t
}

// some is a number that zero leaves out.
func some(x float64, u quantity.Unit) record.Number {
	if x == 0 {
		return record.Number{}
	}
	return record.Num(x, u)
}

func startOf(s session) float64 {
	m, _ := s.start.Minutes()
	return m
}

// endOf leaves the end of an unfinished sheet open.
func endOf(s session) record.Clock {
	if s.open {
		return ""
	}
	return record.ClockAt(startOf(s) + s.minutes)
}

// addIntake writes the bottles, weighed with their caps, and the food.
func (f *filler) addIntake(t *record.Test, s session) {
	const empty = 92.0 // empty bottle with cap, g
	add := func(id record.ID, ml float64) {
		product, ok := f.desk.Pantry.Find(id)
		if ml == 0 || !ok {
			return
		}
		full := max(500, ml+100)
		b := record.Bottle{
			Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: len(t.Bottles), ProductID: id, Name: product.Name, Use: record.UseDrunk,
			Before: record.Num(quantity.Round(empty+full*product.Density.Value, 0), quantity.Gram),
		}
		if !s.open {
			b.After = record.Num(*b.Before.Value-quantity.Round(ml*product.Density.Value, 0), quantity.Gram)
		}
		t.Bottles = append(t.Bottles, b)
	}
	add("generic.water", s.water)
	add("generic.drink-6", s.drink)
	if product, ok := f.desk.Pantry.Find(s.food); ok && s.portions > 0 {
		t.Foods = append(t.Foods, record.FoodEaten{
			Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, ProductID: s.food, Name: product.Name,
			Portions: record.Num(s.portions, quantity.Portion),
		})
	}
}

// weigh writes the weighings: the mass after is what the loss leaves, to the
// step of the scale.
func (f *filler) weigh(t *record.Test, a record.Athlete, s session) {
	const step = 0.05
	before := quantity.RoundTo(a.UsualMass.Or(0), step)
	taken := 0.0
	for _, b := range t.Bottles {
		taken += (b.Before.Or(0) - b.After.Or(b.Before.Or(0))) / 1000
	}
	if product, ok := f.desk.Pantry.Find(s.food); ok {
		taken += s.portions * product.Portion.Grams / 1000
	}
	add := func(m record.Moment, mass float64) {
		t.Weighings = append(t.Weighings, record.Weighing{
			Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Moment: m, Order: len(t.Weighings), Mass: record.Num(quantity.Round(mass, 2), quantity.Kilogram),
		})
	}
	add(record.Before, before)
	if !s.open {
		add(record.After, quantity.RoundTo(before-s.loss+taken-s.urine/1000-f.breathed(*t, a), step))
	}
}

// breathed is what breath and gas exchange took off the scale, kg.
func (f *filler) breathed(t record.Test, a record.Athlete) float64 {
	sum := 0.0
	for _, c := range consult.Find(t, a, nil, f.desk).Sweat.Corrections {
		sum += c.Size.Value
	}
	return sum
}
