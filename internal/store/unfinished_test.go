package store

import (
	"context"
	"slices"
	"testing"

	"ebbwell/internal/record"
)

// Unfinished sheets of all athletes are listed, newest first: not the closed,
// the deleted, nor those of a deleted athlete.
func TestUnfinished(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	mira := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	ann := got(s.SaveAthlete(ctx, record.Athlete{Name: "Ann"}, Edit{}))(t)
	gone := got(s.SaveAthlete(ctx, record.Athlete{Name: "Gone"}, Edit{}))(t)
	test := func(a record.Athlete, day record.Date) record.Test {
		return got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: day}}, Edit{}))(t)
	}
	old, waiting := test(mira, "2026-05-01"), test(ann, "2026-05-03")
	closed, dropped := test(mira, "2026-05-04"), test(mira, "2026-05-05")
	test(gone, "2026-05-06")
	freezing := Freezing{Inputs: []byte("{}"), Results: []byte("[]"), Evidence: "1"}
	waiting.State = record.TestWaiting
	got(s.CloseTest(ctx, waiting, freezing, Edit{}))(t)
	got(s.CloseTest(ctx, closed, freezing, Edit{}))(t)
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindTest, ID: dropped.ID}, Edit{}))
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindAthlete, ID: gone.ID}, Edit{}))
	list := got(s.Unfinished(ctx))(t)
	if len(list) != 2 || list[0].ID != waiting.ID || list[0].State != record.TestWaiting || list[1].ID != old.ID || list[1].AthleteID != mira.ID {
		t.Errorf("got %+v", list)
	}
}

// They stand by day, start and id, the newest first.
func TestUnfinishedInOrder(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	for _, at := range []record.Session{{}, {Date: "2026-05-01", Start: "09:00"}, {Date: "2026-05-02"}, {Date: "2026-05-01", Start: "17:00"}, {Date: "2026-05-02"}, {Date: "2025-12-31", Start: "23:00"}} {
		got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: at}, Edit{}))(t)
	}
	var want []record.ID
	for _, one := range got(s.Tests(ctx, a.ID))(t) {
		want = append(want, one.ID)
	}
	var list []record.ID
	for _, one := range got(s.Unfinished(ctx))(t) {
		list = append(list, one.ID)
	}
	if !slices.Equal(list, want) || len(list) != 6 {
		t.Errorf("got  %v\nwant %v", list, want)
	}
}
