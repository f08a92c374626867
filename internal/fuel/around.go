package fuel

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// The codes of drinking and eating before and after a session.
const (
	BeforeEarly = "before.early" // at least 4 h before, slowly
	BeforeLate  = "before.late"  // 2 h before, where no urine came or it is dark
	FuelBefore  = "fuel.before"
	AfterGain   = "after.gain"    // no extra fluid after a gain
	AfterNone   = "after.none"    // nothing was lost
	AfterSoon   = "after.soon"    // next session within 12 h
	AfterDay    = "after.day"     // next session within 24 h
	AfterLarge  = "after.large"   // time enough, but 5 % or more is missing
	AfterMeals  = "after.meals"   // meals and water are enough
	FuelAfter   = "fuel.after"    // next session within 8 h
	FuelAsUsual = "fuel.as-usual" // nothing special
)

// BeforeFourHours is what to drink at least four hours before, slowly, in L:
// 5-7 mL/kg (ACSM 2007). It says nothing without a body mass.
func BeforeFourHours(massKg float64) Advice {
	return perMass(BeforeEarly, massKg, evidence.BeforeEarlyLow, evidence.BeforeEarlyHigh, "before.early")
}

// BeforeTwoHours is what to drink about two hours before where no urine came
// or it is dark, in L: 3-5 mL/kg (ACSM 2007).
func BeforeTwoHours(massKg float64) Advice {
	return perMass(BeforeLate, massKg, evidence.BeforeLateLow, evidence.BeforeLateHigh, "before.late")
}

// perMass turns mL/kg into L.
func perMass(code string, massKg, low, high float64, id string) Advice {
	if !(massKg > 0) {
		return Advice{}
	}
	return Advice{
		Code: code, Range: quantity.Range{Low: low * massKg / 1000, High: high * massKg / 1000},
		Unit: quantity.Litre, LowID: id + ".low", HighID: id + ".high", Sure: evidence.Second,
	}
}

// CarbohydrateBefore is what to eat in the 1-4 h before, in g: 1-4 g/kg for
// sessions over 60 min (ACSM/AND/DC 2016). It says nothing for a shorter one.
func CarbohydrateBefore(massKg, minutes float64) Advice {
	if !(massKg > 0) || !(minutes > evidence.FuelBeforeOver) {
		return Advice{}
	}
	return Advice{
		Code: FuelBefore, Range: quantity.Range{Low: evidence.FuelBeforeLow * massKg, High: evidence.FuelBeforeHigh * massKg},
		Unit: quantity.Gram, LowID: "fuel.before.low", HighID: "fuel.before.high", Sure: evidence.Read,
	}
}

// After is what to drink after a session, in L. deficitKg is the body mass
// lost, before less after (so of the deficit, not of the sweat); massKg the
// mass before; hoursToNext the time to the next session, zero when it is
// unknown or days away.
//
// With the next session within 24 h it is 1.25-1.5 L per kg, with sodium
// (McCartney et al. 2017); after a gain none; else meals and water are enough
// below 5 % (German Nutrition Society 2020).
func After(deficitKg, massKg, hoursToNext float64) Advice {
	code, sure := AfterMeals, evidence.Read
	near := hoursToNext > 0 && hoursToNext < evidence.RestoreWithin
	switch {
	case deficitKg < 0:
		code = AfterGain
	case !(deficitKg > 0):
		code = AfterNone
	case near && hoursToNext < evidence.RestoreSoon:
		code = AfterSoon
	case near:
		code = AfterDay
	case massKg > 0 && 100*deficitKg/massKg >= evidence.RestoreAnyway:
		code = AfterLarge
	}
	a := Advice{Code: code, Unit: quantity.Litre, Sure: sure, HighID: "after.within"}
	if code == AfterSoon || code == AfterDay || code == AfterLarge {
		a.Range = quantity.Range{Low: evidence.RestoreLow * deficitKg, High: evidence.RestoreHigh * deficitKg}
		a.LowID, a.HighID = "after.low", "after.high"
	}
	return a
}

// CarbohydrateAfter is what to eat after a session, in g/h for the first four
// hours: 1.0-1.2 g/kg/h where the next session is within 8 h (ACSM/AND/DC
// 2016); otherwise meals as usual.
func CarbohydrateAfter(massKg, hoursToNext float64) Advice {
	if !(massKg > 0) || !(hoursToNext > 0) || hoursToNext >= evidence.FuelAfterWithin {
		return Advice{Code: FuelAsUsual, Unit: quantity.GramPerHour, HighID: "fuel.after.within", Sure: evidence.Memory}
	}
	return Advice{
		Code: FuelAfter, Range: quantity.Range{Low: evidence.FuelAfterLow * massKg, High: evidence.FuelAfterHigh * massKg},
		Unit: quantity.GramPerHour, LowID: "fuel.after.low", HighID: "fuel.after.high", Sure: evidence.Memory,
	}
}
