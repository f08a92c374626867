package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// hypot is the length of two speeds at right angles.
func hypot(a, b float64) float64 { return math.Hypot(a, b) }

// CyclingEffort is riding at a pedal power in W.
//
//	VO2 = 7 + 10.8 P/kg mL/kg/min      M = VO2 kg/60 × 20.9 / area
//	W = P / area
//
// road is the speed on the road; zero is an ergometer. Meant for steady
// riding; not for sprints. Sources: ACSM metabolic equation, from memory; 20 900
// J per litre of oxygen, from memory. Example: 200 W at 70 kg, 1.78 m give 494
// W/m².
func CyclingEffort(b Body, power quantity.Watts, road quantity.MetresPerSecond) (Effort, error) {
	err := refusedAny(append(b.values(), fieldValue{evidence.Power, float64(power)}, fieldValue{evidence.OwnSpeed, float64(road)})...)
	if err != nil {
		return Effort{}, err
	}
	perKg := float64(power) / float64(b.Mass)
	oxygen := evidence.CyclingBaseOxygen + evidence.CyclingPowerOxygen*perKg
	f := metabolic(oxygen, b, "base+perwatt*power/mass", []figure.Input{
		{Symbol: "base", Value: evidence.CyclingBaseOxygen, Unit: "mL/(kg·min)"},
		{Symbol: "perwatt", Value: evidence.CyclingPowerOxygen, Unit: "mL/(min·W)"},
		{Symbol: "power", Value: float64(power), Unit: quantity.Watt},
	}, evidence.PowerRelativeU, "oxygen.cycling.base", "oxygen.cycling.power")
	return Effort{ByPower, Cycling, f, quantity.WattsPerSquareMetre(float64(power) / b.Area()), road, road == 0}, nil
}

// RowingEffort is rowing at a power in W: M = P/0.19. boat is the speed of the
// boat; zero is an ergometer. A proposal, good to 7 %.
func RowingEffort(b Body, power quantity.Watts, boat quantity.MetresPerSecond) (Effort, error) {
	if err := refusedAny(append(b.values(), fieldValue{evidence.Power, float64(power)})...); err != nil {
		return Effort{}, err
	}
	return efficient(quantity.WattsPerSquareMetre(float64(power)/b.Area()), boat, Rowing, evidence.RowingEfficiency, "climate.effort.rowing.efficiency")
}

// efficient turns power by area into a metabolic rate by an efficiency.
func efficient(power quantity.WattsPerSquareMetre, own quantity.MetresPerSecond, m Motion, efficiency float64, source string) (Effort, error) {
	value := float64(power) / efficiency
	err := refusedAny(fieldValue{evidence.MetabolicRate, value}, fieldValue{evidence.OwnSpeed, float64(own)})
	if err != nil {
		return Effort{}, err
	}
	f := figure.Figure{Known: true, Value: value, Unit: quantity.WattPerSquareMetre, Estimate: true, Why: figure.Why{
		Formula: "power/efficiency",
		Inputs: []figure.Input{
			{Symbol: "power", Value: float64(power), Unit: quantity.WattPerSquareMetre},
			{Symbol: "efficiency", Value: efficiency},
		},
		Budget:  []figure.Share{{Source: "effort", Part: 1}},
		Sources: []string{source},
	}}
	return Effort{ByPower, m, withSpread(f, evidence.PowerRelativeU*value), power, own, own == 0}, nil
}
