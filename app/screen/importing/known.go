package importing

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/tables"
	"ebbwell/internal/words"
)

// known is what the practice has already.
type known struct {
	tables.Known
	groups []record.Group
	// others are the ids of all plans, trips and products, deleted ones too.
	others map[record.ID]bool
}

// load reads what the practice has of what a file speaks of: of athletes of another
// name only who they are, sheets only where results may be put onto them.
func (v *View) load(ctx context.Context, s state) (*known, error) {
	k := &known{Known: tables.Known{TestIDs: map[record.ID]bool{}, Gone: map[record.ID]bool{}}}
	about := s.mentions(v.desk.Today())
	laboratory := s.mapping.Kind == record.ImportLaboratory
	days, err := v.desk.Store.TestDays(ctx)
	if err != nil {
		return nil, fmt.Errorf("list the tests: %w", err)
	}
	sheets := map[record.ID]bool{}
	for _, d := range days {
		k.TestIDs[d.ID] = true
		if d.DeletedAt == nil {
			k.Tests = append(k.Tests, tables.KnownTest{Athlete: d.AthleteID, Date: d.Date, Start: d.Start})
			sheets[d.AthleteID] = sheets[d.AthleteID] || laboratory && about.Days[d.Date]
		}
	}
	if k.others, err = v.desk.Store.IDs(ctx, record.KindPlan, record.KindTrip, record.KindProduct); err != nil {
		return nil, fmt.Errorf("list plans and trips: %w", err)
	}
	people, err := v.desk.Store.People(ctx)
	if err != nil {
		return nil, fmt.Errorf("list the athletes: %w", err)
	}
	for _, p := range people {
		if err := v.loadPerson(ctx, k, p, about.Names[tables.NameKey(p.Name)], sheets[p.ID]); err != nil {
			return nil, err
		}
	}
	deleted, err := v.desk.Store.Deleted(ctx)
	if err != nil {
		return nil, fmt.Errorf("list what was deleted: %w", err)
	}
	for _, d := range deleted {
		k.Gone[d.Ref.ID] = true
	}
	if k.groups, err = v.desk.Store.Groups(ctx); err != nil || !laboratory {
		return k, err
	}
	return k, v.loadBibs(ctx, k)
}

// loadPerson adds an athlete, whole where the file names them, with the sheets where
// results may be for them.
func (v *View) loadPerson(ctx context.Context, k *known, p store.Person, named, sheets bool) error {
	a := record.Athlete{Meta: record.Meta{ID: p.ID}, Name: p.Name, Born: p.Born}
	if named {
		whole, err := v.desk.Store.LoadAthlete(ctx, p.ID)
		if err != nil {
			return fmt.Errorf("read an athlete: %w", err)
		}
		a = whole
	}
	k.Athletes = append(k.Athletes, a)
	if !sheets {
		return nil
	}
	tests, err := v.desk.Store.Tests(ctx, p.ID)
	if err != nil {
		return fmt.Errorf("read sheets: %w", err)
	}
	k.Sheets = append(k.Sheets, tests...)
	return nil
}

// loadBibs reads the numbers of athletes in sessions of a group.
func (v *View) loadBibs(ctx context.Context, k *known) error {
	sessions, err := v.desk.Store.GroupSessions(ctx)
	if err != nil {
		return fmt.Errorf("read the sessions of groups: %w", err)
	}
	k.Bibs = map[record.ID]string{}
	for _, s := range sessions {
		for _, m := range s.Members {
			k.Bibs[m.TestID] = m.Bib
		}
	}
	return nil
}

// sports turns the words for sports of every language into their codes.
func (v *View) sports() map[string]string {
	list := map[string]string{}
	for _, tag := range v.desk.Languages {
		w, err := words.New(tag)
		if err != nil {
			continue // the other languages are enough
		}
		for _, s := range consult.Sports() {
			list[desk.SportWord(w, s.Code)], list[s.Code] = s.Code, s.Code
		}
	}
	return list
}
