package consult

import (
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// A stop far from every test stands on the curve; one in the air of a test, one that is
// past and one without air do not.
func TestUntestedStops(t *testing.T) {
	a, tests, _, d := tripCase(t)
	r, err := Calculate(Again(tests[0]), a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	own := *tests[0].Test.Air.Temperature.Value
	stop := func(from record.Date, celsius float64) record.Stop {
		return record.Stop{From: from, Until: from, Air: record.Air{Temperature: record.Num(celsius, quantity.DegreeCelsius)}}
	}
	today := record.DateOf(day())
	trips := []record.Trip{{Stops: []record.Stop{
		stop(today.AddDays(20), own+12), stop(today.AddDays(21), own), stop(today.AddDays(-3), own+12), {From: today.AddDays(22)},
	}}}
	got := r.Untested(trips, a, today, climate.Places{}, d)
	if len(got) != 1 || got[0].From != today.AddDays(20) || got[0].Temperature != own+12 {
		t.Fatalf("untested: %+v", got)
	}
	curve := r.HeatCurve(a, own+12, own+12, 1, d)
	if got[0].Rate.Rate.Range != curve[0].Rate.Rate.Range || got[0].Rate.Grade == climate.Tested {
		t.Errorf("it is not on the curve: %+v", got[0].Rate.Rate.Range)
	}
}
