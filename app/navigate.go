package app

import (
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/athlete"
	"ebbwell/app/screen/colleague"
	"ebbwell/app/screen/giving"
	"ebbwell/app/screen/handoutview"
	"ebbwell/app/screen/importing"
	"ebbwell/app/screen/pantry"
	"ebbwell/app/screen/planner"
	"ebbwell/app/screen/practice"
	"ebbwell/app/screen/profile"
	"ebbwell/app/screen/roster"
	"ebbwell/app/screen/squad"
	"ebbwell/app/screen/testday"
	"ebbwell/app/screen/testsheet"
	"ebbwell/app/screen/trip"
)

// make makes the screen of a place.
func (p *Program) make(place desk.Place) (desk.View, error) {
	switch place.Screen {
	case desk.Athletes:
		return roster.New(p.desk)
	case desk.TestDay:
		return p.testDay(place)
	case desk.Trips:
		return trip.NewList(p.desk)
	case desk.Trip:
		return trip.New(p.desk, place)
	case desk.Pantry:
		return pantry.New(p.desk, place)
	case desk.Practice:
		return practice.New(p.desk, place)
	case desk.Overview:
		return athlete.NewOverview(p.desk, place.Athlete)
	case desk.Profile:
		return profile.New(p.desk, place)
	case desk.Tests:
		return testsheet.New(p.desk, place)
	case desk.Plan:
		return planner.New(p.desk, place)
	case desk.Import:
		return importing.New(p.desk, place)
	case desk.Handout:
		return handoutview.New(p.desk, place)
	case desk.Colleague:
		return colleague.New(p.desk)
	case desk.Give:
		return giving.New(p.desk, place)
	}
	return nil, fmt.Errorf("no screen %q", place.Screen)
}

// testDay is the shared session that is named, else that of today where there is
// one, else the list of sheets.
func (p *Program) testDay(place desk.Place) (desk.View, error) {
	if place.Part == desk.PartSheets {
		return testday.New(p.desk)
	}
	if place.Record == "" && !place.New {
		id, err := squad.Today(p.desk)
		if err != nil {
			return nil, err
		}
		if place.Record = id; id == "" {
			return testday.New(p.desk)
		}
	}
	return squad.New(p.desk, place)
}
