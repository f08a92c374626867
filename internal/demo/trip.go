package demo

import (
	"context"
	"fmt"
	"math"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// away is a stop of the trip: how many days from today it begins, how long it lasts,
// how warm its afternoons are to be, and the towns it may be in. Place ends the key of
// its name.
type away struct {
	place         string
	from, days    int
	warm          float64 // °C
	towns         []string
	sessions      float64
	effort        float64
	sun           record.Sun
	minutes, wind float64
}

// stops are the three stops. Which town they are in follows from the season: the trip
// is always some weeks ahead, and where it is warm at that time of the year.
func stops() []away {
	return []away{
		{place: "hills", from: 45, days: 6, warm: 25.5, towns: []string{"Madrid", "Pretoria", "Mexico City", "Nairobi", "Harare", "Canberra", "Addis Ababa", "Toulouse"},
			sessions: 1, effort: 7, sun: record.SunPart, minutes: 90, wind: 1.5},
		{place: "coast", from: 52, days: 7, warm: 29.5, towns: []string{"Valencia", "Malaga", "Larnaca", "Brisbane", "Durban", "Perth", "Dakar", "Muscat", "Dar es Salaam"},
			sessions: 2, effort: 7, sun: record.SunLow, minutes: 95, wind: 1.5},
		{place: "tournament", from: 60, days: 8, warm: 28, towns: []string{"Athens", "Lisbon", "Seville", "Las Palmas", "Cairns", "Salvador", "Honolulu", "Miami"},
			sessions: 1, effort: 8, sun: record.SunPart, minutes: 95, wind: 2},
	}
}

// addTrip writes the one trip of the hockey squad: hills, a hot coast, a tournament.
func (f *filler) addTrip(ctx context.Context) error {
	places, err := climate.LoadPlaces()
	if err != nil {
		return err
	}
	trip := record.Trip{Meta: record.Meta{ID: record.NewID()}, Name: f.names.Say("demo.trip"), HoursAwake: record.Num(8, quantity.Hour)}
	for _, key := range []string{"ravka", "nessa", "ottoline", "pia"} {
		trip.Travellers = append(trip.Travellers, record.Traveller{Meta: record.Meta{ID: record.NewID()}, TripID: trip.ID, AthleteID: f.athletes[key].ID})
	}
	for i, at := range stops() {
		s := record.Stop{
			Meta: record.Meta{ID: record.NewID()}, TripID: trip.ID, Order: i, Place: f.names.Say("demo.stop." + at.place), From: f.day(-at.from), Until: f.day(1 - at.from - at.days), TimeOfDay: "afternoon",
			Air: record.Air{Sun: at.sun, Wind: record.Num(at.wind, quantity.MetrePerSecond), Clothing: "shirt-shorts"}, SessionsADay: record.Num(at.sessions, quantity.None),
			Minutes: record.Num(at.minutes, quantity.Minute), Effort: record.Num(at.effort, quantity.None),
		}
		if s.City, err = townFor(places, at.towns, at.warm, f.today.AddDate(0, 0, at.from).Month()); err != nil {
			return fmt.Errorf("the stop %s: %w", at.place, err)
		}
		trip.Stops = append(trip.Stops, s)
	}
	_, err = f.store.SaveTrip(ctx, trip, store.Edit{})
	return err
}

// townFor is the one of some towns whose afternoons in a month are nearest to so many
// °C.
func townFor(places climate.Places, towns []string, warm float64, month time.Month) (town string, err error) {
	best := math.Inf(1)
	for _, candidate := range towns {
		city, err := places.Find(candidate)
		if err != nil {
			return "", fmt.Errorf("find the town %s: %w", candidate, err)
		}
		air, err := city.Afternoon(int(month))
		if err != nil {
			return "", fmt.Errorf("the air of %s in %s: %w", candidate, month, err)
		}
		if off := math.Abs(float64(air.Temperature) - warm); off < best {
			town, best = candidate, off
		}
	}
	return town, nil
}
