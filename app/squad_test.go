package app

import (
	"context"
	"errors"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// TestGroupSession begins a session of a group in the program: the test day then is
// that session, and from its findings the keys go from one consult to the next.
func TestGroupSession(t *testing.T) {
	s, w := start(t, "", true)
	p := s.Program()
	p.Open(desk.Place{Screen: desk.TestDay})
	apptest.Click(t, w, "testday.group.begin")
	apptest.Click(t, w, "squad.start.group")
	apptest.Press(w, fyne.KeyHome, fyne.KeyReturn) // everybody
	if !apptest.Has(w, "squad.start.2") {
		t.Fatal("there are no athletes to mark")
	}
	for _, name := range []string{"squad.start.1", "squad.start.2"} {
		if tick, ok := field.Find(w.Content(), name).(*field.Check); ok && !tick.On() {
			apptest.Click(t, w, name)
		}
	}
	apptest.Click(t, w, "squad.start.begin")
	session := p.Place()
	if session.Screen != desk.TestDay || session.Record == "" {
		t.Fatalf("the session did not open: %+v", session)
	}
	p.Open(desk.Place{Screen: desk.Athletes})
	p.Open(desk.Place{Screen: desk.TestDay})
	if p.Place().Record != session.Record {
		t.Errorf("the test day is not today's session: %+v", p.Place())
	}
	if p.view.Head().Title == "" || !apptest.Has(w, "squad.row.1") {
		t.Error("the rows are not there")
	}
	p.letter('/')
	if !apptest.Has(w, "squad.jump") {
		t.Error("a bib cannot be typed where no field is")
	}
	apptest.Press(w, fyne.KeyEscape)
	apptest.Click(t, w, "squad.group")
	round := len(p.desk.Round)
	table, ok := field.Find(w.Content(), "squad.table").(*look.Table)
	if !ok {
		t.Fatal("no table of the group")
	}
	w.Canvas().Focus(table)
	apptest.Press(w, fyne.KeyHome, fyne.KeyReturn)
	if p.Place().Screen != desk.Overview || len(p.desk.Round) <= round {
		t.Fatalf("no consult opened: %+v", p.Place())
	}
	first := p.Place().Athlete
	p.nextOf(1)
	if p.Place().Athlete == first || p.Place().Screen != desk.Overview {
		t.Errorf("the key does not go to the next athlete")
	}
	p.nextOf(-1)
	if p.Place().Athlete != first {
		t.Errorf("the key does not go back")
	}
	p.Open(desk.Place{Screen: desk.TestDay, Part: desk.PartSheets})
	if !apptest.Has(w, "testday.search") {
		t.Error("the list of single sheets cannot be reached")
	}
}

// staying is a screen that counts how often it was told that it stays.
type staying struct {
	desk.View
	stayed int
}

func (s *staying) Stayed() { s.stayed++ }

// TestScreenIsToldThatItStays: one that cannot be left, since it is not saved, and one
// whose window cannot close.
func TestScreenIsToldThatItStays(t *testing.T) {
	s, _ := start(t, "", true)
	p := s.Program()
	view := &staying{View: p.view}
	p.view = view
	fails := true
	p.keeper.Later("test", func(context.Context) error {
		if fails {
			return errors.New("disk full")
		}
		return nil
	})
	p.Open(desk.Place{Screen: desk.TestDay})
	if view.stayed != 1 || p.view != desk.View(view) {
		t.Errorf("told %d times", view.stayed)
	}
	if err := p.Close(context.Background()); err == nil || view.stayed != 2 {
		t.Errorf("closed with %v, told %d times", err, view.stayed)
	}
	fails = false
	p.Open(desk.Place{Screen: desk.TestDay})
	if view.stayed != 2 || p.view == desk.View(view) {
		t.Error("a screen that was left is told that it stays")
	}
}
