package record

import (
	"testing"
	"time"
)

func berlin(t *testing.T) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

// The length of a session is the time that passed, whatever the clocks were set by.
func TestElapsedOverAClockChange(t *testing.T) {
	for name, c := range map[string]struct {
		s    Session
		wall float64
		want float64
	}{
		"a day of its own":         {Session{Date: "2026-03-28", Start: "01:30", End: "04:00"}, 150, 150},
		"spring, forward at 2":     {Session{Date: "2026-03-29", Start: "01:30", End: "04:00"}, 150, 90},
		"autumn, back at 3":        {Session{Date: "2026-10-25", Start: "01:30", End: "04:00"}, 150, 210},
		"spring, over midnight":    {Session{Date: "2026-03-28", Start: "23:00", End: "04:00", EndsNextDay: true}, 300, 240},
		"autumn, over midnight":    {Session{Date: "2026-10-24", Start: "22:00", End: "06:00", EndsNextDay: true}, 480, 540},
		"after the change":         {Session{Date: "2026-03-29", Start: "10:00", End: "11:30"}, 90, 90},
		"no day is written down":   {Session{Start: "01:30", End: "04:00"}, 150, 150},
		"over midnight, no change": {Session{Date: "2026-05-01", Start: "23:30", End: "00:40", EndsNextDay: true}, 70, 70},
	} {
		got, ok := c.s.Elapsed(berlin(t))
		wall, _ := c.s.Minutes()
		if !ok || got != c.want || wall != c.wall {
			t.Errorf("%s: %g minutes, %g by the clocks, %v", name, got, wall, ok)
		}
		if got, ok := c.s.Elapsed(nil); !ok || got != c.wall {
			t.Errorf("%s: %g minutes where clocks are never set", name, got)
		}
	}
	for _, s := range []Session{{Date: "2026-03-29", Start: "01:30"}, {Date: "2026-03-29", Start: "04:00", End: "01:30"}, {Date: "2026-03-29", Start: "02:30", End: "03:20"}} {
		if got, ok := s.Elapsed(berlin(t)); ok {
			t.Errorf("%+v: %g minutes", s, got)
		}
	}
	if got, ok := (Session{Date: "2026-10-25", Start: "01:30", End: "05:00"}).Since("04:00", berlin(t)); !ok || got != 210 {
		t.Errorf("%g minutes from the start", got)
	}
}
