package shots

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Names as people write them: of a trip and of a stop.
const (
	longTrip = "Winter training camp"
	longStop = "Practice ground by the old harbour"
)

// awayOf keeps trips in the states that the trip of the invented practice is without:
// nothing in it, no air, a city that no table has, air in which nobody should train, a
// squad with long names. It lists the places to see them and the dialogs of a trip.
func awayOf(ctx context.Context, s *store.Store, trip record.Trip, squad []record.ID) ([]shot, error) {
	empty := record.Trip{Meta: record.Meta{ID: record.NewID()}}
	bare, wrong, hot := like(trip), like(trip), like(trip)
	bare.Stops[0].City, bare.Stops[0].Air = "", record.Air{}
	wrong.Stops[0].City = "A town that no table has"
	hot.Stops[0].City, hot.Stops[0].TimeOfDay = "", consult.Afternoon
	hot.Stops[0].Air.Temperature, hot.Stops[0].Air.Humidity = record.Num(42, quantity.DegreeCelsius), record.Num(45, quantity.PerCent)
	long := like(trip)
	long.Name, long.Travellers = longTrip, nil
	for _, id := range squad {
		long.Travellers = append(long.Travellers, record.Traveller{Meta: record.Meta{ID: record.NewID()}, TripID: long.ID, AthleteID: id})
	}
	for i := range long.Stops {
		long.Stops[i].Place = fmt.Sprintf("%s, %d", longStop, i+1)
	}
	for _, t := range []*record.Trip{&empty, &bare, &wrong, &hot, &long} {
		kept, err := s.SaveTrip(ctx, *t, store.Edit{})
		if err != nil {
			return nil, fmt.Errorf("keep a trip to draw: %w", err)
		}
		*t = kept
	}
	first := func(t record.Trip) desk.Place {
		return desk.Place{Screen: desk.Trip, Record: t.ID, Part: string(t.Stops[0].ID)}
	}
	part := func(t record.Trip, part string) desk.Place {
		return desk.Place{Screen: desk.Trip, Record: t.ID, Part: part}
	}
	return []shot{
		{name: "state-trip-empty", place: part(empty, "edit")}, {name: "state-trip-bare", place: first(bare)}, {name: "state-trip-wrong", place: first(wrong)},
		{name: "state-trip-hot", place: first(hot)}, {name: "state-trip-long", place: first(long)},
		{name: "state-trip-long-edit", place: part(long, "edit")}, {name: "state-trip-long-packing", place: part(long, "packing")},
		{name: "state-trip-agree", place: first(trip)}, {name: "state-trip-reasons", place: first(trip)}, {name: "state-trip-change", place: first(trip)},
	}, nil
}

// like is another trip with the travellers and the stops of one.
func like(t record.Trip) record.Trip {
	other := t
	other.Meta = record.Meta{ID: record.NewID()}
	other.Travellers, other.Stops, other.Supplies = nil, nil, nil
	for _, x := range t.Travellers {
		x.Meta, x.TripID = record.Meta{ID: record.NewID()}, other.ID
		other.Travellers = append(other.Travellers, x)
	}
	for _, x := range t.Stops {
		x.Meta, x.TripID = record.Meta{ID: record.NewID()}, other.ID
		other.Stops = append(other.Stops, x)
	}
	return other
}
