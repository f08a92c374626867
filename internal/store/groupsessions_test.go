package store

import (
	"context"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestSaveSquad: a session and its sheets are saved together or not at all.
func TestSaveSquad(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Senna"}, Edit{}))(t)
	b := got(s.SaveAthlete(ctx, record.Athlete{Name: "Edda"}, Edit{}))(t)
	tests := []record.Test{
		{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen},
		{Meta: record.Meta{ID: record.NewID()}, AthleteID: b.ID, State: record.TestOpen},
	}
	q := Squad{
		Session: record.GroupSession{Name: "Squad", Members: []record.Member{
			{AthleteID: a.ID, TestID: tests[0].ID, Order: 1, Bib: "7"}, {AthleteID: b.ID, TestID: tests[1].ID, Order: 2},
		}},
		Tests: tests,
		Texts: []SquadText{{Test: tests[0].ID, Field: "air.wind", Text: "a breeze"}},
	}
	q = got(s.SaveSquad(ctx, q, Edit{}))(t)
	if one := got(s.GroupSessions(ctx))(t); len(one) != 1 || len(one[0].Members) != 2 || one[0].Members[0].Bib != "7" {
		t.Fatalf("kept %+v", one)
	}
	if raw := got(s.RawOf(ctx, record.Ref{Kind: record.KindTest, ID: tests[0].ID}))(t); len(raw) != 1 || raw[0].Text != "a breeze" {
		t.Errorf("texts %+v", raw)
	}
	got(s.CloseTest(ctx, q.Tests[1], Freezing{}, Edit{}))(t)
	next := q
	next.Session.ScaleStep = record.Num(0.1, quantity.Kilogram)
	next.Tests = []record.Test{q.Tests[0], got(s.LoadTest(ctx, tests[1].ID))(t)}
	next.Tests[0].Note, next.Tests[1].Note = "one", "two"
	_, err := s.SaveSquad(ctx, next, Edit{})
	wantCode(t, err, CodeClosed)
	if one := got(s.LoadTest(ctx, tests[0].ID))(t); one.Note != "" {
		t.Errorf("half of it was saved: %q", one.Note)
	}
	next.Tests = next.Tests[:1]
	got(s.SaveSquad(ctx, next, Edit{}))(t)
	if g := got(s.LoadGroupSession(ctx, q.Session.ID))(t); g.ScaleStep.Or(0) != 0.1 {
		t.Errorf("the scale's step is %v", g.ScaleStep)
	}
	checkWhole(t, s)
}

// TestSafetyStaysOpen: what is done about a red flag goes on record after a test was
// closed, and nothing else does.
func TestSafetyStaysOpen(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Runa"}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen}, Edit{}))(t)
	one = got(s.CloseTest(ctx, one, Freezing{}, Edit{}))(t)
	one.Safety = append(one.Safety, record.SafetyNote{Kind: record.SafetyTold, Item: "told", Text: "A. Medic", Order: 1})
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	if again := got(s.LoadTest(ctx, one.ID))(t); len(again.Safety) != 1 || again.Safety[0].Text != "A. Medic" || again.State != record.TestClosed {
		t.Errorf("kept %+v", again.Safety)
	}
	one.Note = "something else"
	_, err := s.SaveTest(ctx, one, Edit{})
	wantCode(t, err, CodeClosed)
}
