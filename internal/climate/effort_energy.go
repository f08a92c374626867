package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// EnergyEffort is the energy used in a whole session, as a device or a table
// gives it.
//
//	M = kcal 4184/(60 min)/area
//
// The rests are in it, so it is never averaged with them. External work is as
// in [MetEffort]. Its error of a tenth is a proposal. Example: 900 kcal in 90
// min at 70 kg and 1.78 m give 373 W/m².
func EnergyEffort(b Body, energy quantity.Kilocalories, over quantity.Minutes, m Motion, own quantity.MetresPerSecond) (Effort, error) {
	err := refusedAny(append(b.values(), fieldValue{evidence.EnergyUsed, float64(energy)}, fieldValue{evidence.OwnSpeed, float64(own)})...)
	if err != nil {
		return Effort{}, err
	}
	value := float64(energy) * evidence.JoulesPerKilocalorie / (float64(over) * 60) / b.Area()
	if err := refused(evidence.MetabolicRate, value); err != nil {
		return Effort{}, err
	}
	f := withSpread(figure.Figure{Known: true, Value: value, Unit: quantity.WattPerSquareMetre, Estimate: true, Why: figure.Why{
		Formula: "kcal*joules/(minutes*60)/area",
		Inputs: []figure.Input{
			{Symbol: "kcal", Value: float64(energy), Unit: quantity.Kilocalorie},
			{Symbol: "joules", Value: evidence.JoulesPerKilocalorie, Unit: "J/kcal"},
			{Symbol: "minutes", Value: float64(over), Unit: quantity.Minute},
			{Symbol: "area", Value: b.Area(), Unit: "m²"},
		},
		Budget:  []figure.Share{{Source: "effort", Part: 1}},
		Sources: []string{"correction.energy.u", "climate.strain.area.scale"},
	}}, evidence.EnergyRelativeU*value)
	work, err := m.work(value)
	return Effort{ByEnergy, m, f, work, own, own == 0}, err
}
