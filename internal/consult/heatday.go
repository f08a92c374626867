package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// WithHeatDay is a stop of a trip with the day of acclimatisation it begins on: as it
// was typed, else the days at the stops before it count on, so that the heat days run
// through the whole trip. A day of travel between stops does not count.
func WithHeatDay(t record.Trip, s record.Stop) record.Stop {
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
		from, ok1 := before.From.Time()
		until, ok2 := before.Until.Time()
		if !ok1 || !ok2 {
			continue
		}
		if n, err := climate.StopDays(from, until); err == nil {
			days += float64(n)
		}
	}
	if days > 0 {
		s.HeatDay = record.Num(days+1, quantity.None)
	}
	return s
}
