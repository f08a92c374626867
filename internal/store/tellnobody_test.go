package store

import (
	"context"
	"errors"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestErrorsTellNobody: an error, which may end in a log, names records by their id and
// no person, no figure and no note.
func TestErrorsTellNobody(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	const name, note, mass = "Sefa Quillonde", "takes lithium", 72.43
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: name, Note: note, UsualMass: record.Num(mass, quantity.Kilogram)}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, Note: note, State: record.TestOpen}, Edit{}))(t)
	stale := a
	a.Position = "guard"
	a = got(s.SaveAthlete(ctx, a, Edit{}))(t)
	closed := got(s.CloseTest(ctx, one, Freezing{Inputs: []byte(note)}, Edit{}))(t)
	stale.Note += " and more"
	infinite := a
	infinite.UsualMass = record.Num(math.Inf(1), quantity.Kilogram)
	typed := closed
	typed.Note = name
	lostLink := record.Test{AthleteID: "nobody", Note: note, Weighings: []record.Weighing{{Mass: record.Num(mass, quantity.Kilogram)}}}
	page := record.Print{AthleteID: a.ID, Kind: record.KindAthlete, Record: a.ID, Page: note, Bytes: []byte(name)}
	failing := map[string]func() error{
		"a stale save":    func() error { _, err := s.SaveAthlete(ctx, stale, Edit{Why: note}); return err },
		"no number":       func() error { _, err := s.SaveAthlete(ctx, infinite, Edit{Why: note}); return err },
		"a closed test":   func() error { _, err := s.SaveTest(ctx, typed, Edit{Why: name}); return err },
		"no such athlete": func() error { _, err := s.SaveTest(ctx, lostLink, Edit{}); return err },
		"no folder":       func() error { _, err := s.HandOut(ctx, page, filepath.Join(t.TempDir(), "no", "page.pdf")); return err },
		"no reason":       func() error { _, err := s.ReopenTest(ctx, one.ID, ""); return err },
		"another kind":    func() error { return s.Delete(ctx, record.Ref{Kind: record.KindPlan, ID: a.ID}, Edit{Why: name}) },
		"kept twice": func() error {
			_, err := s.Import(ctx, Incoming{File: name + ".csv", Kind: record.ImportTests, Athletes: []record.Athlete{a}})
			return err
		},
	}
	for what, do := range failing {
		err := do()
		var own *Error
		if !errors.As(err, &own) {
			t.Errorf("%s: %v", what, err)
			continue
		}
		for _, private := range []string{"Sefa", "Quillonde", "lithium", "72.4"} {
			if strings.Contains(err.Error(), private) {
				t.Errorf("%s: %q tells %q", what, err, private)
			}
		}
	}
}
