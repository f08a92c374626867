// Package demo makes an invented practice to try the program with: eleven
// athletes in seven sports, three of them juniors, with tests in different climates,
// plans at different steps, a session of a group, and the trip of one squad, some weeks ahead and where it is
// warm at that time of the year, so that the practice never looks old. People, places
// and figures are invented; drinks and foods are the generic ones.
//
// Test sheets are written as a dietitian would fill them in: the masses after
// are worked out from the loss that the day is meant to show, and rounded to
// the step of the scale, so that the program finds about that loss again.
package demo

import (
	"context"
	"fmt"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Names are the words that plans of the practice are named by; they come from
// the catalogue of texts.
type Names struct {
	Options consult.Names
	Step    func(step int) string
	// Say is a text of the catalogue, Town a town of the climate table, both in the
	// language of the window: what the invented practitioner typed reads in it.
	Say  func(key string, args ...any) string
	Town func(name string) string
}

// filler writes the practice into a store.
type filler struct {
	store *store.Store
	today time.Time
	desk  consult.Setup
	names Names
	// by is the invented practitioner.
	by       string
	athletes map[string]record.Athlete
	tests    map[string]record.Test
}

// Fill writes the invented practice into an empty store, dated back from today.
func Fill(ctx context.Context, s *store.Store, today time.Time, names Names) error {
	generic, err := fuel.Generic()
	if err != nil {
		return fmt.Errorf("fill the invented practice: %w", err)
	}
	house := practice(names)
	s.SetBy(house.Practitioner)
	kept, err := s.SavePractice(ctx, house, store.Edit{})
	if err != nil {
		return fmt.Errorf("fill the invented practice: %w", err)
	}
	activities, err := climate.LoadActivities()
	if err != nil {
		return fmt.Errorf("fill the invented practice: %w", err)
	}
	f := &filler{
		store: s, today: today, names: names, by: house.Practitioner, athletes: map[string]record.Athlete{}, tests: map[string]record.Test{},
		desk: consult.Setup{Pantry: consult.NewPantry(generic, nil), Settings: kept.Settings, Activities: activities},
	}
	for _, step := range []struct {
		what string
		do   func(context.Context) error
	}{
		{"groups and athletes", f.addAthletes},
		{"tests", f.addTests},
		{"plans", f.addPlans},
		{"trip", f.addTrip},
		{"session of a group", f.addSession},
	} {
		if err := step.do(ctx); err != nil {
			return fmt.Errorf("fill the invented practice: %s: %w", step.what, err)
		}
	}
	return nil
}

// practice is the invented house.
func practice(n Names) record.Practice {
	return record.Practice{
		Meta: record.Meta{ID: record.NewID()}, Name: n.Say("demo.practice"), Practitioner: n.Say("demo.practitioner"),
		Registration: "SD 0000", Telephone: "000 0000", Emergency: "112",
		Settings: record.Settings{Units: "metric", Invented: true, RetentionYears: 10},
	}
}

// day is a date a number of days before today.
func (f *filler) day(ago int) record.Date { return record.DateOf(f.today.AddDate(0, 0, -ago)) }
