package large

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A practice that was grown opens, is whole, and has so many of everything.
func TestGrow(t *testing.T) {
	dir, ctx := t.TempDir(), context.Background()
	now := func() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }
	open := func() *store.Store {
		s, err := store.Open(dir, store.Options{Clock: now})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	s := open()
	a, err := s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	test, err := s.SaveTest(ctx, record.Test{AthleteID: a.ID, Session: record.Session{Date: "2026-05-01"}, Bottles: []record.Bottle{{}}}, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.CloseTest(ctx, test, store.Freezing{Inputs: []byte("{}"), Results: []byte("{}")}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if err := Grow(filepath.Join(dir, "ebbwell.db"), Copies{Sessions: 3, Athletes: 5}); err != nil {
		t.Fatal(err)
	}
	s = open()
	defer func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}()
	all, err := s.Athletes(ctx)
	if err != nil || len(all) != 5 {
		t.Fatalf("%d athletes, %v", len(all), err)
	}
	for _, x := range all {
		sheets, err := s.SheetsOf(ctx, x.ID)
		if err != nil || len(sheets) != 3 || x.Tests != 3 || x.LastTest.Date != "2026-05-01" {
			t.Fatalf("%s has %d tests, the last on %s, %v", x.Name, len(sheets), x.LastTest.Date, err)
		}
		for _, one := range sheets {
			if len(one.Test.Bottles) != 1 || len(one.Kept) != 1 || one.Athlete.ID != x.ID {
				t.Errorf("a test of %s is %+v", x.Name, one)
			}
		}
	}
}
