package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// StopPoint is a stop of a trip on a [Calculation.HeatCurve].
type StopPoint struct {
	From record.Date
	CurvePoint
}

// Untested are the stops of trips that last until a day or longer, in air that no test
// of the calculation covers, on its heat curve: at the stop's air temperature, with
// effort, humidity, sun and wind of the curve. A stop without air is left out.
func (r Calculation) Untested(trips []record.Trip, a record.Athlete, today record.Date, places climate.Places, d Setup) []StopPoint {
	if r.AssumedAir {
		return nil
	}
	var list []StopPoint
	for _, t := range trips {
		for _, s := range t.Stops {
			if max(s.From, s.Until) < today {
				continue
			}
			at, err := AirOf(s, places)
			if err != nil || !at.Air.Temperature.Known() {
				continue
			}
			x := *at.Air.Temperature.Value
			for _, c := range r.HeatCurve(a, x, x, 1, d) {
				if c.Rate.Grade != climate.Tested {
					list = append(list, StopPoint{From: s.From, CurvePoint: c})
				}
			}
		}
	}
	return list
}
