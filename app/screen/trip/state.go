package trip

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"ebbwell/app/kit/bind"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// sheet is the trip as it is open on the screen.
type sheet = bind.Sheet[record.Trip]

// binder ties fields to the places of a trip they show.
type binder = bind.Binder[record.Trip]

// The parts of a trip beside its stops.
const (
	PartEdit    = "edit"
	PartPacking = "packing"
)

// member is a traveller and what there is to plan with.
type member struct {
	athlete record.Athlete
	tests   []consult.Findings
	// along is the plan taken along; nil where none is agreed. plans are all.
	along *record.Plan
	plans []record.Plan
	// kept are the copies of the plan taken along, newest first.
	kept []record.Frozen

	// traveller has the tests worked out for all stops; planned are the stops worked
	// out since the trip changed.
	traveller *consult.Traveller
	planned   map[record.ID]planned
}

// begin makes a new trip.
func begin() record.Trip { return record.Trip{Meta: record.Meta{ID: record.NewID()}} }

// travels reports whether an athlete is on a trip.
func travels(t record.Trip, athlete record.ID) bool {
	return slices.ContainsFunc(t.Travellers, func(x record.Traveller) bool { return x.AthleteID == athlete })
}

// addTraveller puts an athlete on a trip, once.
func addTraveller(t *record.Trip, athlete record.ID) {
	if athlete == "" || travels(*t, athlete) {
		return
	}
	t.Travellers = append(t.Travellers, record.Traveller{Meta: record.Meta{ID: record.NewID()}, TripID: t.ID, AthleteID: athlete})
}

// removeTraveller takes an athlete off a trip.
func removeTraveller(t *record.Trip, athlete record.ID) {
	t.Travellers = slices.DeleteFunc(t.Travellers, func(x record.Traveller) bool { return x.AthleteID == athlete })
}

// addStop adds a stop that begins the day after the last one ends, made like
// it: clothing and sun of a journey mostly stay.
func addStop(t *record.Trip) {
	s := record.Stop{Meta: record.Meta{ID: record.NewID()}, TripID: t.ID, Order: len(t.Stops), TimeOfDay: consult.Afternoon}
	s.Air.Clothing = consult.ClothingShirt
	if n := len(t.Stops); n > 0 {
		last := t.Stops[n-1]
		s.From, s.TimeOfDay = last.Until.AddDays(1), last.TimeOfDay
		s.Air.Clothing, s.Air.Sun = last.Air.Clothing, last.Air.Sun
		s.SessionsADay, s.Minutes, s.Effort = last.SessionsADay, last.Minutes, last.Effort
	}
	t.Stops = append(t.Stops, s)
}

// moveStop moves a stop so many places; it stays where it is at the ends.
func moveStop(t *record.Trip, i, by int) {
	j := i + by
	if i < 0 || j < 0 || i >= len(t.Stops) || j >= len(t.Stops) {
		return
	}
	t.Stops[i], t.Stops[j] = t.Stops[j], t.Stops[i]
	number(t)
}

// removeStop takes a stop out.
func removeStop(t *record.Trip, i int) {
	if i < 0 || i >= len(t.Stops) {
		return
	}
	t.Stops = slices.Delete(t.Stops, i, i+1)
	number(t)
}

// number keeps the stops in their order.
func number(t *record.Trip) {
	for i := range t.Stops {
		t.Stops[i].Order = i
	}
}

// stopAt returns the i-th stop; nil when there is none.
func stopAt(t *record.Trip, i int) *record.Stop {
	if i < 0 || i >= len(t.Stops) {
		return nil
	}
	return &t.Stops[i]
}

// stopByID returns the place of a stop; -1 when it is not there.
func stopByID(t record.Trip, id record.ID) int {
	return slices.IndexFunc(t.Stops, func(s record.Stop) bool { return s.ID == id })
}

// forget drops the texts kept for a stop that is gone.
func forget(s *sheet, stop record.ID) {
	for _, texts := range []map[string]string{s.Raw, s.Reasons} {
		for at := range texts {
			if strings.HasPrefix(at, "stops."+string(stop)+".") {
				delete(texts, at)
			}
		}
	}
}

// supplyOf returns what is written down of a product on a trip; a new row with
// grow, nil without.
func supplyOf(t *record.Trip, product record.ID, name string, grow bool) *record.Supply {
	for i := range t.Supplies {
		if t.Supplies[i].ProductID == product {
			return &t.Supplies[i]
		}
	}
	if !grow {
		return nil
	}
	t.Supplies = append(t.Supplies, record.Supply{Meta: record.Meta{ID: record.NewID()}, TripID: t.ID, Order: len(t.Supplies), ProductID: product, Name: name})
	return &t.Supplies[len(t.Supplies)-1]
}

// dates are the first and the last day of a trip; ok is false while one of
// them is open.
func dates(t record.Trip) (from, until time.Time, ok bool) {
	for _, s := range t.Stops {
		a, has := s.From.Time()
		if has && (from.IsZero() || a.Before(from)) {
			from = a
		}
		b, has := s.Until.Time()
		if has && b.After(until) {
			until = b
		}
	}
	return from, until, !from.IsZero() && !until.IsZero()
}

// stopOn is the place of the stop of a day, or else of the first one after it;
// -1 when the trip is over or has no dates.
func stopOn(t record.Trip, day record.Date) int {
	best := -1
	for i, s := range t.Stops {
		if s.From == "" || s.Until != "" && s.Until < day {
			continue
		}
		if best < 0 || s.From < t.Stops[best].From {
			best = i
		}
	}
	return best
}

// crewOf lists the members on a trip by name.
func crewOf(t record.Trip, all map[record.ID]*member, byName func(a, b string) int) []*member {
	var list []*member
	for _, x := range t.Travellers {
		if m := all[x.AthleteID]; m != nil {
			list = append(list, m)
		}
	}
	slices.SortStableFunc(list, func(a, b *member) int {
		return cmp.Or(byName(a.athlete.Name, b.athlete.Name), cmp.Compare(a.athlete.ID, b.athlete.ID))
	})
	return list
}
