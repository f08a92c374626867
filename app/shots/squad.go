package shots

import (
	"context"
	"fmt"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// squadOf keeps a session that the newest tests of some athletes belong to, so that
// its rows can be drawn: closed ones, one at the laboratory, one whose mass is hidden
// and one that is open.
func squadOf(ctx context.Context, s *store.Store, athletes ...record.ID) (record.ID, error) {
	g := record.GroupSession{
		Meta: record.Meta{ID: record.NewID()}, Name: "Saltmarsh squad (invented)", ScaleStep: record.Num(0.1, quantity.Kilogram),
		Bottles: []record.BottleKind{{Meta: record.Meta{ID: record.NewID()}, Order: 1, ProductID: "generic.water"}},
	}
	g.Session = record.Session{Date: record.DateOf(Now().AddDate(0, 0, -1)), Start: "10:00", End: "11:20"}
	g.Air = record.Air{Temperature: record.Num(22, quantity.DegreeCelsius), Humidity: record.Num(55, quantity.PerCent), Sun: record.SunPart}
	for i, a := range athletes {
		tests, err := s.Tests(ctx, a)
		if err != nil || len(tests) == 0 {
			return "", fmt.Errorf("make a session to draw: %d tests, %w", len(tests), err)
		}
		g.Members = append(g.Members, record.Member{Meta: record.Meta{ID: record.NewID()}, AthleteID: a, TestID: tests[0].ID, Order: i + 1})
	}
	kept, err := s.SaveGroupSession(ctx, g, store.Edit{})
	return kept.ID, err
}
