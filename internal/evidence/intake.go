package evidence

import "ebbwell/internal/quantity"

const (
	// LabelRelativeU is what a label or a food table may be off by, as a
	// relative standard uncertainty of carbohydrate and sodium.
	LabelRelativeU = 0.05
	// AirHot is the air temperature in °C from which a session counts as hot
	// where nothing better is known.
	AirHot = 25.0
	// AirCold is the one below which it counts as cold.
	AirCold = 10.0
	// WindNotKnown is the wind at the body in m/s where none was written down.
	WindNotKnown = 1.0
)

// intakeEntries are the entries of what goes in, and of the heat classes.
func intakeEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "intake.label", Value: LabelRelativeU, Source: own, Sure: Proposal},
		{ID: "heat-class.hot", Value: AirHot, Unit: quantity.DegreeCelsius, Source: own, Sure: Proposal},
		{ID: "heat-class.wind-not-known", Value: WindNotKnown, Unit: quantity.MetrePerSecond, Source: own, Sure: Proposal},
		{ID: "heat-class.cold", Value: AirCold, Unit: quantity.DegreeCelsius, Source: own, Sure: Proposal},
	}
}
