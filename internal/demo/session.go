package demo

import (
	"context"

	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// addSession makes the court squad's session of the friendly match out of the one
// sheet there is of it, so that the next test day of a group begins as that one was.
func (f *filler) addSession(ctx context.Context) error {
	t := f.tests["sefa-lab"]
	g := record.GroupSession{
		Meta: record.Meta{ID: record.NewID()}, Name: f.names.Say("demo.group.court"), Session: t.Session, Air: t.Air, ScaleStep: t.Scale.Step,
		PatchSites: string(record.SiteForearmDorsal),
		Members:    []record.Member{{Meta: record.Meta{ID: record.NewID()}, AthleteID: t.AthleteID, TestID: t.ID, Order: 1, Bib: "9"}},
	}
	for i, b := range t.Bottles {
		g.Bottles = append(g.Bottles, record.BottleKind{Meta: record.Meta{ID: record.NewID()}, Order: i + 1, ProductID: b.ProductID, Name: b.Name})
	}
	_, err := f.store.SaveGroupSession(ctx, g, store.Edit{})
	return err
}
