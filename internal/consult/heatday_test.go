package consult

import (
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Heat days run through the whole trip; travel between stops and days that are not
// hot do not count, and a day that was typed holds.
func TestHeatDaysRunThroughTheTrip(t *testing.T) {
	stop := func(id record.ID, from, until record.Date, air, typed float64) record.Stop {
		s := record.Stop{Meta: record.Meta{ID: id}, From: from, Until: until, Air: record.Air{Temperature: record.Num(air, quantity.DegreeCelsius)}}
		if typed > 0 {
			s.HeatDay = record.Num(typed, quantity.None)
		}
		return s
	}
	trip := record.Trip{Stops: []record.Stop{
		stop("home", "2026-06-20", "2026-07-02", 22, 0), stop("a", "2026-07-04", "2026-07-09", 31, 0), stop("b", "2026-07-11", "2026-07-16", 25, 0),
		stop("c", "2026-07-17", "2026-07-18", 33, 4), stop("d", "2026-07-19", "2026-07-20", 24.9, 0), stop("e", "2026-07-21", "2026-07-22", 30, 0),
	}}
	for i, want := range []float64{0, 0, 7, 4, 6, 6} {
		if got := WithHeatDay(trip, trip.Stops[i], cities(t)).HeatDay.Or(0); got != want {
			t.Errorf("stop %d begins on heat day %g, want %g", i+1, got, want)
		}
	}
}
