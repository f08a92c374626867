package trip

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

func TestStopsKeepTheirOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := begin()
		for range rapid.IntRange(0, 6).Draw(t, "stops") {
			addStop(&trip)
		}
		for range rapid.IntRange(0, 12).Draw(t, "moves") {
			i := rapid.IntRange(-1, 7).Draw(t, "stop")
			if rapid.Bool().Draw(t, "remove") {
				removeStop(&trip, i)
			} else {
				before := len(trip.Stops)
				moveStop(&trip, i, rapid.SampledFrom([]int{-1, 1}).Draw(t, "by"))
				if len(trip.Stops) != before {
					t.Fatal("moving loses a stop")
				}
			}
			seen := map[record.ID]bool{}
			for i, s := range trip.Stops {
				if s.Order != i || seen[s.ID] || s.TripID != trip.ID {
					t.Fatalf("stop %d: order %d, twice %v", i, s.Order, seen[s.ID])
				}
				seen[s.ID] = true
			}
		}
	})
}

// A new stop begins the day after the last one and is made like it.
func TestNewStop(t *testing.T) {
	trip := begin()
	addStop(&trip)
	if s := trip.Stops[0]; s.From != "" || s.Air.Sun != "" || s.TimeOfDay != consult.Afternoon {
		t.Errorf("the first stop is %+v", s)
	}
	trip.Stops[0].Until, trip.Stops[0].Air.Sun = "2026-07-31", record.SunLow
	addStop(&trip)
	if s := trip.Stops[1]; s.From != "2026-08-01" || s.Until != "" || s.Air.Sun != record.SunLow || s.ID == trip.Stops[0].ID {
		t.Errorf("the second stop is %+v", s)
	}
}

func TestTravellersOnce(t *testing.T) {
	trip := begin()
	for _, id := range []record.ID{"a", "b", "a", ""} {
		addTraveller(&trip, id)
	}
	removeTraveller(&trip, "b")
	removeTraveller(&trip, "x")
	if len(trip.Travellers) != 1 || !travels(trip, "a") || travels(trip, "b") {
		t.Errorf("%+v travel", trip.Travellers)
	}
}

func TestDatesAndNext(t *testing.T) {
	trip := record.Trip{Stops: []record.Stop{
		{From: "2026-07-11", Until: "2026-07-17"}, {From: "2026-07-02", Until: "2026-07-10"}, {}, {From: "2026-07-18"},
	}}
	from, until, ok := dates(trip)
	if !ok || record.DateOf(from) != "2026-07-02" || record.DateOf(until) != "2026-07-17" {
		t.Errorf("from %v to %v, %v", from, until, ok)
	}
	for day, want := range map[record.Date]int{"2026-05-01": 1, "2026-07-10": 1, "2026-07-11": 0, "2026-07-18": 3, "2026-09-01": 3} {
		if got := stopOn(trip, day); got != want {
			t.Errorf("on %s the stop is %d, want %d", day, got, want)
		}
	}
	if _, _, ok := dates(record.Trip{}); ok || stopOn(record.Trip{}, "2026-01-01") != -1 {
		t.Error("a trip without stops has dates")
	}
}

func TestSupplies(t *testing.T) {
	trip := begin()
	if supplyOf(&trip, "p", "P", false) != nil || len(trip.Supplies) != 0 {
		t.Error("looking makes a row")
	}
	supplyOf(&trip, "p", "P", true).Lot = "1"
	supplyOf(&trip, "p", "P", true).Source = "carry"
	if len(trip.Supplies) != 1 || trip.Supplies[0].Lot != "1" || trip.Supplies[0].Source != "carry" || trip.Supplies[0].TripID != trip.ID {
		t.Errorf("%+v", trip.Supplies)
	}
}

func TestListOrder(t *testing.T) {
	trip := func(name string, from, until record.Date) record.Trip {
		return record.Trip{Name: name, Stops: []record.Stop{{From: from, Until: until}}}
	}
	got := inOrder([]record.Trip{
		trip("over long ago", "2025-01-01", "2025-01-05"), trip("open", "", ""), trip("later", "2026-09-01", "2026-09-02"),
		trip("over", "2026-04-01", "2026-04-05"), trip("now", "2026-05-01", "2026-05-30"),
	}, "2026-05-18", strings.Compare)
	for i, want := range []string{"now", "later", "open", "over", "over long ago"} {
		if got[i].Name != want {
			t.Errorf("place %d is %q, want %q", i, got[i].Name, want)
		}
	}
}

func TestForgetDropsOnlyItsStop(t *testing.T) {
	s := sheet{Raw: map[string]string{"stops.a.minutes": "x", "stops.ab.minutes": "y", "name": "z"}, Reasons: map[string]string{"stops.a.minutes": "why"}}
	forget(&s, "a")
	if len(s.Raw) != 2 || len(s.Reasons) != 0 {
		t.Errorf("left %v, %v", s.Raw, s.Reasons)
	}
}
