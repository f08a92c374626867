package trip

import (
	"context"
	"fmt"
	"slices"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// loadCrew loads everybody on a trip.
func loadCrew(d *desk.Desk, t record.Trip) (map[record.ID]*member, error) {
	all := map[record.ID]*member{}
	for _, x := range t.Travellers {
		m, err := loadMember(d, x.AthleteID)
		if err != nil {
			return nil, err
		}
		if m != nil {
			all[x.AthleteID] = m
		}
	}
	return all, nil
}

// loadMember loads an athlete with the closed tests and the plans; nil when
// the athlete was deleted meanwhile.
func loadMember(d *desk.Desk, id record.ID) (*member, error) {
	ctx := context.Background()
	a, err := d.Store.LoadAthlete(ctx, id)
	switch {
	case store.CodeOf(err) == store.CodeDeleted, store.CodeOf(err) == store.CodeNotFound:
		return nil, nil
	case err != nil:
		return nil, fmt.Errorf("load a traveller: %w", err)
	}
	m := &member{athlete: a}
	if m.tests, err = d.AllFindings(ctx, a); err != nil {
		return nil, fmt.Errorf("load the tests of %s: %w", a.Name, err)
	}
	m.tests = slices.DeleteFunc(m.tests, func(f consult.Findings) bool { return f.Test.State == record.TestOpen }) // still being filled in
	if err := m.loadPlans(d); err != nil {
		return nil, err
	}
	return m, nil
}

// loadPlans loads the plans anew.
func (m *member) loadPlans(d *desk.Desk) error {
	plans, err := d.Store.Plans(context.Background(), m.athlete.ID)
	if err != nil {
		return fmt.Errorf("load the plans of %s: %w", m.athlete.Name, err)
	}
	m.plans, m.along, m.kept = plans, consult.ToTakeAlong(plans), nil
	m.traveller, m.planned = nil, nil
	if m.along == nil {
		return nil
	}
	m.kept, err = d.KeptOfPlan(context.Background(), m.along.ID)
	return err
}
