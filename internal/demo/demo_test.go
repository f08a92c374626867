package demo

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"

	"golang.org/x/text/language"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

func today() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }

func filled(t *testing.T) *store.Store {
	t.Helper()
	return filledOn(t, today())
}

// filledOn is the practice as it is filled on a day.
func filledOn(t *testing.T, now time.Time) *store.Store {
	t.Helper()
	s, err := store.Open(t.TempDir(), store.Options{Clock: func() time.Time { return now }})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	names := Names{
		Options: consult.Names{Habit: "Habit", Fluid: "Without food", Food: "With food", Aim: "Aim"},
		Step:    func(i int) string { return fmt.Sprintf("Step %d", i) }, Say: w.Say, Town: w.City,
	}
	if err := Fill(context.Background(), s, now, names); err != nil {
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
			if care := care.Of(a, today()); len(care.Outstanding) > 0 {
				t.Errorf("%s has tests before %v is settled", a.Name, care.Outstanding)
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
	if len(list) != 11 || len(sports) < 5 || minors != 3 || women < 6 || women > 8 || tests < 18 || plans < 5 || len(trips) != 1 {
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
			if p.key == one.athlete && p.name == name && test.Session.Start == one.start &&
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

// On any day of any year the trip lies ahead, in places that are warm then, and no
// sheet or agreement lies in the future.
func TestNeverLooksOld(t *testing.T) {
	ctx := context.Background()
	for _, now := range []time.Time{
		time.Date(2026, 1, 9, 8, 0, 0, 0, time.UTC), time.Date(2027, 4, 30, 12, 0, 0, 0, time.UTC),
		time.Date(2028, 2, 29, 12, 0, 0, 0, time.UTC), time.Date(2031, 8, 15, 20, 0, 0, 0, time.UTC), time.Date(2029, 11, 20, 12, 0, 0, 0, time.UTC),
	} {
		s := filledOn(t, now)
		trips, err := s.Trips(ctx)
		if err != nil || len(trips) != 1 {
			t.Fatalf("%d trips: %v", len(trips), err)
		}
		places, err := climate.LoadPlaces()
		if err != nil {
			t.Fatal(err)
		}
		liesAhead(t, now, trips[0], places)
		nothingToCome(ctx, t, now, s)
	}
}

// liesAhead: the stops of a trip are weeks ahead, in places that are warm then.
func liesAhead(t *testing.T, now time.Time, trip record.Trip, places climate.Places) {
	t.Helper()
	for i, stop := range trip.Stops {
		if from, _ := stop.From.Time(); stop.Month != 0 || from.Sub(now).Hours() < 24*40 || from.Sub(now).Hours() > 24*70 {
			t.Errorf("on %s stop %d is from %s, month %d", now.Format(time.DateOnly), i+1, stop.From, stop.Month)
		}
		air, err := consult.AirOf(stop, places)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := air.Air.Temperature.Or(0), stops()[i].warm; math.Abs(got-want) > 3 {
			t.Errorf("on %s %s in %s has %g °C, meant %g", now.Format(time.DateOnly), stop.Place, stop.City, got, want)
		}
	}
}

// nothingToCome: no sheet and no agreement lies in the future, or too far back.
func nothingToCome(ctx context.Context, t *testing.T, now time.Time, s *store.Store) {
	t.Helper()
	list, err := s.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range list {
		tests, err := s.Tests(ctx, line.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range tests {
			if day, _ := one.Session.Date.Time(); day.After(now) || now.Sub(day).Hours() > 24*240 {
				t.Errorf("on %s %s has a test on %s", now.Format(time.DateOnly), line.Name, one.Session.Date)
			}
		}
		plans, err := s.Plans(ctx, line.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range plans {
			if at := p.Agreement.AgreedAt; at != nil && at.After(now.Add(2*time.Hour)) {
				t.Errorf("on %s the plan of %s was agreed on %s", now.Format(time.DateOnly), line.Name, at)
			}
			if p.Rules.Bottles == "" {
				t.Errorf("the plan of %s knows no bottle", line.Name)
			}
		}
	}
}

// What the invented practitioner typed reads in the language of the window.
func TestReadsInTheLanguageOfTheWindow(t *testing.T) {
	w, err := words.New(language.German)
	if err != nil {
		t.Fatal(err)
	}
	s, err := store.Open(t.TempDir(), store.Options{Clock: today})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	names := Names{Options: consult.Names{Habit: "h", Fluid: "f", Food: "e", Aim: "z"}, Step: func(int) string { return "s" }, Say: w.Say, Town: w.City}
	ctx := context.Background()
	if err := Fill(ctx, s, today(), names); err != nil {
		t.Fatal(err)
	}
	p, err := s.Practice(ctx)
	if err != nil || p.Name != "Praxis Saltmarsh (erfunden)" {
		t.Errorf("%v, the practice is %q", err, p.Name)
	}
	trips, err := s.Trips(ctx)
	if err != nil || len(trips) != 1 || trips[0].Name != "Trainingslager und Turnier" || trips[0].Stops[1].Place != "Lager an der Küste" {
		t.Errorf("%v, trips %v", err, trips)
	}
	list, err := s.Athletes(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range list {
		a, err := s.LoadAthlete(ctx, line.ID)
		if err != nil {
			t.Fatal(err)
		}
		if a.Name == "Pia Hollinside" && (a.Position != "Mittelfeld" || a.Guardian != "Maud Hollinside (erfunden), Mutter") {
			t.Errorf("position %q, guardian %q", a.Position, a.Guardian)
		}
	}
}
