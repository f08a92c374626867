package consult

import (
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Heat days run through the whole trip; travel between stops does not count, and a
// day that was typed holds.
func TestHeatDaysRunThroughTheTrip(t *testing.T) {
	stop := func(id record.ID, from, until record.Date, typed float64) record.Stop {
		s := record.Stop{Meta: record.Meta{ID: id}, From: from, Until: until}
		if typed > 0 {
			s.HeatDay = record.Num(typed, quantity.None)
		}
		return s
	}
	trip := record.Trip{Stops: []record.Stop{
		stop("a", "2026-07-04", "2026-07-09", 0), stop("b", "2026-07-11", "2026-07-16", 0), stop("c", "2026-07-17", "2026-07-18", 4), stop("d", "2026-07-19", "2026-07-20", 0),
	}}
	for i, want := range []float64{0, 7, 4, 6} {
		if got := WithHeatDay(trip, trip.Stops[i]).HeatDay.Or(0); got != want {
			t.Errorf("stop %d begins on heat day %g, want %g", i+1, got, want)
		}
	}
}
