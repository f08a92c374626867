package demo

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func today() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }

func filled(t *testing.T) *store.Store {
	t.Helper()
	s, err := store.Open(t.TempDir(), store.Options{Clock: today})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	names := Names{
		Options: consult.Names{Habit: "Habit", Fluid: "Without food", Food: "With food", Aim: "Aim"},
		Step:    func(i int) string { return fmt.Sprintf("Step %d", i) },
	}
	if err := Fill(context.Background(), s, today(), names); err != nil {
		t.Fatal(err)
	}
	return s
}

// The practice has what a first look needs, and each closed sheet gives back
// about the loss it was written for.
func TestPractice(t *testing.T) {
	s := filled(t)
	ctx := context.Background()
	list, err := s.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	sports, minors, women, tests, plans := map[string]bool{}, 0, 0, 0, 0
	for _, line := range list {
		a, err := s.LoadAthlete(ctx, line.ID)
		if err != nil {
			t.Fatal(err)
		}
		sports[a.Sport] = true
		if a.Minor(today()) {
			minors++
			if care := care.Of(a, today()); len(care.Unsettled) > 0 {
				t.Errorf("%s has tests before %v is settled", a.Name, care.Unsettled)
			}
		}
		if a.Sex == record.Female {
			women++
		}
		of, err := s.Tests(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		tests += len(of)
		kept, err := s.Plans(ctx, a.ID)
		if err != nil {
			t.Fatal(err)
		}
		plans += len(kept)
	}
	trips, err := s.Trips(ctx)
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 8 || len(sports) < 5 || minors != 2 || women < 3 || women > 5 || tests < 16 || plans < 5 || len(trips) != 1 {
		t.Errorf("%d athletes, %d sports, %d minors, %d women, %d tests, %d plans, %d trips", len(list), len(sports), minors, women, tests, plans, len(trips))
	}
}

func TestSheetsGiveBackTheirLoss(t *testing.T) {
	s := filled(t)
	ctx := context.Background()
	d := deskOf(t, &filler{})
	list, err := s.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, line := range list {
		of, err := s.Tests(ctx, line.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, test := range of {
			one, ok := meant(line.Name, test)
			if !ok || test.State == record.TestOpen {
				continue
			}
			seen++
			if got := consult.Find(test, record.Athlete{}, nil, d).Sweat.Fluid.Loss.Value; math.Abs(got-one.loss) > 0.15 {
				t.Errorf("%s: loss %.2f L, meant %.2f L", one.key, got, one.loss)
			}
		}
	}
	if seen < 15 {
		t.Errorf("only %d sheets were found again", seen)
	}
}

// meant finds the session that a kept sheet was written from.
func meant(name string, test record.Test) (session, bool) {
	for _, one := range sessions() {
		for _, p := range people() {
			if p.key == one.athlete && p.name == name && test.Session.Place == one.place &&
				test.Session.Date == record.DateOf(today().AddDate(0, 0, -one.ago)) {
				return one, true
			}
		}
	}
	return session{}, false
}

func deskOf(t *testing.T, f *filler) consult.Setup {
	t.Helper()
	if f.desk.Pantry == nil {
		generic, err := fuel.Generic()
		if err != nil {
			t.Fatal(err)
		}
		f.desk = consult.Setup{Pantry: consult.NewPantry(generic, nil)}
	}
	return f.desk
}
