package store

import (
	"context"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The first mass that was weighed comes with an athlete whose usual mass is not
// known, whatever was weighed since; with a usual mass none is looked for.
func TestFirstMassOfOneWithoutAUsualMass(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	a, err := s.SaveAthlete(ctx, record.Athlete{Name: "Mira", Sport: "rowing"}, Edit{})
	if err != nil {
		t.Fatal(err)
	}
	first := func() float64 {
		t.Helper()
		one, err := s.LoadAthlete(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		return one.FirstMass
	}
	if first() != 0 {
		t.Errorf("%g kg before anything was weighed", first())
	}
	for i, kg := range []float64{60.5, 62, 58} {
		_, err := s.SaveTest(ctx, record.Test{
			AthleteID: a.ID, Session: record.Session{Date: record.Date([]string{"2026-03-02", "2026-04-02", "2025-01-02"}[i])},
			Weighings: []record.Weighing{{Moment: record.Morning, Mass: record.Num(70, quantity.Kilogram)}, {Moment: record.Before, Order: 1, Mass: record.Num(kg, quantity.Kilogram)}},
		}, Edit{})
		if err != nil {
			t.Fatal(err)
		}
		if first() != 60.5 {
			t.Errorf("test %d: %g kg is the first", i+1, first())
		}
	}
	sheets, err := s.SheetsOf(ctx, a.ID)
	if err != nil || len(sheets) != 3 || sheets[0].Athlete.FirstMass != 60.5 {
		t.Errorf("%d sheets, %v", len(sheets), err)
	}
	if a, err = s.LoadAthlete(ctx, a.ID); err != nil {
		t.Fatal(err)
	}
	a.UsualMass = record.Num(61, quantity.Kilogram)
	if _, err := s.SaveAthlete(ctx, a, Edit{}); err != nil || first() != 0 {
		t.Errorf("%g kg beside a usual mass, %v", first(), err)
	}
}
