package sweat

import (
	"math"
	"strconv"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// intake is what was drunk and eaten.
type intake struct {
	drunk   []drink
	eaten   []term // kg
	water   float64
	bottles []BottleResult
	// in is false while a drink is missing or refused.
	in, foodIn bool
}

// drink is one bottle's part of the balance.
type drink struct {
	mass    term // kg
	density term // g/mL
}

// BottleResult is what one bottle gave.
type BottleResult struct {
	Item int
	// Known is false while a weighing is missing or refused.
	Known bool
	// Drunk is what the athlete drank, mL; the middle of Bounds when shared.
	Drunk float64
	// Bounds are equal but for a shared bottle.
	Bounds quantity.Range
}

// readIntake takes bottles and foods.
func (s *sheet) readIntake() {
	in := s.in.Intake
	s.intake.in, s.intake.foodIn = true, true
	for i, b := range in.Bottles {
		s.readBottle(i, b)
	}
	if len(in.Bottles) == 0 && !in.NothingDrunk {
		s.intake.in = false
		s.miss(Missing{ID: MissingDrinks, Effect: quantity.Range{Low: -evidence.DrinkMissingHigh, High: -evidence.DrinkMissingLow}})
	}
	for i, f := range in.Foods {
		s.readFood(i, f)
	}
}

// readBottle adds one bottle to the intake, or says what it lacks.
func (s *sheet) readBottle(i int, b Bottle) {
	item := i + 1
	d, okDensity := 1.0, true
	if b.Density != nil {
		d, okDensity = read(&s.check, evidence.Density, item, b.Density)
	}
	gone, ok := s.goneFrom(item, b, d)
	low, high, okShare := s.shareOf(item, b)
	if b.Use == PouredOver {
		s.intake.bottles = append(s.intake.bottles, BottleResult{Item: item, Known: true})
		return
	}
	if !ok || !okShare || !okDensity {
		s.intake.in = false
		s.intake.bottles = append(s.intake.bottles, BottleResult{Item: item})
		return
	}
	q := gone.Scaled((low + high) / 2 / 100)
	if high > low {
		half := (high - low) / 2 / 100 * gone.Value()
		q = q.Plus(uncertainty.Between(-half, half, uncertainty.Source{Name: SourceShared, Item: item}))
	}
	q = q.Scaled(1.0 / 1000)
	name := numbered("drunk", i, len(s.in.Intake.Bottles))
	s.intake.drunk = append(s.intake.drunk, drink{
		mass:    symbol(name, q, quantity.Kilogram),
		density: constant(numbered("density", i, len(s.in.Intake.Bottles)), d, quantity.GramPerMillilitre),
	})
	ml := gone.Value() / d
	s.intake.bottles = append(s.intake.bottles, BottleResult{Item: item, Known: true,
		Drunk: 1000 * q.Value() / d, Bounds: quantity.Range{Low: low * ml / 100, High: high * ml / 100}})
}

// goneFrom is the mass that left a bottle and was not poured away, g.
func (s *sheet) goneFrom(item int, b Bottle, density float64) (q uncertainty.Quantity, ok bool) {
	weighed := uncertainty.Source{Name: SourceBottle, Item: item}
	poured, okPoured := read(&s.check, evidence.PouredAway, item, b.Poured)
	before, ok1 := read(&s.check, evidence.BottleMass, item, b.Before)
	after, ok2 := read(&s.check, evidence.BottleMass, item, b.After)
	volume, okVolume := read(&s.check, evidence.PouredVolume, item, b.Volume)
	refilled, okRefills := s.refills(item, b.Refills)
	readings := 2 + 2*len(b.Refills)
	if b.Poured != nil {
		readings += 2
	}
	u := evidence.BottleWeighingU * math.Sqrt(float64(readings))
	switch {
	case ok1 && ok2 && okRefills && (okPoured || b.Poured == nil):
		return s.left(evidence.BottleMass, weighed, before+refilled-after-poured, after, u)
	case okVolume && b.Before == nil && b.After == nil:
		from := uncertainty.Source{Name: SourcePoured, Item: item}
		return s.left(evidence.PouredAway, from, volume*density-poured, poured, evidence.PouredRelativeU*volume*density)
	}
	s.missBottle(item, b, before+refilled)
	return q, false
}

// left is the mass gone from a bottle. A bottle that gained more than its
// weighings err is refused; within that it counts as untouched.
func (s *sheet) left(f evidence.Field, from uncertainty.Source, gone, shown, u float64) (q uncertainty.Quantity, ok bool) {
	if gone < -2*u {
		s.check.refuse(f, from.Item, shown)
		return q, false
	}
	return uncertainty.Measured(max(0, gone), u, from), true
}

// missBottle notes which weighing of a bottle is missing and what that may do.
func (s *sheet) missBottle(item int, b Bottle, most float64) {
	m := Missing{ID: MissingBottle, Item: item, Effect: quantity.Range{Low: -most / 1000}}
	switch {
	case b.Use == PouredOver:
		return
	case b.Before != nil && b.After != nil:
		return // refused, and named so
	case b.Before != nil:
		m.ID = MissingBottleAfter
	case b.After != nil:
		m.ID = MissingBottleBefore
		m.Effect = quantity.Range{Low: -evidence.DrinkMissingHigh}
	case b.Volume != nil:
		return
	default:
		m.Effect = quantity.Range{Low: -evidence.DrinkMissingHigh}
	}
	s.miss(m)
}

// refills is the mass added to a bottle, g.
func (s *sheet) refills(item int, list []quantity.Grams) (sum float64, ok bool) {
	ok = true
	for _, m := range list {
		ok = s.check.usable(evidence.RefillMass, item, float64(m)) && ok
		sum += float64(m)
	}
	return sum, ok
}

// shareOf is the athlete's part of a bottle, %, from low to high.
func (s *sheet) shareOf(item int, b Bottle) (low, high float64, ok bool) {
	if b.Use != Shared {
		return 100, 100, true
	}
	low, high, ok = 0, 100, true
	if b.ShareLow != nil {
		low, ok = read(&s.check, evidence.ShareDrunk, item, b.ShareLow)
	}
	if b.ShareHigh != nil {
		x, okHigh := read(&s.check, evidence.ShareDrunk, item, b.ShareHigh)
		high, ok = x, ok && okHigh
	}
	if ok && low > high {
		s.check.refuse(evidence.ShareDrunk, item, low)
		return 0, 0, false
	}
	return low, high, ok
}

// readFood adds one food to the intake.
func (s *sheet) readFood(i int, f Food) {
	g, ok := read(&s.check, evidence.FoodMass, i+1, f.Mass)
	if !ok {
		s.intake.foodIn = false
		if f.Mass == nil {
			s.miss(Missing{ID: MissingFood, Item: i + 1})
		}
		return
	}
	if f.Water != nil && *f.Water >= 0 && *f.Water <= 1 {
		s.intake.water += g * *f.Water / 1000
	}
	q := uncertainty.Measured(g, evidence.FoodRelativeU*g, uncertainty.Source{Name: SourceFood, Item: i}).Scaled(1.0 / 1000)
	s.intake.eaten = append(s.intake.eaten, symbol(numbered("eaten", i, len(s.in.Intake.Foods)), q, quantity.Kilogram))
}

// numbered is a symbol for one of several.
func numbered(name string, i, of int) string {
	if of == 1 {
		return name
	}
	return name + strconv.Itoa(i+1)
}
