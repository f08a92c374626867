package proposal

import (
	"cmp"
	"math"

	"ebbwell/internal/evidence"
)

// CarbohydrateAim is the carbohydrate asked for, g/h, rising without a jump
// with the length: none to 75 min, 30 from 90, 60 from 180; with light effort none
// to 150 and 30 from 180; the young at most 30. An aim set by hand goes before it.
func CarbohydrateAim(c *Case) float64 {
	if c.Carbohydrate.Known {
		return c.Carbohydrate.Value
	}
	first := rise(c.Minutes, evidence.FuelAimFrom, evidence.FuelAimFull)
	second := rise(c.Minutes, evidence.FuelAimLongFrom, evidence.FuelAimLongFull)
	a := evidence.FuelAimMiddle*first + (evidence.FuelAimLong-evidence.FuelAimMiddle)*second
	if c.Light {
		a = evidence.FuelAimMiddle * second
	}
	if c.young() {
		a = min(a, evidence.FuelAimYoung)
	}
	a = math.Round(a/evidence.FuelAimStep) * evidence.FuelAimStep
	if a < evidence.FuelAimLeast {
		return 0
	}
	return a
}

// rise goes from 0 to 1 between two lengths.
func rise(x, from, to float64) float64 { return min(1, max(0, (x-from)/(to-from))) }

// Wants is what is asked for beside fluid.
type Wants struct {
	// AimGH is the carbohydrate asked for, g/h; TargetGH what is missing is
	// counted from: the aim, or the habit where that is as near to it as matters.
	AimGH, TargetGH float64
	// Sodium is asked for: by the litre drunk, or SodiumMgH, mg/h, where that is set by
	// hand.
	Sodium    bool
	SodiumMgH float64
}

// WantsOf works out what is asked for beside fluid.
func WantsOf(c *Case) Wants {
	habit := c.SumOf(c.Habit)
	w := Wants{AimGH: CarbohydrateAim(c)}
	w.TargetGH = w.AimGH
	if g := habit.CarbohydrateG / c.hours(); w.AimGH > 0 && Passes(evidence.FuelAimStep, math.Abs(g-w.AimGH)) {
		w.TargetGH = g
	}
	if c.Gained {
		w.AimGH, w.TargetGH = 0, 0
	}
	if c.Sodium.Known {
		w.Sodium, w.SodiumMgH = c.Sodium.Value > 0, c.Sodium.Value
		return w
	}
	h := c.hours()
	loses := Passes(c.LossML/1000/h, evidence.SodiumAimRate) || c.SodiumMmolL.Known && c.SodiumMmolL.Value > evidence.SodiumAimMmol
	w.Sodium = !Passes(evidence.SodiumAimHours, h) || h > evidence.SodiumAimSooner && loses
	if habit.DrunkML > 0 && habit.SodiumMg >= evidence.SodiumAimKept*habit.DrunkML/1000 {
		w.Sodium = false
	}
	return w
}

// Misses counts what a mix misses: fluid in begun increments, carbohydrate in
// 5 g/h, sodium in 50 mg/h.
type Misses struct{ Fluid, Carbohydrate, Sodium int }

// None reports that nothing is missing.
func (m Misses) None() bool { return m == Misses{} }

// less orders misses: fluid before carbohydrate before sodium.
func (m Misses) less(n Misses) bool {
	return cmp.Or(cmp.Compare(m.Fluid, n.Fluid), cmp.Compare(m.Carbohydrate, n.Carbohydrate), cmp.Compare(m.Sodium, n.Sodium)) < 0
}

// Begun counts begun parts of what is missing.
func Begun(missing, part float64) int { return int(max(0, parts(missing, part))) }

// fuelParts counts whole steps of an aim of carbohydrate in what is missing.
func fuelParts(missingGH float64) int { return int(max(0, wholes(missingGH, evidence.FuelAimStep))) }
