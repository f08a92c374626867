package importing

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
	"ebbwell/internal/words"
)

// known is what the practice has already.
type known struct {
	tables.Known
	groups []record.Group
	// tests are the ids of all tests, gone those of deleted athletes: no new record may
	// have one of them.
	tests, gone map[record.ID]bool
}

// load reads what the practice has; the sheets only where results are put onto them.
func (v *View) load(ctx context.Context, laboratory bool) (*known, error) {
	k := &known{tests: map[record.ID]bool{}, gone: map[record.ID]bool{}}
	people, err := v.desk.Store.Athletes(ctx)
	if err != nil {
		return nil, fmt.Errorf("list the athletes: %w", err)
	}
	for _, p := range people {
		a, err := v.desk.Store.LoadAthlete(ctx, p.ID)
		if err != nil {
			return nil, err
		}
		k.Athletes = append(k.Athletes, a)
		if !laboratory {
			continue
		}
		tests, err := v.desk.Store.Tests(ctx, p.ID)
		if err != nil {
			return nil, err
		}
		k.Sheets = append(k.Sheets, tests...)
	}
	days, err := v.desk.Store.TestDays(ctx)
	if err != nil {
		return nil, err
	}
	for _, d := range days {
		k.tests[d.ID] = true
		if d.DeletedAt != nil {
			continue
		}
		k.Tests = append(k.Tests, tables.KnownTest{Athlete: d.AthleteID, Date: d.Date, Start: d.Start})
	}
	deleted, err := v.desk.Store.Deleted(ctx)
	if err != nil {
		return nil, err
	}
	for _, d := range deleted {
		k.gone[d.Ref.ID] = true
	}
	if k.groups, err = v.desk.Store.Groups(ctx); err != nil || !laboratory {
		return k, err
	}
	sessions, err := v.desk.Store.GroupSessions(ctx)
	k.Bibs = map[record.ID]string{}
	for _, s := range sessions {
		for _, m := range s.Members {
			k.Bibs[m.TestID] = m.Bib
		}
	}
	return k, err
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
