package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// FlightFluid is what to take in on a flight over the hours awake, food
// included: 100 to 300 mL/h.
//
// A range of advice, not of measurement; drink to thirst inside it. Source:
// advice for athletes, read in a second text. Example: 10 h awake give 1.0 to
// 3.0 L. Hours from 0 to 48, else an [evidence.Problem].
func FlightFluid(hoursAwake float64) (figure.Figure, error) {
	if err := refused(evidence.FlightHours, hoursAwake); err != nil {
		return figure.Figure{}, err
	}
	const low, high = evidence.FlightFluidLow, evidence.FlightFluidHigh
	return figure.Figure{
		Known: true, Value: hoursAwake * (low + high) / 2 / 1000, Unit: quantity.Litre, Estimate: true, Ranged: true,
		Range: quantity.Range{Low: hoursAwake * low / 1000, High: hoursAwake * high / 1000},
		Why: figure.Why{
			Formula: "hours*(low+high)/2/1000",
			Inputs: []figure.Input{
				{Symbol: "hours", Value: hoursAwake, Unit: quantity.Hour},
				{Symbol: "low", Value: low, Unit: quantity.MillilitrePerHour},
				{Symbol: "high", Value: high, Unit: quantity.MillilitrePerHour},
			},
			Sources: []string{"climate.flight.fluid.low", "climate.flight.fluid.high"},
		},
	}, nil
}
