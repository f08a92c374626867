package climate

import (
	"time"

	"ebbwell/internal/evidence"
)

// What a day in the heat is good for.
const (
	// FirstDays: shorter and easier than at home.
	FirstDays = "heat-day.first"
	// SodiumFalling: sweat becomes less salty.
	SodiumFalling = "heat-day.sodium-falling"
	// RateRising: sweat rate rises.
	RateRising = "heat-day.rate-rising"
	// Adapted: used to heat.
	Adapted = "heat-day.settled"
)

// HeatDay is one day of a stay in the heat.
type HeatDay struct {
	// Day counts from 1, the first day in the heat.
	Day int
	// Code is one of the codes above; a caution, not a promise.
	Code string
	// Easier: sessions stay shorter or easier than at home.
	Easier bool
	// Retest: a good day to test. First is the first of the two times.
	Retest, First bool
	// State is what an estimate may count on.
	State HeatState
}

// Acclimatise lists the days of a stay in the heat. first is the day of
// acclimatisation on arrival (1 for somebody who comes from the cool), days
// the length of the stay, before the state on arrival.
//
// Getting used to heat takes one to two weeks, most of it the first: sodium in
// sweat falls from day 3, sweat rate rises from day 7; so a test before is not
// a test after, and days 5-7 and 10-14 are good days to test. Meant as a
// caution for daily exercise in the heat; not for a person who rests in cool
// rooms, nor does it know how the gain fades away afterwards. Source: course of
// heat acclimatisation; test days from memory. It returns an [evidence.Problem]
// for a first day before 1, or no days.
func Acclimatise(first, days int, before HeatState) ([]HeatDay, error) {
	if err := refusedAny(fieldValue{evidence.HeatDay, float64(first)}, fieldValue{evidence.HeatDay, float64(days)}); err != nil {
		return nil, err
	}
	if first < 1 || days < 1 {
		return nil, problem(evidence.HeatDay, evidence.CodeOutside, float64(min(first, days)))
	}
	if _, err := before.wettednessMax(); err != nil {
		return nil, err
	}
	list := make([]HeatDay, days)
	for i := range list {
		list[i] = heatDay(first+i, before)
	}
	return list, nil
}

// heatDay is one day.
func heatDay(day int, before HeatState) HeatDay {
	d := HeatDay{Day: day, Code: FirstDays, State: before}
	x := float64(day)
	d.First = x >= evidence.FirstRetestFrom && x <= evidence.FirstRetestUntil
	d.Retest = d.First || x >= evidence.SecondRetestFrom && x <= evidence.SecondRetestUntil
	d.Easier = x <= evidence.AcclimatisationMost
	switch {
	case x > evidence.AcclimatisationDays:
		d.Code, d.State = Adapted, Acclimatised
	case x >= evidence.RateRisesFrom:
		d.Code = RateRising
	case x >= evidence.SodiumFallsFrom:
		d.Code = SodiumFalling
	}
	if before == Acclimatised {
		d = HeatDay{Day: day, Code: Adapted, State: Acclimatised}
	}
	return d
}

// StopDays is how many days a stop lasts, both ends counted. A stop that ends
// before it begins is a problem with the code [evidence.CodeEndBefore].
func StopDays(from, until time.Time) (int, error) {
	start := time.Date(from.Year(), from.Month(), from.Day(), 0, 0, 0, 0, time.UTC)
	end := time.Date(until.Year(), until.Month(), until.Day(), 0, 0, 0, 0, time.UTC)
	if end.Before(start) {
		return 0, problem(evidence.StopDates, evidence.CodeEndBefore, end.Sub(start).Hours()/hoursADay)
	}
	return int(end.Sub(start).Hours()/hoursADay) + 1, nil
}

// hoursADay is the hours of a day.
const hoursADay = 24
