package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Soldiers are two regressions of soldiers' sweat rates, for comparison only.
type Soldiers struct {
	// Exponential is OSEC, Linear PW, both in g/h for the body.
	Exponential, Linear quantity.GramsPerHour
}

// SoldiersOf gives what soldiers sweated in like conditions.
//
//	OSE  = 27.9 Ereq Emax^-0.455       OSEC = 147 exp(0.0012 OSE)
//	PW   = 147 + 1.527 Ereq - 0.87 Emax                             g/m²/h
//
// Nothing here is based on them: they were made for marching in uniform, and the
// straight one goes negative in light clothes and self-made wind. They are
// refused outside 50 < Ereq < 360 and 20 < Emax < 525 W/m², 15-46 °C and air of
// 0.4-2.5 m/s past the body: the problem has the code [evidence.CodeOutOfFit]
// and names the field, its value and its range. Source: Gonzalez et al. 2009. Example: Ereq 200 and
// Emax 200 give 268 and 278 g/m²/h.
func SoldiersOf(x Balance, air quantity.Celsius) (Soldiers, error) {
	for _, v := range [...]struct {
		field        evidence.Field
		x, low, high float64
		unit         quantity.Unit
	}{
		{evidence.EvaporationNeeded, x.Need, evidence.SoldierNeedLow, evidence.SoldierNeedHigh, quantity.WattPerSquareMetre},
		{evidence.EvaporationPossible, x.Capacity, evidence.SoldierCapacityLow, evidence.SoldierCapacityHigh, quantity.WattPerSquareMetre},
		{evidence.AirTemperature, float64(air), evidence.SoldierAirLow, evidence.SoldierAirHigh, quantity.DegreeCelsius},
		{evidence.AirPastBody, x.AirPast, evidence.SoldierWindLow, evidence.SoldierWindHigh, quantity.MetrePerSecond},
	} {
		if !(v.x >= v.low && v.x <= v.high) {
			return Soldiers{}, outOfFit(v.field, v.x, v.low, v.high, v.unit)
		}
	}
	ose := evidence.SoldierNeed * x.Need * math.Pow(x.Capacity, -evidence.SoldierCapacityPower)
	return Soldiers{
		Exponential: quantity.GramsPerHour(x.Area * evidence.SoldierScale * math.Exp(evidence.SoldierRise*ose)),
		Linear: quantity.GramsPerHour(x.Area * (evidence.SoldierScale + evidence.SoldierLinearNeed*x.Need -
			evidence.SoldierLinearCapacity*x.Capacity)),
	}, nil
}
