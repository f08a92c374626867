package handoutview

import (
	"context"
	"errors"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// file is what the screen works with.
type file struct {
	subject subject
	plans   []record.Plan
	prints  []record.Print
	// closed are the prints that may show a body mass that is hidden now.
	closed map[record.ID]bool
	// nothing says why there is no page of the plan, as a code; empty where
	// there is one.
	nothing string
}

// load reads an athlete's records, and opens the plan with an id: for none the
// newest that is agreed, else the newest.
func load(d *desk.Desk, athlete, planID record.ID) (file, error) {
	ctx := context.Background()
	var f file
	a, err := d.Store.LoadAthlete(ctx, athlete)
	if err != nil {
		return f, fmt.Errorf("open a handout: %w", err)
	}
	f.subject = subject{
		athlete: a, practice: d.Practice(), care: care.Of(a, d.Now()),
		sport: func(w *words.Words) string { return desk.SportWord(w, a.Sport) },
	}
	if f.plans, err = d.Store.Plans(ctx, athlete); err != nil {
		return f, fmt.Errorf("open a handout: %w", err)
	}
	if f.prints, f.closed, err = printsOf(ctx, d, a); err != nil {
		return f, fmt.Errorf("open a handout: %w", err)
	}
	p, ok := chosenPlan(f.plans, planID)
	switch {
	case ok:
		return f, f.open(d, p)
	case planID != "":
		return f, &store.Error{Code: store.CodeNotFound, Doing: "open a handout", Ref: record.Ref{Kind: record.KindPlan, ID: planID}}
	}
	f.nothing = "noplan"
	return f, nil
}

// printsOf lists the prints of an athlete, newest first, and those of them that were
// made while a body mass could be seen that is hidden now.
func printsOf(ctx context.Context, d *desk.Desk, a record.Athlete) (list []record.Print, closed map[record.ID]bool, err error) {
	if list, err = d.Store.PrintsOf(ctx, a.ID); err != nil || len(list) == 0 || !care.MassHidden(a, d.Now()) {
		return list, nil, err
	}
	changes, err := d.Store.History(ctx, record.Ref{Kind: record.KindAthlete, ID: a.ID})
	if err != nil {
		return nil, nil, err
	}
	closed = map[record.ID]bool{}
	for _, p := range list {
		if care.MassSeen(a, changes, p.At) {
			closed[p.ID] = true
		}
	}
	return list, closed, nil
}

// chosenPlan is the plan with an id; for none the one agreed for
// home, else the newest made for home.
func chosenPlan(plans []record.Plan, id record.ID) (record.Plan, bool) {
	for _, p := range plans {
		if id != "" && p.ID == id {
			return p, true
		}
	}
	if id != "" {
		return record.Plan{}, false
	}
	if p := consult.ToTakeAlong(plans); p != nil {
		return *p, true
	}
	return consult.Own(plans)
}

// errNoOption means: no option of the plan is in force.
var errNoOption = errors.New("no option in force")

// unready notes that a plan cannot be printed as it is: its session or its mix,
// which the plan's own screen words.
func (f *file) unready(err error) bool {
	if err != nil {
		f.nothing = "unready"
	}
	return err != nil
}

// open makes the case of a plan: an agreed one as it was agreed, with all that was
// kept beside it.
func (f *file) open(d *desk.Desk, p record.Plan) error {
	ctx, a := context.Background(), f.subject.athlete
	tests, err := d.AllFindings(ctx, a)
	if err != nil {
		return fmt.Errorf("open a handout: %w", err)
	}
	c, err := d.OpenPlan(ctx, p, a, tests)
	if errors.Is(err, consult.ErrNoBasis) || errors.Is(err, consult.ErrNoAir) || errors.Is(err, consult.ErrTestGone) {
		f.nothing = "nobasis"
		return nil
	}
	if _, option := consult.InForce(p); !option {
		err = errNoOption
	}
	if f.unready(err) {
		return nil
	}
	d.JudgeHeat(p, a, tests, &c.Basis)
	if err := f.namePlace(ctx, d, p, &c.Basis); err != nil {
		return fmt.Errorf("open a handout: %w", err)
	}
	f.subject.planCase, f.subject.planned = c, true
	return nil
}

// namePlace names the stop of a trip that an estimate is for.
func (f *file) namePlace(ctx context.Context, d *desk.Desk, p record.Plan, b *consult.Basis) error {
	if p.Basis.StopID == "" || b.Calculation == nil {
		return nil
	}
	trips, err := d.Store.TripsOf(ctx, f.subject.athlete.ID)
	if err != nil {
		return err
	}
	for _, t := range trips {
		for _, s := range t.Stops {
			if s.ID == p.Basis.StopID {
				there := *b.Calculation
				there.Outing.Session.Place, there.Outing.Like = s.Place, ""
				b.Calculation = &there
			}
		}
	}
	return nil
}
