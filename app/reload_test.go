package app

import (
	"context"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// A screen that was opened to begin something new is drawn anew as it is: new
// while nothing was entered, with its record afterwards.
func TestReloadOfSomethingNew(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	list, err := p.Desk().Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	ada := list[0].ID
	for _, c := range []struct {
		place       desk.Place
		field, text string
	}{
		{desk.Place{Screen: desk.Tests, Athlete: ada, New: true}, "testsheet.place", "League match"},
		{desk.Place{Screen: desk.Trip, New: true}, "trip.name", "July"},
		{desk.Place{Screen: desk.Profile, New: true}, "profile.name", "Someone New"},
	} {
		p.Open(c.place)
		first, before := p.View(), apptest.Text(t, w, c.field)
		p.Reload()
		if p.View() == first || !p.Place().New || p.Place().Screen != c.place.Screen || apptest.Text(t, w, c.field) != before {
			t.Fatalf("%s drawn anew is at %+v: %s", c.place.Screen, p.Place(), p.frame.strip.Message())
		}
		apptest.Type(t, w, c.field, c.text)
		p.Reload()
		if p.Place().New || apptest.Text(t, w, c.field) != c.text {
			t.Errorf("%s drawn anew is at %+v with %q: %s", c.place.Screen, p.Place(), apptest.Text(t, w, c.field), p.frame.strip.Message())
		}
		kept := p.Place()
		p.Open(desk.Place{Screen: desk.Athletes})
		p.Back()
		if p.Place().Screen != kept.Screen || p.Place().Record != kept.Record || p.Place().Athlete != kept.Athlete {
			t.Errorf("back went to %+v, not to %+v", p.Place(), kept)
		}
	}
	p.Open(desk.Place{Screen: desk.Plan, Athlete: apptest.AthleteNamed(t, p.Desk(), "Ravka").ID, New: true})
	plan := p.Place()
	p.Reload()
	if plan.Record == "" || p.Place() != plan {
		t.Errorf("a plan that was begun is at %+v, then at %+v", plan, p.Place())
	}
}
