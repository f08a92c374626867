package consult

import (
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// coarse is a sheet as it is calculated with: where body mass is hidden all its
// masses are moved together, so that the one before is that of the class and what
// was lost stays to the gram.
func coarse(t record.Test, a record.Athlete) record.Test {
	list := masses(t, record.Before)
	if len(list) == 0 || !hiddenOn(a, TestDay(t)) {
		return t
	}
	first := float64(list[0])
	middle := hiddenMass(a, first)
	t = t.Clone()
	for i, w := range t.Weighings {
		if w.Mass.Known() {
			t.Weighings[i].Mass = record.Num(middle+quantity.Round(*w.Mass.Value-first, milligrams), quantity.Kilogram)
		}
	}
	return t
}

// milligrams is the decimals of a kilogram that a difference of masses is taken to: the
// dust of a subtraction would tell the masses apart.
const milligrams = 6

// ClassMass is the middle of the class that a mass, kg, of an athlete is in, for
// judging a share of a mass that is hidden: with the mass itself a warning would tell it.
func ClassMass(a record.Athlete, mass float64) float64 { return hiddenMass(a, mass) }

// hiddenMass is what is calculated with for a mass that is hidden, kg: by the usual
// mass where that is known, else by the first that was ever weighed, so that all of an
// athlete's tests are in one class. Two tests on either side of its end would tell the
// mass.
func hiddenMass(a record.Athlete, mass float64) float64 {
	if one := classed(a.UsualMass, a.FirstMass); one > 0 {
		mass = one
	}
	return care.HiddenMass(mass)
}

// classed is the mass whose class an athlete is in, kg; zero while there is none.
func classed(usual record.Number, first float64) float64 {
	if known := usual.Or(0); known > 0 {
		return known
	}
	return first
}

// sameClass reports whether what was kept of an athlete was calculated in the class
// that the mass is in now.
func sameClass(was frozen.Athlete, a record.Athlete) bool {
	return alike(care.HiddenMass(classed(was.UsualMass, was.FirstMass)), care.HiddenMass(classed(a.UsualMass, a.FirstMass)))
}

// usualMass is the usual body mass to calculate with, kg; zero while it is not known.
func usualMass(a record.Athlete) float64 {
	mass := a.UsualMass.Or(0)
	if hiddenOn(a, time.Time{}) {
		return care.HiddenMass(mass)
	}
	return mass
}

// hiddenOn is [care.MassHidden] on a day; where no day is known, on the day the
// athlete was entered, else as the profile says.
func hiddenOn(a record.Athlete, on time.Time) bool {
	if on.IsZero() {
		on = a.CreatedAt
	}
	if on.IsZero() {
		return a.MassHidden || a.Born == ""
	}
	return care.MassHidden(a, on)
}
