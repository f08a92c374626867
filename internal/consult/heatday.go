package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// WithHeatDay is a stop of a trip with the day of acclimatisation it begins on: as it
// was typed, else the hot days at the stops before it count on, so that the heat days
// run through the whole trip. A day of travel between stops does not count, nor does
// one at a stop that is not hot.
func WithHeatDay(t record.Trip, s record.Stop, places climate.Places) record.Stop {
	if s.HeatDay.Known() {
		return s
	}
	days := 0.0
	for _, before := range t.Stops {
		if before.ID == s.ID {
			break
		}
		if before.HeatDay.Known() {
			days = max(0, *before.HeatDay.Value-1)
		}
		days += float64(hotDays(before, places))
	}
	if days > 0 {
		s.HeatDay = record.Num(days+1, quantity.None)
	}
	return s
}

// hotDays are the days of a stop whose air is hot; 0 while its days or its air
// are open.
func hotDays(s record.Stop, places climate.Places) int {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	air, err := AirOf(s, places)
	if !ok1 || !ok2 || err != nil || HeatOf(air.Air) != plan.Hot {
		return 0
	}
	n, err := climate.StopDays(from, until)
	if err != nil {
		return 0
	}
	return n
}
