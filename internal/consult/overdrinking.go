package consult

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// OverDrinking predicts plasma sodium after a measured session, as a caution:
// what went in by the labels, what went out by the patch and the balance. ok is
// false where the sweat sodium or the deficit has no value. A potassium that is
// not on a label counts as none taken in.
func OverDrinking(f Findings, a record.Athlete) (c sweat.Caution, ok bool) {
	fluid, lost := f.Sweat.Fluid, f.Sweat.Sodium.Millimoles
	mass := quantity.Kilograms(sessionMass(f.Test, a))
	if !lost.Known || !fluid.Deficit.Known || !fluid.Loss.Known || mass <= 0 {
		return sweat.Caution{}, false
	}
	person := sweat.Person{Sex: sweat.Sex(a.Sex), Height: as[quantity.Metres](a.Height), Mass: &mass}
	if years, known := a.Age(TestDay(f.Test)); known {
		age := float64(years)
		person.Age = &age
	}
	in := f.Intake.Sodium.Value/evidence.SodiumMolarMass + potassiumIn(f)/evidence.PotassiumMolarMass
	out := lost.Value + fluid.Loss.Value*evidence.SweatPotassium
	return sweat.OverDrinking(person, sweat.Exchanged{
		Ions: in - out, Water: -fluid.Deficit.Value, UWater: fluid.Deficit.U,
		UIons: math.Hypot(math.Hypot(f.Intake.Sodium.U/evidence.SodiumMolarMass, lost.U), fluid.Loss.Value*evidence.SweatPotassiumSD),
	}), true
}

// potassiumIn is the potassium taken in, mg, as far as labels give it.
func potassiumIn(f Findings) float64 {
	total := 0.0
	for _, p := range append(append([]fuel.Part(nil), f.Intake.Bottles...), f.Intake.Foods...) {
		if k := p.Product.Per100.Potassium; p.Known && k.Known {
			total += k.Value * p.Grams / 100
		}
	}
	return total
}
