package consult

import "ebbwell/internal/record"

// TakenIn is what came in during a test, by substance, kg.
type TakenIn struct{ Water, Drink, Food float64 }

// TakenIn sums up what was drunk and eaten, as far as it is known.
func (f Findings) TakenIn() TakenIn {
	var in TakenIn
	for _, p := range f.Intake.Bottles {
		switch {
		case !p.Known:
		case record.ID(p.Product.ID) == Water:
			in.Water += p.Grams / 1000
		default:
			in.Drink += p.Grams / 1000
		}
	}
	for _, p := range f.Intake.Foods {
		if p.Known {
			in.Food += p.Grams / 1000
		}
	}
	return in
}

// Beside is what left the body beside the sweat, kg: breath, gas exchange and
// urine. Where body mass is hidden only what was caught counts.
func (f Findings) Beside(hidden bool) float64 {
	o := f.OtherLosses()
	if hidden {
		return o.Urine
	}
	return max(0, o.Breath) + o.Urine
}

// LimitDeficit is the limit of the deficit in kg (a kilogram is a litre); zero
// while the share of the deficit is not known.
func (f Findings) LimitDeficit() float64 { return f.DeficitAt(f.Limit) }

// DeficitAt is a share of the body mass of the test, %, as a deficit in kg; zero while
// the share of the deficit is not known.
func (f Findings) DeficitAt(share float64) float64 {
	fluid := f.Sweat.Fluid
	if !fluid.DeficitShare.Known || fluid.DeficitShare.Value == 0 {
		return 0
	}
	return share * fluid.Deficit.Value / fluid.DeficitShare.Value
}
