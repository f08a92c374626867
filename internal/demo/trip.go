package demo

import (
	"context"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// addTrip writes the one trip: home, a camp on a hot coast, a tournament.
func (f *filler) addTrip(ctx context.Context) error {
	trip := record.Trip{Meta: record.Meta{ID: record.NewID()}, Name: "Camp and tournament"}
	trip.Travellers = []record.Traveller{
		{Meta: record.Meta{ID: record.NewID()}, TripID: trip.ID, AthleteID: f.athletes["ravka"].ID},
	}
	for i, s := range []record.Stop{
		{From: f.day(-45), Until: f.day(-53), Place: "Home", Air: air(22, 60, record.SunPart), SessionsADay: record.Num(1, quantity.None)},
		{From: f.day(-54), Until: f.day(-60), Place: "Camp on the coast", City: "Chennai", Month: 7, TimeOfDay: "afternoon",
			Air: record.Air{Sun: record.SunHigh, Wind: record.Num(1.5, quantity.MetrePerSecond), Clothing: "shirt-shorts"}, SessionsADay: record.Num(2, quantity.None)},
		{From: f.day(-61), Until: f.day(-68), Place: "Tournament", City: "Madrid", Month: 7, TimeOfDay: "afternoon",
			Air: record.Air{Sun: record.SunHigh, Wind: record.Num(2, quantity.MetrePerSecond), Clothing: "shirt-shorts"}, SessionsADay: record.Num(1, quantity.None)},
	} {
		s.Meta, s.TripID, s.Order = record.Meta{ID: record.NewID()}, trip.ID, i
		s.Minutes, s.Effort = record.Num(95, quantity.Minute), record.Num(8, quantity.None)
		trip.Stops = append(trip.Stops, s)
	}
	_, err := f.store.SaveTrip(ctx, trip, store.Edit{})
	return err
}

// air is weather as typed.
func air(t, humidity float64, sun record.Sun) record.Air {
	return record.Air{
		Temperature: record.Num(t, quantity.DegreeCelsius), Humidity: record.Num(humidity, quantity.PerCent),
		Wind: record.Num(1.5, quantity.MetrePerSecond), Sun: sun, Clothing: "shirt-shorts",
	}
}
